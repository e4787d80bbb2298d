"""Every guard is needed: with any one of them taken out, a check of this file fails."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from types import MappingProxyType

import pytest

from tests.safety.work_state_neighbours import (
    DEMANDING_UNIT,
    as_world,
    ready_for,
    states_on_every_way,
    with_one_fact_wrong,
)
from tests.safety.work_state_officer import Officer
from tests.safety.work_state_samples import HANDS_IN, JUMPERED, SAMPLES, a_test
from troubleshoot.safety import guards, steps, transitions
from troubleshoot.safety.declaration import SafetyStep
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.guards import GUARDS, allowed, unmet
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import next_step
from troubleshoot.safety.step_guards import StepGuard
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_test, refusals
from troubleshoot.safety.work_state import UnitAtWork, WorkState

MUST_STAND = {
    "edge-protection": "edge-near",
    "refrigerant-sweep-a2l": "roof-safe",
    "combustible-gas-sweep": "roof-safe",
    "tester-proof": "roof-safe",
    "stop-by-controls": "roof-safe told panel-on-test",
    "lockout": "roof-safe told panel-on-test",
    "second-source-locked": "roof-safe locked",
    "panels-off": "roof-safe no-refrigerant locked dressed",
    "panels-off-energised": "roof-safe no-refrigerant no-gas powered dressed",
    "verified-dead": "roof-safe locked opened meter-just dressed",
    "capacitor-discharge": "roof-safe locked opened meter meter-first",
    "drive-discharge": "roof-safe locked opened meter meter-first",
    "fuse-clips-dead": (
        "roof-safe locked opened dead-first dead-last meter-last bled:all dressed meter-just"
    ),
    "gas-cock-look": "roof-safe",
    "gas-cock-shut": "roof-safe",
    "purge-wait": "roof-safe gas-shut",
    "gas-cock-open": "roof-safe",
    "manometer-on": "roof-safe locked opened dead-first dead-last meter-last gas-shut no-gas",
    "manometer-off": "roof-safe locked opened dead-first dead-last meter-last gas-shut no-gas",
    "plug-under-gas": "roof-safe powered cock-open called",
    "gauges-on": (
        "roof-safe no-refrigerant locked opened dead-first dead-last meter-last bled:all"
    ),
    "gauges-off": (
        "roof-safe no-refrigerant locked opened dead-first dead-last meter-last bled:all"
    ),
    "charge-recovered": "roof-safe no-refrigerant locked",
    "circuit-held": "roof-safe locked",
    "circuit-to-zero": "roof-safe locked",
    "circuit-evacuated": "roof-safe locked",
    "charge-put-back": "roof-safe no-refrigerant locked vacuum-held:circuit",
    "hook-up-dead": "roof-safe locked opened dead-first dead-last meter-last bled:all",
    "leads-back": "roof-safe locked dead-first dead-last meter-last bled:all",
    "jumper-out": "roof-safe",
    "panels-on": "roof-safe",
    "doors-shut": "roof-safe",
    "tools-clear": "roof-safe",
    "lock-off": "roof-safe no-refrigerant locked stopped area-clear",
    "restart-and-watch": "roof-safe no-refrigerant powered stopped area-clear",
}
"""Step -> what has to stand before its turn comes (on a unit where everything can go wrong).

The order of de-energising, stored charge and the proven tester: 29 CFR 1910.333(b)(2)(ii)-(iv) and
NFPA 70E 120.5 (reference value SAF-002). The rest is common practice, no source.
"""

MUST_NOT_STAND = {
    "arc-clothing-on": "open-live-no-jumper",
    "stop-by-controls": "jumper-in",
    "lockout": "jumper-in running-untried",
    "panels-off-energised": "jumper-in would-run",
    "verified-dead": "second-source-open charged-after-first-test",
    "fuse-clips-dead": "second-source-open",
    "doors-shut": "would-run",
    "gas-cock-open": "would-run",
    "purge-wait": "would-run",
    "panels-on": "jumper-in would-run tap-open open-live",
    "jumper-out": "closed-up open-live-alone open-live-undressed",
    "plug-under-gas": "tap-open:here open-live-alone open-live-undressed",
    "lock-off": (
        "leads-off jumper-in doors-open no-charge unburnt gas-about unswept open-alone "
        "open-undressed"
    ),
    "restart-and-watch": (
        "leads-off doors-open no-charge unburnt gas-about unswept open-alone open-undressed"
    ),
}

CIRCUIT_READY = {
    "gauges-on": ("closed", "gauges-unsure"),
    "gauges-off": ("gauges-on", "gauges-unsure"),
    "charge-recovered": ("gauges-on", "charge-unsure"),
    "circuit-opened": ("opened-unsure",),
    "circuit-held": ("opened",),
    "circuit-to-zero": ("under-nitrogen", "under-vacuum", "evacuated"),
    "circuit-evacuated": ("charge-recovered", "under-vacuum"),
}

MUTANTS = [(step, guard) for step in STEPS.values() for guard in step.after]


def disagreements() -> Iterator[str]:
    """Where a test would be shown that the officer or the order of work would not show, or not."""
    for index, (test, _) in enumerate(SAMPLES):
        yield from _disagreements_on(DEMANDING_UNIT, index)
        if "gauges-on" in test.needs_state:
            yield from _disagreements_on(replace(DEMANDING_UNIT, ports_outside=True), index)


def _disagreements_on(unit: UnitAtWork, index: int) -> Iterator[str]:
    officer, (test, place) = Officer(unit), SAMPLES[index]
    needs = needs_of(test, place, unit)
    for state in with_one_fact_wrong(ready_for(index, unit)):
        shown = not unmet(state, needs)
        if shown and officer.objection(as_world(state), test, place):
            yield f"{test.id}: {officer.objection(as_world(state), test, place)}"
        hidden_jumper = state.jumpers and state.panels == "on"  # cannot come about: see below
        arrived = next_step(state, needs, unit) is None
        if shown != arrived and not hidden_jumper:
            yield f"{test.id}: shown is {shown} with {state}"


def step_disagreements(step: str) -> Iterator[str]:
    """Where a step's turn has come by the code and not by the tables above, or the reverse."""
    place = "outlet tap" if STEPS[step].at == "tap" else "circuit 1"
    for state in states_on_every_way(DEMANDING_UNIT):
        has_come = not refusals(state, Step(step, place), DEMANDING_UNIT)
        if has_come != _has_come(step, state, place):
            yield f"{step}: its turn has come is {has_come} with {state}"


def _has_come(step: str, state: WorkState, place: str) -> bool:
    world = as_world(state)
    all_bled = {"bled blower", "bled capacitor blower"} <= world
    named = {
        "vacuum-held:circuit": f"vacuum-held {place}" in world,
        "bled:all": all_bled,
        "tap-open:here": f"tap-open {place}" in world,
        "charged-after-first-test": "meter-first" in world and not all_bled,
    }

    def stands(thing: str) -> bool:
        return named.get(thing, thing in world)

    ready = CIRCUIT_READY.get(step, (state.circuit(place),))
    return (
        all(stands(thing) for thing in MUST_STAND.get(step, "").split())
        and not any(stands(thing) for thing in MUST_NOT_STAND.get(step, "").split())
        and state.circuit(place) in ready
    )


def test_a_test_is_shown_exactly_when_nothing_is_missing() -> None:
    assert list(disagreements()) == []


@pytest.mark.parametrize("guard", GUARDS[1:], ids=lambda guard: guard.__name__)
def test_without_any_one_guard_a_test_would_be_shown_too_early(
    guard: guards.Guard, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(guards, "GUARDS", tuple(other for other in GUARDS if other is not guard))
    assert next(disagreements(), None) is not None


def test_a_safety_step_is_never_shown_as_a_test(monkeypatch: pytest.MonkeyPatch) -> None:
    assert GUARDS[0] is guards.turn_has_come
    step = a_test("verified-dead", kind="step")
    assert allowed(WorkState(), step, None, DEMANDING_UNIT) == (
        "a safety step is shown only when its turn comes",
    )
    monkeypatch.setattr(guards, "GUARDS", GUARDS[1:])
    assert allowed(WorkState(), step, None, DEMANDING_UNIT) == ()


@pytest.mark.parametrize("step", sorted(STEPS))
def test_a_step_has_its_turn_exactly_when_what_comes_before_it_stands(step: str) -> None:
    assert list(step_disagreements(step)) == []


@pytest.mark.parametrize(
    ("step", "guard"), MUTANTS, ids=[f"{step.id} without {guard.words}" for step, guard in MUTANTS]
)
def test_without_any_one_of_its_guards_a_step_would_come_too_early(
    step: SafetyStep, guard: StepGuard, monkeypatch: pytest.MonkeyPatch
) -> None:
    left = replace(step, after=tuple(other for other in step.after if other is not guard))
    monkeypatch.setattr(transitions, "STEPS", MappingProxyType({**STEPS, step.id: left}))
    assert next(step_disagreements(step.id), None) is not None


def test_only_telling_checking_and_asking_may_come_at_any_time() -> None:
    at_any_time = {
        "roof-conditions",
        "tell-occupants",
        "tell-fire-panel",
        "fire-panel-back",
        "second-person",
        "room-carbon-monoxide",
    }
    assert {step.id for step in STEPS.values() if not step.after} == at_any_time


def test_a_jumper_is_only_ever_in_with_the_panel_off() -> None:
    after = after_test(WorkState(), JUMPERED, None, (), DEMANDING_UNIT)
    assert after.jumpers and after.panels == "off"
    assert "every temporary jumper out" in refusals(after, Step(steps.PANELS_ON), DEMANDING_UNIT)


def test_what_is_unmet_is_said_in_words() -> None:
    said = allowed(WorkState(), HANDS_IN, None, DEMANDING_UNIT)
    assert "the power switched off, locked and tagged" in said
    assert "discharged and metered: capacitor blower, blower" in said
