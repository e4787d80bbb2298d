"""The order of the safety steps: what must be true before each step's turn comes.

The order is that of 29 CFR 1910.333(b)(2), 29 CFR 1910.147(d) and (e) and NFPA 70E 120.5; where
they differ the stricter is taken. As with tests, each condition is one small guard that answers
with words when it is not met.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import WHOLE_UNIT, UnitAtWork, WorkState

StepGuard = Callable[[WorkState, Step, UnitAtWork], str]


def roof_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.roof == "go" else "the roof found safe to work on"


def edge_is_near(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.roof == "edge-near" else "an edge closer than 15 ft"


def people_told(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.occupants_told else "the occupants told"


def panel_on_test(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    watched = unit.fire_panel and state.fire_panel != "on-test"
    return "the fire panel on test" if watched else ""


def refrigerant_air_clear(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    unswept = unit.flammable and steps.REFRIGERANT_SWEEP not in state.clear
    return "the air swept for refrigerant" if unswept else ""


def meter_proved_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.meter == "proved" else "the meter proved on a known live source"


def stop_tried_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    running = state.power != "locked-out" and state.calls == "on"
    return "the unit stopped by its controls, or found not to stop" if running else ""


def stopped_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    running = state.power != "locked-out" and state.calls != "off"
    return "the unit stopped by its controls" if running else ""


def calls_are_off(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.calls == "off" else "every call to run taken away"


def jumpers_out_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "every temporary jumper out" if state.jumpers else ""


def power_on(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.power == "on" else "the power on"


def locked_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.power == "locked-out" else "the power switched off, locked and tagged"


def no_open_second_source(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    found = state.second_source == "found"
    return "the second source of power found and locked" if found else ""


def panels_open(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.panels == "off" else "the panel off"


def panels_not_on(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "the panel off" if state.panels == "on" else ""


def tested_dead_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "a test for dead" if state.dead == "not-shown" else ""


def bled_before_testing_again(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    charged = set(unit.capacitors + unit.drives) - state.discharged
    early = state.dead != "not-shown" and charged
    return f"discharged and metered: {', '.join(sorted(charged))}" if early else ""


def dead_proved_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.dead == "proved" else "dead proved at the point of work"


def charge_bled_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    charged = set(unit.capacitors + unit.drives) - state.discharged
    return f"discharged and metered: {', '.join(sorted(charged))}" if charged else ""


def leads_back_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "every lead back on" if state.leads_off else ""


def area_is_clear(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.area_clear else "tools and people clear"


def charge_back_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "the charge back in every circuit" if state.circuits_without_charge else ""


def gas_swept_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.gas_swept else "the gas swept and no leak found"


def cock_is_shut(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if state.gas == "shut" else "the gas cock shut"


def gas_air_clear(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "" if steps.GAS_SWEEP in state.clear else "the air swept for gas"


def taps_plugged_first(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    return "every tap of the gas train plugged" if state.taps_open else ""


def gauges_are_on(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    ready = state.circuit(step.place or WHOLE_UNIT) in ("gauges-on", "charge-unsure")
    return "" if ready else "gauges on"


def gauges_may_be_on(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    ready = state.circuit(step.place or WHOLE_UNIT) in ("gauges-on", "gauges-unsure")
    return "" if ready else "the charge in and gauges on"


def circuit_is_closed(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    ready = state.circuit(step.place or WHOLE_UNIT) in ("closed", "gauges-unsure")
    return "" if ready else "the circuit closed"


def charge_was_out(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    ready = state.circuit(step.place or WHOLE_UNIT) in ("under-nitrogen", "under-vacuum")
    return "" if ready else "the charge recovered"


def charge_is_out(state: WorkState, step: Step, unit: UnitAtWork) -> str:
    ready = state.circuit(step.place or WHOLE_UNIT) == "charge-recovered"
    return "" if ready else "the charge recovered and the circuit at 0 psig"


_AT_A_TAP: Final = (roof_first, stopped_first, panels_open, cock_is_shut, gas_air_clear)
_DISCHARGE: Final = (roof_first, locked_first, panels_open, meter_proved_first, tested_dead_first)

STEP_GUARDS: Mapping[str, tuple[StepGuard, ...]] = MappingProxyType(
    {
        steps.EDGE_PROTECTION: (edge_is_near,),
        steps.REFRIGERANT_SWEEP: (roof_first,),
        steps.GAS_SWEEP: (roof_first,),
        steps.METER_PROOF: (roof_first,),
        steps.STOP_BY_CONTROLS: (roof_first, people_told, panel_on_test, jumpers_out_first),
        steps.LOCKOUT: (
            roof_first,
            people_told,
            panel_on_test,
            stop_tried_first,
            jumpers_out_first,
        ),
        steps.SECOND_SOURCE: (roof_first, locked_first),
        steps.PANELS_OFF: (roof_first, refrigerant_air_clear, locked_first),
        steps.PANELS_OFF_ENERGISED: (
            roof_first,
            refrigerant_air_clear,
            power_on,
            stopped_first,
            jumpers_out_first,
        ),
        steps.DEAD_TEST: (
            roof_first,
            locked_first,
            no_open_second_source,
            panels_open,
            meter_proved_first,
            bled_before_testing_again,
        ),
        steps.BLEED_CAPACITOR: _DISCHARGE,
        steps.BLEED_DRIVE: _DISCHARGE,
        steps.GAS_SHUT: (roof_first,),
        steps.GAS_OPEN: (roof_first, stopped_first),
        steps.TAP_OPENED: _AT_A_TAP,
        steps.TAP_PLUGGED: _AT_A_TAP,
        steps.GAUGES_ON: (roof_first, refrigerant_air_clear, circuit_is_closed),
        steps.GAUGES_OFF: (roof_first, refrigerant_air_clear, gauges_may_be_on),
        steps.RECOVER: (roof_first, refrigerant_air_clear, locked_first, gauges_are_on),
        steps.CIRCUIT_TO_ZERO: (roof_first, locked_first, charge_was_out),
        steps.RECHARGE: (roof_first, refrigerant_air_clear, locked_first, charge_is_out),
        steps.LEADS_BACK: (roof_first, locked_first, dead_proved_first, charge_bled_first),
        steps.JUMPER_OUT: (roof_first, panels_not_on),
        steps.PANELS_ON: (roof_first, stopped_first, jumpers_out_first, taps_plugged_first),
        steps.TOOLS_CLEAR: (roof_first,),
        steps.LOCK_OFF: (
            roof_first,
            locked_first,
            calls_are_off,
            leads_back_first,
            jumpers_out_first,
            charge_back_first,
            gas_swept_first,
            area_is_clear,
        ),
        steps.RESTART: (
            roof_first,
            power_on,
            calls_are_off,
            leads_back_first,
            charge_back_first,
            gas_swept_first,
            area_is_clear,
        ),
    }
)
"""Step id -> its guards. A step that is not listed may be done at any time."""


def refusals(state: WorkState, step: Step, unit: UnitAtWork) -> tuple[str, ...]:
    """What must come before this step, in words; empty when its turn has come."""
    guards = STEP_GUARDS.get(step.id, ())
    return tuple(words for guard in guards if (words := guard(state, step, unit)))
