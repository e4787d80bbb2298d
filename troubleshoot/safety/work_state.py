"""The work state: what is known for certain about a unit while people work on it.

Nothing here is a guess about the unit; it is what the technician has confirmed, step by step, and
what has expired since. Where something is not known, the value that protects people is taken:
power counts as on, a capacitor as charged, a meter as unproved. What may be either way is unsure,
and meets no need.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, Final, Literal

from troubleshoot.frozen import changed, frozen
from troubleshoot.knowledge.spoken import spoken

Power = Literal["on", "unsure", "locked-out"]
Panels = Literal["on", "unsure", "off"]
Calls = Literal["stuck-on", "on", "off"]
Dead = Literal["not-shown", "tested", "shown", "tested-again", "proved"]
Meter = Literal["failed", "not-proved", "proved"]
SecondSource = Literal["none-known", "found", "locked"]
Gas = Literal["on", "unsure", "shut"]
Circuit = Literal[
    "closed",
    "gauges-unsure",
    "gauges-on",
    "charge-unsure",
    "charge-recovered",
    "under-nitrogen",
    "under-vacuum",
    "evacuated",
    "opened",
    "opened-unsure",
]
Roof = Literal["not-checked", "no-go", "edge-near", "go"]
FirePanel = Literal["in-service", "unsure", "on-test"]
Energy = Literal[
    "running", "stopped", "running-open", "energised-open", "locked-out", "proved-dead"
]

WHOLE_UNIT: Final = "unit"
"""Stands for the place of a test that has none."""

_CALLS_LADDER: Final[tuple[Calls, ...]] = ("stuck-on", "on", "off")
_DEAD_LADDER: Final[tuple[Dead, ...]] = (
    "not-shown",
    "tested",
    "shown",
    "tested-again",
    "proved",
)
_METER_LADDER: Final[tuple[Meter, ...]] = ("failed", "not-proved", "proved")
_ROOF_LADDER: Final[tuple[Roof, ...]] = ("no-go", "not-checked", "edge-near", "go")
_SECOND_SOURCE_LADDER: Final[tuple[SecondSource, ...]] = ("found", "locked", "none-known")
_EMPTY_LADDER: Final[tuple[Circuit, ...]] = ("under-vacuum", "under-nitrogen", "charge-recovered")
IN_VACUUM: Final[tuple[Circuit, ...]] = ("under-vacuum", "evacuated")
"""A circuit that is drawn down; evacuated is one whose vacuum was seen to hold."""
OPENED: Final[tuple[Circuit, ...]] = ("opened", "opened-unsure")
"""A circuit left open to the air by a repair; unsure where nobody has said that it was opened."""
EMPTY: Final = frozenset({*_EMPTY_LADDER, *IN_VACUUM, "opened"})
_MAY_BE_EMPTY: Final = EMPTY | {"charge-unsure", "opened-unsure"}
MAY_BE_IN_VACUUM: Final = frozenset({*IN_VACUUM, *OPENED, "charge-unsure"})
"""What a repair opened may have been drawn down since."""


@frozen
class UnitAtWork:
    """What the safe order of work has to know about the unit itself.

    `capacitors`: the place of each capacitor section; `drives`: of each drive and electronically
    commutated motor; `circuits`: of each refrigerant circuit. `flammable`: A2L refrigerant, or not
    known. `fire_panel`: stopping the unit or its fan is seen by the fire panel, or may be.
    `volts_480`: the supply is of the 480 V class. `burns_gas`: its heat is gas, or not known.
    `called_to_cool`: a call is for cooling, unless a test has a burner lit. `ports_outside`: gauges
    go on with every panel on.
    """

    capacitors: tuple[str, ...] = ()
    drives: tuple[str, ...] = ()
    circuits: tuple[str, ...] = ()
    flammable: bool = False
    fire_panel: bool = False
    volts_480: bool = False
    burns_gas: bool = False
    called_to_cool: bool = False
    ports_outside: bool = False


@frozen
class WorkState:
    """What has been confirmed and has not expired. The default is a unit as it is found.

    `calls`: off when nothing can start by itself while the power is on; stuck on when the unit
    would not stop by its controls. `dead`: how far the proof has come: tested once, shown when the
    meter has been proved again right after it, tested again after the last discharge, proved when
    the meter has then been proved once more. `only_steps_since_proof`: no test came after the
    meter's last proof, so that a test for dead may follow on it. `discharged`, `leads_off`: places;
    `hooked_up`: those of `leads_off` where that is meant, to read something live.
    `jumpers`: the technician's own temporary jumpers that are in. `gas`: unsure where others may
    have turned the cock since it was last known. `gas_swept`: since the last sweep
    that found no gas none was found, nor was the cock opened. `unburnt`: a light has failed, or
    may have, and what gathered has not been waited out with the cock shut. `taps_open`: of the gas
    train, their plug out; `hoses_on`: with the manometer on; `plugs_untested`: behind the valve,
    their plug not tested under gas since it was out. `clear`: ids of the air sweeps that found
    nothing. `arc_clothing`: clothing, face shield and gloves for an arc of 480 V are on.
    `area_clear`: tools and people are away from the unit. `clips_dead`: where hands go to fuses,
    their clips were tested, and no live lug is bare beside them. `doors_open`: doors or panels may
    be open beside the one that `panels` speaks of.
    """

    power: Power = "on"
    panels: Panels = "on"
    calls: Calls = "on"
    dead: Dead = "not-shown"
    meter: Meter = "not-proved"
    only_steps_since_proof: bool = False
    second_source: SecondSource = "none-known"
    discharged: frozenset[str] = frozenset()
    leads_off: frozenset[str] = frozenset()
    hooked_up: frozenset[str] = frozenset()
    jumpers: frozenset[str] = frozenset()
    gas: Gas = "on"
    gas_swept: bool = True
    unburnt: bool = False
    taps_open: frozenset[str] = frozenset()
    hoses_on: frozenset[str] = frozenset()
    plugs_untested: frozenset[str] = frozenset()
    circuits: tuple[tuple[str, Circuit], ...] = ()
    clear: frozenset[str] = frozenset()
    occupants_told: bool = False
    fire_panel: FirePanel = "in-service"
    roof: Roof = "not-checked"
    second_person: bool = False
    arc_clothing: bool = False
    area_clear: bool = False
    clips_dead: bool = False
    doors_open: bool = False

    @property
    def energy(self) -> Energy:
        """The state of energy in one word, as the technician would say it."""
        if self.power == "locked-out":
            return "proved-dead" if self.dead == "proved" else "locked-out"
        if self.panels == "on":
            return "stopped" if self.calls == "off" else "running"
        return "energised-open" if self.calls == "off" else "running-open"

    def circuit(self, place: str) -> Circuit:
        """The condition of one refrigerant circuit."""
        return dict(self.circuits).get(place, "closed")

    def with_facts(self, **facts: Any) -> WorkState:
        """The state with these facts; itself where they are so, as most changes find them."""
        news = {fact: value for fact, value in facts.items() if getattr(self, fact) != value}
        return changed(self, **news) if news else self

    def with_circuit(self, place: str, condition: Circuit) -> WorkState:
        """The same state with one circuit in another condition."""
        conditions = {**dict(self.circuits), place: condition}
        return self.with_facts(circuits=_ordered(conditions.items()))

    @property
    def laid_off(self) -> WorkState:
        """The state once parts were handled: gloves for an arc come off, and help may go."""
        return self.with_facts(arc_clothing=False, second_person=False)

    @property
    def circuits_without_charge(self) -> tuple[str, ...]:
        """Circuits that must not be run: recovered, opened, under nitrogen or vacuum, not known."""
        circuits = self.circuits  # none on most states
        return tuple(p for p, now in circuits if now in _MAY_BE_EMPTY) if circuits else ()


def is_as_found(state: WorkState) -> bool:
    """Whether no hand has been on the unit: what is known of roof, air and people is no matter.

    A cock that an earlier visit has left shut is not known, nor its plug tested, before any hand.
    """
    found = WorkState()
    if state.gas == "unsure":
        found = replace(found, gas="unsure", gas_swept=False, plugs_untested=state.plugs_untested)
    untouched = replace(
        found,
        roof=state.roof,
        clear=state.clear,
        occupants_told=state.occupants_told,
        fire_panel=state.fire_panel,
        second_person=state.second_person,
        arc_clothing=state.arc_clothing,
        area_clear=state.area_clear,
    )
    return state == untouched


def untested_plugs(taps: Iterable[str]) -> tuple[str, ...]:
    """That the plugs of these taps are not tested, one phrase each."""
    return tuple(f"the plug of the {tap} has not been tested under gas" for tap in sorted(taps))


def open_items(state: WorkState) -> tuple[str, ...]:
    """What would be left behind if the technician walked away now, one phrase each."""
    items = [f"temporary jumper still in: {name}" for name in sorted(state.jumpers)]
    items += [
        "leads not known to be all back on" if place == WHOLE_UNIT else f"leads off: {place}"
        for place in sorted(state.leads_off - state.hooked_up)
    ]
    items += [f"hooked up for a reading: {place}" for place in sorted(state.hooked_up)]
    items += [f"{place}: {spoken(condition)}" for place, condition in state.circuits]
    if state.gas == "shut":
        items.append("gas cock shut")
    elif state.gas == "unsure":
        items.append("gas cock not known to be shut, nor to be open")
    if state.unburnt:
        items.append("unburnt gas of a light that failed")
    items += [f"plug out and manometer on: {tap}" for tap in sorted(state.taps_open)]
    items += untested_plugs(state.plugs_untested - state.taps_open)
    if not state.gas_swept:
        items.append("gas not swept for leaks")
    if state.panels != "on":
        items.append("panels off" if state.panels == "off" else "panels not known to be on")
    elif state.doors_open:
        items.append("a door or panel opened for a look, not known to be shut")
    if state.power != "on":
        items.append("locked out")
    elif state.panels != "on":
        may = "" if state.panels == "off" else "may "
        items.append(f"power on: live parts {may}stand open")
    if state.power == "on" and state.calls == "off":
        items.append("stopped by its controls")
    elif state.power == "on" and state.panels == "off":
        items.append("called to run")
    if state.fire_panel != "in-service":
        items.append("fire panel still on test")
    return tuple(items)


def cautious(one: WorkState, other: WorkState) -> WorkState:
    """The state to work from when it may be either: in every respect the more careful of the two.

    Undo takes back words, not what hands have done, so after an undo the work goes on from
    `cautious(state before it, state after it)`.
    """
    places = sorted(dict(one.circuits).keys() | dict(other.circuits).keys())
    return WorkState(
        power=one.power if one.power == other.power else "unsure",
        panels=one.panels if one.panels == other.panels else "unsure",
        calls=min(one.calls, other.calls, key=_CALLS_LADDER.index),
        dead=min(one.dead, other.dead, key=_DEAD_LADDER.index),
        meter=min(one.meter, other.meter, key=_METER_LADDER.index),
        only_steps_since_proof=one.only_steps_since_proof and other.only_steps_since_proof,
        second_source=min(one.second_source, other.second_source, key=_SECOND_SOURCE_LADDER.index),
        discharged=one.discharged & other.discharged,
        leads_off=one.leads_off | other.leads_off,
        hooked_up=one.hooked_up & other.hooked_up,
        jumpers=one.jumpers | other.jumpers,
        gas=one.gas if one.gas == other.gas else "unsure",
        gas_swept=one.gas_swept and other.gas_swept and one.gas == other.gas,
        unburnt=one.unburnt or other.unburnt,
        taps_open=one.taps_open | other.taps_open,
        hoses_on=one.hoses_on & other.hoses_on,
        plugs_untested=one.plugs_untested | other.plugs_untested,
        circuits=_ordered(
            (place, _cautious_circuit(one.circuit(place), other.circuit(place))) for place in places
        ),
        clear=one.clear & other.clear,
        occupants_told=one.occupants_told and other.occupants_told,
        fire_panel=one.fire_panel if one.fire_panel == other.fire_panel else "unsure",
        roof=min(one.roof, other.roof, key=_ROOF_LADDER.index),
        second_person=one.second_person and other.second_person,
        arc_clothing=one.arc_clothing and other.arc_clothing,
        area_clear=one.area_clear and other.area_clear,
        clips_dead=one.clips_dead and other.clips_dead,
        doors_open=one.doors_open or other.doors_open,
    )


def _cautious_circuit(one: Circuit, other: Circuit) -> Circuit:
    """A circuit that may hold its charge or not is neither run nor opened."""
    if one == other:
        return one
    if "opened-unsure" in (one, other) or ("opened" in (one, other) and not {one, other} <= EMPTY):
        return "opened-unsure"
    if "opened" in (one, other):
        return "opened"
    if one in EMPTY and other in EMPTY:
        seen = "evacuated" in (one, other)
        return "under-vacuum" if seen else min(one, other, key=_EMPTY_LADDER.index)
    return "charge-unsure" if _MAY_BE_EMPTY & {one, other} else "gauges-unsure"


def _ordered(conditions: Iterable[tuple[str, Circuit]]) -> tuple[tuple[str, Circuit], ...]:
    """Closed circuits are left out, so that equal states compare equal."""
    return tuple(sorted(pair for pair in conditions if pair[1] != "closed"))
