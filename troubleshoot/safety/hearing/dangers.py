"""Dangers that people report in their own words, and which hazards they are.

The words are the hazards' own. What nobody foresaw is still a danger: it is taken as the hazard
that stands for all others. Nothing here weighs whether it is true.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import lru_cache, partial
from string import digits
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Hazard, Knowledge, Test
from troubleshoot.safety.hearing.at_the_flue import as_asked
from troubleshoot.safety.hearing.burner_lit import as_watched, burns_on
from troubleshoot.safety.hearing.mending import RULE_BASES, mender_of
from troubleshoot.safety.hearing.nets import is_net
from troubleshoot.safety.hearing.netted import netted
from troubleshoot.safety.hearing.other_matters import (
    is_of_another_matter,
    is_taken_out,
    lights_a_burner,
    names_a_thing,
    of_the_flue,
)
from troubleshoot.safety.hearing.unit_words import is_fuel, names_the_unit, without_ignition
from troubleshoot.safety.hearing.vocabulary import FIRE, LOOSE, ON_FIRE, SPARK, THINGS
from troubleshoot.safety.hearing.within_limits import beyond_limits
from troubleshoot.safety.hearing.words import (
    Words,
    alone,
    clauses,
    denied,
    denies,
    has_gap,
    numbers,
    phrase_words,
    raw_words,
    span,
    telling,
)

ANY_DANGER: Final = "danger-reported"
"""The hazard of a danger that no other hazard's words name."""

_OF_THINGS: Final = frozenset(
    phrase_words(word)[0] for word in ("fire", "smoke", "burning", "arcing", "sparks", "explosion")
)
"""Words that are a danger said of whatever thing: the can is smoking."""

_HEAT: Final = "heat"
"""What is kept off by a danger of the burner."""

_ANY_NUMBER: Final = "0"
"""In place of the first word of a phrase that begins with a number."""


@frozen
class _Hit:
    """A phrase of a hazard that was said: in which clause, from which word to which."""

    hazard: Hazard
    phrase: Words
    clause: int
    start: int
    end: int

    def within(self, other: _Hit) -> bool:
        """Whether another phrase says all of this and more, or names a higher number.

        Smoke is smoke, whatever lesser danger is said of it, and words in a gap are their own.
        """
        if has_gap(other.phrase):
            return False
        if self.clause != other.clause or not other.start <= self.start < self.end <= other.end:
            return False
        if other.end - other.start > self.end - self.start:
            stays = len(self.phrase) == 1 and self.phrase[0] in _OF_THINGS
            return not stays or other.hazard.stops_the_job
        return (self.end, numbers(self.phrase)) < (other.end, numbers(other.phrase))


def named(knowledge: Knowledge, words: str) -> tuple[Hazard, ...]:
    """The hazards named by all the words of a phrase, the gravest first; none by a guess."""
    return _hazards(knowledge, _hits(knowledge, words), words)


def spoken_of(knowledge: Knowledge, words: str, *, read: bool = True) -> tuple[Hazard, ...]:
    """The hazards of words that were typed where something else was wanted, the gravest first.

    Only what is said in whole phrases counts, a single word only where it says all; and nothing
    that is denied ("no gas smell"), nor what a plain reading shows to be none. `read`: what a
    reading shows to be a danger counts too.
    """
    heard = partial(said_of, knowledge, read=read)
    return beyond_limits(knowledge, heard(words), words, heard)


def said_of(knowledge: Knowledge, words: str, *, read: bool = True) -> tuple[Hazard, ...]:
    """The same, however low a number is told of them: for part of what was typed."""
    return _hazards(knowledge, _plain_hits(knowledge, words), words, read=read)


def told_at(knowledge: Knowledge, test: Test, typed: str) -> tuple[Hazard, ...]:
    """The hazards of what was typed at a test, which may say what a number is of: 180 ppm."""
    typed = as_asked(test, typed)
    told = spoken_of(knowledge, typed)
    if told or set(typed).isdisjoint(digits):
        return told
    asked = {hazard.id for hazard in spoken_of(knowledge, test.name)}
    heard = spoken_of(knowledge, f"{test.name} {typed}")
    return tuple(hazard for hazard in heard if hazard.id not in asked)


def cried(knowledge: Knowledge, words: str) -> tuple[Hazard, ...]:
    """The same, where words of any kind were wanted: only if they say little else.

    "I smell gas" is a danger there; "found the gas leak at the union and mended it" is an answer.
    """
    hits = _plain_hits(knowledge, words)
    said = list(_clauses(knowledge, words))
    told = {(hit.clause, index) for hit in hits for index in range(hit.start, hit.end)}
    all_told = sum(len(telling(clause)) for clause in said)
    of_danger = sum(
        len(telling(tuple(w for i, w in enumerate(clause) if (number, i) in told)))
        for number, clause in enumerate(said)
    )
    return _hazards(knowledge, hits if 2 * of_danger >= all_told else (), words)


def is_unnamed(knowledge: Knowledge, words: str) -> bool:
    """Whether somebody calls for help, and does not say what is wrong."""
    said = clauses(words, mender_of(knowledge))
    return not said or [hazard.id for hazard in cried(knowledge, words)] == [ANY_DANGER]


def may_be_danger(knowledge: Knowledge, words: str) -> bool:
    """Whether any telling word is one in which dangers are told, but for the names of things."""
    said = {word for clause in clauses(words, mender_of(knowledge)) for word in telling(clause)}
    told = {w for h in knowledge.hazards.values() if h.stop is not None for w in used(h)}
    return bool(said & told - THINGS - LOOSE)


def is_mistyped(knowledge: Knowledge, words: str) -> bool:
    """Whether a danger is seen in these words only because a typing error was seen through."""
    mend = mender_of(knowledge)
    return any(mend(word) != word for word in raw_words(words))


def _hazards(
    knowledge: Knowledge, hits: Iterable[_Hit], words: str, *, read: bool = True
) -> tuple[Hazard, ...]:
    """Each once, the gravest first; what stands for all others only where there is no other.

    None beside one that is told in its place: off the metal, where a machine is on a line. Flames
    by themselves are no fire beside a burner that is told to burn on with no call.
    """
    caught = netted(knowledge, words, read=read)
    is_burner = burns_on(words) and any(hazard.keeps_off == _HEAT for hazard in caught)
    said = [hit.hazard for hit in hits if not (is_burner and hit.phrase == (FIRE,))]
    named = {hazard.id for hazard in (*said, *caught)}
    named -= {other for name in named for other in knowledge.hazards[name].in_place_of}
    found = gravest_first(h for h in knowledge.hazards.values() if h.id in named)
    return tuple(h for h in found if h.id != ANY_DANGER) or found


def _clauses(knowledge: Knowledge, words: str) -> tuple[Words, ...]:
    """What was said, but for what is said of a burner that burns and how the unit lights it."""
    return clauses(without_ignition(knowledge, as_watched(words)), mender_of(knowledge))


def _hits(knowledge: Knowledge, words: str) -> list[_Hit]:
    """Every phrase that was said and is not denied, but for those within longer ones."""
    said = _clauses(knowledge, words)
    hits = [
        _Hit(hazard, phrase, number, *at)
        for number, clause in enumerate(said)
        for hazard, phrase in _beginning_with(knowledge, clause)
        if (at := span(clause, phrase)) is not None
        and _is_said(clause, phrase, at)
        and not (is_fuel(clause) and names_the_unit(knowledge, said))
        and not is_taken_out(phrase, clause, said[number + 1 :])
    ]
    return [hit for hit in hits if not any(hit.within(other) for other in hits)]


def _is_said(clause: Words, phrase: Words, at: tuple[int, int]) -> bool:
    if (
        denied(clause, at)
        or of_the_flue(clause, phrase)
        or is_of_another_matter(clause, phrase, at)
    ):
        return False
    if len(phrase) == 1 and names_a_thing(clause, at):
        return False
    return not denies(phrase) or alone(clause, at, of_things=True)


def _plain_hits(knowledge: Knowledge, words: str) -> list[_Hit]:
    """Those that are a danger even where something else was wanted.

    A phrase is; a single word only where nothing is said beside it but more dangers.
    """
    said = _clauses(knowledge, words)
    hits = _hits(knowledge, words)
    return [
        hit
        for hit in hits
        if len(hit.phrase) > 1 or hit.phrase == (ON_FIRE,) or _says_all(said, hit, hits)
    ]


def _says_all(said: tuple[Words, ...], hit: _Hit, hits: Iterable[_Hit]) -> bool:
    of_things = hit.phrase[0] in _OF_THINGS
    clause = said[hit.clause]
    if hit.phrase[0] == SPARK and lights_a_burner(said, clause):
        return False
    told = [w for h in hits if h.clause == hit.clause for w in clause[h.start : h.end]]
    at = (hit.start, hit.end)
    return (of_things or len(said) == 1) and alone(clause, at, of_things, tuple(told))


def _beginning_with(knowledge: Knowledge, clause: Words) -> Iterator[tuple[Hazard, Words]]:
    """The phrases that may be said there: a number may be met by another."""
    by_first = _by_first_word(knowledge)
    also = (FIRE,) if ON_FIRE in clause else ()
    for first in {*clause, *also, _ANY_NUMBER}:
        yield from by_first.get(first, ())


def phrases(knowledge: Knowledge) -> Iterator[tuple[Hazard, Words]]:
    """Every phrase of a hazard that stops, by its words."""
    for hazard in knowledge.hazards.values():
        for phrase in hazard.words if hazard.stop is not None else ():
            if not is_net(phrase):
                yield hazard, phrase_words(phrase)


@lru_cache(maxsize=RULE_BASES)
def _by_first_word(knowledge: Knowledge) -> Mapping[str, tuple[tuple[Hazard, Words], ...]]:
    found: dict[str, tuple[tuple[Hazard, Words], ...]] = {}
    for hazard, phrase in phrases(knowledge):
        first = _ANY_NUMBER if numbers(phrase[:1]) else phrase[0]
        found[first] = (*found.get(first, ()), (hazard, phrase))
    return found


def used(hazard: Hazard) -> frozenset[str]:
    """The telling words of a hazard's phrases."""
    phrases = (phrase_words(words) for words in hazard.words if not is_net(words))
    return frozenset(word for phrase in phrases for word in telling(phrase))
