"""Where on the unit: the places a finding or a fault can be about, and which speak of which.

A unit is a small tree of places built from its equipment facts. A place is spoken as its kind and
number ("circuit 2", "capacitor condenser fan 1"). A finding speaks only about its own place and
what feeds it or is fed by it, so the weak fan section of a dual capacitor never accuses the
compressor's section, and a burnt pole on contactor 2 never condemns compressor 1.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from troubleshoot.frozen import frozen
from troubleshoot.outside.text import plain_words

SPOKEN_KINDS: Mapping[str, str] = {
    "circuit": "circuit",
    "compressor": "compressor",
    "contactor": "contactor",
    "compressor-capacitor": "capacitor compressor",
    "condenser-fan": "condenser fan",
    "condenser-fan-capacitor": "capacitor condenser fan",
    "blower-capacitor": "capacitor blower",
    "heat-stage": "heat stage",
}
SHORT_KINDS: Mapping[str, str] = {
    "c": "circuit",
    "ckt": "circuit",
    "cct": "circuit",
    "cir": "circuit",
    "sys": "circuit",
    "system": "circuit",
    "comp": "compressor",
    "cond fan": "condenser fan",
    "outdoor fan": "condenser fan",
    "fan": "condenser fan",
    "stage": "heat stage",
}
"""What people call a kind of place in short, beside its number: c2, ckt 2."""
CAPACITOR_KINDS = ("compressor-capacitor", "condenser-fan-capacitor", "blower-capacitor")
UNNUMBERED = frozenset({"blower-capacitor"})
SERVED_BY_BLOWER = frozenset({"circuit", "heat-stage"})

_LETTERS = {letter: str(number) for number, letter in enumerate("abcdefgh", start=1)}
_DEVICE_OF_CAPACITOR = {
    "compressor-capacitor": "compressor",
    "condenser-fan-capacitor": "condenser-fan",
    "blower-capacitor": None,
}


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """One of a kind of place on a unit; numbered from 1."""

    kind: str
    number: int = 1

    def __str__(self) -> str:
        spoken = SPOKEN_KINDS[self.kind]
        return spoken if self.kind in UNNUMBERED else f"{spoken} {self.number}"


def with_place(name: str, place: str | None) -> str:
    """A name with the place where it is, where there is more than one."""
    return f"{name}, {place}" if place else name


def spoken(place: Place | None) -> str | None:
    """The place in words, as events and safety steps name it; None for the unit as a whole."""
    return None if place is None else str(place)


@frozen
class Layout:
    """How many of each kind the unit has, and which circuits a condenser fan serves."""

    counts: tuple[tuple[str, int], ...]
    fans_serve: str = "all"

    def places(self, kind: str | None) -> tuple[Place | None, ...]:
        """All places of a kind; (None,) for what concerns the unit as a whole."""
        if kind is None:
            return (None,)
        kinds = CAPACITOR_KINDS if kind == "capacitor" else (kind,)
        counts = dict(self.counts)
        return tuple(
            Place(each, number) for each in kinds for number in range(1, counts.get(each, 0) + 1)
        )

    def shown(self, kind: str | None, place: Place | None) -> str | None:
        """The place as shown: nothing where the unit has only one of that kind."""
        if place is None or len(self.places(kind)) <= 1:
            return None
        return str(place)

    def circuits_of(self, place: Place | None) -> frozenset[int]:
        """The circuits that a place serves or belongs to; all for the unit as a whole."""
        everything = frozenset(range(1, dict(self.counts).get("circuit", 1) + 1))
        if place is None or place.kind in ("blower-capacitor", "heat-stage"):
            return everything
        if place.kind in ("condenser-fan", "condenser-fan-capacitor") and self.fans_serve == "all":
            return everything
        return frozenset({place.number})

    def speaks_about(self, seen_at: Place | None, fault_at: Place | None) -> bool:
        """Whether a finding at one place says anything about a fault at another."""
        return _speaks_about(self, seen_at, fault_at)


@lru_cache(maxsize=4096)
def _speaks_about(layout: Layout, seen_at: Place | None, fault_at: Place | None) -> bool:
    if seen_at is None or fault_at is None or seen_at == fault_at:
        return True
    if seen_at.kind in CAPACITOR_KINDS:
        return fault_at == device_of(seen_at)
    if fault_at.kind == "blower-capacitor":
        return seen_at.kind in SERVED_BY_BLOWER
    if seen_at.kind == fault_at.kind:
        return False
    device = device_of(fault_at)
    if device is not None and seen_at.kind == device.kind:
        return seen_at == device
    return bool(layout.circuits_of(seen_at) & layout.circuits_of(fault_at))


def device_of(place: Place) -> Place | None:
    """The motor that a capacitor section serves; nothing for other places or the blower."""
    kind = _DEVICE_OF_CAPACITOR.get(place.kind)
    return None if kind is None else Place(kind, place.number)


def like(place: Place | None, places: tuple[Place | None, ...]) -> Place | None:
    """The place of another kind that goes with this one: itself, same number, or the only one."""
    if place in places:
        return place
    if place is not None:
        for other in places:
            if other is not None and other.number == place.number:
                return other
    return places[0] if len(places) == 1 else None


class PlaceNotUnderstood(ValueError):
    """The words do not name a place of this unit. `instead` says what would do."""

    def __init__(self, problem: str, instead: str) -> None:
        super().__init__(f"{problem}; {instead}")
        self.problem = problem
        self.instead = instead


_SHORT = re.compile(rf"({'|'.join(SHORT_KINDS)}) ?#?([0-9]{{1,9}}|[a-h])")
_SIGNED = re.compile(r"(?:^|\s)[-+\u2212]\s?[0-9]")
"""A sign, which a hyphen within a word is not: circuit -1, but circuit-1."""
_WORDS = re.compile(r"^(capacitor )?([a-z ]+?)(?: ?([0-9]{1,9}|[a-h]))?$")


def parse_place(text: str, kind: str | None, layout: Layout) -> tuple[Place, ...]:
    """The places of `kind` that the words name: usually one, several where no number was given.

    A neighbouring word serves where the meaning is plain: "circuit 2" for compressor 2, and
    "condenser fan 1" for its capacitor. Raises PlaceNotUnderstood.
    """
    if _SIGNED.search(text):
        raise PlaceNotUnderstood(f'"{text}" counts below one', "count places from 1")
    words = _written_out(plain_words(text))
    words = re.sub(r"^(.*) capacitor( [0-9]+| [a-h])?$", r"capacitor \1\2", words)
    choices = [place for place in layout.places(kind) if place is not None]
    if kind is None:
        raise PlaceNotUnderstood(
            f'"{text}" names a place, but this concerns the whole unit', "leave the place out"
        )
    match = _WORDS.match(words)
    spoken = {name: each for each, name in SPOKEN_KINDS.items()}
    named = None
    if match:
        base = (match[1] or "") + match[2]
        named = spoken.get(base) or spoken.get(match[2])
    if match is None or named is None:
        raise PlaceNotUnderstood(f'"{text}" is not a place', _say_choices(choices))
    number = int(_LETTERS.get(match[3], match[3])) if match[3] else None
    found = tuple(p for p in choices if _fits(named, number, p, layout))
    if not found:
        raise PlaceNotUnderstood(f'this unit has no "{text}" for that', _say_choices(choices))
    return found


def _written_out(words: str) -> str:
    """The words of a place with its kind in full: c2 and ckt 2 as circuit 2."""
    short = _SHORT.fullmatch(words)
    return words if short is None else f"{SHORT_KINDS[short[1]]} {short[2]}"


def _fits(named: str, number: int | None, place: Place, layout: Layout) -> bool:
    if number is not None and place.kind not in UNNUMBERED and named == place.kind:
        return place.number == number
    if named == place.kind:
        return True
    device = device_of(place)
    if device is not None:
        return named == device.kind and number in (None, place.number)
    if place.kind == "blower-capacitor" or named in CAPACITOR_KINDS:
        return False
    if place.kind == "condenser-fan" and named == "circuit":
        return number is None or number in layout.circuits_of(place)
    same_line = {"circuit", "compressor", "contactor"}
    return {named, place.kind} <= same_line and number in (None, place.number)


def highest_number(text: str) -> int | None:
    """The number a place's words end with, or nothing."""
    match = _WORDS.match(plain_words(text))
    return int(_LETTERS.get(match[3], match[3])) if match and match[3] else None


def _say_choices(choices: list[Place]) -> str:
    return "say " + " or ".join(f'"{place}"' for place in choices) if choices else "leave it out"
