"""What words say of a unit that lies outside what the rules know: "it's a heat pump"."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import EquipmentFact, Knowledge
from troubleshoot.reasoning.matching.lexicon import NOT, Words, lexicon_of

_CLAUSE: Final = re.compile(r"[,;.!?]+(?:\s|$)|\bbut\b")
_DENIED: Final = f"{NOT}-"
_LEAST: Final = 2
"""Words of a phrase that tells of a unit in passing."""


@frozen
class _Phrase:
    """`is_part`: of a part alone, of which people speak on units that have none."""

    fact: str
    value: str
    words: Words
    is_part: bool


def beyond_said(knowledge: Knowledge, typed: str) -> Mapping[str, str]:
    """The facts of such a kind that are told anywhere in the words, by their values.

    Each by its own words alone: a person may tell it in passing. Where they deny it (not a heat
    pump) it is the value that the rules know. Nothing of what they only name is told.
    """
    return {fact: value for fact, value in _heard(knowledge, typed).items() if value}


def beyond_named(knowledge: Knowledge, typed: str) -> tuple[EquipmentFact, ...]:
    """The facts that are named and not told: by a part (reversing valve), behind a denial."""
    heard = _heard(knowledge, typed)
    return tuple(knowledge.facts[fact] for fact, value in heard.items() if not value)


def _heard(knowledge: Knowledge, typed: str) -> Mapping[str, str]:
    """Every fact that is named, with the value that is told; empty where none is, or two are."""
    lexicon = lexicon_of(knowledge)
    told: dict[str, set[str]] = {}
    for clause in _CLAUSE.split(typed):
        said = lexicon.all_words(clause, lexicon.spelt)
        for phrase in _phrases(knowledge):
            at = _place(said, phrase.words)
            if at is not None:
                is_told = not phrase.is_part and not any(
                    each.startswith(_DENIED) for each in said[:at]
                )
                told.setdefault(phrase.fact, set()).update({phrase.value} if is_told else ())
    return {fact: values.pop() if len(values) == 1 else "" for fact, values in told.items()}


def _place(said: Words, phrase: Words) -> int | None:
    at = (at for at in range(len(said)) if said[at : at + len(phrase)] == phrase)
    return next(at, None)


@lru_cache(maxsize=2)
def _phrases(knowledge: Knowledge) -> tuple[_Phrase, ...]:
    return tuple(p for f in knowledge.facts.values() if f.beyond for p in _of_a_fact(knowledge, f))


def _of_a_fact(knowledge: Knowledge, fact: EquipmentFact) -> Iterator[_Phrase]:
    """Its phrases; of one of its parts are those that units lack which have no such thing."""
    lexicon, name = lexicon_of(knowledge), fact.id.replace("-", " ")
    told = {words for of_value in fact.words.values() for words in of_value}
    for value in fact.values:
        for words in fact.words.get(value, ()):
            phrase = lexicon.all_words(words)
            is_part = f"no {words}" in told and name not in words
            if len(phrase) >= _LEAST:
                yield _Phrase(fact.id, value, phrase, is_part)
