"""What a test needs to be true of the work state before it may be shown.

A rule file states a test's work state, its further needs, its hazards and its kind; what follows
from those is decided here, on the strict side, so that a need a file forgot to state still holds.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from functools import lru_cache
from types import MappingProxyType
from typing import Final, Literal, get_args

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.vocabulary import Need, WorkStateName
from troubleshoot.safety.at_ports import as_read_on
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOF, ROOM_AIR
from troubleshoot.safety.work_state import WHOLE_UNIT, UnitAtWork, WorkState

TAPS: Final[Mapping[str, str]] = MappingProxyType(
    {"manometer-at-inlet": "inlet tap", "manometer-at-outlet": "outlet tap"}
)
"""What a rule file calls a manometer on the gas train -> the tap that is opened for it."""

HOOK_UPS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "meter-in-rod-lead": "flame rod lead",
        "clamp-on-heater-lead": "heater lead",
        "motor-leads-moved": "motor leads",
    }
)
"""What a rule file calls what is hooked up dead and read live -> where hands go in for it."""

CircuitNeed = Literal["gauges-on", "charge-recovered"]

ON_THE_ROOF: Final = frozenset({"roof-edge-under-6-ft", "roof-edge-6-to-15-ft"})
COMBUSTION_AIR: Final = frozenset({"carbon-monoxide-in-room", "carbon-monoxide-evacuate"})
HEAT_IS_ON: Final = frozenset({"heating-call", "heating-supply-temperature"})
"""Tests of no burner area for which the heat runs, gas or electric."""

MADE_SAFE: Final = "made-safe"
"""The look at what was dangerous, and has been put right: at the unit."""

ONE_CALL: Final[Mapping[str, str]] = MappingProxyType({"operating-sequence": "ignition-trials"})
"""A test that makes whatever call is complained of -> what it is no less than where that is heat.

A call not known to be for cooling may be one for heat, and lights the burner.
"""

FIRE_ALARM: Final = "fire-alarm-interlock"
UNDER_GAS: Final = "gas-open"
"""What a rule file calls a joint that is looked at with the cock open and no burner lit."""
UNIT_STOPPED: Final = "unit-stopped"
"""What a rule file calls what is read with nothing called for, the power on or off."""
CLIPS_DEAD: Final = "clips-dead"
"""What a rule file calls hands at fuses: the line side of their switch stays live."""
VACUUM: Final = "compressor-in-vacuum"
IN_THE_BUILDING: Final = "building-side"
"""The area of what is read in the rooms, away from the unit."""
BURNER_AREAS: Final = frozenset({"gas", "ignition", "combustion"})
_DEAD_ONLY: Final = frozenset({"capacitors-discharged", "charge-recovered"})
OPEN_LIVE: Final = frozenset({"running-open", "energised-open"})
OPENED: Final = OPEN_LIVE | {"locked-out"}
STOPPED: Final = OPENED | {"locked-closed"}
"""Work for which the unit is stopped, or opened."""


@frozen
class Needs:
    """What must be true of the work state.

    `lock`: the power locked out, though no hand comes near an electrical part. `stored`: every
    place that must hold no charge. `taps`: of the gas train, on the manometer. `hook_ups`: where
    something is hooked up dead, to be read live. `no_unburnt`: of a burner, gone before it is lit,
    or hands go in. `uncalled`: the power on, and nothing called for. `unlit`: nothing
    called for, power on or off. `away`: done elsewhere in the building: nothing stays open live.
    `stopped`: by its controls, or locked out. `clips`: hands at fuses, whose clips were tested.
    """

    energy: WorkStateName = "any"
    roof: bool = False
    occupants: bool = False
    fire_panel: bool = False
    sweeps: tuple[str, ...] = ()
    second_person: bool = False
    arc_clothing: bool = False
    meter: bool = False
    stored: tuple[str, ...] = ()
    gas: Literal["any", "on", "shut"] = "any"
    taps: tuple[str, ...] = ()
    hook_ups: tuple[str, ...] = ()
    circuits: tuple[tuple[str, CircuitNeed], ...] = ()
    no_vacuum: bool = False
    is_step: bool = False
    lock: bool = False
    no_unburnt: bool = False
    uncalled: bool = False
    unlit: bool = False
    away: bool = False
    stopped: bool = False
    clips: bool = False

    @property
    def closed(self) -> bool:
        """Hands reach what moves, behind a lock that was tried, and no electrical part."""
        return self.energy == "locked-closed"

    @property
    def energised(self) -> bool:
        """The power must be on, whether or not anything turns."""
        return self.energy in ("running", "running-open", "energised-open")


@lru_cache(maxsize=2_000)
def needs_of(test: Test, place: str | None, unit: UnitAtWork) -> Needs:
    """What `test` at `place` needs on this unit, its hazards and kind taken into account.

    Hands go in only with every capacitor and drive of the unit discharged, not just the one the
    test is about.
    """
    test = as_read_on(test, unit)
    needed: set[str] = set(test.needs_state)
    hazards = set(test.hazards)
    energy: WorkStateName = "locked-out" if needed & _DEAD_ONLY else test.work_state
    fires = burns(test, energy, unit)
    may_fire = unit.burns_gas and test.id in ONE_CALL
    gauged_dead = "gauges-on" in needed and not unit.ports_outside
    reaches_people = fires or energy in STOPPED or UNIT_STOPPED in needed or gauged_dead
    under_gas = UNDER_GAS in needed
    gas: Literal["any", "on", "shut"] = "on" if fires or may_fire or under_gas else "any"
    if "gas-shut" in needed:
        gas = "shut"
    return Needs(
        energy=energy,
        roof=test.id != ROOF and _on_the_roof(test),
        occupants=reaches_people,
        fire_panel=FIRE_ALARM in hazards or (unit.fire_panel and reaches_people),
        sweeps=_sweeps(test, energy, gas, unit),
        second_person=unit.volts_480 and energy in OPEN_LIVE,
        arc_clothing=unit.volts_480 and energy in OPEN_LIVE,
        meter="meter-proved" in needed or (test.kind == "measurement" and test.exposes != "none"),
        stored=unit.capacitors + unit.drives if energy == "locked-out" else (),
        gas=gas,
        taps=tuple(tap for word, tap in TAPS.items() if word in needed),
        hook_ups=tuple(_at(at, place) for word, at in HOOK_UPS.items() if word in needed),
        circuits=_circuit_needs(needed, place, unit),
        no_vacuum=VACUUM in hazards and "charge-recovered" not in needed,
        is_step=test.kind == "step",
        lock=energy == "locked-closed",
        no_unburnt=unit.burns_gas and (gas == "shut" or energy in ("running", *OPEN_LIVE)),
        unlit=under_gas,
        stopped=UNIT_STOPPED in needed,
        clips=CLIPS_DEAD in needed,
        away=unit.volts_480 and energy == "any" and test.area == IN_THE_BUILDING,
    )


def for_dead_work(unit: UnitAtWork) -> Needs:
    """What hands inside this unit need, whatever they are there for."""
    return Needs(
        energy="locked-out",
        roof=True,
        occupants=True,
        fire_panel=unit.fire_panel,
        sweeps=(REFRIGERANT_SWEEP,) if unit.flammable else (),
        meter=True,
        stored=unit.capacitors + unit.drives,
    )


def _at(point: str, place: str | None) -> str:
    return f"{point} of {place}" if place else point


def hook_ups_on(
    tests: Iterable[Test], places: Callable[[str | None], Iterable[object]]
) -> set[str]:
    """Where something is hooked up dead for any of these tests, at each of its places."""
    return {
        _at(HOOK_UPS[need], None if at is None else str(at))
        for test in tests
        for need in test.needs_state
        if need in HOOK_UPS
        for at in places(test.per)
    }


def _on_the_roof(test: Test) -> bool:
    return (
        test.work_state != "any"
        or bool(test.needs_state)
        or test.id in (GAS_SWEEP, REFRIGERANT_SWEEP, MADE_SAFE)
        or not ON_THE_ROOF.isdisjoint(test.hazards)
    )


def left_on(work: WorkState) -> tuple[Need, ...]:
    """What a rule file calls the manometers and hook-ups that are on now."""
    on = work.taps_open | work.hooked_up
    return tuple(need for need in get_args(Need) if {TAPS.get(need), HOOK_UPS.get(need)} & on)


def with_needs(test: Test, needs: Iterable[Need]) -> Test:
    """A test with further needs beside its own."""
    return replace(test, needs_state=tuple(dict.fromkeys((*test.needs_state, *needs))))


def _sweeps(test: Test, energy: str, gas: str, unit: UnitAtWork) -> tuple[str, ...]:
    """The air sweeps that must have found nothing: for refrigerant, for gas, for CO.

    A unit whose refrigerant burns, or may, is swept for it before anything but a look. On one that
    burns gas nothing is lit, and nothing is switched or called for behind an open panel, before the
    air has been swept for it.
    """
    fires = burns(test, energy, unit)
    sweeps = []
    if unit.flammable and (energy != "any" or test.needs_state):
        sweeps.append(REFRIGERANT_SWEEP)
    if (
        gas == "shut"
        or fires
        or UNDER_GAS in test.needs_state
        or (unit.burns_gas and energy in OPEN_LIVE)
    ):
        sweeps.append(GAS_SWEEP)
    if fires or not COMBUSTION_AIR.isdisjoint(test.hazards):
        sweeps.append(ROOM_AIR)
    return tuple(sweep for sweep in sweeps if sweep != test.id)


def burns(test: Test, energy: str, unit: UnitAtWork) -> bool:
    """Whether a burner runs, or may, while the test is done: people below breathe what it makes."""
    of_gas = test.exists_when.get("heat") == ("gas",)
    may_heat = test.id in ONE_CALL and not unit.called_to_cool
    heats = test.area in BURNER_AREAS or test.id in HEAT_IS_ON or of_gas or may_heat
    return unit.burns_gas and heats and energy in ("running", "running-open")


def _circuit_needs(
    needed: set[str], place: str | None, unit: UnitAtWork
) -> tuple[tuple[str, CircuitNeed], ...]:
    need: CircuitNeed
    if "charge-recovered" in needed:
        need = "charge-recovered"
    elif "gauges-on" in needed:
        need = "gauges-on"
    else:
        return ()
    return tuple((circuit, need) for circuit in circuits_of(place, unit))


def circuits_of(place: str | None, unit: UnitAtWork) -> tuple[str, ...]:
    """The circuits a place belongs to: the one of its number, or else all of them."""
    number = place.rpartition(" ")[2] if place else ""
    same = tuple(circuit for circuit in unit.circuits if circuit.endswith(f" {number}"))
    return same or unit.circuits or (WHOLE_UNIT,)
