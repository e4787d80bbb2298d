"""Fuel and ignition of a unit, told in a row of its facts or beside a call: no heat, gas, spark."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from itertools import groupby, pairwise
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.numbers import whole_number
from troubleshoot.safety.hearing.call_words import besides_the_call
from troubleshoot.safety.hearing.mending import RULE_BASES, mender_of
from troubleshoot.safety.hearing.vocabulary import stems
from troubleshoot.safety.hearing.words import (
    Words,
    clauses,
    phrase_words,
    span,
    spoken_words,
)

FUELS: Final[frozenset[Words]] = frozenset(
    phrase_words(fuel) for fuel in ("gas", "natural gas", "propane", "propane gas", "gas heat")
)
"""What burns in a unit, or what is in the air."""

_OF_THE_FUEL: Final = frozenset({"heat", "fuel"})
_ALONE: Final = stems(
    "txv tev scroll psc ecm vfd dsi hsi belt piston orifice microchannel economizer"
)
"""Words that tell what a unit is made of though they stand by themselves."""

_VOLTS: Final = 100
"""From here on a number by itself is the volts of a data plate."""

_OF_NOTHING_ELSE: Final = stems("hot smoke detector spark leg all")
"""With one of these a danger may be told as well."""

_CALLING: Final = stems(
    "all bad everybody everywhere evacuate help hiss hissing i it leak leaking me out over people "
    "sick smell smells strong us we"
)
"""With one of these in a row of facts the fuel is what is in the air."""
_HOW_LONG: Final = tuple(
    phrase_words(said) for said in ("all day", "when it is hot", "when it is cold", "when it rains")
)
"""How long it runs, or in which weather, and nothing that is all gas."""
_NO: Final = phrase_words("no")
_DETECTOR: Final = stems("detector smok duct")
_AND: Final = "and"

_GOING: Final = stems("goes going went cuts cutting dropping drops kicks kicking burns")
_OUT: Final = "out"
_BURNER: Final = stems("burner burners flame heat heater furnace pilot")
"""What goes out, and calls nobody out."""
_ROW: Final = re.compile(r"([,;.](?:\s+|$))")
_IGNITION: Final = "spark"
"""By itself a fact; sparks and sparking are what is seen."""
_ARCING: Final = stems(
    "arc bang black blue board box breaker burning burnt buzz buzzing chatter chatters cabinet "
    "contactor cover disconnect door explosion fire flash flying fuse glowing hum jumping loud lug "
    "melted motor open panel plug pop popping shower smell smoke sparking switch terminal "
    "transformer wire wires wiring zap"
)
"""Anywhere in the row they say that the spark is an arc."""


def without_ignition(knowledge: Knowledge, text: str) -> str:
    """A line without the ignition that a row of facts or a call of the burner names: spark, gas.

    The fuel that it lights goes with it. Whole where a word may tell of an arc, or calls for help.
    """
    parts = _ROW.split(text)
    if not any(map(_is_ignition, parts)):
        return text
    left = "".join("" if _is_ignition(part) or _names_fuel(part) else part for part in parts)
    said = clauses(left, mender_of(knowledge))
    if any(not _ARCING.isdisjoint(clause) for clause in said):
        return text
    is_told = any(map(_goes_out, said)) and not any(map(_calls, said))
    return left if is_told or names_the_unit(knowledge, said) else text


def _is_ignition(part: str) -> bool:
    return part.strip().lower() == _IGNITION


def _names_fuel(part: str) -> bool:
    return is_fuel(spoken_words(part, str))


def is_fuel(clause: Words) -> bool:
    """Whether a clause is a fuel, or fuels, and nothing else: gas and natural gas."""
    parts = tuple(_parts(clause))
    return parts != () and all(each in FUELS for each in parts)


def names_the_unit(knowledge: Knowledge, said: tuple[Words, ...]) -> bool:
    """Whether the rest of a row tells what a unit is made of or what ails it, and no more."""
    others = [clause for clause in said if not is_fuel(clause)]
    beside = [besides_the_call(knowledge, clause) for clause in others]
    told = _fact_words(knowledge)
    known = any(span(clause, phrase) is not None for clause in others for phrase in told)
    has_none = any(clause[:1] == _NO and _DETECTOR & {*clause} for clause in others)
    return (known or has_none or beside != others) and not any(map(_calls, beside))


def _parts(clause: Words) -> Iterator[Words]:
    for is_and, words in groupby(clause, _AND.__eq__):
        if not is_and:
            yield tuple(words)


def _calls(clause: Words) -> bool:
    """Whether a clause has a word by which people call for help or tell of what is in the air."""
    for phrase in _HOW_LONG:
        clause = _without(clause, span(clause, phrase))
    if _goes_out(clause):
        clause = tuple(word for word in clause if word != _OUT)
    return not _CALLING.isdisjoint(clause)


def _goes_out(clause: Words) -> bool:
    """Whether it tells that the burner goes out, and nobody else: heat cuts out."""
    is_of_it = not _BURNER.isdisjoint(clause) and clause.count(_OUT) == 1
    return is_of_it and any(a in _GOING and b == _OUT for a, b in pairwise(clause))


def _without(clause: Words, at: tuple[int, int] | None) -> Words:
    return clause if at is None else (*clause[: at[0]], *clause[at[1] :])


@lru_cache(maxsize=RULE_BASES)
def _fact_words(knowledge: Knowledge) -> tuple[Words, ...]:
    """The values of every fact but the fuel's own, in words that no call for help has."""
    facts = (fact for fact in knowledge.facts.values() if fact.id not in _OF_THE_FUEL)
    said = (each for f in facts for v in f.values for each in (v, *f.words.get(v, ())))
    found = dict.fromkeys(phrase_words(each) for each in said)
    return tuple(words for words in found if _is_of_a_unit(words))


def _is_of_a_unit(words: Words) -> bool:
    if len(words) == 1:
        return words[0] in _ALONE or (whole_number(words[0]) or 0) >= _VOLTS
    return _OF_NOTHING_ELSE.isdisjoint(words)
