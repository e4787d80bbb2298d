"""How the work state changes: by a step, by a test, by an event that voids some of it."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Fault, Hazard, Test
from troubleshoot.safety import steps
from troubleshoot.safety.before_repair import may_open_circuit
from troubleshoot.safety.declaration import Event, Outcomes
from troubleshoot.safety.declared import STEPS, sound_outcomes
from troubleshoot.safety.needs import VACUUM, burns, circuits_of, needs_of
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import EMPTY, WHOLE_UNIT, UnitAtWork, WorkState, cautious

RESUME_MINUTES: Final = 30.0
"""Away this long, a person elsewhere may have changed something (common practice, no source)."""

JUMPER_HAZARD: Final = "temporary-jumper"
NITROGEN_HAZARD: Final = "nitrogen-pressure"

LIGHTS_BADLY: Final = frozenset({"failed-lights", "delayed-light-off"})
"""The hazards that say of a light that it failed, or came late: unburnt gas has gathered."""


def refusals(state: WorkState, step: Step, unit: UnitAtWork) -> tuple[str, ...]:
    """What must come before this step, in words; empty when its turn has come."""
    where = step.place or WHOLE_UNIT
    guards = STEPS[step.id].after
    return tuple(guard.words for guard in guards if not guard.stands(state, where, unit))


def after_step(state: WorkState, step: Step, outcomes: Outcomes, unit: UnitAtWork) -> WorkState:
    """The state after a step was done with these outcomes (one, or several where it allows).

    A step whose turn has not come gains nothing: what it took away is gone, what it would have
    confirmed is not.
    """
    changed = _effect(state, step, outcomes, unit)
    if step.id not in (steps.TOOLS_CLEAR, steps.LOCK_OFF):
        changed = changed.with_facts(area_clear=False)
    return cautious(state, changed) if refusals(state, step, unit) else changed


def failed(before: WorkState, now: WorkState, step: Step, unit: UnitAtWork) -> WorkState:
    """The state once a step, proof or sweep turns out to be none: declared invalid, or skipped.

    `before`: the state it started from. Whatever it had confirmed is gone, and so is what it would
    have taken away.
    """
    return cautious(cautious(before, now), _effect(now, step, (), unit))


def _effect(state: WorkState, step: Step, outcomes: Outcomes, unit: UnitAtWork) -> WorkState:
    """What a step changes; nothing is left unburnt by a start to cool, or behind a shut cock."""
    changed = STEPS[step.id].effect(state, step.place, outcomes)
    for_heat = step.id != steps.RESTART or not unit.called_to_cool
    gas_came = for_heat and _gas_may_come(state, unit)
    return changed if gas_came else changed.with_facts(unburnt=state.unburnt and changed.unburnt)


def _gas_may_come(state: WorkState, unit: UnitAtWork) -> bool:
    return unit.burns_gas and state.gas != "shut"


def after_test(
    state: WorkState, test: Test, place: str | None, outcomes: Outcomes, unit: UnitAtWork
) -> WorkState:
    """The state after a test: leads off, a jumper in, gas unburnt, a circuit left empty.

    For work by hand arc-rated gloves come off and help may go: both are asked for to go live again.
    """
    if test.id in STEPS:
        return after_step(state, Step(test.id, place), outcomes, unit)
    changed = state.with_facts(area_clear=False, only_steps_since_proof=False)
    if test.work_state in ("locked-closed", "locked-out"):
        changed = changed.laid_off.with_facts(doors_open=True)
    if test.kind == "measurement" and "locked-out" in (state.power, test.work_state):
        # Read with the power on, as when it is told of a repair, it may have lifted leads as well.
        changed = changed.with_facts(leads_off=changed.leads_off | {place or WHOLE_UNIT})
    if JUMPER_HAZARD in test.hazards:
        calls = "on" if state.calls == "off" else state.calls
        jumpers = changed.jumpers | {test.id}
        changed = changed.with_facts(jumpers=jumpers, calls=calls, panels="off")
    if not {*test.leaves_unburnt}.isdisjoint(outcomes):
        changed = unlit(changed, test, unit)
    for circuit, need in needs_of(test, place, unit).circuits:
        if need == "charge-recovered" and NITROGEN_HAZARD in test.hazards:
            changed = changed.with_circuit(circuit, "under-nitrogen")
        elif need == "charge-recovered" and VACUUM in test.hazards:
            held = outcomes and {*outcomes} <= sound_outcomes(test)
            changed = changed.with_circuit(circuit, "evacuated" if held else "under-vacuum")
    return changed


def after_repair(state: WorkState, fault: Fault, unit: UnitAtWork) -> WorkState:
    """The state once a repair is said that was done dead: gloves are off, and help may have gone.

    Of what has leads any of them may be off, though the lock is no longer sure: it took that long.
    What the refrigerant circuit may have been opened for leaves it open and empty, as far as
    anybody knows, and its air to be swept again. Told of a unit that is closed and live by the
    record, it had a door open all the same. Tools may lie wherever hands were.
    """
    if may_open_circuit(fault):
        state = _left_open(state, unit)
    hands = fault.repair.hands
    if hands == "outside":
        return state
    state = state.with_facts(area_clear=False)
    if state.power == "on":
        return state if state.panels == "off" else state.with_facts(doors_open=True)
    off = frozenset({WHOLE_UNIT}) if hands == "at-leads" else frozenset()
    return state.laid_off.with_facts(leads_off=state.leads_off | off, doors_open=True)


def _left_open(state: WorkState, unit: UnitAtWork) -> WorkState:
    """No repair says on which circuit it was: each may be the one."""
    for circuit in {*circuits_of(None, unit), *dict(state.circuits)}:
        is_out = state.circuit(circuit) in EMPTY
        state = state.with_circuit(circuit, "opened" if is_out else "opened-unsure")
    return state.with_facts(clear=state.clear - {steps.REFRIGERANT_SWEEP})


def unlit(state: WorkState, test: Test, unit: UnitAtWork) -> WorkState:
    """The state after a test that may have ended without a sound flame; see `leaves_unburnt`."""
    for_heat = burns(test, test.work_state, unit) or not unit.called_to_cool
    gathers = for_heat and _gas_may_come(state, unit)
    return state.with_facts(unburnt=True) if gathers else state


def left_shut(state: WorkState, plugs: frozenset[str]) -> WorkState:
    """The state where an earlier visit left the cock shut, and these plugs untested.

    Others may have turned it since, so it counts neither as open nor as shut before it is seen.
    """
    gas = "unsure" if state.gas == "on" else state.gas
    swept = state.gas_swept and gas == state.gas
    return state.with_facts(gas=gas, gas_swept=swept, plugs_untested=state.plugs_untested | plugs)


def after_stop(state: WorkState, hazard: Hazard | None, unit: UnitAtWork) -> WorkState:
    """The state once a STOP was met: what its orders have people do may have been done.

    Of what gas or a burner does they are to shut the cock; nobody has said yet whether they did. Of
    a hazard that today's rules do not name (None) no orders are known.
    """
    if not unit.burns_gas or hazard is None:
        return state
    if hazard.id in LIGHTS_BADLY:
        state = state.with_facts(unburnt=True)
    told_to_shut = hazard.keeps_off == "heat" or hazard.all_clear == steps.GAS_SWEEP
    return state.with_facts(gas="unsure") if told_to_shut and state.gas == "on" else state


@lru_cache(maxsize=512)
def expire(state: WorkState, event: Event) -> WorkState:
    """The state after an event that voids some of it; a visit is reopened as it is resumed.

    Remembered, since every reading of a journal goes through its breaks again.
    """
    events: tuple[Event, ...] = ("resumed", event) if event == "reopened" else (event,)
    for each in events:
        for step in STEPS.values():
            if each in step.lost:
                state = step.lost[each](state, WHOLE_UNIT)
    return state


def resume_voids(minutes_away: float | None, same_day: bool) -> bool:
    """Whether an absence voids what a person elsewhere could have changed meanwhile.

    One that is not known, or that a clock set back makes negative, counts as the longest.
    """
    known = minutes_away is not None and 0 <= minutes_away < RESUME_MINUTES
    return not known or not same_day
