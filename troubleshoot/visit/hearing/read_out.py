"""Readings as gauges are read out: suction 128 liquid 340 sl 62, 128 over 340, return 78 supply 58.

Every word of a line has to be a short word of some reading, a place, a number with its unit, or one
that only fills: else nothing of it is taken, for what is not understood may take it back. The words
stand with their tests; the unit typed and what the number can be tell two readings of one word
apart, and what they do not tell is left to be asked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, ShortWords, Test
from troubleshoot.quantities.spoken_numbers import in_figures
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.reasoning.readings.doubted import doubted
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import SHORT_KINDS, SPOKEN_KINDS

_FILLING: Final = (
    "i|'s|i'm|it|it's|its|we|got|get|getting|have|having|has|had|read|reads|reading|show|shows"
    "|showing|see|seeing|is|was|are|were|at|of|on|a|an|the|my|and|with|now|right now|came in|comes in"
    "|equals|sitting|running|measured|temp is|pressure is"
)
_FILLS_BEFORE: Final = re.compile(rf"^(?:(?:{_FILLING})\b|[ ,;:=.-](?![0-9])|[ ,;:=])+")
_FILLS_AFTER: Final = re.compile(rf"(?:(?<![\w'])(?:{_FILLING})|[ ,;:=.])+$")
_BEGINS: Final = re.compile(
    r"(?:about |around |roughly |~|[<>]=? ?|(?:over|under|more than|less than) )?"
    r"(?:[-+]?[.]?[0-9]|ol\b|o\.l|open\b)"
)
_NUMBER: Final = r"[-+]?[0-9][0-9.,]*(?<![.,])"
_TWO: Final = re.compile(
    rf"(?P<first>{_NUMBER} ?(?P<unit>[a-z#%]*)) ?(?P<how>over|/) ?(?P<second>{_NUMBER} ?[a-z#%]*)"
)
_BESIDE: Final = r"(?:^|(?<=[\s,;:=/(&+]))"
_ENDS: Final = r"(?=$|[\s,;:=()&+.<>~-]|[0-9])"


@frozen
class ReadOut:
    """One reading of a line: the words for it, its number, and the tests that it may be of.

    `at`: the place in the words that were typed. `kind`: the kind of place that the words name.
    """

    words: str
    text: str
    tests: tuple[Test, ...]
    kinds: tuple[str | None, ...]
    at: str | None = None


class NotReadOut(ValueError):
    """A line names readings, and one of them cannot be taken; the message says why."""


@frozen
class _Piece:
    """A piece of a line: words for readings, a place, or a value."""

    kind: Literal["name", "place", "value"]
    text: str
    meant: tuple[tuple[Test, ShortWords], ...] = ()


def read_out(
    knowledge: Knowledge, unit: Unit, typed: str, asked: Test | None = None
) -> tuple[ReadOut, ...]:
    """The readings of a line; empty where it names none, or holds a word that is none of theirs.

    `asked`: the test in question: two numbers with a slash are gauges where it is of gauges.
    Raises NotReadOut where all words are known, and a number is none that its reading can have.
    """
    line = " ".join(in_figures(typed.lower()).replace("\u2019", "'").split()).strip(" .!")
    words = _words(knowledge, unit)
    pieces = _pieces(words, line)
    if (two := _two_of(words, pieces, asked)) is not None:
        pieces = two
    if not any(piece.kind == "name" for piece in pieces):
        return ()
    prefixed = pieces[0].kind == "place"
    rows = _rows(pieces, prefixed) or _rows(pieces[::-1], not prefixed)[::-1]
    return tuple(_taken(knowledge, unit, *row) for row in rows)


Words = dict[str, tuple[tuple[Test, ShortWords], ...]]
Row = tuple[_Piece, str, str | None]


def _words(knowledge: Knowledge, unit: Unit) -> Words:
    """The readings of this unit by the words for them."""
    found: Words = {}
    for test in knowledge.tests.values():
        if test.short_words and unit.allows(test.exists_when):
            for short in test.short_words:
                for word in short.words:
                    found[word] = (*found.get(word, ()), (test, short))
    return found


def _pieces(words: Words, line: str) -> list[_Piece]:
    """The line cut at words for readings and at places; what lies between is a value."""
    kinds = sorted({*SPOKEN_KINDS.values(), *SHORT_KINDS}, key=len, reverse=True)
    place = rf"(?:{'|'.join(kinds)})(?: |#| #)?(?:[1-9]|[a-h])(?![\w.])"
    names = "|".join(
        re.escape(word).replace(r"\ ", "[ -]?") for word in sorted(words, key=len, reverse=True)
    )
    pattern = re.compile(rf"{_BESIDE}(?:(?P<place>{place})|(?P<name>{names}){_ENDS})")
    pieces: list[_Piece] = []
    end = 0
    for found in pattern.finditer(line):
        if found["name"] and _is_its_unit(line, found):
            continue
        pieces += _value(line[end : found.start()])
        if found["place"]:
            pieces.append(_Piece("place", found["place"]))
        else:
            meant = _meant(words, found["name"])
            pieces.append(_Piece("name", found["name"], meant))
        end = found.end()
    return [*pieces, *_value(line[end:])]


def _meant(words: Words, name: str) -> tuple[tuple[Test, ShortWords], ...]:
    bare = re.sub(r"[ -]", "", name)
    return tuple(
        each for word, every in words.items() if re.sub(r"[ -]", "", word) == bare for each in every
    )


def _is_its_unit(line: str, found: re.Match[str]) -> bool:
    """Whether a word stands behind a number as its unit: 12 amps, 1040 rpm."""
    return is_unit(found["name"]) and re.search(r"[0-9] ?$", line[: found.start()]) is not None


def _value(text: str) -> Iterator[_Piece]:
    bare = _FILLS_AFTER.sub("", _FILLS_BEFORE.sub("", text))
    if bare:
        yield _Piece("value", bare)


def _two_of(words: Words, pieces: list[_Piece], asked: Test | None) -> list[_Piece] | None:
    """Two numbers, one over the other, as two readings; None where there are no such two."""
    values = [piece for piece in pieces if piece.kind == "value"]
    two = _TWO.fullmatch(values[0].text) if len(values) == 1 else None
    if two is None or (two["unit"] and not is_unit(two["unit"])):
        return None
    names = [piece for piece in pieces if piece.kind == "name"]
    meant = names[0].meant if names else tuple(each for every in words.values() for each in every)
    pairs = {(test.id, short.over): test for test, short in meant if short.over is not None}
    if len(pairs) != 1 or len(names) > 1:
        return None
    (_, over), first = next(iter(pairs.items()))
    others = {test.id: test for every in words.values() for test, _ in every}
    second = others.get(over or "")
    of_gauges = asked is not None and asked.id in (first.id, over)
    if second is None or (two["how"] == "/" and not names and not of_gauges):
        return None
    places = [piece for piece in pieces if piece.kind == "place"]
    row = []
    for test, text in ((first, two["first"]), (second, two["second"])):
        own = next(short for short in test.short_words if short.over is None)
        row += [_Piece("name", own.words[0], ((test, own),)), _Piece("value", text.strip())]
    return [*places[:1], *row] if places else row


def _rows(pieces: Sequence[_Piece], prefixed: bool) -> list[Row]:
    """(words, value, place) of each reading, words first; empty where a piece has no part in it.

    `prefixed`: a place holds for what follows it, else for what came before.
    """
    rows: list[Row] = []
    name: _Piece | None = None
    here: str | None = None
    own: str | None = None
    for piece in pieces:
        if piece.kind == "name":
            if name is not None:
                return []
            name, own = piece, here
        elif piece.kind == "value":
            if name is None or not _BEGINS.match(piece.text):
                return []
            rows.append((name, piece.text, own))
            name = None
        elif name is not None:
            own = piece.text
        elif prefixed:
            here = piece.text
        else:
            rows = [(words, text, at or piece.text) for words, text, at in rows]
    return rows if name is None else []


def _taken(knowledge: Knowledge, unit: Unit, name: _Piece, text: str, at: str | None) -> ReadOut:
    """A reading with the tests that it may be of: by its unit, then by what it can be."""
    why: NotUnderstood | None = None
    fitting: dict[str, tuple[Test, str | None]] = {}
    for test, short in name.meant:
        try:
            typed = read_text(test, text, knowledge)
        except NotUnderstood as error:
            why = why or error
            continue
        bare = typed.values[0].typed_unit is None
        if short.over is None and not (short.with_unit and bare):
            fitting.setdefault(test.id, (test, short.at))
    if not fitting:
        told = f"{why.why}; {why.instead}" if why else "wants its unit with it"
        raise NotReadOut(f'"{name.text} {text}" {told}.')
    likely = [each for each in fitting.values() if doubted(knowledge, each[0], text) is None]
    chosen = likely or [*fitting.values()]
    tests, kinds = zip(*chosen, strict=True)
    return ReadOut(name.text, text, tests, kinds, at)
