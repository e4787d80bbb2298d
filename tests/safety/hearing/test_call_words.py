"""What a clause says beside the call is left of it; a call that may be of the air is none to take.

What callers say is invented; the fields of a rule file are those of DEVELOPERS.md.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base
from tests.safety.hearing.invented import job, no_stop
from troubleshoot.knowledge.model import Complaint, Hazard, Trigger
from troubleshoot.safety.hearing.call_words import besides_the_call
from troubleshoot.safety.hearing.words import spoken_words


def of_call(hazard: Hazard, complaint: str) -> Hazard:
    return replace(hazard, triggers=(Trigger(complaint=complaint),))


CALLS = base(
    complaints=[
        Complaint("weak-cooling", "", ("not cooling enough", "quits often")),
        Complaint("belt-squeal", "", ("belt squeals",)),
        Complaint("trips-often", "", ("trips breakers often",)),
        Complaint("musty", "", ("dusty filter", "musty smell")),
    ],
    hazards=[
        of_call(job("stopping", "trips"), "trips-often"),
        of_call(no_stop("minding", "squeals"), "belt-squeal"),
    ],
)


@pytest.mark.parametrize(
    ("clause", "beside"),
    [
        ("not cooling enough", ""),
        ("not cooling enough leaking", "leaking"),
        ("it is not cooling enough", ""),
        ("unit not cooling enough leaking", "unit leaking"),
        ("not cooling enough quits often", "quits often"),
        ("quits often not cooling enough", "quits often"),
        ("belt squeals leaking", "leaking"),
        ("belt squeal leaking", "leaking"),
        ("trips breakers often leaking", "trips breakers often leaking"),
        ("dusty filter leaking", "dusty filter leaking"),
        ("leaking", "leaking"),
    ],
)
def test_the_longest_call_of_no_danger_goes_and_the_rest_stays(clause: str, beside: str) -> None:
    """With the unit before it; a call that a STOP hangs on, or one of the air, stays whole."""
    said, left = (spoken_words(each, str) for each in (clause, beside))
    assert besides_the_call(CALLS, said) == left
