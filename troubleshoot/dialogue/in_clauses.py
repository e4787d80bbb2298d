"""An answer in other grammar than the list's: fan's just hummin, won't turn; spins free, no play.

What is said is held clause by clause against the words and the text of each outcome. A clause
speaks for an outcome that holds all of it, and against one that holds what it denies. A word that
no outcome holds and that does not only fill, a clause that fits no outcome, and an outcome that
only a denial is left for are no answer: nothing is taken by the first word that fits.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from troubleshoot.dialogue.clauses import (
    FILLING,
    SOUND,
    Clause,
    Stemmed,
    clauses_of,
    denies_twice,
    plainly,
    said_clauses,
    text_of,
)
from troubleshoot.dialogue.idle_words import names_nothing
from troubleshoot.knowledge.model import Knowledge, Outcome, Test
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.stems import stem
from troubleshoot.safety.hearing.words import raw_words

_NO_ANSWER: Final = re.compile(
    r"[?0-9]|\b(?:be|been|enough|if|may|might|should|used|was|were|would)\b"
)
"""A question, a number, a doubt or another day: none is an answer for its words."""


def by_clauses(
    knowledge: Knowledge,
    test: Test,
    typed: str,
    outcomes: tuple[str, ...],
    beside: frozenset[str] = frozenset(),
) -> tuple[str, ...]:
    """The outcomes that the clauses say, several where the test allows it; empty for none.

    `beside`: words that only say where or how much, besides those that always do.
    """
    said = plainly(typed)
    if _NO_ANSWER.search(said) is not None or denies_twice(said):
        return ()
    lexicon = lexicon_of(knowledge)
    manner = FILLING | beside | {*knowledge.manner}
    offered = [o for o in test.outcomes if o.id in outcomes]
    for stemmed in (_literally, lambda words: lexicon.all_words(" ".join(words))):
        if found := _meant(test, said, offered, manner, stemmed):
            return found
    return ()


def _literally(words: Iterable[str]) -> tuple[str, ...]:
    return tuple(map(stem, words))


def _meant(
    test: Test, typed: str, offered: list[Outcome], manner: frozenset[str], stemmed: Stemmed
) -> tuple[str, ...]:
    own = {w for o in offered for w in raw_words(" ".join((o.spoken, *o.words)))}
    sound = SOUND - own
    texts = {o.id: text_of(o, manner, stemmed) for o in offered}
    telling = {*_literally(own), *stemmed(own)}
    name, said_for_it = raw_words(test.name), raw_words(" ".join(test.words))
    named = {*_literally(said_for_it), *stemmed(said_for_it)} - telling
    names = frozenset({*_literally(name), *stemmed(name), *named})
    if names_nothing(raw_words(typed), names):
        return ()
    told: list[set[str]] = []
    against: set[str] = set()
    for words, denies in said_clauses(typed):
        for clause in clauses_of(words, denies, manner, sound, stemmed):
            if clause.said and clause.said <= names and not clause.sound:
                continue  # it only names what is looked at: the motor, of the motor is not grounded
            for_it = {o for o, text in texts.items() if text.supports(clause, names)}
            if clause.sound and not (for_it := for_it & {*test.healthy}):
                clause = Clause(denied=clause.said)
            denied = {o for o, text in texts.items() if text.contradicts(clause)}
            if not for_it and not denied:
                return ()
            told += [for_it] if for_it else []
            against |= denied
    return _agreed(test, [each - against for each in told])


def _agreed(test: Test, told: list[set[str]]) -> tuple[str, ...]:
    """What all clauses that speak for something agree on; of several things each for itself."""
    if not told or not all(told):
        return ()
    both = set.intersection(*told)
    if len(both) == 1:
        return tuple(both)
    if both or test.choose != "several" or any(len(each) != 1 for each in told):
        return ()
    chosen = set.union(*told)
    return () if chosen & {*test.healthy} else tuple(o.id for o in test.outcomes if o.id in chosen)
