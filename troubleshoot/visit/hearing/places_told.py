"""Which place of a line each of its readings is at: c1 128 over 385 c2 82 over 290, head 340 c2."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from troubleshoot.frozen import frozen
from troubleshoot.visit.hearing.short_words import Piece


@frozen
class Row:
    """A name with its value, and the pieces of the line from which to which they stand.

    `at`: the place that stands with them, as it was typed.
    """

    name: Piece
    text: str
    at: str | None
    first: int
    last: int


def row_of(name: Piece, value: Piece, text: str, at: Piece | None) -> Row:
    """The row of a name and what was read behind it or before it, and its own place."""
    ends = [each.nth for each in (name, value, at) if each is not None]
    return Row(name, text, None if at is None else at.text, min(ends), max(ends))


def at_their_places(pieces: Sequence[Piece], rows: Sequence[Row]) -> list[Row]:
    """The rows, each at the place that speaks for it.

    A place holds for what follows it; where the line ends in one, or readings that could have one
    stand before the first, it holds for what came before it.
    """
    taken = [range(row.first, row.last + 1) for row in rows]
    places = [
        piece
        for piece in pieces
        if piece.kind == "place" and not any(piece.nth in each for each in taken)
    ]
    if not places:
        return [*rows]
    if _are_before(pieces, places, rows):
        return [_at(row, [p for p in places if p.nth < row.first][-1:]) for row in rows]
    return [_at(row, [p for p in places if p.nth > row.last][:1]) for row in rows]


def _are_before(pieces: Sequence[Piece], places: Sequence[Piece], rows: Sequence[Row]) -> bool:
    """Whether the places of a line stand before what they hold for."""
    if pieces[0] is places[0] or pieces[-1] is places[-1]:
        return pieces[0] is places[0]
    first = [row for row in rows if row.last < places[0].nth]
    return all(test.per is None for row in first for test, _ in row.name.meant)


def _at(row: Row, places: Sequence[Piece]) -> Row:
    return replace(row, at=places[0].text) if places and row.at is None else row
