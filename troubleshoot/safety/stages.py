"""The stages of the way to a test and back: each knows one thing that may still be missing.

A stage answers with the step that comes next for its one thing, or with nothing. Their order is
the order of work: out to the test, then back the other way.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.steps import Step
from troubleshoot.safety.way import Way


def _roof(way: Way) -> Step | None:
    if not way.needs.roof or way.state.roof == "go":
        return None
    return Step(steps.EDGE_PROTECTION if way.state.roof == "edge-near" else steps.ROOF)


def _telling(way: Way) -> Step | None:
    state, needs = way.state, way.needs
    if needs.occupants and not state.occupants_told:
        return Step(steps.TELL_OCCUPANTS)
    if needs.fire_panel and state.fire_panel != "on-test":
        return Step(steps.TELL_FIRE_PANEL)
    if needs.second_person and not state.second_person:
        return Step(steps.SECOND_PERSON)
    return None


def _air(way: Way) -> Step | None:
    """Sweeps come before tools; a gas train is swept again once its cock is shut."""
    if way.needs.gas == "shut" and way.state.gas == "on":
        return Step(steps.GAS_SHUT)
    for sweep in way.needs.sweeps:
        if sweep not in way.state.clear:
            return Step(sweep)
    return None


def _meter(way: Way) -> Step | None:
    wanted = way.needs.meter or way.dead_wanted
    return Step(steps.METER_PROOF) if wanted and way.state.meter != "proved" else None


def _gauges(way: Way) -> Step | None:
    for place, _ in way.needs.circuits:
        if way.state.circuit(place) in ("closed", "gauges-unsure"):
            return _after_refrigerant_sweep(way, Step(steps.GAUGES_ON, place))
    return None


def _lock_out(way: Way) -> Step | None:
    if not way.lock_wanted:
        return None
    if way.state.power != "locked-out":
        stop = _jumper_out(way) if way.state.calls == "stuck-on" else _stop(way)
        return stop or _tell_before_stop(way) or Step(steps.LOCKOUT)
    if way.dead_wanted and way.state.second_source == "found":
        return Step(steps.SECOND_SOURCE)
    return None


def _prove_dead(way: Way) -> Step | None:
    state, unit = way.state, way.unit
    if not way.dead_wanted:
        return None
    if state.panels != "off":
        return _after_refrigerant_sweep(way, Step(steps.PANELS_OFF))
    if state.dead == "not-shown":
        return Step(steps.DEAD_TEST)
    if state.dead in ("tested", "tested-again"):
        return Step(steps.METER_PROOF, again=True)
    for step, places in (
        (steps.BLEED_CAPACITOR, unit.capacitors),
        (steps.BLEED_DRIVE, unit.drives),
    ):
        for place in places:
            if place not in state.discharged:
                return Step(step, place)
    return Step(steps.DEAD_TEST, again=True) if state.dead == "shown" else None


def _recover(way: Way) -> Step | None:
    for place, need in way.needs.circuits:
        if need == "charge-recovered" and way.state.circuit(place) != need:
            return _empty(way, place)
    return None


def _break_vacuum(way: Way) -> Step | None:
    return _empty(way, way.in_vacuum[0]) if way.in_vacuum else None


def _empty(way: Way, place: str) -> Step:
    """Towards a circuit without charge at zero: a charge that may be in it is recovered first."""
    if way.state.circuit(place) in ("under-nitrogen", "under-vacuum"):
        return Step(steps.CIRCUIT_TO_ZERO, place)
    return _after_refrigerant_sweep(way, Step(steps.RECOVER, place))


def _leads_back(way: Way) -> Step | None:
    wanted = way.needs.energised and way.state.leads_off
    return Step(steps.LEADS_BACK) if wanted else None


def _charge_back(way: Way) -> Step | None:
    if not way.to_be_charged:
        return None
    place = way.to_be_charged[0]
    if way.state.circuit(place) == "charge-recovered":
        return _after_refrigerant_sweep(way, Step(steps.RECHARGE, place))
    return _empty(way, place)


def _gauges_off(way: Way) -> Step | None:
    if way.leaving:
        for place, condition in way.state.circuits:
            if condition in ("gauges-on", "gauges-unsure"):
                return _after_refrigerant_sweep(way, Step(steps.GAUGES_OFF, place))
    return None


def _plug_taps(way: Way) -> Step | None:
    if not way.needs.energised or not way.to_be_plugged:
        return None
    return _ready_for_taps(way) or Step(steps.TAP_PLUGGED, way.to_be_plugged[0])


def _open_taps(way: Way) -> Step | None:
    if not way.to_be_opened:
        return None
    return _ready_for_taps(way) or Step(steps.TAP_OPENED, way.to_be_opened[0])


def _ready_for_taps(way: Way) -> Step | None:
    """Call off, panel open, cock shut, air swept: only then is a plug of the gas train turned."""
    state = way.state
    stop = None if state.power == "locked-out" else _stop(way)
    if stop is not None:
        return stop
    if state.panels != "off":
        return _open_panels(way)
    if state.gas != "shut":
        return Step(steps.GAS_SHUT)
    return None if steps.GAS_SWEEP in state.clear else Step(steps.GAS_SWEEP)


def _gas_back(way: Way) -> Step | None:
    if not way.needs.energised:
        return None
    if not way.state.gas_swept:
        return Step(steps.GAS_SWEEP)
    if way.needs.gas == "on" and way.state.gas == "shut" and not way.to_be_opened:
        return _stop(way) or Step(steps.GAS_OPEN)
    return None


def _panels(way: Way) -> Step | None:
    state, needs = way.state, way.needs
    if not needs.energised or state.panels == ("on" if needs.energy == "running" else "off"):
        return None
    if state.jumpers or state.power != "locked-out":
        stop = _stop(way)
        if stop is not None:
            return stop
    if needs.energy == "running":
        return Step(steps.PANELS_ON)
    return _open_panels(way)


def _open_panels(way: Way) -> Step:
    if way.state.power == "locked-out":
        return _after_refrigerant_sweep(way, Step(steps.PANELS_OFF))
    unswept = way.unit.burns_gas and steps.GAS_SWEEP not in way.state.clear
    open_live = Step(steps.GAS_SWEEP if unswept else steps.PANELS_OFF_ENERGISED)
    return _after_refrigerant_sweep(way, open_live)


def _energise(way: Way) -> Step | None:
    state, needs = way.state, way.needs
    if not needs.energised:
        return None
    if state.power == "locked-out":
        if state.calls != "off" or state.jumpers:
            return _stop(way)
        return Step(steps.LOCK_OFF) if state.area_clear else Step(steps.TOOLS_CLEAR)
    if needs.energy == "energised-open":
        return _stop(way)
    if state.calls == "off":
        return Step(steps.RESTART) if state.area_clear else Step(steps.TOOLS_CLEAR)
    return None


def _fire_panel_back(way: Way) -> Step | None:
    on_test = way.leaving and way.state.fire_panel != "in-service"
    return Step(steps.FIRE_PANEL_BACK) if on_test else None


def _stop(way: Way) -> Step | None:
    """Stop the unit so that nothing can start: jumpers out, people told, calls taken away."""
    if way.state.calls == "off":
        return _jumper_out(way)
    return _jumper_out(way) or _tell_before_stop(way) or Step(steps.STOP_BY_CONTROLS)


def _jumper_out(way: Way) -> Step | None:
    jumpers = way.state.jumpers
    return Step(steps.JUMPER_OUT, min(jumpers)) if jumpers else None


def _tell_before_stop(way: Way) -> Step | None:
    if not way.state.occupants_told:
        return Step(steps.TELL_OCCUPANTS)
    if way.unit.fire_panel and way.state.fire_panel != "on-test":
        return Step(steps.TELL_FIRE_PANEL)
    return None


def _after_refrigerant_sweep(way: Way, step: Step) -> Step:
    unswept = way.unit.flammable and steps.REFRIGERANT_SWEEP not in way.state.clear
    return Step(steps.REFRIGERANT_SWEEP) if unswept else step


STAGES: Final[tuple[Callable[[Way], Step | None], ...]] = (
    _roof,
    _telling,
    _air,
    _meter,
    _gauges,
    _lock_out,
    _prove_dead,
    _recover,
    _break_vacuum,
    _leads_back,
    _charge_back,
    _gauges_off,
    _plug_taps,
    _gas_back,
    _panels,
    _open_taps,
    _energise,
    _fire_panel_back,
)
