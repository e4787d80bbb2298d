"""What words say of a unit that lies outside what the rules know: "it's a heat pump"."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.matching.lexicon import Words, lexicon_of


def beyond_said(knowledge: Knowledge, typed: str) -> Mapping[str, str]:
    """The facts of such a kind that are named anywhere in the words, by their values.

    Each by its own words alone, and not where they deny it: a person may tell it in passing.
    """
    lexicon = lexicon_of(knowledge)
    said = lexicon.all_words(typed, lexicon.spelt)
    found: dict[str, str] = {}
    for fact, value, phrase in _phrases(knowledge):
        if any(said[at : at + len(phrase)] == phrase for at in range(len(said))):
            found.setdefault(fact, value)
    return found


@lru_cache(maxsize=2)
def _phrases(knowledge: Knowledge) -> tuple[tuple[str, str, Words], ...]:
    return tuple(_all_phrases(knowledge))


def _all_phrases(knowledge: Knowledge) -> Iterator[tuple[str, str, Words]]:
    lexicon = lexicon_of(knowledge)
    for fact in knowledge.facts.values():
        for value in fact.beyond:
            for words in fact.words.get(value, ()):
                if len(phrase := lexicon.all_words(words)) > 1:
                    yield fact.id, value, phrase
