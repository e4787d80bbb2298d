"""A line in which gauges are read out, cut at what is known: words, places, plates, values."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, ShortWords, Test
from troubleshoot.quantities.spoken_numbers import in_figures
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import SHORT_KINDS, SPOKEN_KINDS

Meant = tuple[tuple[Test, ShortWords], ...]
Words = dict[str, Meant]

NUMBER: Final = r"[-+]?(?:[0-9][0-9.,]*|\.[0-9]+)(?<![.,])"
_FILLING: Final = (
    "i|'s|i'm|im|it|it's|its|we|got|get|getting|have|having|has|had|read|reads|reading|show|shows"
    "|showing|see|seeing|is|was|are|were|at|of|on|an|the|my|and|with|now|right now|came in"
    "|comes in|equals|sitting|running|measured|temp is|pressure is|off"
)
_FILLS_BEFORE: Final = re.compile(
    rf"^(?:(?:a|{_FILLING})\b|[ ,;:=.-](?![0-9])|[ ,;:=])+", re.IGNORECASE
)
_FILLS_AFTER: Final = re.compile(rf"(?:(?<![\w'])(?:{_FILLING})|[ ,;:=.])+$", re.IGNORECASE)
"""A behind a number is amps."""
_BESIDE: Final = r"(?:^|(?<=[\s,;:=/(&+]))"
_ENDS: Final = r"(?!(?<=co)2(?![0-9.,]))(?=$|['\s,;:=()&+.<>~-]|[0-9])"
"""CO25 is a reading of CO; CO2 is another gas."""
_UNIT: Final = (
    r"(?: ?(?:a|amps?|v|volts?|uf|mfd|microfarads?|ua|f|deg|degrees|psig?|in|inches|rpm)\b)?"
)
_PLATE: Final = (
    r"(?:rated|rating|name ?plate|data plate|plate|rla|fla|on an?|(?<=mfd )on|(?<=uf )on)"
    rf"(?: (?:says|is|of|at|for|reads))*:? {NUMBER}(?:[-/][0-9]+)*(?![0-9]){_UNIT}"
    rf"(?: ?(?:to|-) ?{NUMBER}{_UNIT})?"
)
_LEGS: Final = re.compile(
    rf"(?P<most>{NUMBER}) on (?:the )?(?P<many>2|both|all|all 3|3) legs?"
    rf"(?:,? (?:and )?(?P<rest>{NUMBER}|nothing|none) on the (?:third|3rd|other)(?: leg| one)?)?",
    re.IGNORECASE,
)


@frozen
class Piece:
    """A piece of a line: words for readings, a place, what the plate says, a value, or a reading.

    A reading is a value that needs no name: its `words` are those of its test. `nth`: where it
    stands in the line.
    """

    kind: Literal["name", "place", "plate", "value", "reading"]
    text: str
    meant: Meant = ()
    nth: int = 0
    words: str = ""


_NEW_ONE: Final = re.compile(r"\bnew ones?(?= )", re.IGNORECASE)
"""One counts nothing there."""
_LEADING: Final = re.compile(r"^[.! ]+(?!(?<=\.)[0-9])")
"""What a line may begin with that says nothing; the point of .85 says something."""
_DENIED: Final = re.compile(r"\b(?:no|not|never|without)\s+(?:\w+\s+)?$", re.IGNORECASE)
"""Before the word for a reading it says that there is none: no flame, 3 tries."""


def plain(typed: str) -> str:
    """A line as it is cut: numbers in figures, counted legs side by side."""
    line = " ".join(in_figures(_NEW_ONE.sub("new", typed)).replace("\u2019", "'").split()).rstrip(
        " .!"
    )
    return _LEGS.sub(_side_by_side, _LEADING.sub("", line))


def _side_by_side(found: re.Match[str]) -> str:
    many = 2 if found["many"].lower() in ("2", "both") else 3
    rest = [] if found["rest"] is None else [found["rest"]]
    legs = [found["most"]] * many + ["0" if each.isalpha() else each for each in rest]
    return "/".join(legs)


def words_here(knowledge: Knowledge, unit: Unit) -> Words:
    """The readings of this unit by the words for them; under no words those of two numbers."""
    found: Words = {}
    for test in knowledge.tests.values():
        if test.short_words and unit.allows(test.exists_when):
            for short in test.short_words:
                for word in short.words or ("",):
                    found[word] = (*found.get(word, ()), (test, short))
    return found


def pieces_of(words: Words, line: str) -> list[Piece]:
    """The line cut at words for readings, places and plates; what lies between is a value."""
    pieces: list[Piece] = []
    end = 0
    for found in _pattern(words).finditer(line):
        if found["name"] and (_is_its_unit(line, found) or _DENIED.search(line[: found.start()])):
            continue
        pieces += _values(line[end : found.start()])
        if found["name"]:
            pieces.append(Piece("name", found["name"], _meant(words, found["name"])))
        else:
            pieces.append(Piece("place" if found["place"] else "plate", found[0]))
        end = found.end()
    pieces += _values(line[end:])
    return [Piece(p.kind, p.text, p.meant, nth) for nth, p in enumerate(pieces)]


def by_place(words: Words, place: str) -> Meant:
    """The readings that a place names by itself: comp 1 12 amps."""
    return _meant(words, re.sub(r"[ #]*(?:[0-9]|\b[a-h])$", "", place.lower()))


def without_fills(text: str) -> str:
    """A piece of a line without the words round it that say nothing."""
    return _FILLS_AFTER.sub("", _FILLS_BEFORE.sub("", text))


def _pattern(words: Words) -> re.Pattern[str]:
    kinds = sorted({*SPOKEN_KINDS.values(), *SHORT_KINDS}, key=len, reverse=True)
    place = rf"(?:{'|'.join(kinds)})(?: |#| #)?(?:[1-9]|[a-h])(?![\w.])"
    names = "|".join(
        re.escape(word).replace(r"\ ", "[ -]?")
        for word in sorted(filter(None, words), key=len, reverse=True)
    )
    return re.compile(
        rf"{_BESIDE}(?:(?P<place>{place})|(?P<plate>{_PLATE}){_ENDS}|(?P<name>{names}){_ENDS})",
        re.IGNORECASE,
    )


def _meant(words: Words, name: str) -> Meant:
    bare = re.sub(r"[ -]", "", name.lower())
    return tuple(
        each
        for word, every in words.items()
        if bare and re.sub(r"[ -]", "", word) == bare
        for each in every
    )


def _is_its_unit(line: str, found: re.Match[str]) -> bool:
    """Whether a word stands behind a number as its unit: 12 amps, 1040 rpm."""
    return is_unit(found["name"]) and re.search(r"[0-9] ?$", line[: found.start()]) is not None


def _values(text: str) -> Iterator[Piece]:
    bare = without_fills(text)
    if bare:
        yield Piece("value", bare)
