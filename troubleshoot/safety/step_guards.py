"""What must stand before a step's turn comes, one guard each.

The order is that of 29 CFR 1910.333(b)(2), 29 CFR 1910.147(d) and (e) and NFPA 70E 120.5; where
they differ the stricter is taken. Guards know nothing of each other, so that each can be tried
alone.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.safety import steps
from troubleshoot.safety.work_state import IN_VACUUM, OPENED, Circuit, UnitAtWork, WorkState


@frozen
class StepGuard:
    """One thing that must stand, in words, and whether it does: for a step at a place."""

    words: str
    stands: Callable[[WorkState, str, UnitAtWork], bool]


def _charge_is_bled(state: WorkState, unit: UnitAtWork) -> bool:
    return state.discharged >= {*unit.capacitors, *unit.drives}


def _is_away(state: WorkState) -> bool:
    return state.panels == "on" or state.power == "locked-out"


def _circuit(words: str, *ready: Circuit) -> StepGuard:
    return StepGuard(words, lambda state, place, unit: state.circuit(place) in ready)


ROOF_SAFE: Final = StepGuard(
    "the roof found safe to work on",
    lambda state, place, unit: state.roof == "go",
)
EDGE_NEAR: Final = StepGuard(
    "an edge closer than 15 ft",
    lambda state, place, unit: state.roof == "edge-near",
)
PEOPLE_TOLD: Final = StepGuard(
    "the occupants told",
    lambda state, place, unit: state.occupants_told,
)
FIRE_PANEL_ON_TEST: Final = StepGuard(
    "the fire panel on test",
    lambda state, place, unit: not unit.fire_panel or state.fire_panel == "on-test",
)
PANEL_ON_TEST: Final = StepGuard(
    "the fire panel on test, wherever it is watched from",
    lambda state, place, unit: state.fire_panel == "on-test",
)
FIRE_PANEL_IN_SERVICE: Final = StepGuard(
    "the fire panel back in service",
    lambda state, place, unit: state.fire_panel == "in-service",
)
HELP_THERE: Final = StepGuard(
    "a second person there",
    lambda state, place, unit: state.second_person,
)
ARC_CLOTHING_ON: Final = StepGuard(
    "arc-rated clothing, face shield and rated gloves on",
    lambda state, place, unit: state.arc_clothing,
)
ARC_CLOTHING_IF_480: Final = StepGuard(
    "arc-rated clothing, face shield and rated gloves on, at 480 V or where nobody knows",
    lambda state, place, unit: not unit.volts_480 or state.arc_clothing,
)
HELP_THERE_IF_OPEN: Final = StepGuard(
    "the panel on, or a second person there, at 480 V or where nobody knows",
    lambda state, place, unit: not unit.volts_480 or state.panels == "on" or state.second_person,
)
ARC_CLOTHING_IF_OPEN: Final = StepGuard(
    "the panel on, or arc-rated clothing on, at 480 V or where nobody knows",
    lambda state, place, unit: not unit.volts_480 or state.panels == "on" or state.arc_clothing,
)
HELP_THERE_IF_LIVE: Final = StepGuard(
    "the power locked out, or a second person there, at 480 V or where nobody knows",
    lambda state, place, unit: not unit.volts_480 or _is_away(state) or state.second_person,
)
ARC_CLOTHING_IF_LIVE: Final = StepGuard(
    "the power locked out, or arc-rated clothing on, at 480 V or where nobody knows",
    lambda state, place, unit: not unit.volts_480 or _is_away(state) or state.arc_clothing,
)
AWAY_FROM_LIVE: Final = StepGuard(
    "no live part open: the panel on, or the power locked out, unless a jumper has to come out",
    lambda state, place, unit: _is_away(state) or bool(state.jumpers),
)
LOCKED_OUT_BEFORE_CLOSING: Final = StepGuard(
    "the power locked out before a panel is closed",
    lambda state, place, unit: _is_away(state),
)
REFRIGERANT_CLEAR: Final = StepGuard(
    "no refrigerant in the air",
    lambda state, place, unit: steps.REFRIGERANT_SWEEP in state.clear,
)
ROOM_AIR_CLEAR: Final = StepGuard(
    "the air of the rooms below found good",
    lambda state, place, unit: steps.ROOM_AIR in state.clear,
)
REFRIGERANT_SWEPT: Final = StepGuard(
    "the air swept for refrigerant",
    lambda state, place, unit: not unit.flammable or steps.REFRIGERANT_SWEEP in state.clear,
)
METER_PROVED: Final = StepGuard(
    "the meter proved on a known live source",
    lambda state, place, unit: state.meter == "proved",
)
METER_JUST_PROVED: Final = StepGuard(
    "the meter proved on a known live source, and nothing but steps since",
    lambda state, place, unit: state.meter == "proved" and state.only_steps_since_proof,
)
STOP_TRIED: Final = StepGuard(
    "the unit stopped by its controls, or found not to stop",
    lambda state, place, unit: state.power == "locked-out" or state.calls != "on",
)
STOPPED: Final = StepGuard(
    "the unit stopped by its controls",
    lambda state, place, unit: state.power == "locked-out" or state.calls == "off",
)
CALLS_OFF: Final = StepGuard(
    "every call to run taken away",
    lambda state, place, unit: state.calls == "off",
)
CALLED_TO_RUN: Final = StepGuard(
    "the unit called to run",
    lambda state, place, unit: state.calls != "off",
)
JUMPERS_OUT: Final = StepGuard(
    "every temporary jumper out",
    lambda state, place, unit: not state.jumpers,
)
POWER_ON: Final = StepGuard(
    "the power on",
    lambda state, place, unit: state.power == "on",
)
LOCKED_OUT: Final = StepGuard(
    "the power switched off, locked and tagged",
    lambda state, place, unit: state.power == "locked-out",
)
LOCK_IS_OFF: Final = StepGuard(
    "no lock of ours on",
    lambda state, place, unit: state.power != "locked-out",
)
NO_SECOND_SOURCE: Final = StepGuard(
    "the second source of power found and locked",
    lambda state, place, unit: state.second_source != "found",
)
PANELS_OFF: Final = StepGuard(
    "the panel off",
    lambda state, place, unit: state.panels == "off",
)
PANELS_NOT_ON: Final = StepGuard(
    "the panel off, or not known to be on",
    lambda state, place, unit: state.panels != "on",
)
PANELS_CLOSED: Final = StepGuard(
    "the panels on",
    lambda state, place, unit: state.panels == "on",
)
TESTED_DEAD: Final = StepGuard(
    "a test for dead",
    lambda state, place, unit: state.dead != "not-shown",
)
PROVED_SINCE_TESTED: Final = StepGuard(
    "the meter proved since the last test for dead",
    lambda state, place, unit: state.dead not in ("tested", "tested-again"),
)
SHOWN_DEAD: Final = StepGuard(
    "a test for dead, and the meter proved again right after it",
    lambda state, place, unit: state.dead not in ("not-shown", "tested"),
)
BLED_BEFORE_TESTING_AGAIN: Final = StepGuard(
    "every capacitor and drive discharged and metered, the second time",
    lambda state, place, unit: (
        state.dead in ("not-shown", "tested") or _charge_is_bled(state, unit)
    ),
)
TESTED_DEAD_AGAIN: Final = StepGuard(
    "a test for dead after the last discharge",
    lambda state, place, unit: state.dead in ("tested-again", "proved"),
)
DEAD_PROVED: Final = StepGuard(
    "dead proved at the point of work",
    lambda state, place, unit: state.dead == "proved",
)
CLIPS_DEAD: Final = StepGuard(
    "the fuse clips tested for dead, and no live lug bare beside them",
    lambda state, place, unit: state.clips_dead,
)
DOORS_SHUT: Final = StepGuard(
    "every door and panel that was opened for a look shut",
    lambda state, place, unit: not state.doors_open,
)
CHARGE_BLED: Final = StepGuard(
    "every capacitor and drive discharged and metered",
    lambda state, place, unit: _charge_is_bled(state, unit),
)
LEADS_BACK: Final = StepGuard(
    "every lead back on, but those hooked up for a reading",
    lambda state, place, unit: state.leads_off <= state.hooked_up,
)
NOTHING_HOOKED_UP: Final = StepGuard(
    "every lead back on, and nothing hooked up",
    lambda state, place, unit: not state.leads_off,
)
HOOKED_UP: Final = StepGuard(
    "what the reading wants hooked up dead",
    lambda state, place, unit: place in state.hooked_up,
)
AREA_CLEAR: Final = StepGuard(
    "tools and people clear",
    lambda state, place, unit: state.area_clear,
)
CHARGE_BACK: Final = StepGuard(
    "the charge back in every circuit",
    lambda state, place, unit: not state.circuits_without_charge,
)
GAS_SWEPT: Final = StepGuard(
    "the gas swept and no leak found",
    lambda state, place, unit: state.gas_swept,
)
COCK_SHUT: Final = StepGuard(
    "the gas cock shut",
    lambda state, place, unit: state.gas == "shut",
)
UNBURNT_GONE: Final = StepGuard(
    "the unburnt gas of a light that failed waited out, the cock shut",
    lambda state, place, unit: not (unit.burns_gas and state.unburnt),
)
COCK_KNOWN: Final = StepGuard(
    "the gas cock known to be open, or shut",
    lambda state, place, unit: state.gas != "unsure",
)
COCK_OPEN: Final = StepGuard(
    "the gas on",
    lambda state, place, unit: state.gas == "on",
)
GAS_AIR_CLEAR: Final = StepGuard(
    "the air swept for gas",
    lambda state, place, unit: steps.GAS_SWEEP in state.clear,
)
GAS_SWEPT_BEFORE_OPENING: Final = StepGuard(
    "the air swept for gas, where the unit burns it",
    lambda state, place, unit: not unit.burns_gas or steps.GAS_SWEEP in state.clear,
)
GAS_SWEPT_BEFORE_A_CALL: Final = StepGuard(
    "the air swept for gas, unless behind a panel that is on it is called to cool or its cock shut",
    lambda state, place, unit: (
        not unit.burns_gas
        or steps.GAS_SWEEP in state.clear
        or (state.panels == "on" and (unit.called_to_cool or state.gas == "shut"))
    ),
)
TAPS_PLUGGED: Final = StepGuard(
    "every tap of the gas train plugged",
    lambda state, place, unit: not state.taps_open,
)
PLUG_IN: Final = StepGuard(
    "the tap plugged",
    lambda state, place, unit: place not in state.taps_open,
)
PLUG_TESTED: Final = StepGuard(
    "the plug of the tap behind the valve tested under gas",
    lambda state, place, unit: place not in state.plugs_untested,
)
HOSE_ON: Final = StepGuard(
    "the manometer on the tap",
    lambda state, place, unit: place in state.hoses_on,
)
GAUGED: Final = StepGuard(
    "gauges on, or the charge out",
    lambda state, place, unit: state.circuit(place) not in ("closed", "gauges-unsure"),
)
GAUGES_ARE_OFF: Final = StepGuard(
    "no gauges on",
    lambda state, place, unit: state.circuit(place) not in ("gauges-on", "gauges-unsure"),
)
PORTS_LOCKED_OUT: Final = StepGuard(
    "the service ports outside, or the power locked out",
    lambda state, place, unit: unit.ports_outside or state.power == "locked-out",
)
PORTS_OPENED: Final = StepGuard(
    "the service ports outside, or the panel off",
    lambda state, place, unit: unit.ports_outside or state.panels == "off",
)
PORTS_DEAD: Final = StepGuard(
    "the service ports outside, or dead proved at the point of work",
    lambda state, place, unit: unit.ports_outside or state.dead == "proved",
)
PORTS_BLED: Final = StepGuard(
    "the service ports outside, or every capacitor and drive discharged and metered",
    lambda state, place, unit: unit.ports_outside or _charge_is_bled(state, unit),
)
CHARGE_IN: Final = _circuit("the charge in", "closed", "gauges-unsure", "gauges-on")
GAUGES_ON: Final = _circuit("gauges on", "gauges-on", "charge-unsure")
GAUGES_MAY_BE_ON: Final = _circuit("the charge in and gauges on", "gauges-on", "gauges-unsure")
CIRCUIT_CLOSED: Final = _circuit("the circuit closed", "closed", "gauges-unsure")
CHARGE_WAS_OUT: Final = _circuit("the charge recovered", "under-nitrogen", *IN_VACUUM, *OPENED)
OPENED_KNOWN: Final = StepGuard(
    "of a repair, said whether the circuit was opened for it",
    lambda state, place, unit: state.circuit(place) != "opened-unsure",
)
NOT_SAID_WHETHER_OPENED: Final = _circuit(
    "a repair for which the circuit may have been opened", "opened-unsure"
)
OPENED_HOLDS: Final = StepGuard(
    "what a repair opened held on nitrogen",
    lambda state, place, unit: state.circuit(place) not in OPENED,
)
WAS_OPENED: Final = _circuit("a repair for which the circuit was opened", *OPENED)
CHARGE_IS_OUT: Final = _circuit(
    "the charge recovered and the circuit at 0 psig", "charge-recovered"
)
MAY_BE_EVACUATED: Final = _circuit(
    "the charge recovered, and no nitrogen in the circuit", "charge-recovered", "under-vacuum"
)
EVACUATED: Final = _circuit("the circuit evacuated, and its vacuum held", "evacuated")
