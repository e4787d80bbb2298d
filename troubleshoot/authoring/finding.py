"""Finding what the rules have on something, by words: names first, then whatever speaks of it.

The words count as they do on a visit (`reasoning.matching.lexicon`): endings, words alike, typing
errors. What holds more of what was asked for stands first; of two the one that is called so.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Fault, Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.lexicon import Lexicon, lexicon_of, raw_words

Kind = Literal["call", "fault", "test", "hazard", "procedure", "limit"]

MOST: Final = 12
_LEAST_OF_THE_BEST: Final = 0.6
"""What holds less of the words than this, beside what holds most, is not listed."""
_A_HAIR: Final = 1e-3
_NAMED: Final = 0.5
"""How much more a word counts in a name than in what is told."""


@frozen
class Entry:
    """An entry of the rules. `said`: where the words stand in it, empty where its name has them."""

    kind: Kind
    id: str
    name: str
    said: str = ""


@frozen
class _Text:
    """An entry with its words: of all its names, of each by itself, of each sentence it tells."""

    entry: Entry
    names: frozenset[str]
    called: frozenset[frozenset[str]]
    told: tuple[tuple[str, frozenset[str]], ...]


def find_entries(
    knowledge: Knowledge, words: str, kinds: Sequence[Kind] = (), most: int = MOST
) -> tuple[Entry, ...]:
    """The entries that hold most of the words, the likeliest first; of `kinds`, or of all."""
    texts = _texts(knowledge)
    asked = frozenset(lexicon_of(knowledge).words(words, texts.spelt))
    weights = {word: texts.weight(word) for word in asked if texts.weight(word)}
    found = [
        (score + _A_HAIR * (asked in text.called), text)
        for text in texts.all
        if (not kinds or text.entry.kind in kinds) and (score := _score(text, weights))
    ]
    best = max((score for score, _ in found), default=0.0)
    found = [each for each in found if each[0] >= _LEAST_OF_THE_BEST * best]
    found.sort(key=lambda each: -each[0])
    return tuple(_told_where(text, asked) for _, text in found[:most])


def _score(text: _Text, weights: dict[str, float]) -> float:
    """How much of the words an entry holds, a word of its name counting more."""
    told = frozenset[str]().union(*(words for _, words in text.told))
    named = math.fsum(weight for word, weight in weights.items() if word in text.names)
    held = math.fsum(w for word, w in weights.items() if word in told or word in text.names)
    return held + _NAMED * named - _a_hair(text)


def _a_hair(text: _Text) -> float:
    """Of two as good the one that is called just so stands first, then the shorter name."""
    return _A_HAIR * len(text.names) / 1000


def _told_where(text: _Text, asked: frozenset[str]) -> Entry:
    """The entry, with the sentence that holds most of what its name does not."""
    missing = asked - text.names
    best = max(text.told, key=lambda each: len(missing & each[1]), default=("", frozenset[str]()))
    said = best[0] if missing & best[1] else ""
    return Entry(text.entry.kind, text.entry.id, text.entry.name, said)


class _Texts:
    """All entries with their words, and how rare each word is."""

    def __init__(self, knowledge: Knowledge) -> None:
        lexicon = lexicon_of(knowledge)
        raw = list(_entries(knowledge))
        self.spelt = lexicon.spelt.union(
            *(raw_words(each) for _, names, told in raw for each in (*names, *told))
        )
        self.all = [_worded(lexicon, *each) for each in raw]
        self._met: Counter[str] = Counter()
        for text in self.all:
            self._met.update(text.names.union(*(words for _, words in text.told)))

    def weight(self, word: str) -> float:
        """How much a word tells: the more, the fewer entries hold it; nothing where none does."""
        return math.log(1 + len(self.all) / self._met[word]) if self._met[word] else 0.0


@lru_cache(maxsize=2)
def _texts(knowledge: Knowledge) -> _Texts:
    return _Texts(knowledge)


def _worded(lexicon: Lexicon, entry: Entry, names: list[str], told: list[str]) -> _Text:
    called = frozenset(frozenset(lexicon.words(name)) for name in names)
    names_said = frozenset[str]().union(*called)
    sentences = tuple((each, frozenset(lexicon.words(each))) for each in told if each)
    return _Text(entry, names_said, called, sentences)


def _entries(knowledge: Knowledge) -> Iterator[tuple[Entry, list[str], list[str]]]:
    """Every entry with what it is called, and what else it says."""
    for call in knowledge.complaints.values():
        yield _entry("call", call.id, call.says, call.words, (call.looks,))
    for fault in knowledge.faults.values():
        yield _entry("fault", fault.id, fault.name, fault.words, _told_of_fault(fault))
    for test in knowledge.tests.values():
        yield _entry("test", test.id, test.name, test.words, _told_of_test(test))
    for hazard in knowledge.hazards.values():
        yield _entry("hazard", hazard.id, knowledge.spoken(hazard.id), (), (hazard.what_to_do,))
    for rule in knowledge.procedures.values():
        yield _entry("procedure", rule.id, plain_words(rule.id), (), (rule.reason,))
    for limit in knowledge.limits.values():
        yield _entry("limit", limit.id, plain_words(limit.id), (), (limit.applies_to,))


def _entry(
    kind: Kind, id_: str, name: str, words: Iterable[str], told: Iterable[str]
) -> tuple[Entry, list[str], list[str]]:
    return Entry(kind, id_, name), [name, plain_words(id_), *words], list(told)


def _told_of_fault(fault: Fault) -> Iterator[str]:
    yield from (fault.why, fault.if_left, fault.repair.what)
    yield from (proof.text for proof in fault.proof)
    yield from (example.name for example in fault.examples)


def _told_of_test(test: Test) -> Iterator[str]:
    for outcome in test.outcomes:
        yield f"{outcome.spoken}: {outcome.means}" if outcome.means else outcome.spoken
    yield from (*test.how, test.instrument, *test.invalid_when)
