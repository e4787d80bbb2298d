"""What is asked of whoever names a unit nearly as one is named over which a STOP stands.

Regression: six STOPs were listed in the order of their visits, whatever was typed, and one n went
on with Mill Lane four as with Zebra 99.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.dialogue.test_standing import asked
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import FiredHazard
from troubleshoot.visit.kept.stopped import Stopped
from troubleshoot.visit.kept.unit_names import may_be_same

LANE, DEPOT, SCHOOL = "Mill Lane 4", "Depot Lower 6", "RTU-5"


@pytest.fixture
def three(shipped: Knowledge) -> list[Stopped]:
    """A smell of gas over each of three units, the visits in this order."""
    fired = FiredHazard(shipped.hazards["gas-odour"], (1,), (), True)
    units = (DEPOT, SCHOOL, LANE)
    return [Stopped(Path(f"{unit}.journal"), unit, fired, False, ()) for unit in units]


@pytest.mark.parametrize("typed", ["Mill Lane four", "4 Mill Lane", "ML4", "unit 4", "Mil Lane 4"])
def test_a_like_name_is_told_first_and_wants_the_own_name_once_more(
    typed: str, three: list[Stopped], shipped: Knowledge
) -> None:
    terminal, found = asked(shipped, typed, three, "n", "no", typed.upper())
    assert found is None and len(terminal.asked) == 3
    assert terminal.said[:3] == [
        f"A STOP stands over {LANE}, which may be {typed}.",
        "A STOP stands over:",
        f"  1 {LANE}: gas odor",
    ]
    assert terminal.asked[0].startswith(
        f"Is this one of them? Its number, or {typed} once more if it is another"
    )
    terminal, found = asked(shipped, typed, three, "1")
    assert found is three[2]


def test_a_name_like_none_is_told_in_one_line_what_stands(
    three: list[Stopped], shipped: Knowledge
) -> None:
    terminal, found = asked(shipped, "Zebra 99", three)
    assert found is None and not terminal.asked and len(terminal.said) == 1
    assert all(unit in terminal.said[0] for unit in (LANE, DEPOT, SCHOOL, "Zebra 99"))


def test_what_may_be_mistyped_is_denied_by_n(three: list[Stopped], shipped: Knowledge) -> None:
    terminal, found = asked(shipped, "RTU-6", [*three[1:]], "n")
    assert found is None and terminal.said[1].strip().startswith(f"1 {SCHOOL}")


@pytest.mark.parametrize("typed", ["unit 4", "ML4", "RTU 4", "Mill Lane", "ML 4", "4"])
def test_scripts_are_refused_by_the_same_likeness(typed: str) -> None:
    assert may_be_same(LANE, typed)


@pytest.mark.parametrize("typed", ["Zebra 99", "Zebra 4", "unit 5", "MD4", "RTU-5"])
def test_another_word_or_number_is_another_unit(typed: str) -> None:
    assert not may_be_same(LANE, typed)
