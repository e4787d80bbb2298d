"""What hands in a unit leave behind: gloves and help laid off, leads lifted, a door opened."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import fault
from tests.safety.work_state_samples import PLAIN_UNIT, TWO_CIRCUITS, a_test
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_repair, after_test, refusals
from troubleshoot.safety.work_state import WorkState

READY = WorkState(
    power="locked-out", panels="off", calls="off", roof="go", arc_clothing=True,
    second_person=True, area_clear=True,
)  # fmt: skip
LAID_OFF = {"arc_clothing": False, "second_person": False}
HANDS_ON_PARTS = {
    "hook-up-dead", "leads-back", "manometer-on", "manometer-off", "charge-recovered",
    "circuit-held", "circuit-to-zero", "circuit-evacuated", "charge-put-back", "gauges-on",
    "gauges-off",
}  # fmt: skip
"""Nobody turns a valve or a terminal screw in arc-rated gloves, nor needs watching locked out."""


@pytest.mark.parametrize("step", sorted(STEPS.keys() - {"arc-clothing-on", "second-person"}))
def test_gloves_and_help_are_asked_for_again_once_hands_were_on_parts(step: str) -> None:
    for outcomes in ((CONFIRMED[step],), ("otherwise",)):
        after = STEPS[step].effect(READY, "circuit 1", outcomes)
        stay = step not in HANDS_ON_PARTS
        assert (after.arc_clothing, after.second_person) == (stay, stay)


@pytest.mark.parametrize("step", ["gauges-on", "gauges-off"])
def test_hoses_at_outside_ports_take_no_gloves_off_where_it_is_not_locked_out(step: str) -> None:
    running = replace(READY, power="on")
    after = STEPS[step].effect(running, "circuit 1", (CONFIRMED[step],))
    assert after.arc_clothing and after.second_person


@pytest.mark.parametrize(
    ("work_state", "hands_in"),
    [
        ("any", False), ("running", False), ("running-open", False), ("energised-open", False),
        ("locked-closed", True), ("locked-out", True),
    ],
)  # fmt: skip
def test_whoever_reached_in_behind_a_lock_has_a_door_to_shut(
    work_state: str, hands_in: bool
) -> None:
    look = a_test("belt", work_state=work_state, kind="look")
    after = after_test(READY, look, None, (), PLAIN_UNIT)
    left: dict[str, Any] = {**LAID_OFF, "doors_open": True} if hands_in else {}
    assert after == replace(READY, area_clear=False, **left)


@pytest.mark.parametrize("hands", ["inside", "at-leads"])
@pytest.mark.parametrize("panels", ["on", "unsure"])
def test_a_repair_told_of_a_closed_live_unit_had_its_door_open(hands: str, panels: Any) -> None:
    """No lead is known to be off, nor any glove: only the door is looked at, and the tools."""
    worn = fault("worn")
    mended = replace(worn, repair=replace(worn.repair, hands=hands))
    closed = replace(READY, power="on", panels=panels, calls="on")
    assert after_repair(closed, mended, PLAIN_UNIT) == replace(
        closed, area_clear=False, doors_open=True
    )


@pytest.mark.parametrize("hands", ["inside", "at-leads"])
def test_whoever_mended_behind_an_open_live_panel_looks_for_tools_before_it_starts(
    hands: str,
) -> None:
    """29 CFR 1910.147(e)(1), from memory. Regression: it was started on the look before it."""
    worn = fault("worn")
    mended = replace(worn, repair=replace(worn.repair, hands=hands))
    live = replace(READY, power="on")
    assert not refusals(live, Step("restart-and-watch"), PLAIN_UNIT)
    after = after_repair(live, mended, PLAIN_UNIT)
    assert after == replace(live, area_clear=False)
    assert refusals(after, Step("restart-and-watch"), PLAIN_UNIT) == ("tools and people clear",)


def test_a_circuit_told_of_before_the_unit_had_two_may_have_been_opened_too() -> None:
    """Work noted on the unit as a whole stays work on it, whatever is learnt of its circuits."""
    worn = fault("worn")
    opening = replace(worn, repair=replace(worn.repair, who=("refrigerant",), hands="outside"))
    before = READY.with_circuit("unit", "charge-recovered")
    after = after_repair(before, opening, TWO_CIRCUITS)
    assert after.circuits == (
        ("circuit 1", "opened-unsure"), ("circuit 2", "opened-unsure"), ("unit", "opened"),
    )  # fmt: skip
