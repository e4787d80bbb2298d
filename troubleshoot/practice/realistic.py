"""A realistic number for an outcome: the reading that the rules would call by that word here.

Numbers are tried from the sound one outward, in steps as a meter shows them, until the rules name
the outcome without doubt. So what is shown always agrees with the limits, whatever they are.
"""

from __future__ import annotations

import random
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.practice.sound import SoundUnit
from troubleshoot.practice.texts import sound_text, takes_legs, typed, typed_legs
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.readings import Reading, take_readings
from troubleshoot.reasoning.unit.places import Place

SURE: Final = 0.95
"""A number shows an outcome where the rules give it this chance, the meter's doubt included."""
CHOICES: Final = 3
"""So many of the nearest numbers are drawn from."""

_SHARES: Final = (
    0.97, 1.03, 0.94, 1.06, 0.9, 1.1, 0.86, 1.15, 0.82, 1.2, 0.75, 1.3, 0.66, 1.42, 0.56, 1.55,
    0.45, 1.7, 0.36, 1.9, 0.28, 2.3, 0.2, 2.8, 0.12, 3.5, 0.06, 4.6, 5.2, 7.0, 10.0, 25.0, 60.0,
    120.0, 0.02, 0.005,
)  # fmt: skip
_STEPS: Final = (1, 2, 3, 4, 5, 6, 8, 10, 12, 14, 17, 20, 24, 28, 33, 38, 45, 60, 80)
"""How far from the sound number to look, as shares and as steps of the last digit that matters."""


def free_input(knowledge: Knowledge, test: Test) -> Test | None:
    """The input test whose number is chosen so that a computed test comes out at an outcome."""
    sound = knowledge.sound.get(test.reads[0].quantity) if test.reads else None
    follows = None if sound is None else sound.follows
    found = (t for t in knowledge.tests.values() if t.kind == "input" and t.reads)
    return next((t for t in found if t.reads[0].quantity == follows), None)


def reading_of(
    knowledge: Knowledge, case: Case, test: Test, place: Place | None, answer: Answer
) -> Reading | None:
    """The reading of `test` at `place` once `answer` is added to a case."""
    more = replace(case, answers=(*case.answers, answer))
    readings, _ = take_readings(knowledge, more)
    return next((r for r in readings if (r.test, r.at) == (test.id, place)), None)


def text_showing(
    knowledge: Knowledge,
    sound: SoundUnit,
    case: Case,
    test: Test,
    place: Place | None,
    outcome: str,
    dice: random.Random | None = None,
) -> str:
    """What a test has to read so that the rules call it `outcome`; empty where nothing does."""
    if not test.reads or test.kind == "computed":
        return ""
    return _first_showing(
        knowledge, case, test, place, outcome, test, _texts(knowledge, sound, test, place), dice
    )


def input_showing(
    knowledge: Knowledge,
    sound: SoundUnit,
    case: Case,
    test: Test,
    place: Place | None,
    outcome: str,
    dice: random.Random | None = None,
) -> tuple[str, str] | None:
    """For a computed test: an input test and what it has to read so that `outcome` follows."""
    source = free_input(knowledge, test)
    if source is None:
        return None
    texts = _texts(knowledge, sound, source, place)
    text = _first_showing(knowledge, case, test, place, outcome, source, texts, dice)
    return (source.id, text) if text else None


def _first_showing(
    knowledge: Knowledge,
    case: Case,
    test: Test,
    place: Place | None,
    outcome: str,
    source: Test,
    texts: Iterable[str],
    dice: random.Random | None,
) -> str:
    found: list[str] = []
    for text in texts:
        try:
            read_text(source, text, knowledge)
        except NotUnderstood:
            continue
        at = place if place in case.unit.layout.places(source.per) else None
        answer = Answer(source.id, (), text, (at,))
        reading = reading_of(knowledge, case, test, place, answer)
        if reading is not None and reading.chances.get(outcome, 0.0) >= SURE:
            found.append(text)
            if dice is None or len(found) == CHOICES:
                break
    if not found:
        return ""
    return found[0] if dice is None else dice.choice(found)


def _texts(
    knowledge: Knowledge, sound: SoundUnit, test: Test, place: Place | None
) -> Iterator[str]:
    """Texts to try, the sound one first and then ever farther from it."""
    one = test.reads[0]
    way = sound.shown(one.quantity, place)
    if way is not None and way.wrong:
        yield from (way.shown, *way.wrong)
        return
    usual = sound_text(knowledge, sound, test, place)
    yield from [usual] if usual else []
    unit = one.unit or knowledge.quantities[one.quantity].unit
    number = sound.number(one.quantity, place)
    if number is None:
        return
    if takes_legs(sound, test):
        yield from _legs(number, unit)
    scaled = [number * share for share in _SHARES]
    step = 1.0 if abs(number) >= 2 else 0.1
    moved = [number + sign * step * far for far in _STEPS for sign in (-1, 1)]
    pairs = moved if unit in ("F", "F-diff", "C-diff", "percent-points") else scaled
    yield from (typed(value, unit) for value in pairs)
    yield from (typed(value, unit) for value in (0.0, 100.0, 300.0))
    if unit in ("ohm", "kohm", "Mohm"):
        yield "OL"
    yield from (typed(value, unit) for value in (scaled if pairs is moved else moved))


def _legs(number: float, unit: str) -> Iterator[str]:
    """Three legs that are all wrong alike, one weak, one dead, or stalled on two."""
    for share in _SHARES:
        yield typed_legs([number * share * each for each in (1.0, 0.99, 1.01)], unit)
    for share in (0.93, 0.9, 0.86, 0.8, 0.7, 0.5):
        yield typed_legs([number, number * 1.01, number * share], unit)
    yield typed_legs([number, number * 1.02, 0.0], unit)
    yield typed_legs([0.0, 0.0, 0.0], unit)
