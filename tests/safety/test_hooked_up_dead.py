"""What is read live is hooked up dead, before the power comes, and taken out dead again."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.safety.work_state_samples import IN_SERIES, RUNNING
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.guards import unmet
from troubleshoot.safety.needs import HOOK_UPS, hook_ups_on, needs_of
from troubleshoot.safety.route import steps_to, steps_to_leave, steps_to_leave_off
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_step, expire
from troubleshoot.safety.work_state import UnitAtWork, WorkState, open_items

UNIT = UnitAtWork(capacitors=("capacitor blower",), burns_gas=True)
DEAD = ["lockout", "panels-off", "verified-dead"]
ROD = "flame rod lead"


def done(state: WorkState, steps: tuple[Step, ...], confirmed: dict[str, str]) -> WorkState:
    for step in steps:
        state = after_step(state, step, (confirmed[step.id],), UNIT)
    return state


@pytest.fixture
def hooked_up(shipped: Knowledge) -> WorkState:
    """The flame current, ready to be read."""
    confirmed = {test.id: str(test.healthy[0]) for test in shipped.tests.values() if test.healthy}
    start = WorkState()
    return done(start, steps_to(start, needs_of(IN_SERIES, None, UNIT), UNIT), confirmed)


def test_it_is_hooked_up_between_the_proof_of_dead_and_the_power(hooked_up: WorkState) -> None:
    """Regression: a rod lead was opened on a live panel, which its own text forbids."""
    way = [step.id for step in steps_to(WorkState(), needs_of(IN_SERIES, None, UNIT), UNIT)]
    assert "panels-off-energised" not in way
    hook_up, power = way.index("hook-up-dead"), way.index("lock-off")
    assert all(way.index(step) < hook_up for step in [*DEAD, "capacitor-discharge"])
    assert hook_up < power < way.index("restart-and-watch")
    assert hooked_up.hooked_up == {ROD}
    assert open_items(hooked_up)[0] == f"hooked up for a reading: {ROD}"


def test_a_reading_waits_for_its_own_hook_up_and_for_every_other_to_be_out(
    hooked_up: WorkState,
) -> None:
    needs = needs_of(IN_SERIES, None, UNIT)
    assert not unmet(hooked_up, needs)
    assert f"hooked up while it was dead: {ROD}" in unmet(WorkState(), needs)
    another = unmet(hooked_up, replace(needs, hook_ups=("heater lead",)))
    assert {"every lead back on", "hooked up while it was dead: heater lead"} <= {*another}
    loose = replace(hooked_up, leads_off=frozenset({ROD, "unit"}))
    assert list(unmet(loose, needs)) == ["every lead back on"]
    away = unmet(expire(hooked_up, "resumed"), needs)
    assert {"every lead back on", f"hooked up while it was dead: {ROD}"} <= {*away}


@pytest.mark.parametrize("way_back", [steps_to_leave, "another", steps_to_leave_off])
def test_it_comes_out_dead_before_anything_else_runs(
    hooked_up: WorkState, way_back: object
) -> None:
    """Regression: after a flame current nobody was asked to put the rod's lead back."""
    if way_back == "another":
        way = steps_to(hooked_up, needs_of(RUNNING, None, UNIT), UNIT)
    elif way_back is steps_to_leave:
        way = steps_to_leave(hooked_up, UNIT)
    else:
        way = steps_to_leave_off(replace(hooked_up, power="locked-out"), UNIT)
    steps = [step.id for step in way]
    back = steps.index("leads-back")
    assert steps.index("verified-dead") < back
    assert "lock-off" not in steps[:back]


def test_after_an_absence_it_is_looked_to_again(hooked_up: WorkState) -> None:
    away = expire(hooked_up, "resumed")
    steps = [step.id for step in steps_to(away, needs_of(IN_SERIES, None, UNIT), UNIT)]
    assert steps.index("leads-back") < steps.index("hook-up-dead") < steps.index("lock-off")


def test_every_test_that_is_hooked_up_dead_and_read_live_says_so_in_data(
    shipped: Knowledge,
) -> None:
    """What its text says of a lock-out it is led to: none of them but by a sentence."""
    live = ("running", "running-open", "energised-open")
    told = {
        test.id
        for test in shipped.tests.values()
        if test.work_state in live
        and test.kind != "step"
        and any(
            words in " ".join(test.how).lower()
            for words in ("while it was locked out", "with the unit locked out", "lock out, find")
        )
    }
    declared = {t.id for t in shipped.tests.values() if HOOK_UPS.keys() & {*t.needs_state}}
    assert told == declared
    assert declared == {
        "flame-current", "compressor-leads-rolled", "heater-limit-in-run", "heater-limit-opens",
    }  # fmt: skip


@pytest.mark.parametrize(
    ("test", "at", "where"),
    [
        ("flame-current", None, ROD),
        ("heater-limit-in-run", None, "heater lead"),
        ("heater-limit-opens", "heat stage 2", "heater lead of heat stage 2"),
        ("compressor-leads-rolled", "compressor 1", "motor leads of compressor 1"),
    ],
)
def test_where_hands_go_in_is_named_with_the_place_of_the_reading(
    test: str, at: str | None, where: str, shipped: Knowledge
) -> None:
    """It is what stays open on the unit until it is out, and what a practised step is done at."""
    assert needs_of(shipped.tests[test], at, UNIT).hook_ups == (where,)


def test_practice_offers_exactly_the_places_that_a_visit_would_hook_up(shipped: Knowledge) -> None:
    layout = read_unit(shipped, {"heat": "gas", "circuits": 2}).layout
    wanted = {
        where
        for test in shipped.tests.values()
        for at in layout.places(test.per)
        for where in needs_of(test, None if at is None else str(at), UNIT).hook_ups
    }
    assert hook_ups_on(shipped.tests.values(), layout.places) == wanted
    assert wanted == {
        ROD, "heater lead", "heater lead of heat stage 1", "heater lead of heat stage 2",
        "motor leads of compressor 1", "motor leads of compressor 2",
    }  # fmt: skip
