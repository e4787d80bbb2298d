"""What the register keeps of a unit: its columns, what may stand in each, and how it is read."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import MOST_NAME, MOST_TYPED
from troubleshoot.reasoning.unit.places import CAPACITOR_KINDS, Place

NAME: Final = "name"
NOTES: Final = "notes"
ANY_CAPACITOR: Final = "capacitor"
AT: Final = " at "
"""Between a column and the place it is of: compressor-rla at compressor 2."""
MATTERS: Final = ("critical", "usual", "little")
FUSE_CLASSES: Final = ("CC", "CF", "G", "H", "J", "K1", "K5", "L", "RK1", "RK5", "T")
"""Classes of low-voltage fuses by the parts of UL 248 (from memory)."""

_COUNTED: Final = re.compile(r"(?:([1-9][0-9]?)\s*(?:of|x)?\s+)?(\S+)", re.IGNORECASE)
_FILTER: Final = re.compile(r"[1-9][0-9]?(?:\.[0-9]+)?(?:x[1-9][0-9]?(?:\.[0-9]+)?){2}")
_BELT: Final = re.compile(r"(?:[3458]V?X?|[ABCD]X?|[34]L)[0-9]{2,4}")
_CAN: Final = re.compile(r"[0-9]{1,3}(?:\.[0-9])?(?:/[0-9]{1,3}(?:\.[0-9])?)?")
_VOLTS: Final = re.compile(r"([1-9][0-9]{2})\s*v(?:ac|olts?)?", re.IGNORECASE)
_PERCENT: Final = re.compile(r"(?:\+/?-|±)?\s*([0-9]{1,2}(?:\.[0-9])?)\s*(?:%|percent)?")


class NotTaken(ValueError):
    """What stands in a column cannot be taken. `instead` says what would do."""

    def __init__(self, problem: str, instead: str) -> None:
        super().__init__(f"{problem}; {instead}")
        self.problem = problem
        self.instead = instead


@frozen
class Column:
    """One thing that is kept of a unit. `read`: the words as they are kept; raises NotTaken.

    `takes`: what may stand there, in words. `about`: the heading under which it is shown.
    """

    key: str
    spoken: str
    meaning: str
    takes: str
    about: str
    read: Callable[[str], str] = str


def _text(typed: str) -> str:
    if len(typed) > MOST_NAME:
        raise NotTaken(f"more than {MOST_NAME} letters", "say it in fewer")
    return typed


def _note(typed: str) -> str:
    if len(typed) > MOST_TYPED:
        raise NotTaken(f"more than {MOST_TYPED} letters", "say it in fewer")
    return typed


def _one_of(words: tuple[str, ...], typed: str) -> str:
    """One of the words, however its letters are written; Class RK5 is RK5."""
    said = re.sub(r"[\s-]", "", typed.casefold().removeprefix("class"))
    found = next((word for word in words if word.casefold() == said), None)
    if found is None:
        raise NotTaken(f'"{typed}" is no answer here', f"one of {', '.join(words)}")
    return found


def _counted(size: re.Pattern[str], unit: str, example: str, typed: str) -> str:
    """Sizes with how many there are of each, as "2 of 20x25x2, 1 of 16x20x2"."""
    kept = []
    for piece in re.split(r"[,;]", typed):
        said = piece.strip().removesuffix(unit).strip()
        found = _COUNTED.fullmatch(said)
        if found is None or not size.fullmatch(_as_size(found[2])):
            raise NotTaken(f'"{piece.strip()}" is no size with its number', f"as: {example}")
        kept.append(f"{found[1] or 1} of {_as_size(found[2])}{f' {unit}' if unit else ''}")
    return ", ".join(kept)


def _as_size(typed: str) -> str:
    """A size as it is printed: 20X25X2 as 20x25x2, a38 as A38."""
    is_filter = typed[0] in "123456789" and "x" in typed.lower()
    return typed.lower() if is_filter else typed.upper()


def _percent(typed: str) -> str:
    found = _PERCENT.fullmatch(typed.strip())
    if found is None or not 0 < float(found[1]) <= 20:
        raise NotTaken(f'"{typed}" is no tolerance', "as on the can: 6 %")
    return f"{float(found[1]):g} %"


def _can_volts(typed: str) -> str:
    found = _VOLTS.fullmatch(typed.strip())
    if found is None:
        raise NotTaken(f'"{typed}" is no rating in volts', "as on the can: 440 V")
    return f"{found[1]} V"


PLACE: Final = "where it stands"
SPARES: Final = "what is taken up"
EQUIPMENT: Final = "equipment"
PLATE: Final = "data plate"
RECORD: Final = "its own record"
WORDS: Final = "a few words"
STAMPED: Final = "as stamped"
_OWN: Final = (
    Column("site", "site", "the place, as the people there call it", WORDS, PLACE, _text),
    Column("roof", "roof", "which roof, or where on it", WORDS, PLACE, _text),
    Column("serves", "serves", "the rooms that it serves", WORDS, PLACE, _text),
    Column(
        "matters", "matters",
        "how much it matters when it is down: critical where people or goods are at risk",
        " or ".join(MATTERS), PLACE, partial(_one_of, MATTERS),
    ),
    Column("model", "model", "model number of the data plate", STAMPED, PLACE, _text),
    Column("serial", "serial", "serial number of the data plate", STAMPED, PLACE, _text),
    Column("notes", "notes", "what else there is to know", WORDS, PLACE, _note),
    Column(
        "filters", "filters", "how many of each size, in inches", "2 of 20x25x2", SPARES,
        partial(_counted, _FILTER, "", "2 of 20x25x2"),
    ),
    Column(
        "belts", "belts", "how many of each size", "1 of A38", SPARES,
        partial(_counted, _BELT, "", "1 of A38"),
    ),
    Column(
        "capacitor-cans", "capacitor cans", "how many of each, a dual can with both ratings",
        "1 of 45/5 uF", SPARES, partial(_counted, _CAN, "uF", "1 of 45/5 uF"),
    ),
    Column(
        "can-tolerance", "can tolerance", "stamped on the cans", "6 %", SPARES,
        _percent,
    ),
    Column(
        "can-volts", "can volts", "stamped on the cans", "440 V", SPARES, _can_volts
    ),
    Column(
        "fuse-class", "fuse class", "class of the fuses in the disconnect",
        " or ".join(FUSE_CLASSES), SPARES, partial(_one_of, FUSE_CLASSES),
    ),
)  # fmt: skip
OWN: Final[Mapping[str, Column]] = MappingProxyType({each.key: each for each in _OWN})
"""What the register keeps beside what visits know of a unit."""


def of_one_place(column: str, per: str | None) -> str:
    """How a column is called that is of one place; nothing where it is of the unit as a whole."""
    if per is None:
        return ""
    kind = CAPACITOR_KINDS[0] if per == ANY_CAPACITOR else per
    return f"; of one place: {column}{AT}{Place(kind)}"


def columns_of(knowledge: Knowledge) -> Iterator[Column]:
    """Every column, in the order of a data plate: place, spares, facts, plate, own record."""
    yield Column(NAME, NAME, "the unit's name, by which visits know it", WORDS, PLACE, _text)
    yield from OWN.values()
    for fact in knowledge.facts.values():
        number = ", or how many" if fact.counts else ""
        takes = f"{' or '.join(map(knowledge.spoken, fact.values))}{number}"
        yield Column(fact.id, knowledge.spoken(fact.id), fact.asks, takes, EQUIPMENT)
    for plate in knowledge.plate_values.values():
        about = PLATE if plate.origin == "nameplate" else RECORD
        meaning = f"{plate.meaning}{of_one_place(plate.id, plate.per)}"
        spoken = knowledge.spoken(plate.id)
        yield Column(plate.id, spoken, meaning, f"a number in {plate.unit}", about)
