"""Phrases that are nets: words of a danger that are said in any order, with any words between.

A hazard writes them among its words: `off/open + still + hot/live - discharge`. A sentence is
caught that holds a word of each group, and none behind the minus. A word that denies lets it go,
but where a group names it. A reading comes first: `read:gas-inlet-pressure + gas + inlet` is met by
a number that calls the hazard up, which no word beside it denies.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.safety.hearing.typing_errors import Mend
from troubleshoot.safety.hearing.vocabulary import DENYING
from troubleshoot.safety.hearing.words import Words, clauses, numbers, same, spoken_words

_AND: Final = " + "
_UNLESS: Final = " - "
_SENTENCE: Final = re.compile(r"[.;!?]+(?:\s|$)")
_READING: Final = re.compile(r"read:(?P<quantity>[a-z-]+) \+ ")
_FLUE: Final = frozenset(("flu", "flue-co"))
"""What says that a number was read there, and not in the air that people breathe."""


@frozen
class Net:
    """Groups of words, one of each of which has to be said, and what lets a sentence go.

    `reading`: the quantity of which a number has to be told beside them; empty for none.
    """

    groups: tuple[Words, ...]
    unless: Words
    reading: str = ""

    def catches(self, said: Words) -> bool:
        """Whether a sentence holds what the net is knit for."""
        named = {word for group in self.groups for word in group}
        if not {*said}.isdisjoint(self.unless):
            return False
        if not self.reading and not DENYING & {*said} <= named:
            return False
        if any(map(numbers, self.groups)) and not _FLUE.isdisjoint(said):
            return False
        return all(any(same(w, s) for w in group for s in said) for group in self.groups)

    @property
    def shortest_group(self) -> Words:
        """The group with the fewest words, and no number, which another may meet."""
        return min((each for each in self.groups if not numbers(each)), key=len)


def is_net(words: str) -> bool:
    """Whether words of a hazard are a net, and no phrase."""
    return _AND in words


@lru_cache(maxsize=500)
def net_of(words: str) -> Net:
    """The net that a hazard's words write."""
    read = _READING.match(words)
    groups, _, unless = words[read.end() if read else 0 :].partition(_UNLESS)
    reading = read["quantity"] if read else ""
    return Net(tuple(map(_alternatives, groups.split(_AND))), _alternatives(unless), reading)


def sentences(text: str, mend: Mend) -> tuple[tuple[str, Words], ...]:
    """Each sentence, and its words, all its clauses in one."""
    parts = _SENTENCE.split(text)
    return tuple((said, tuple(_joined(clauses(said, mend)))) for said in parts)


def _joined(said: Iterable[Words]) -> Iterable[str]:
    return (word for clause in said for word in clause)


def _alternatives(group: str) -> Words:
    return tuple(word for each in group.split("/") for word in spoken_words(each, str))
