"""Readings as gauges are read out: suction 128 liquid 340 sl 62, 128 over 340, return 78 supply 58.

The words stand with their tests; the unit typed and what the number can be tell two readings of one
word apart, and what they do not tell is left to be asked. Words that are understood by nothing here
may take back what others say: they are handed on beside the readings, and nobody takes those
without asking.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import zip_longest
from string import digits
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, ShortWords, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.reasoning.readings.doubted import doubted
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.superseded import inputs_of
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.visit.hearing.places_told import Row, at_their_places, row_of
from troubleshoot.visit.hearing.short_words import (
    NUMBER,
    Piece,
    Words,
    by_place,
    pieces_of,
    plain,
    without_fills,
    words_here,
)
from troubleshoot.visit.hearing.two_numbers import with_pairs

_A_NUMBER: Final = re.compile(rf"(?<![\w.,]){NUMBER}")
_WISHED: Final = re.compile(r"\b(?:should|shouldn'?t|supposed|ought|would be|wanted|target)\b")
NOT_READ_YET: Final = "What should be is no reading: give what the instrument shows, or note WORDS."

_COUNTED: Final = re.compile(
    r"(?:(?:attempt|blink|ph|phase|start|time|trial)s?|flash(?:es)?|try|tries)\b"
)
"""What a number may count that is no reading: no flame, 3 tries."""


@frozen
class ReadOut:
    """One reading of a line: the words for it, its number, and the tests that it may be of.

    `kinds`: the kind of place that the words name, for each test. `at`: the place in the words that
    were typed. `plate`: what the plate says of it, as it was typed. No words: that which is asked.
    """

    words: str
    text: str
    tests: tuple[Test, ...]
    kinds: tuple[str | None, ...]
    at: str | None = None
    plate: str = ""


@frozen
class Line:
    """The readings of a line, what else stands in it, and why what looks like one is none."""

    readings: tuple[ReadOut, ...] = ()
    unread: tuple[str, ...] = ()
    why: str = ""


def read_out(knowledge: Knowledge, unit: Unit, typed: str, asked: Test | None = None) -> Line:
    """The readings of a line. `asked`: the test in question, whose number needs no word."""
    line, words = plain(typed), words_here(knowledge, unit)
    if _WISHED.search(line):
        return Line(why=NOT_READ_YET)
    pieces = pieces_of(words, line)
    found = _told_of(typed, _Cut(knowledge, words, with_pairs(words, pieces, asked)).line())
    if found.readings or asked is None or not asked.reads:
        return found
    for test in (asked, *_inputs_of(knowledge, unit, asked)):
        own = _of_the_question(knowledge, test, pieces, with_unit=test is not asked)
        if own is not None and _told_of(typed, own).readings:
            return own
    return found


def _told_of(typed: str, line: Line) -> Line:
    """The line, but for a bare number word among words of no reading: one lead is broken."""
    spelt = not set(typed) & {*digits} and all(len(one.text) == 1 for one in line.readings)
    return replace(line, readings=()) if spelt and line.unread else line


def _inputs_of(knowledge: Knowledge, unit: Unit, asked: Test) -> Iterator[Test]:
    """The tests of what the number asked for is computed from: 340 psi for condensing."""
    names = inputs_of(knowledge, [asked.reads[0].quantity])
    for test in knowledge.tests.values():
        if test.short_words and test.reads[0].quantity in names and unit.allows(test.exists_when):
            yield test


class _Cut:
    """The pieces of a line, put together again to readings."""

    def __init__(self, knowledge: Knowledge, words: Words, pieces: list[Piece]) -> None:
        self.knowledge = knowledge
        self.words = words
        self.pieces = pieces
        self.why = ""

    def line(self) -> Line:
        """Words before their values, or behind them: whichever leaves the least unread.

        Where both leave as much, as the line begins: -0.30 at the switch, -0.95 at the inducer.
        """
        told = [piece for piece in self.pieces if piece.kind != "plate"]
        ways = [self._rows(told), self._rows(told[::-1])]
        if any(piece.kind == "value" for piece in told[:1]):
            ways = ways[::-1]
        rows, unread = max(ways, key=lambda way: (len(way[0]), -len(way[1])))
        rows = at_their_places(told, sorted(rows, key=lambda row: row.last))
        readings = [(row, self._judged(row)) for row in rows]
        likely = [each for row, each in readings if self._is_likely(each)]
        if likely and len(likely) < len(readings):
            odd = [each for _, each in readings if each not in likely]
            unread += [f"{each.words} {each.text}" for each in odd]
            readings = [(row, each) for row, each in readings if each in likely]
        taken, left = self._with_plates(readings)
        unread = [text for text in (*unread, *left) if not _says_no_more(taken, text)]
        return Line(taken, tuple(dict.fromkeys(unread)), self.why)

    def _rows(self, pieces: Sequence[Piece]) -> tuple[list[Row], list[str]]:
        """Names with the values that follow them, and what is left."""
        rows: list[Row] = []
        unread: list[str] = []
        name: Piece | None = None
        own: Piece | None = None
        for piece, after in zip_longest(pieces, pieces[1:]):
            if piece.kind == "name":
                unread += [] if name is None else [name.text]
                name, own = piece, None
            elif piece.kind in ("value", "reading"):
                if piece.kind == "reading":
                    unread += [] if name is None else [name.text]
                    name, own = replace(piece, text=piece.words), None
                text, rest = ("", piece.text) if name is None else self._number(name, piece, rows)
                unread += [rest] if rest else []
                if name is not None and text:
                    rows.append(row_of(name, piece, text, own))
                elif name is not None:
                    unread.append(name.text)
                name = None
            elif name is not None:
                own = piece
            elif after is not None and after.kind == "value" and by_place(self.words, piece.text):
                name, own = replace(piece, meant=by_place(self.words, piece.text)), piece
        return rows, unread + ([] if name is None else [name.text])

    def _number(self, name: Piece, value: Piece, before: list[Row]) -> tuple[str, str]:
        """The most of a value that is a reading of that name, and the rest of it."""
        words = value.text.split()
        for size in range(len(words), 0, -1):
            text, rest = " ".join(words[:size]).rstrip(",;"), words[size:]
            if rest and _is_counted_in(rest[0]):
                continue
            for told in (text, _with_unit_of(before, name, text)):
                if told and self._reads(name, told):
                    return told, without_fills(" ".join(rest))
        return "", value.text

    def _reads(self, name: Piece, text: str) -> bool:
        return any(self._fits(test, short, text) for test, short in name.meant)

    def _fits(self, test: Test, short: ShortWords, text: str) -> bool:
        if short.over or short.out:
            return False
        try:
            leg = read_text(test, text, self.knowledge).values[0]
        except NotUnderstood as error:
            self.why = self.why or f'"{text}" {error.why}; {error.instead}.'
            return False
        return not short.with_unit or leg.typed_unit is not None or leg.over_range

    def _judged(self, row: Row) -> ReadOut:
        """A reading with the tests that it may be of: by its unit, then by what it can be."""
        fitting = {
            test.id: (test, short.at)
            for test, short in reversed(row.name.meant)
            if self._fits(test, short, row.text)
        }
        every = [*reversed(fitting.values())]
        likely = [each for each in every if doubted(self.knowledge, each[0], row.text) is None]
        tests, kinds = zip(*(likely or every), strict=True)
        return ReadOut(row.name.text, row.text, tests, kinds, row.at)

    def _is_likely(self, one: ReadOut) -> bool:
        return any(doubted(self.knowledge, test, one.text) is None for test in one.tests)

    def _with_plates(
        self, readings: list[tuple[Row, ReadOut]]
    ) -> tuple[tuple[ReadOut, ...], list[str]]:
        """What the plate says goes with the reading before it; the rest is left."""
        left: list[str] = []
        for plate in (piece for piece in self.pieces if piece.kind == "plate"):
            before = [at for at, (row, _) in enumerate(readings) if row.last < plate.nth]
            if before:
                row, one = readings[before[-1]]
                readings[before[-1]] = (row, replace(one, plate=plate.text))
            else:
                left.append(plate.text)
        return tuple(one for _, one in readings), left


def _says_no_more(taken: Sequence[ReadOut], text: str) -> bool:
    """Whether all words of a piece are words for a reading that was understood: 1.25 in total."""
    own = {
        word
        for one in taken
        for test in one.tests
        for words in (test.name.lower(), *(w for short in test.short_words for w in short.words))
        for word in words.replace(",", " ").split()
    }
    return bool(text) and own.issuperset(text.split())


def _is_counted_in(word: str) -> bool:
    """Whether a word behind a number says what it is of, so that it is of nothing else: 0.4 ohm."""
    return is_unit(word.rstrip(",;.:")) or _COUNTED.match(word) is not None


def _with_unit_of(before: list[Row], name: Piece, text: str) -> str:
    """A bare number with the unit of one of the same kind before it: comp 1 12 amps comp 2 18."""
    tests = {test.id for test, _ in name.meant}
    for row in reversed(before):
        unit = re.sub(r"^[-+0-9., ]+", "", row.text)
        if unit and tests == {test.id for test, _ in row.name.meant} and text[-1:] in digits:
            return f"{text} {unit}"
    return ""


def _of_the_question(
    knowledge: Knowledge, asked: Test, pieces: list[Piece], *, with_unit: bool = False
) -> Line | None:
    """The number that is asked for, where it is the only reading of a line, and the rest of it.

    `with_unit`: only where its unit was typed.
    """
    whole = " ".join(piece.text for piece in pieces if piece.kind != "plate")
    numbers = [*_A_NUMBER.finditer(whole)]
    if not numbers:
        return None
    before, words = whole[: numbers[0].start()], whole[numbers[0].start() :].split()
    for size in range(len(words), 0, -1):
        text, rest = " ".join(words[:size]).rstrip(",;"), words[size:]
        try:
            legs = read_text(asked, text, knowledge).values
        except NotUnderstood:
            continue
        if with_unit and legs[0].typed_unit is None:
            return None
        if rest and (_is_counted_in(rest[0]) or _A_NUMBER.search(" ".join(rest))):
            return None
        plate = next((piece.text for piece in pieces if piece.kind == "plate"), "")
        taken = (ReadOut("", text, (asked,), (None,), plate=plate),)
        unread = (without_fills(before), without_fills(" ".join(rest)))
        return Line(taken, tuple(t for t in unread if t and not _says_no_more(taken, t)))
    return None
