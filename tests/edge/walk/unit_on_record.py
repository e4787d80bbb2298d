"""What an officer takes a unit to be, from the facts that were typed: unknown is the worse."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import InputRefused, Unit, read_unit
from troubleshoot.safety.work_state import UnitAtWork

NOT_FLAMMABLE = ("R-22", "R-410A")
"""A1 by ASHRAE 34, of what the rules name; R-454B and R-32 are A2L."""

MOST_OF_240_CLASS = 277.0
Facts = Mapping[str, object]


@dataclass(frozen=True)
class KnownUnit:
    """A unit as the reasoning reads it, and what the order of work has to know of it."""

    unit: Unit
    at_work: UnitAtWork


class Units:
    """Reads units, each set of facts once."""

    def __init__(self, knowledge: Knowledge) -> None:
        self._knowledge = knowledge
        self._read = lru_cache(maxsize=4000)(self._of)

    def of(self, facts: Facts) -> KnownUnit:
        return self._read(tuple(sorted((name, _frozen(value)) for name, value in facts.items())))

    def _of(self, facts: tuple[tuple[str, object], ...]) -> KnownUnit:
        data = {n: dict(v) if isinstance(v, tuple) else v for n, v in facts}
        try:
            unit = read_unit(self._knowledge, data)
        except InputRefused:  # a value for a place that is gone with an undone count
            unit = read_unit(
                self._knowledge, {n: v for n, v in data.items() if n in self._knowledge.facts}
            )
        return KnownUnit(unit, _at_work(unit, data))


def _frozen(value: object) -> object:
    return tuple(sorted(value.items())) if isinstance(value, Mapping) else value


def _at_work(unit: Unit, typed: Facts) -> UnitAtWork:
    motor, drive = typed.get("blower-motor"), typed.get("variable-speed-drive")
    drives = ["blower motor"] if motor in (None, "electronically-commutated") else []
    drives += [] if drive == "not-fitted" else ["blower drive"]
    return UnitAtWork(
        capacitors=tuple(str(place) for place in unit.layout.places("capacitor")),
        drives=tuple(drives),
        circuits=tuple(str(place) for place in unit.layout.places("circuit")),
        flammable=_flammable(typed),
        fire_panel=typed.get("duct-smoke-detector") != "not-fitted",
        volts_480=_may_be_480(unit, typed),
        burns_gas=typed.get("heat", "gas") == "gas",
        ports_outside=typed.get("service-ports") == "outside",
    )


def _flammable(typed: Facts) -> bool:
    named, kind = typed.get("refrigerant"), typed.get("refrigerant-class")
    if kind is not None:
        return kind != "a1"
    return named not in NOT_FLAMMABLE


def _may_be_480(unit: Unit, typed: Facts) -> bool:
    kind, volts = typed.get("line-volts-class"), unit.plate_value("nameplate-volts", None)
    if kind is None and volts is None:
        return typed.get("supply-phase") != "single"
    return kind == "480-volt" or (volts is not None and volts > MOST_OF_240_CLASS)


def facts_on_record(
    knowledge: Knowledge, events: Iterable[Mapping[str, object]]
) -> dict[str, object]:
    """The facts that these events told of a unit, the later one counting; unknown ones are none."""
    facts: dict[str, object] = {}
    for event in events:
        name, value = str(event["name"]), event["value"]
        before = facts.get(name)
        if value is None:
            continue
        if isinstance(value, str) and name in knowledge.facts:
            value = _meant(knowledge, name, value)
        if isinstance(value, dict) and isinstance(before, dict):
            value = {**before, **value}
        also = event.get("also", {})
        assert isinstance(also, Mapping)
        facts |= {name: value, **also}
    return facts


def _meant(knowledge: Knowledge, name: str, typed: str) -> str:
    """The value of a fact that was typed as it is shown, or in one of its words."""
    fact, said = knowledge.facts[name], typed.lower().split()
    for value in fact.values:
        if "-".join(said) == value.lower() or " ".join(said) in fact.words.get(value, ()):
            return value
    return typed
