"""Cautions against the words of the rules: what a test says to do, its cautions must cover."""

from __future__ import annotations

import re

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.work_state import UnitAtWork

MAKES_A_CALL = re.compile(
    r"with the (?:call on|(?:condenser )?fan called|stage called|thermostat calling)"
    r"|\bmake the call\b|\bcall (?:fan|cooling|heat)\b|called in",
    re.IGNORECASE,
)


def says(test: Test) -> str:
    return " ".join(" ".join(test.how).split())


def test_a_call_made_behind_open_panels_cautions_of_what_can_start(shipped: Knowledge) -> None:
    # 29 CFR 1910.147 and 1910.212: what can start unexpectedly is guarded against.
    calling = [
        test
        for test in shipped.tests.values()
        if test.work_state in ("energised-open", "running-open") and MAKES_A_CALL.search(says(test))
    ]
    assert len(calling) > 10
    assert [t.id for t in calling if "rotating-parts" not in t.hazards] == []


def test_a_tap_of_a_dead_gas_train_is_opened_with_the_cock_shut(shipped: Knowledge) -> None:
    for test in shipped.tests.values():
        dead = test.work_state == "locked-out" and "gas-train-work" in test.hazards
        if dead and "cock shut" in says(test):
            assert needs_of(test, None, UnitAtWork()).gas == "shut", test.id


def test_no_carbon_monoxide_that_stops_a_visit_counts_as_clear_air(shipped: Knowledge) -> None:
    from troubleshoot.safety import steps
    from troubleshoot.safety.steps import Step
    from troubleshoot.safety.transitions import after_step
    from troubleshoot.safety.work_state import WorkState

    unit = UnitAtWork()
    for outcome in shipped.tests[steps.ROOM_AIR].outcomes:
        state = after_step(WorkState(roof="go"), Step(steps.ROOM_AIR), (outcome.id,), unit)
        assert (steps.ROOM_AIR in state.clear) == (outcome.id == "normal")
