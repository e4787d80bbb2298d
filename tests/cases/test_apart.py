"""Sixty cases of a mechanic who saw neither cards nor bench: counted, and none of them mended for.

At first run 53 led and 58 were among three, none wrong at 0.9 or more. No card is changed to please
one of them; where that is wanted, new ones are written by somebody else.
"""

from __future__ import annotations

from pathlib import Path

from tests.cases.judging import judged
from troubleshoot.knowledge.model import Knowledge

APART = Path(__file__).parent / "apart"


def test_the_truth_leads_as_often_as_it_did_and_nothing_sure_is_wrong(shipped: Knowledge) -> None:
    cases = judged(shipped, APART)
    assert len(cases) == 60
    assert sum(case.first for case in cases) >= 51
    assert sum(case.in_three for case in cases) >= 57
    assert not [case.name for case in cases if case.chance >= 0.9 and not case.first]
