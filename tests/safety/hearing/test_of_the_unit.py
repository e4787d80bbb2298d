"""What is told of a unit, or of its rooms, is no danger, though a danger is told in such words."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.dangers import cried, named

FUEL_IN_A_ROW = [
    "208/3, gas, R-410A, TXV, one circuit, 2 cond fans, no drive on the blower",
    "gas, 3 phase motor", "208/3, gas, R-410A, three phase blower", "gas, R-410A, TXV, hail guards",
    "gas, VFD blower", "480/3/60, gas, R-454B, two circuits, ECM blower",
    "belt, 460/3, gas, natural gas, R-410A, TXV, two circuits, three-phase blower",
]  # fmt: skip
ROOMS = [
    "cant get it down", "hot and sticky inside, cant get it down", "cant get it down to 72",
    "office is 79 in the afternoon, cant get it down, mornings ok", "burning up in here",
    "it is burning up in here", "everybody is burning up in the gym",
]  # fmt: skip
DANGERS = [
    "gas", "gas in here", "gas, bad", "gas; smells", "gas, strong", "gas, at the meter",
    "gas, everywhere", "gas, two people sick", "gas, no doubt", "gas, all over", "gas, one of us",
    "gas, and a spark", "gas, hot surface", "gas, 3 of us smell it", "gas, refrigerant leak too",
    "we are stuck, cant get down", "cannot get down", "ladder fell, cant get down",
    "i cant get it down, the ladder is gone", "we cant get him down", "cant get her down",
    "the box is burning up in here", "a wire is burning up in there", "burning in here",
]  # fmt: skip


@pytest.mark.parametrize("said", [*FUEL_IN_A_ROW, *ROOMS])
def test_what_a_unit_is_made_of_or_how_warm_it_is_stops_nothing(
    said: str, shipped: Knowledge
) -> None:
    """Regression: three strangers were stopped by facts of the unit or by the caller's words."""
    assert not named(shipped, said) and not cried(shipped, said)


@pytest.mark.parametrize("said", DANGERS)
def test_a_danger_in_such_words_is_still_one(said: str, shipped: Knowledge) -> None:
    assert named(shipped, said)
