"""A list of what a data plate says: the facts of it, and what of it is not understood."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.matching.lexicon import raw_words
from troubleshoot.reasoning.unit.facts_said import agree, facts_said, fans_apart, merged
from troubleshoot.reasoning.unit.facts_untold import is_doubted, is_of_another_unit

STAMPED: Final = 3
"""How many facts at least are a data plate read out, of which the rest may be left."""
MOST: Final = 40
"""Words of a data plate read out in one breath."""
_RATED: Final = "cooling-tons"
_TONS: Final = re.compile(r"(?<![\d./-])\d+(?:\.\d+)?[ -]?tons?\b", re.IGNORECASE)
_MAY_DENY: Final = frozenset(
    {"no", "not", "none", "never", "without", "was", "were", "maybe", "think", "if", "or"}
    | {"aint", "isnt"}
)
"""Beside these, what is said of a unit may be its opposite."""


def facts_listed(
    knowledge: Knowledge, asked: str, typed: str
) -> tuple[Mapping[str, str], tuple[str, ...]]:
    """The facts of a list, and the pieces that name none; no facts where two of them disagree.

    A piece is taken whole or not at all: what is said with a word nobody knows may be the opposite.
    None that is told in doubt is taken, and nothing beside the name of another unit.
    Only a data plate read out without commas is taken fact by fact.
    """
    if is_of_another_unit(typed):
        return {}, (typed,)
    typed = fans_apart(typed)
    pieces = [piece.strip() for piece in typed.split(",") if piece.strip()]
    doubted = {piece for n, piece in enumerate(pieces) if is_doubted(pieces, n)}
    if not doubted and (whole := facts_said(knowledge, asked, typed)):
        return {**whole, **rated_cooling(knowledge, typed)}, ()
    each = {
        piece: ({}, (piece,)) if piece in doubted else _of_a_piece(knowledge, asked, piece)
        for piece in pieces
    }
    left = (words for said, words in each.values())
    found = merged(said for said, _ in each.values() if said)
    rated = rated_cooling(knowledge, typed) if found else {}
    return {**found, **rated}, tuple(p for ps in left for p in ps)


def rated_cooling(knowledge: Knowledge, typed: str) -> Mapping[str, str]:
    """The rated cooling that is told: 10 tons. Beside facts alone, where nobody asks for it."""
    told = {*_TONS.findall(typed)}
    return {_RATED: told.pop()} if len(told) == 1 and _RATED in knowledge.plate_values else {}


def _of_a_piece(
    knowledge: Knowledge, asked: str, piece: str
) -> tuple[Mapping[str, str], tuple[str, ...]]:
    """The facts of one piece, and what of it is not understood."""
    if said := facts_said(knowledge, asked, piece):
        return said, ()
    found: dict[str, str] = {}
    left: list[str] = []
    words = piece.split()
    if len(words) > MOST or not _begun(knowledge, asked, words)[0]:
        return {}, (piece,)
    while words:
        named, size = _begun(knowledge, asked, words)
        # the word at which the facts end is of none of them, or contradicts one
        behind = words[size : size + 1]
        if not agree(found, named):
            return {}, (piece,)
        found.update(named)
        if not agree(found, facts_said(knowledge, asked, " ".join(behind))):
            return {}, (piece,)
        left += behind
        words = words[size + 1 :]
    denies = not _MAY_DENY.isdisjoint(raw_words(" ".join(left)))
    is_plate = STAMPED <= len(found) > len(left) and not denies
    return (found, tuple(left)) if is_plate else ({}, (piece,))


def _begun(knowledge: Knowledge, asked: str, words: list[str]) -> tuple[Mapping[str, str], int]:
    """The facts of as many words as name some together, and how many those are."""
    for size in range(len(words), 0, -1):
        if named := facts_said(knowledge, asked, " ".join(words[:size])):
            return named, size
    return {}, 0
