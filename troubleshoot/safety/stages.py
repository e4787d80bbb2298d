"""The stages of the way to a test and back: what may have to stand on it, in the order of work.

A stage says what must stand, and where on a way that is wanted. Which step brings it about, and
what comes before that step, is the steps' own declaration (`declared/`).
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.safety import step_guards as guards
from troubleshoot.safety.step_guards import StepGuard
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR
from troubleshoot.safety.way import Way
from troubleshoot.safety.work_state import MAY_BE_IN_VACUUM

Places = tuple[str | None, ...]


@frozen
class Stage:
    """What may have to stand, and where on a way that is wanted; None is the unit as a whole."""

    guard: StepGuard
    at: Callable[[Way], Places]


def _if(guard: StepGuard, wanted: Callable[[Way], bool]) -> Stage:
    return Stage(guard, lambda way: (None,) if wanted(way) else ())


def _sweep(guard: StepGuard, sweep: str) -> Stage:
    return _if(guard, lambda way: sweep in way.needs.sweeps)


def _gauged_from_outside(way: Way) -> Places:
    return way.to_gauge if way.unit.ports_outside else ()


def _repaired_circuits(way: Way) -> Places:
    """Circuits of which nobody has said whether a repair opened them, and that matter for it."""
    matters = way.needs.energised or way.needs.no_vacuum or way.needs.circuits
    circuits = way.state.circuits if matters else ()
    return tuple(place for place, now in circuits if now == "opened-unsure")


def _circuits_needed_empty(way: Way) -> Places:
    return tuple(place for place, need in way.needs.circuits if need == "charge-recovered")


def _in_vacuum(way: Way) -> Places:
    """Circuits whose vacuum the test does not bear."""
    maybe = MAY_BE_IN_VACUUM if way.needs.no_vacuum else ()
    return tuple(place for place, now in way.state.circuits if now in maybe)


def _to_be_charged(way: Way) -> Places:
    """Circuits whose charge must be in: all of them to run, one to read its pressure."""
    without = way.state.circuits_without_charge
    if way.needs.energised:
        return without
    return tuple(place for place in without if (place, "gauges-on") in way.needs.circuits)


def _to_be_plugged(way: Way) -> Places:
    """Taps that no manometer is wanted on before the unit may run."""
    open_taps = way.state.taps_open if way.needs.energised else frozenset()
    return tuple(sorted(open_taps - set(way.needs.taps)))


def _plugs_to_test(way: Way) -> Places:
    """Taps behind the valve whose plug the burner that is wanted puts under gas."""
    lit = way.runs and way.needs.gas == "on"
    return tuple(sorted(way.state.plugs_untested - set(way.needs.taps))) if lit else ()


STAGES: Final = (
    # Nothing is touched for it, and it may spare all that comes before the circuit is worked on.
    Stage(guards.OPENED_KNOWN, _repaired_circuits),
    _if(guards.ROOF_SAFE, lambda way: way.needs.roof),
    _if(guards.PEOPLE_TOLD, lambda way: way.needs.occupants),
    _if(guards.PANEL_ON_TEST, lambda way: way.needs.fire_panel),
    _if(guards.HELP_THERE, lambda way: way.needs.second_person and not way.hands_in),
    _if(guards.ARC_CLOTHING_ON, lambda way: way.needs.arc_clothing and not way.hands_in),
    # Nobody walks off from a cabinet that stands open live.
    _if(guards.JUMPERS_OUT, lambda way: way.needs.away),
    _if(guards.AWAY_FROM_LIVE, lambda way: way.needs.away),
    # Sweeps come before tools; a gas train is swept again once its cock is shut.
    # With the call still on a shut cock starves the burner, and its control tries to light again.
    _if(guards.STOP_TRIED, lambda way: way.stop_wanted),
    _if(guards.COCK_SHUT, lambda way: way.needs.gas == "shut"),
    _if(guards.UNBURNT_GONE, lambda way: way.purge_wanted),
    # Behind a cock that nobody knows to be open a clean sweep tells nothing.
    _if(guards.COCK_KNOWN, lambda way: way.gas_wanted),
    _sweep(guards.REFRIGERANT_CLEAR, REFRIGERANT_SWEEP),
    _sweep(guards.GAS_AIR_CLEAR, GAS_SWEEP),
    _sweep(guards.ROOM_AIR_CLEAR, ROOM_AIR),
    _if(guards.STOPPED, lambda way: way.needs.stopped),
    _if(guards.METER_PROVED, lambda way: way.needs.meter or way.dead_wanted),
    Stage(guards.GAUGED, _gauged_from_outside),
    _if(guards.LOCKED_OUT, lambda way: way.lock_wanted),
    _if(guards.NO_SECOND_SOURCE, lambda way: way.dead_wanted or way.needs.closed),
    _if(guards.PANELS_OFF, lambda way: way.dead_wanted),
    _if(guards.TESTED_DEAD, lambda way: way.dead_wanted),
    _if(guards.PROVED_SINCE_TESTED, lambda way: way.dead_wanted),
    _if(guards.CHARGE_BLED, lambda way: way.dead_wanted),
    _if(guards.TESTED_DEAD_AGAIN, lambda way: way.dead_wanted),
    Stage(guards.GAUGED, lambda way: way.to_gauge),
    _if(guards.CLIPS_DEAD, lambda way: way.needs.clips),
    Stage(guards.CHARGE_IS_OUT, _circuits_needed_empty),
    Stage(guards.CHARGE_IS_OUT, _in_vacuum),
    _if(guards.NOTHING_HOOKED_UP, lambda way: way.leads_wrong),
    Stage(guards.HOOKED_UP, lambda way: way.needs.hook_ups),
    Stage(guards.CHARGE_IN, _to_be_charged),
    Stage(guards.GAUGES_ARE_OFF, lambda way: way.to_ungauge),
    Stage(guards.PLUG_IN, _to_be_plugged),
    _if(guards.GAS_SWEPT, lambda way: way.needs.energised),
    _if(guards.JUMPERS_OUT, lambda way: way.gas_wanted),
    _if(guards.CALLS_OFF, lambda way: way.gas_wanted or way.needs.unlit),
    _if(guards.COCK_OPEN, lambda way: way.gas_wanted),
    _if(guards.JUMPERS_OUT, lambda way: way.panels_wrong),
    _if(guards.PANELS_CLOSED, lambda way: way.panels_wrong and way.needs.energy == "running"),
    _if(guards.PANELS_OFF, lambda way: way.panels_wrong and way.needs.energy != "running"),
    Stage(guards.HOSE_ON, lambda way: way.needs.taps),
    _if(guards.DOORS_SHUT, lambda way: way.needs.energised),  # not in the gloves for an arc
    _if(guards.HELP_THERE, lambda way: way.needs.second_person),
    _if(guards.ARC_CLOTHING_ON, lambda way: way.needs.arc_clothing),
    _if(guards.LOCK_IS_OFF, lambda way: way.needs.energised),
    _if(guards.JUMPERS_OUT, lambda way: way.needs.energy == "energised-open"),
    _if(guards.CALLS_OFF, lambda way: way.needs.energy == "energised-open"),
    _if(guards.CALLED_TO_RUN, lambda way: way.runs),
    Stage(guards.PLUG_TESTED, _plugs_to_test),
    _if(guards.FIRE_PANEL_IN_SERVICE, lambda way: way.leaving),
)
