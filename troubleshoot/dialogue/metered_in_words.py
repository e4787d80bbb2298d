"""What the meter shows at a safety step, told in a sentence: still hot on L1, 277.

The two sides are not heard alike. A number past the limit, or a word for what is wrong that nothing
denies, counts whatever else is said; a sound number counts only where every word beside it is known
to take nothing away from it, and where a leg is named, only with the word for all of them.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Outcome, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.hearing.other_matters import names_a_conductor
from troubleshoot.safety.hearing.other_numbers import without_other_numbers
from troubleshoot.safety.hearing.words import (
    clauses,
    denied,
    phrase_words,
    raw_words,
    span,
)
from troubleshoot.safety.stops.numbers_shown import own_units
from troubleshoot.visit.hearing.one_a_leg import NAMED

_PLAIN: Final = frozenset(
    {"ac", "and", "are", "at", "bled", "dc", "get", "getting", "got", "have", "i", "in", "is", "it"}
    | {"its", "me", "meter", "metered", "now", "of", "on", "read", "reading", "reads", "says"}
    | {"show", "showing", "shows", "tested", "the", "there", "they", "three", "to"}
)
"""Words that take nothing away from a number on a meter, whatever it is of."""
_BOUND: Final = r"(?:(?:under|less than|below|over|more than|above|[<>]=?) ?)?"
_NUMBER: Final = re.compile(
    rf"(?<![a-z0-9.,]){_BOUND}(?P<digits>[0-9][0-9.,]*(?<![.,])|\.[0-9]+) ?"
    r"(?P<unit>% ?l[ef]l\b|[a-z%]*)"
)
_ALL: Final = frozenset({"all", "each", "every", "everything", "everywhere"})
_PARTS: Final = frozenset(
    {"ground", "leg", "legs", "line", "lines", "pair", "pairs", "phase", "phases", "pole", "poles"}
    | {"l1", "l2", "l3", "t1", "t2", "t3"}
)
_BESIDE_A_NUMBER: Final = ("no volts",)
"""What is said of a dead circuit, and proves it only with its number."""
_UNITS: Final = frozenset({"ppm", "v", "vac", "vdc", "volt", "volts"})
_OF_OTHER_THINGS: Final = frozenset(
    {"amp", "amps", "burner", "burners", "flame", "flames", "manifold", "pressure", "subcooling"}
    | {"suction", "superheat", "temperature", "tube", "tubes"}
)
"""Of these nobody reads volts: a bare number beside them is of them, and not on the meter."""
_VOLT: Final = "V"
_WARM: Final = re.compile(
    r"\bhot to (?:the )?touch\b|\bnothing (?:is |was )?(?:hot|live|energi[sz]ed)\b"
)
_EVERYWHERE: Final = re.compile(r"\ball (?:(?:the way )?a?round|over)\b")
_POINTS: Final = frozenset(" ,.;:-/!'")


@frozen
class Told:
    """What a sentence tells: the highest number on the meter, and what is named as wrong.

    `plain`: nothing beside them takes anything away from a sound number.
    """

    number: str
    named: tuple[str, ...]
    plain: bool


def told(knowledge: Knowledge, test: Test, typed: str) -> Told:
    """What is told of a step whose number is the worse the higher it is."""
    said = " ".join(typed.lower().split())
    rest = NAMED.sub(" ", without_other_numbers(said))
    read: dict[str, float] = {}
    unread = False
    is_elsewhere = _VOLT in own_units(knowledge, test) and _is_of_other_things(said)
    for found in _NUMBER.finditer(rest):
        is_bare = is_elsewhere and not is_unit(found["unit"])
        number = "" if is_bare else _readable(knowledge, test, found)
        unread = unread or not number or _may_lack_its_unit(number, found)
        if number:
            read[number] = max(leg.value for leg in read_text(test, number, knowledge).values)
    highest = max(read, key=lambda number: read[number], default="")
    named = tuple(o.id for o in test.outcomes if o.id != CONFIRMED[test.id] and _says(o, typed))
    if not named and not _is_sentence(test, said):
        return Told("", (), False)
    return Told(highest, named, not unread and not named and _is_plain(test, said, rest, read))


def _is_of_other_things(said: str) -> bool:
    """Whether a sentence is of another reading than the step's: 3.5 manifold, all 5 flames."""
    words = {*raw_words(said)}
    return not words.isdisjoint(_OF_OTHER_THINGS) and words.isdisjoint(_PARTS | _UNITS)


def _readable(knowledge: Knowledge, test: Test, found: re.Match[str]) -> str:
    """A number as the test reads it; empty where it reads none there, or it is of other things."""
    whole: str = found[0].strip()
    texts = [whole]
    if not _is_of_another_thing(found):
        texts.append(whole.removesuffix(found["unit"]).strip())
    for text in texts:
        try:
            read_text(test, text, knowledge)
        except NotUnderstood:
            continue
        return text
    return ""


def _is_of_another_thing(found: re.Match[str]) -> bool:
    """Whether a unit follows that the test does not read; 277 in one leg is no length."""
    word, after = found["unit"], found.string[found.end() :].split()
    if word == "in" and after and after[0].isalpha():
        return is_unit(f"in {after[0]}")
    return is_unit(word)


def _may_lack_its_unit(number: str, found: re.Match[str]) -> bool:
    """Whether the word behind a number, which was read without it, may yet be its unit: 0 in."""
    return number != found[0].strip() and is_unit(found["unit"])


def _says(outcome: Outcome, typed: str) -> bool:
    """Whether an outcome is named, by its own word or by what people say, and not denied.

    Hot names no volts where it is what a hand feels, or which wire it is; nor does nothing hot.
    """
    phrases = [phrase_words(word) for word in (outcome.spoken, *outcome.words)]
    return any(
        (at := span(clause, phrase)) is not None and not denied(clause, at)
        for clause in clauses(_WARM.sub(" ", typed.lower()), str)
        if not names_a_conductor(clause)
        for phrase in phrases
    )


def _is_sentence(test: Test, said: str) -> bool:
    """Whether more is said than a number and a unit, which may be mistyped: 12 furlongs."""
    beside = {word for word in raw_words(said) if word[0].isalpha()} - _UNITS
    return len(beside) > 1 or bool(beside & _known(test))


def _is_plain(test: Test, said: str, rest: str, read: dict[str, float]) -> bool:
    for number in read:
        rest = rest.replace(number, " ", 1)
    rest = _EVERYWHERE.sub(" all ", rest)
    words = {*raw_words(said)}
    parted = bool(words & _PARTS) and not words & _ALL
    odd = any(not (c.isascii() and c.isalnum()) and c not in _POINTS for c in rest)
    for phrase in sorted(_sound_words(test), key=len, reverse=True):
        rest = re.sub(rf"\b{re.escape(phrase)}\b", " ", rest)
    return not odd and not parted and {*raw_words(rest)} <= _harmless(test)


def _known(test: Test) -> frozenset[str]:
    """The words of a sentence about this step."""
    return _harmless(test) | {*raw_words(" ".join(_sound_words(test)))}


def _harmless(test: Test) -> frozenset[str]:
    """The words that take nothing away from a sound number.

    Those of the sound outcome do so only as they stand in it: no volts, but not: no reading.
    """
    return _PLAIN | _UNITS | _ALL | _PARTS | {*raw_words(test.name)}


def _sound_words(test: Test) -> tuple[str, ...]:
    own = next(o for o in test.outcomes if o.id == CONFIRMED[test.id])
    return (own.spoken, *own.words, *_BESIDE_A_NUMBER)
