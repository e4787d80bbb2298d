"""What each safety step does to the work state, by the outcome it had.

The outcome that confirms a step moves the state on; every other outcome leaves it where it is or
takes back what can no longer be relied on.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any, Final

from troubleshoot.safety import steps
from troubleshoot.safety.steps import CONFIRMED, Step
from troubleshoot.safety.work_state import WHOLE_UNIT, Calls, Circuit, WorkState

Outcomes = tuple[str, ...]
Effect = Callable[[WorkState, Step, Outcomes], WorkState]

_EDGE_NEAR: Final = frozenset({"edge-6-to-15-ft", "edge-under-6-ft"})
_AIR_CLEAR: Final[Mapping[str, frozenset[str]]] = MappingProxyType(
    {
        steps.REFRIGERANT_SWEEP: frozenset({"none"}),
        steps.GAS_SWEEP: frozenset({"none"}),
        steps.ROOM_AIR: frozenset({"normal"}),
    }
)


def power_back(state: WorkState, calls: Calls) -> WorkState:
    """The power counts as on, so nothing is dead or discharged any more."""
    return replace(state, power="on", calls=calls, dead="not-shown", discharged=frozenset())


def _roof(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    """Within 15 ft of an edge nobody works before it is said what protects them there."""
    found = set(outcomes) - {CONFIRMED[step.id]}
    if found & _EDGE_NEAR and found <= _EDGE_NEAR:
        return replace(state, roof="edge-near")
    return replace(state, roof="go" if outcomes and not found else "no-go")


def _sweep(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    good = bool(outcomes) and set(outcomes) <= _AIR_CLEAR[step.id]
    clear = state.clear | {step.id} if good else state.clear - {step.id}
    gas_swept = good if step.id == steps.GAS_SWEEP else state.gas_swept
    return replace(state, clear=clear, gas_swept=gas_swept)


def _meter_proof(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    if outcomes == (CONFIRMED[step.id],):
        dead = "proved" if state.dead == "tested-again" else state.dead
        return replace(state, meter="proved", dead=dead)
    return replace(state, meter="failed", dead="not-shown", discharged=frozenset())


def _lockout(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    changed = power_back(state, state.calls)
    if "second-source" in outcomes:
        changed = replace(changed, second_source="found")
    if "locked" in outcomes and "cannot-lock" not in outcomes:
        changed = replace(changed, power="locked-out")
    return changed


def _dead_test(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    if outcomes == (CONFIRMED[step.id],):
        return replace(state, dead="tested" if state.dead == "not-shown" else "tested-again")
    second = "found" if "live" in outcomes else state.second_source
    return replace(state, dead="not-shown", discharged=frozenset(), second_source=second)


def _discharge(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    """The last test for dead comes after the last discharge, so an earlier one no longer counts."""
    place = frozenset({step.place or WHOLE_UNIT})
    confirmed = outcomes == (CONFIRMED[step.id],)
    discharged = state.discharged | place if confirmed else state.discharged - place
    return replace(state, discharged=discharged, dead="tested")


def _stop_by_controls(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    return replace(state, calls="off" if outcomes == (CONFIRMED[step.id],) else "stuck-on")


def _gas_shut(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    confirmed = outcomes == (CONFIRMED[step.id],)
    gas = "shut" if confirmed else state.gas
    return replace(state, gas=gas, clear=state.clear - {steps.GAS_SWEEP})


def _gas_open(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    return replace(state, gas="on", gas_swept=False, clear=state.clear - {steps.GAS_SWEEP})


def _tap_opened(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    """Whatever came of it, the plug may be out now."""
    tap = frozenset({step.place or WHOLE_UNIT})
    on = outcomes == (CONFIRMED[step.id],)
    hoses = state.hoses_on | tap if on else state.hoses_on - tap
    return replace(state, taps_open=state.taps_open | tap, hoses_on=hoses)


def _tap_plugged(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    tap = frozenset({step.place or WHOLE_UNIT})
    plugged = outcomes == (CONFIRMED[step.id],)
    still_open = state.taps_open - tap if plugged else state.taps_open | tap
    return replace(state, taps_open=still_open, hoses_on=state.hoses_on - tap)


def _lock_off(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    if outcomes == ("still-on",):
        return state
    return power_back(state, "off" if outcomes == (CONFIRMED[step.id],) else "stuck-on")


def _jumper_out(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    if outcomes != (CONFIRMED[step.id],):
        return state
    return replace(state, jumpers=state.jumpers - {step.place or WHOLE_UNIT})


def _restart(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
    return replace(state, calls="on")


def _becomes(fact: str, confirmed: object, otherwise: object = None) -> Effect:
    """The effect of a step that settles one fact; without `otherwise` it stays unless confirmed."""

    def effect(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
        value = confirmed if outcomes == (CONFIRMED[step.id],) else otherwise
        changes: dict[str, Any] = {} if value is None else {fact: value}
        return replace(state, **changes)

    return effect


def _circuit_becomes(condition: Circuit) -> Effect:
    def effect(state: WorkState, step: Step, outcomes: Outcomes) -> WorkState:
        if outcomes != (CONFIRMED[step.id],):
            return state
        return state.with_circuit(step.place or WHOLE_UNIT, condition)

    return effect


EFFECTS: Final[Mapping[str, Effect]] = MappingProxyType(
    {
        steps.ROOF: _roof,
        steps.EDGE_PROTECTION: _becomes("roof", "go", "edge-near"),
        steps.TELL_OCCUPANTS: _becomes("occupants_told", True, False),
        steps.TELL_FIRE_PANEL: _becomes("fire_panel", "on-test", "unsure"),
        steps.FIRE_PANEL_BACK: _becomes("fire_panel", "in-service"),
        steps.SECOND_PERSON: _becomes("second_person", True, False),
        steps.REFRIGERANT_SWEEP: _sweep,
        steps.GAS_SWEEP: _sweep,
        steps.ROOM_AIR: _sweep,
        steps.METER_PROOF: _meter_proof,
        steps.STOP_BY_CONTROLS: _stop_by_controls,
        steps.LOCKOUT: _lockout,
        steps.SECOND_SOURCE: _becomes("second_source", "locked", "found"),
        steps.PANELS_OFF: _becomes("panels", "off"),
        steps.PANELS_OFF_ENERGISED: _becomes("panels", "off"),
        steps.DEAD_TEST: _dead_test,
        steps.BLEED_CAPACITOR: _discharge,
        steps.BLEED_DRIVE: _discharge,
        steps.GAS_SHUT: _gas_shut,
        steps.GAS_OPEN: _gas_open,
        steps.TAP_OPENED: _tap_opened,
        steps.TAP_PLUGGED: _tap_plugged,
        steps.GAUGES_ON: _circuit_becomes("gauges-on"),
        steps.GAUGES_OFF: _circuit_becomes("closed"),
        steps.RECOVER: _circuit_becomes("charge-recovered"),
        steps.CIRCUIT_TO_ZERO: _circuit_becomes("charge-recovered"),
        steps.RECHARGE: _circuit_becomes("gauges-on"),
        steps.LEADS_BACK: _becomes("leads_off", frozenset()),
        steps.JUMPER_OUT: _jumper_out,
        steps.PANELS_ON: _becomes("panels", "on"),
        steps.TOOLS_CLEAR: _becomes("area_clear", True, False),
        steps.LOCK_OFF: _lock_off,
        steps.RESTART: _restart,
    }
)
