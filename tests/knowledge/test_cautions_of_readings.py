"""What a reading shows is cautioned of even where no test names the danger and nobody called it.

A three-phase motor on two legs: NEMA MG 1, unbalance (from memory: 14.36). A regulator that is
turned up against a low inlet, a pressure switch that is right to stay open: fuel gas code and
makers' sheets, and common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.cases.assessment import assess_case
from troubleshoot.visit.events import Answered, Started, replay

GAS = {
    "heat": "gas", "fuel": "natural-gas", "draft": "induced",
    "pressure-switch-set-point": "0.6 in wc",
}  # fmt: skip
THREE = {
    "supply-phase": "three", "compressor-phase": "three", "line-volts-class": "208-to-240-volt",
}  # fmt: skip
ONE = {**THREE, "supply-phase": "single", "compressor-phase": "single"}


def cautions(knowledge: Knowledge, unit: dict[str, str], test: str, read: str, *said: str) -> str:
    """All that is told of dangers for one reading."""
    answer = Answered(test, outcomes=said, text=read or None)
    state = replay(knowledge, [Started(complaint="no-heat", unit=unit), answer])
    plain, _ = assess_case(knowledge, state.case)
    return " ".join(str(each) for each in plain["cautions"])


@pytest.mark.parametrize(
    ("test", "read", "said"),
    [("contactor-pole-drop", "40 V", ()), ("contactor-contacts", "", ("pole-burnt-away",))],
)
def test_a_lost_pole_burns_a_three_phase_motor(
    test: str, read: str, said: tuple[str, ...], shipped: Knowledge
) -> None:
    """Regression: without amps told nothing warned of two legs."""
    assert "on two legs" in cautions(shipped, THREE, test, read, *said)
    assert "on two legs" not in cautions(shipped, ONE, test, read, *said)
    assert "on two legs" not in cautions(shipped, THREE, "contactor-pole-drop", "0.05 V")


@pytest.mark.parametrize(
    ("test", "read"),
    [("gas-inlet-pressure-all-firing", "3.2 in wc"), ("gas-inlet-pressure-idle", "3 in wc")],
)
def test_no_regulator_is_turned_up_against_a_low_inlet(
    test: str, read: str, shipped: Knowledge
) -> None:
    assert "not turned up" in cautions(shipped, GAS, test, read)
    assert "not turned up" not in cautions(shipped, GAS, "gas-inlet-pressure-idle", "7 in wc")


@pytest.mark.parametrize(
    ("test", "read", "said"),
    [("draft-at-pressure-switch", "0.35 in wc", ()),
     ("pressure-switch-action", "", ("open-for-low-draft",))],
)  # fmt: skip
def test_a_switch_that_low_draft_holds_open_is_left_alone(
    test: str, read: str, said: tuple[str, ...], shipped: Knowledge
) -> None:
    told = cautions(shipped, GAS, test, read, *said)
    assert "leave it as it is" in told and "carbon monoxide" in told
    sound = cautions(shipped, GAS, "draft-at-pressure-switch", "0.9 in wc")
    assert "leave it as it is" not in sound
