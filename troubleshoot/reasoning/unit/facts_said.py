"""Every equipment fact that one answer names: "208 3 phase", "480/3/60", "480 v three phase gas".

All words have to be of some fact, or only fill: what is said of a unit with a word nobody knows may
say the opposite ("not 480"), so nothing of it is taken. Words that several facts share (one, yes,
fitted) name only the fact that is asked for.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.numbers import whole_number
from troubleshoot.reasoning.unit.equipment import tokens_of

Phrase = tuple[str, ...]
Named = tuple[tuple[str, str], ...]

SUPPLY_PHASE: Final = "supply-phase"
LINE_VOLTS: Final = "line-volts-class"
_FILLS: Final = frozenset(
    (
        "v",
        "volt",
        "volts",
        "vac",
        "ac",
        "hz",
        "hertz",
        "and",
        "with",
        "it",
        "is",
        "its",
        "has",
        "a",
        "just",
        "only",
    )
)
_HERTZ: Final = "60"
_PHASES: Final = frozenset({"1", "3"})
_TOGETHER: Final = frozenset({"heat", "fuel"})
"""Facts that the same words settle at once: who burns propane has gas heat."""


def facts_said(knowledge: Knowledge, asked: str, typed: str) -> Mapping[str, str]:
    """The value of each fact that an answer names; empty where a word of it names none.

    `asked`: the fact that the question is about.
    """
    tokens = tuple(tokens_of(typed))
    found: dict[str, str] = {}
    at = 0
    while at < len(tokens):
        size, named = _named_at(knowledge, asked, tokens, at)
        if size == 0:
            return {}
        for fact, value in named:
            if found.setdefault(fact, value) != value:
                return {}
        at += size
    return found


def _named_at(knowledge: Knowledge, asked: str, tokens: Phrase, at: int) -> tuple[int, Named]:
    """How many words from here on name facts, and which; none where the first names nothing."""
    table = _phrases(knowledge)
    for size in range(min(_longest(knowledge), len(tokens) - at), 0, -1):
        phrase = tokens[at : at + size]
        owners = table.get(phrase, ())
        named = _of_the_supply(owners, asked, tokens, at) or _meant(owners, asked, phrase)
        if named:
            return size, named
    fills = tokens[at] in _FILLS or (tokens[at] == _HERTZ and at > 0)
    return int(fills), ()


def _meant(owners: Named, asked: str, phrase: Phrase) -> Named:
    """Of the facts that share these words, those that are meant."""
    facts = {fact for fact, _ in owners}
    if facts == _TOGETHER and len(owners) == len(facts):
        return owners
    for name in (asked, SUPPLY_PHASE if len(phrase) > 1 else ""):
        mine = tuple(each for each in owners if each[0] == name)
        if mine:
            return mine if len(mine) == 1 else ()
    short_number = len(phrase) == 1 and len(phrase[0]) < 3 and whole_number(phrase[0]) is not None
    if short_number or len(owners) != len(facts):
        return ()
    return owners if len(facts) == 1 else ()


def _of_the_supply(owners: Named, asked: str, tokens: Phrase, at: int) -> Named:
    """A phase behind the volts, 230/1/60: the supply's, whatever is asked, and that of the motor.

    Nothing else is meant there: at the number of circuits it is not how many there are.
    """
    phase = dict(owners).get(SUPPLY_PHASE)
    if phase is None or tokens[at] not in _PHASES or not _follows_volts(tokens, at):
        return ()
    return tuple(each for each in owners if each[0] in (SUPPLY_PHASE, asked) and each[1] == phase)


def _follows_volts(tokens: Phrase, at: int) -> bool:
    """Whether volts stand right before, as in 480/3/60."""
    before = [token for token in tokens[:at] if token not in (*_FILLS, _HERTZ)]
    return bool(before) and len(before[-1]) == 3 and whole_number(before[-1]) is not None


@lru_cache(maxsize=2)
def _phrases(knowledge: Knowledge) -> Mapping[Phrase, Named]:
    """Which facts, with which value, each phrase names."""
    found: dict[Phrase, dict[tuple[str, str], None]] = {}
    for fact in knowledge.facts.values():
        for value in fact.values:
            for words in (value, *fact.words.get(value, ())):
                found.setdefault(tuple(tokens_of(words)), {})[(fact.id, value)] = None
    return {phrase: tuple(named) for phrase, named in found.items()}


@lru_cache(maxsize=2)
def _longest(knowledge: Knowledge) -> int:
    return max((len(phrase) for phrase in _phrases(knowledge)), default=0)


def in_words(knowledge: Knowledge, fact: str, value: str) -> str:
    """A fact as it is echoed."""
    return f"{knowledge.spoken(fact)}: {knowledge.spoken(value)}"


def as_typed(value: object) -> str:
    """A value as it was typed; of several places, each with its own."""
    if isinstance(value, Mapping):
        return ", ".join(f"{each} at {place}" for place, each in value.items())
    return str(value)
