"""Which test a person means who asks for one in words, and where: `do amps on comp 2`."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import UNHEARD, Heard, Matcher
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place, PlaceNotUnderstood
from troubleshoot.reasoning.unit.places_said import names_a_place, places_said, without_number

MOST: Final = 8
_AT: Final = " at "


def heard_test(knowledge: Knowledge, unit: Unit, words: str) -> Heard:
    """The test on this unit that the words mean, or those that they may mean.

    Nothing where they mean a safety step, whose turn comes by itself, or what this unit has not.
    """
    heard = UNHEARD
    for said in dict.fromkeys(_without_place(knowledge, words)):
        heard = _matcher(knowledge).heard(said, MOST)
        if heard.taken is not None:
            break
    tests = (knowledge.tests[name] for name in (heard.taken, *heard.which) if name is not None)
    here = {test.id for test in tests if test.kind != "step" and unit.allows(test.exists_when)}
    if heard.taken is not None and heard.taken not in here:
        return UNHEARD
    return Heard(heard.taken, tuple(name for name in heard.which if name in here), heard.said)


def places_meant(
    knowledge: Knowledge, unit: Unit, test: Test, words: str
) -> tuple[Place | None, ...]:
    """Where a test is meant to be done; all its places where the words name none.

    Raises PlaceNotUnderstood where they name one that this unit has not.
    """
    _, at, tail = words.rpartition(_AT)
    if at and names_a_place(knowledge, tail):
        return places_said(knowledge, tail, test.per, unit.layout)
    try:
        return places_said(knowledge, words, test.per, unit.layout)
    except PlaceNotUnderstood:
        return unit.layout.places(test.per) or (None,)


def _without_place(knowledge: Knowledge, words: str) -> Iterator[str]:
    """The words as they are, without the place at their end, without its number."""
    yield words
    head, at, tail = words.rpartition(_AT)
    if at and names_a_place(knowledge, tail):
        yield head
    yield without_number(knowledge, words)


@lru_cache(maxsize=2)
def _matcher(knowledge: Knowledge) -> Matcher:
    named = {
        test.id: (test.name, *test.words, plain_words(test.id)) for test in knowledge.tests.values()
    }
    return Matcher(lexicon_of(knowledge), named)
