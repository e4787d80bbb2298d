"""Every equipment fact that one answer names: "208 3 phase", "480/3/60", "480 v three phase gas".

All words have to be of some fact, or only fill: what is said of a unit with a word nobody knows may
say the opposite ("not 480"), so nothing of it is taken. Words that several facts share (one, yes,
fitted) name only the fact that is asked for.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.numbers import whole_number
from troubleshoot.reasoning.matching.lexicon import Words, lexicon_of, raw_words
from troubleshoot.reasoning.unit.facts_untold import is_of_another_unit

Named = tuple[tuple[str, str], ...]

SUPPLY_PHASE: Final = "supply-phase"
_FILLS: Final = (
    "v volt volts vac ac hz hertz and with w it is its has have got we i a an the this that on of "
    "in unit old new just only"
)
_SIZES: Final = "kw hp ton compressor bank"
"""What a number counts that is no fact: 18 kW of strips."""
_POINTING: Final = "this that old new"
"""Before "one" they make no number of it."""
_ONE: Final = "one"
_COUNTS: Final = frozenset({_ONE, "two", "three", "four"})
_FANS: Final = "condenser-fans"
_BLOWER_MOTOR: Final = "blower-motor"
"""Right behind the fans a motor is theirs: one cond fan PSC."""
_FANS_THEN_BELT: Final = re.compile(
    r"\b(?:[0-9]|one|two|three|four)(?: cond(?:enser)?)? fans?(?= belt)", re.IGNORECASE
)
_RATHER: Final = re.compile(
    r"(?:no|not|(?:it )?(?:aint|ain't|isnt|isn't)(?: no)?) (?P<denied>[\w -]+?)(?: (?:up )?here)?"
    r"(?:,|;|\.)? ?(?:but |only )?(?:its|it's|it is|thats|that's) (?P<told>.+)",
    re.IGNORECASE,
)
"""One value denied and another told: no gas here, its electric."""
_HERTZ: Final = "60"
_TOGETHER: Final = frozenset({"heat", "fuel"})
"""Facts that the same words settle at once: who burns propane has gas heat."""


def facts_said(knowledge: Knowledge, asked: str, typed: str) -> Mapping[str, str]:
    """The value of each fact that an answer names; empty where a word of it names none.

    `asked`: the fact that the question is about.
    """
    if is_of_another_unit(typed):
        return {}
    if (rather := _RATHER.fullmatch(typed.strip(" .!"))) is not None:
        denied, told = (_all_named(knowledge, asked, rather[n]) for n in ("denied", "told"))
        return told if any(told.get(fact, value) != value for fact, value in denied.items()) else {}
    typed = fans_apart(typed)
    pieces = typed.split(",")
    found = _all_named(knowledge, asked, typed)
    if found or len(pieces) == 1:
        return found
    # what a comma parts may be a word of another fact together: two fans, belt
    return merged(_all_named(knowledge, asked, each) for each in pieces if each.strip())


def fans_apart(typed: str) -> str:
    """The line with a comma between so many fans and the belt behind them: a fan belt is one."""
    return _FANS_THEN_BELT.sub(r"\g<0>,", typed)


def agree(found: Mapping[str, str], said: Mapping[str, str]) -> bool:
    """Whether nothing that is said contradicts what was found."""
    return all(found.get(fact, value) == value for fact, value in said.items())


def merged(each_said: Iterable[Mapping[str, str]]) -> Mapping[str, str]:
    """The facts of all pieces; none where one names none, or two disagree."""
    found: dict[str, str] = {}
    for said in each_said:
        if not said or not agree(found, said):
            return {}
        found.update(said)
    return found


def _all_named(knowledge: Knowledge, asked: str, typed: str) -> Mapping[str, str]:
    language = _language(knowledge)
    words = lexicon_of(knowledge).all_words(typed, language.spelt)
    found: dict[str, str] = {}
    at, last = 0, ""
    while at < len(words):
        size, named = _named_at(language, asked, words, at)
        if size == 0:
            return {}
        if last == _FANS and {fact for fact, _ in named} == {_BLOWER_MOTOR} != {asked}:
            return {}
        last = named[-1][0] if named else last
        for fact, value in named:
            if found.setdefault(fact, value) != value:
                return {}
        at += size
    return found


@frozen
class _Language:
    """`phrases`: which facts, with which value, each names; the rest says nothing of a fact.

    `supposed`: what every unit that the rules know is, which a word shared with another fact does
    not mean unless it is asked for: fixed is the orifice, not the capacity of the compressor.
    """

    phrases: Mapping[Words, Named]
    supposed: frozenset[tuple[str, str]]
    longest: int
    fills: frozenset[str]
    sizes: frozenset[str]
    pointing: frozenset[str]
    spelt: frozenset[str]


@lru_cache(maxsize=2)
def _language(knowledge: Knowledge) -> _Language:
    """The words of all facts of a rule base."""
    lexicon = lexicon_of(knowledge)
    phrases: dict[Words, dict[tuple[str, str], None]] = {}
    spelt = set(lexicon.spelt)
    for fact in knowledge.facts.values():
        for value in fact.values:
            for words in (value, *fact.words.get(value, ())):
                phrases.setdefault(lexicon.all_words(words), {})[fact.id, value] = None
                spelt.update(raw_words(words))
    fills, sizes, pointing = (
        frozenset(lexicon.all_words(words)) for words in (_FILLS, _SIZES, _POINTING)
    )
    return _Language(
        {phrase: tuple(named) for phrase, named in phrases.items()},
        frozenset(
            (fact.id, value)
            for fact in knowledge.facts.values()
            for value in fact.values
            if fact.beyond and value not in fact.beyond
        ),
        max(map(len, phrases), default=0),
        fills, sizes, pointing, frozenset(spelt),
    )  # fmt: skip


def _named_at(language: _Language, asked: str, words: Words, at: int) -> tuple[int, Named]:
    """How many words from here on name facts, and which; none where the first names nothing."""
    here, behind = words[at], words[at + 1] if at + 1 < len(words) else ""
    is_size = (here in _COUNTS or whole_number(here) is not None) and behind in language.sizes
    if is_size or (here in language.pointing and behind == _ONE):
        return 2, ()
    for size in range(min(language.longest, len(words) - at), 0, -1):
        phrase = words[at : at + size]
        owners = language.phrases.get(phrase, ())
        named = _of_the_supply(language, owners, asked, words, at) or _meant(
            language, owners, asked, phrase
        )
        if named:
            return size, named
    return int(here in language.fills or (here == _HERTZ and at > 0)), ()


def _meant(language: _Language, owners: Named, asked: str, phrase: Words) -> Named:
    """Of the facts that share these words, those that are meant."""
    facts = {fact for fact, _ in owners}
    if facts == _TOGETHER and len(owners) == len(facts):
        return owners
    for name in (asked, SUPPLY_PHASE if len(phrase) > 1 else ""):
        mine = tuple(each for each in owners if each[0] == name)
        if mine:
            return mine if len(mine) == 1 else ()
    if others := tuple(each for each in owners if each not in language.supposed):
        owners, facts = others, {fact for fact, _ in others}
    short_number = len(phrase) == 1 and len(phrase[0]) < 3 and whole_number(phrase[0]) is not None
    if short_number or len(owners) != len(facts):
        return ()
    return owners if len(facts) == 1 else ()


def _of_the_supply(language: _Language, owners: Named, asked: str, words: Words, at: int) -> Named:
    """A phase behind the volts, 230/1/60, 208 single: the supply's, whatever is asked, and that of
    the motor that is asked about.

    Nothing else is meant there: at the number of circuits it is not how many there are.
    """
    phase = dict(owners).get(SUPPLY_PHASE)
    if phase is None or not _follows_volts(language, words, at):
        return ()
    return tuple(each for each in owners if each[0] in (SUPPLY_PHASE, asked) and each[1] == phase)


def _follows_volts(language: _Language, words: Words, at: int) -> bool:
    """Whether volts stand right before, as in 480/3/60."""
    before = [word for word in words[:at] if word not in language.fills and word != _HERTZ]
    return bool(before) and len(before[-1]) == 3 and whole_number(before[-1]) is not None


def in_words(knowledge: Knowledge, fact: str, value: str) -> str:
    """A fact as it is echoed."""
    return f"{knowledge.spoken(fact)}: {knowledge.spoken(value)}"


def as_typed(value: object) -> str:
    """A value as it was typed; of several places, each with its own."""
    if isinstance(value, Mapping):
        return ", ".join(f"{each} at {place}" for place, each in value.items())
    return str(value)
