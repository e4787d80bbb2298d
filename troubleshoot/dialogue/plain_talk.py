"""An answer as people talk: iced up solid, all fans turnin good, belt squealin, no sight glass."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.dialogue.by_word import by_word, one_word
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.stems import stem
from troubleshoot.safety.hearing.words import raw_words

_DROPPED_G: Final = re.compile(r"\b([a-z]{3,}(?<!a))in\b")
_LEAST: Final = 3
"""Letters of a word for what is looked at: on and up are of others too."""
_NOT_FITTED: Final = frozenset(
    {"not fitted", "none fitted", "not there", "has none", "there is none", "theres none"}
    | {"does not have one", "doesnt have one", "dont have one", "no such thing"}
)
_ON_IT: Final = re.compile(r" (?:on (?:it|this|this one|this unit)|here|fitted|installed)$")


def by_plain_talk(knowledge: Knowledge, test: Test, typed: str, outcomes: tuple[str, ...]) -> str:
    """The answer left of what was typed without words of manner and of the thing; empty for none.

    Only what is an answer as it stands is left: a denial, a wish or a doubt stays among the words.
    """
    own = _own_words(knowledge, test)
    answers = {one_word(w) for o in test.outcomes for w in (o.id, test.spoken(o.id), *o.words)}
    for said in _without(knowledge, plain_words(typed.replace(",", " ")).split(), own):
        if one_word(said) in answers and by_word(test, said, outcomes, several=False):
            return said
    return ""


def _own_words(knowledge: Knowledge, test: Test) -> set[str]:
    """The stems of the words for what is looked at, and of what people say in their place."""
    names = [test.name.lower(), *test.words]
    for words, said in knowledge.alike.items():
        names += said if words in names[0] else ()
    return {stem(word) for name in names for word in raw_words(name) if len(word) >= _LEAST}


def _without(knowledge: Knowledge, words: list[str], own: set[str]) -> Iterator[str]:
    """What was said with less and less of what says nothing; -in for -ing written out."""
    manner = {*knowledge.manner}
    for wanted in (
        words,
        [word for word in words if word not in manner],
        [word for word in words if stem(word) not in own],
        [word for word in words if word not in manner and stem(word) not in own],
        *([word for word in words if word != left] for left in words if stem(left) in own),
    ):
        said = " ".join(wanted)
        yield said
        yield _DROPPED_G.sub(r"\1ing", said)


def is_not_fitted(test: Test, typed: str) -> bool:
    """Whether somebody says that the unit has no such thing: no sight glass on it, not fitted."""
    said = plain_words(typed.replace("'", ""))
    names = (test.name.partition(",")[0], *test.words)
    none = {f"no {plain_words(name)}" for name in names}
    return said in _NOT_FITTED or _ON_IT.sub("", said) in none
