"""Numbers as a mechanic would type them: rounded as the meter shows them, leg by leg."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.practice.sound import SoundUnit
from troubleshoot.reasoning.unit.places import Place

DECIMALS: Final = {
    "psig": 0, "psi": 0, "F": 1, "F-diff": 1, "C-diff": 1, "A": 1, "uA": 1, "V": 0, "uF": 1,
    "in-wc": 2, "ohm": 2, "kohm": 1, "Mohm": 0, "min": 1, "s": 0, "percent": 0, "ppm": 0, "rpm": 0,
    "cfm": 0, "cfm-per-ton": 0, "lb": 1, "micron": 0, "ft3": 0, "cfh": 0, "percent-points": 1,
    "percent-LEL": 0, "percent-LFL": 0, "in-per-ft": 2, "ratio": 1, "Btu/h": 0, "count": 0,
}  # fmt: skip
"""Unit -> decimals its usual meter shows (common practice, no source)."""

SPOKEN: Final = {
    "F-diff": "F", "C-diff": "C", "in-wc": "in wc", "percent": "%", "percent-points": "%",
    "percent-LEL": "% LEL", "percent-LFL": "% LFL", "in-per-ft": "in/ft", "cfm-per-ton": "cfm/ton",
}  # fmt: skip
SMALL_VOLTS: Final = 10.0
_LEG_BY_LEG: Final = (1.0, 0.985, 1.01)
_VOLTS_LEG_BY_LEG: Final = (1.0, 1.004, 0.998)
"""How three good legs differ (common practice, no source)."""


def typed(number: float, unit: str) -> str:
    """One number with its unit, as typed; an open circuit is OL."""
    return "OL" if math.isinf(number) else f"{rounded(number, unit)} {SPOKEN.get(unit, unit)}"


def typed_legs(numbers: Sequence[float], unit: str) -> str:
    """Several legs of one reading."""
    legs = "/".join("OL" if math.isinf(n) else rounded(n, unit) for n in numbers)
    return f"{legs} {SPOKEN.get(unit, unit)}"


def rounded(number: float, unit: str) -> str:
    places = DECIMALS.get(unit, 1)
    if unit == "V" and abs(number) < SMALL_VOLTS:
        places = 2
    elif unit == "V" and abs(number) < 100:
        places = 1
    return f"{number:.{places}f}"


def sound_text(knowledge: Knowledge, sound: SoundUnit, test: Test, place: Place | None) -> str:
    """What a test that reads a number reads on a sound unit; empty where none can be said."""
    if not test.reads:
        return ""
    one = test.reads[0]
    way = sound.shown(one.quantity, place)
    if way is not None:
        return way.shown
    number = sound.number(one.quantity, place)
    if number is None:
        return ""
    unit = one.unit or knowledge.quantities[one.quantity].unit
    if takes_legs(sound, test):
        spread = _VOLTS_LEG_BY_LEG if unit == "V" else _LEG_BY_LEG
        return typed_legs([number * share for share in spread], unit)
    return typed(number, unit)


def takes_legs(sound: SoundUnit, test: Test) -> bool:
    """Whether the meter goes to three legs or poles here."""
    legs = any(one.legs for one in test.reads)
    return legs and sound.three_legs(test.reads[0].quantity)
