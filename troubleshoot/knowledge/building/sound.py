"""Plain data -> what a sound unit reads, relations between readings, typical units."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from troubleshoot.knowledge.building.conditions import (
    build_bound,
    build_facts,
    build_limit_line,
)
from troubleshoot.knowledge.building.reference import build_derivation
from troubleshoot.knowledge.model import Day, Relation, SoundReading, SoundWay, TypicalUnit


def build_sound_readings(data: Any) -> Iterator[SoundReading]:
    for item in data["sound"]:
        yield SoundReading(
            id=item["id"],
            ways=tuple(_way(way) for way in item.get("reads", ())),
            three_legs=build_facts(item.get("three-legs")),
            follows=item.get("follows"),
            none_because=item.get("none-because", ""),
        )


def _way(data: Any) -> SoundWay:
    """`is` is a sum of nothing, plus the number; `of` a sum of one."""
    number = None
    if "formula" in data:
        number = build_derivation({"inputs": (), **data})
    elif "of" in data:
        number = build_derivation({**data, "formula": "sum", "inputs": (data["of"],)})
    elif "is" in data:
        number = build_derivation({"formula": "sum", "inputs": (), "plus": data["is"]})
    return SoundWay(
        number=number,
        at_least=data.get("at-least"),
        at_most=data.get("at-most"),
        shown=data.get("shown", ""),
        wrong=tuple(data.get("wrong", ())),
        when=build_facts(data.get("when")),
        where=tuple(build_bound(bound) for bound in data.get("where", ())),
    )


def build_days(data: Any) -> Iterator[Day]:
    for item in data.get("days", ()):
        conditions = {name: (low, high) for name, (low, high) in item["conditions"].items()}
        yield Day(conditions, tuple(item.get("subsystems", ())))


def build_relations(data: Any) -> Iterator[Relation]:
    for item in data["relations"]:
        yield Relation(
            id=item["id"],
            says=item["says"],
            must=tuple(build_limit_line(line) for line in item["must"]),
            where=tuple(build_bound(bound) for bound in item.get("where", ())),
        )


def build_unit(data: Any) -> TypicalUnit:
    return TypicalUnit(
        id=data["unit"],
        about=data["about"],
        serves=data["serves"],
        unit={**data["facts"], **data.get("plate", {})},
        own_record=data.get("own-record", {}),
    )
