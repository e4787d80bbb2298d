"""What the apprentice expects a sound unit to read, held against the rules' own limits.

Scored softly: it never costs the scenario, it only shows where the limits are not yet known.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.practice.session import Session
from troubleshoot.practice.texts import SPOKEN, sound_text
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.places import Place

Nearness = Literal["close", "near", "off", "not-said"]

NEAR: Final = 0.15
"""A guess outside the band by this share of the limit is still near."""
_NUMBERS: Final = re.compile(r"-?[0-9]{1,9}(?:\.[0-9]{1,9})?")
_RANGE: Final = re.compile(r"(?<=[0-9])\s*(?:-|to)\s*(?=[0-9])")


@frozen
class Band:
    """What a sound unit reads; an end that is open is None.

    `of`: what the band speaks of, in words, where that is not what the meter shows.
    """

    low: float | None
    high: float | None
    unit: str
    of: str = ""

    def __str__(self) -> str:
        if self.low is not None and self.high is not None:
            return f"{self.low:.4g} to {self.high:.4g} {self.unit}"
        if self.low is not None:
            return f"at least {self.low:.4g} {self.unit}"
        return f"at most {self.high:.4g} {self.unit}"


@frozen
class Expected:
    """One guess and how near it came."""

    test: Test
    said: str
    band: Band
    nearness: Nearness


def sound_band(session: Session, test: Test, at: Place | None) -> Band | None:
    """The band a sound unit reads in here; None where the test has no band of one number."""
    answers = []
    for wanted, place in session.asked_for(test, at):
        text = sound_text(session.knowledge, session.unit.sound, wanted, place)
        if not text:
            return None
        answers.append(Answer(wanted.id, (), text, (place,)))
    case = replace(session.state.case, answers=(*session.state.answers, *answers))
    readings, _ = take_readings(session.knowledge, case)
    reading = next((r for r in readings if (r.test, r.at) == (test.id, at)), None)
    found = None if reading is None else reading.classified
    if found is None or (found.low is None and found.high is None):
        return None
    unit = session.knowledge.quantities[found.quantity].unit
    shown = {wanted.quantity for wanted in test.reads}
    of = "" if found.quantity in shown or not shown else session.knowledge.spoken(found.quantity)
    return Band(found.low, found.high, SPOKEN.get(unit, unit), of)


def judge(test: Test, said: str, band: Band) -> Expected:
    """How near a guess comes: a number, or a range of two."""
    numbers = [float(each) for each in _NUMBERS.findall(_RANGE.sub(" ", said))][:2]
    if not numbers:
        return Expected(test, said, band, "not-said")
    middle = sum(numbers) / len(numbers)
    if _outside(middle, band) == 0:
        return Expected(test, said, band, "close")
    return Expected(test, said, band, "near" if _outside(middle, band) <= NEAR else "off")


def _outside(number: float, band: Band) -> float:
    """By what share of the limit a number lies outside the band."""
    if band.low is not None and number < band.low:
        return (band.low - number) / max(abs(band.low), 1e-9)
    if band.high is not None and number > band.high:
        return (number - band.high) / max(abs(band.high), 1e-9)
    return 0.0
