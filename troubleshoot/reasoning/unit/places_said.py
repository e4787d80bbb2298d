"""Places as people say them: comp b, 2nd compressor, c2 contactor, third strip, both.

What they say for a kind of place stands in the rules (`synonyms.yaml`).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.lexicon import raw_words
from troubleshoot.reasoning.unit.places import (
    SPOKEN_KINDS,
    Layout,
    Place,
    PlaceNotUnderstood,
    parse_place,
)

ALL: Final = frozenset({"all", "all of them", "both", "both of them", "each", "every one"})
_MOST_WORDS: Final = 60
"""Of a line in which a place is looked for."""
_MOST: Final = 8
_LETTERS: Final = {letter: str(number) for number, letter in enumerate("abcdefgh", start=1)}
_ORDER: Final = {
    name: str(number)
    for number, name in enumerate(
        ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth"), start=1
    )
}
_ENDINGS: Final = frozenset({"st", "nd", "rd", "th"})

_Numbered = tuple[str, frozenset[int]]
"""A number, and which of the words say it."""


def places_said(
    knowledge: Knowledge, text: str, kind: str | None, layout: Layout
) -> tuple[Place, ...]:
    """The places of a kind that the words name, alone or among others.

    Raises PlaceNotUnderstood where they name one that this unit has not, or none.
    """
    choices = tuple(place for place in layout.places(kind) if place is not None)
    if choices and plain_words(text) in ALL:
        return choices
    refused: list[PlaceNotUnderstood] = []
    for words in (text, *(words for words, _ in _found(knowledge, text))):
        try:
            return parse_place(words, kind, layout)
        except PlaceNotUnderstood as error:
            refused.append(error)
    raise refused[min(1, len(refused) - 1)]


def names_a_place(knowledge: Knowledge, text: str) -> bool:
    """Whether the words name a place by its number."""
    return next(_found(knowledge, text), None) is not None


def spoken_place(knowledge: Knowledge, text: str) -> str:
    """The words of a place as the grammar of places has them; as they are where they name none."""
    return next((words for words, _ in _found(knowledge, text)), text)


def without_number(knowledge: Knowledge, text: str) -> str:
    """The words but for those that say which of several places is meant."""
    _, numbers = next(_found(knowledge, text), ("", frozenset[int]()))
    return " ".join(w for at, w in enumerate(raw_words(text)[:_MOST_WORDS]) if at not in numbers)


def _found(knowledge: Knowledge, text: str) -> Iterator[_Numbered]:
    """Each place that is named by its number, the longest name first, in the grammar's words."""
    words = raw_words(text)[:_MOST_WORDS]
    named = [
        (-len(phrase), -at, kind, number)
        for phrase, kind in _kinds(knowledge)
        for at in range(len(words) - len(phrase) + 1)
        if tuple(words[at : at + len(phrase)]) == phrase
        if (number := _number(words, at, at + len(phrase))) is not None
    ]
    for _, _, kind, number in sorted(named, key=lambda each: each[:2]):
        yield f"{kind} {number[0]}", number[1]


@lru_cache(maxsize=2)
def _kinds(knowledge: Knowledge) -> tuple[tuple[tuple[str, ...], str], ...]:
    """What people say for each kind of place, and the kind."""
    return tuple(
        (tuple(raw_words(said)), spoken)
        for kind, spoken in SPOKEN_KINDS.items()
        for said in (spoken, *knowledge.place_words.get(kind, ()))
    )


def _number(words: Sequence[str], start: int, end: int) -> _Numbered | None:
    """The number of a place that is named from `start` to `end`: behind it, or before."""
    behind = words[end] if end < len(words) else ""
    if _is_number(behind):
        return behind, frozenset({end})
    if behind in _LETTERS and (behind != "a" or end + 1 == len(words)):
        return _LETTERS[behind], frozenset({end})
    before = words[start - 1] if start else ""
    if before in _ORDER:
        return _ORDER[before], frozenset({start - 1})
    if before in _ENDINGS and start > 1 and _is_number(words[start - 2]):
        return words[start - 2], frozenset({start - 2, start - 1})
    if _is_number(before):
        return before, frozenset({start - 1})
    alone = start == 1 and end == len(words)
    return (_LETTERS[before], frozenset({0})) if alone and before in _LETTERS else None


def _is_number(word: str) -> bool:
    return choice(word, _MOST) is not None
