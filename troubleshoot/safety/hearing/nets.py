"""Phrases that are nets: words of a danger that are said in any order, with any words between.

A hazard writes them among its words: `off/open + still + hot/live - discharge`. A sentence is
caught that holds a word of each group, and none behind the minus. A word that denies lets it go,
but where a group names it.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.safety.hearing.vocabulary import DENYING
from troubleshoot.safety.hearing.words import Mend, Words, clauses, numbers, same, spoken_words

_AND: Final = " + "
_UNLESS: Final = " - "
_SENTENCE: Final = re.compile(r"[.;!?]+(?:\s|$)")
_FLUE: Final = frozenset(("flu", "flue-co"))
"""What says that a number was read there, and not in the air that people breathe."""


@frozen
class Net:
    """Groups of words, one of each of which has to be said, and what lets a sentence go."""

    groups: tuple[Words, ...]
    unless: Words

    def catches(self, said: Words) -> bool:
        """Whether a sentence holds what the net is knit for."""
        named = {word for group in self.groups for word in group}
        if not {*said}.isdisjoint(self.unless) or not DENYING & {*said} <= named:
            return False
        if any(map(numbers, self.groups)) and not _FLUE.isdisjoint(said):
            return False
        return all(any(same(w, s) for w in group for s in said) for group in self.groups)


def is_net(words: str) -> bool:
    """Whether words of a hazard are a net, and no phrase."""
    return _AND in words


@lru_cache(maxsize=500)
def net_of(words: str) -> Net:
    """The net that a hazard's words write."""
    groups, _, unless = words.partition(_UNLESS)
    return Net(tuple(map(_alternatives, groups.split(_AND))), _alternatives(unless))


def sentences(text: str, mend: Mend) -> tuple[Words, ...]:
    """The words of each sentence, all its clauses in one."""
    return tuple(tuple(_joined(clauses(said, mend))) for said in _SENTENCE.split(text))


def _joined(said: Iterable[Words]) -> Iterable[str]:
    return (word for clause in said for word in clause)


def _alternatives(group: str) -> Words:
    return tuple(word for each in group.split("/") for word in spoken_words(each, str))
