"""How the work state changes: by a step, by a test, by an event that voids some of it."""

from __future__ import annotations

from dataclasses import replace
from typing import Final, Literal

from troubleshoot.knowledge.model import Test
from troubleshoot.safety import steps
from troubleshoot.safety.needs import VACUUM, needs_of
from troubleshoot.safety.step_effects import EFFECTS, Outcomes, power_back
from troubleshoot.safety.step_guards import refusals
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import WHOLE_UNIT, Circuit, UnitAtWork, WorkState, cautious

Event = Literal["lock-off", "motor-ran", "resumed", "reopened", "hour-passed"]
"""What voids states: the lock came off, a motor ran, the visit was resumed, or reopened after
others had worked on the unit, an hour went by."""

RESUME_MINUTES: Final = 30.0
"""Away this long, a person elsewhere may have changed something (common practice, no source)."""

JUMPER_HAZARD: Final = "temporary-jumper"
NITROGEN_HAZARD: Final = "nitrogen-pressure"


def after_step(state: WorkState, step: Step, outcomes: Outcomes, unit: UnitAtWork) -> WorkState:
    """The state after a step was done with these outcomes (one, or several where it allows).

    A step whose turn has not come gains nothing: what it took away is gone, what it would have
    confirmed is not.
    """
    changed = EFFECTS[step.id](state, step, outcomes)
    if step.id not in (steps.TOOLS_CLEAR, steps.LOCK_OFF):
        changed = replace(changed, area_clear=False)
    return cautious(state, changed) if refusals(state, step, unit) else changed


def failed(before: WorkState, now: WorkState, step: Step, unit: UnitAtWork) -> WorkState:
    """The state once a step, proof or sweep turns out to be none: declared invalid, or skipped.

    `before`: the state it started from. Whatever it had confirmed is gone, and so is what it would
    have taken away.
    """
    return cautious(cautious(before, now), EFFECTS[step.id](now, step, ()))


def after_test(
    state: WorkState, test: Test, place: str | None, outcomes: Outcomes, unit: UnitAtWork
) -> WorkState:
    """The state after a test: leads it took off, a jumper it put in, a circuit it left empty."""
    if test.id in EFFECTS:
        return after_step(state, Step(test.id, place), outcomes, unit)
    changed = replace(state, area_clear=False)
    if state.power == "locked-out" and test.kind == "measurement":
        changed = replace(changed, leads_off=changed.leads_off | {place or WHOLE_UNIT})
    if JUMPER_HAZARD in test.hazards:
        calls = "on" if state.calls == "off" else state.calls
        jumpers = changed.jumpers | {test.id}
        changed = replace(changed, jumpers=jumpers, calls=calls, panels="off")
    for circuit, need in needs_of(test, place, unit).circuits:
        if need == "charge-recovered" and NITROGEN_HAZARD in test.hazards:
            changed = changed.with_circuit(circuit, "under-nitrogen")
        elif need == "charge-recovered" and VACUUM in test.hazards:
            changed = changed.with_circuit(circuit, "under-vacuum")
    return changed


def expire(state: WorkState, event: Event) -> WorkState:
    """The state after an event that voids some of it."""
    if event == "lock-off":
        return power_back(state, "on")
    if event == "motor-ran":
        return replace(state, dead="not-shown", discharged=frozenset())
    if event == "hour-passed":
        return replace(state, roof="not-checked")
    if event == "reopened":
        return replace(_resumed(state), panels="unsure", gas_swept=False)
    return _resumed(state)


def resume_voids(minutes_away: float | None, same_day: bool) -> bool:
    """Whether an absence voids what a person elsewhere could have changed meanwhile.

    One that is not known, or that a clock set back makes negative, counts as the longest.
    """
    known = minutes_away is not None and 0 <= minutes_away < RESUME_MINUTES
    return not known or not same_day


def _resumed(state: WorkState) -> WorkState:
    circuits: tuple[tuple[str, Circuit], ...] = tuple(
        (place, "gauges-unsure" if now == "gauges-on" else now) for place, now in state.circuits
    )
    return replace(
        power_back(state, "on"),
        power="on" if state.power == "on" else "unsure",
        circuits=circuits,
        meter="not-proved",
        second_source="none-known" if state.second_source == "none-known" else "found",
        gas="on",
        hoses_on=frozenset(),
        gas_swept=state.gas_swept and state.gas == "on",
        clear=frozenset(),
        occupants_told=False,
        fire_panel="in-service" if state.fire_panel == "in-service" else "unsure",
        roof="not-checked",
        second_person=False,
        area_clear=False,
    )
