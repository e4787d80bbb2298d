"""Volts as they are stamped on a data plate: 208/230, 208-230/3/60, 460/3/60, 230-1-60.

A unit for both services says two voltages of one class. It is made for either, and for what lies
between: each side of that range keeps its own 10 % (NEMA MG 1, 12.44).
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.outside.numbers import whole_number
from troubleshoot.quantities.typed_text import NotUnderstood

_CLASSES: Final = ((110, 125), (200, 240), (380, 415), (440, 480), (550, 600))
"""What is nominal for one class of supply, V: figures of motors and of systems (from memory)."""
_STAMPED: Final = re.compile(
    r"(?P<low>\d{3}) ?(?:v(?:olts?|ac)?)?"
    r"(?: ?(?:/|-|or|to) ?(?P<high>\d{3}) ?(?:v(?:olts?|ac)?)?)?"
    r"(?: ?[-/,]? ?(?P<phases>[13]|single|three) ?-?(?:phase|ph|p)?\b)?"
    r"(?: ?[-/,]? ?(?P<hertz>50|60) ?(?:hz|hertz)?)?",
    re.IGNORECASE,
)


@frozen
class PlateVolts:
    """From `low_v` to `high_v`, alike where the plate says one voltage; phases where it says so."""

    low_v: float
    high_v: float
    phases: int | None = None


def plate_volts(text: str) -> PlateVolts | None:
    """Volts as stamped; None where the text is none, as one number with its unit is not.

    Raises NotUnderstood where two voltages are of two classes: a motor is wired for one of them.
    """
    stamped = _stamped(text)
    if stamped is None or not (stamped["high"] or stamped["phases"]):
        return None
    low, high = (whole_number(stamped[side] or stamped["low"]) or 0 for side in ("low", "high"))
    if low > high or not of_one_supply(low, high):
        raise NotUnderstood(
            text,
            "names volts of two supplies, or of none",
            "write the volts of the service that feeds it, like 460",
        )
    phases = {None: None, "1": 1, "single": 1}.get(
        stamped["phases"] and stamped["phases"].lower(), 3
    )
    return PlateVolts(float(low), float(high), phases)


def of_one_supply(*volts: float) -> bool:
    """Say whether all are nominal volts of one class of supply, as 208 and 230 are."""
    return any(least <= min(volts) <= max(volts) <= most for least, most in _CLASSES)


def with_phases_and_hertz(text: str) -> bool:
    """Say whether the text is a plate's volts, phases and hertz, and so no volts of three legs."""
    stamped = _stamped(text)
    return stamped is not None and bool(stamped["phases"] and stamped["hertz"])


def _stamped(text: str) -> re.Match[str] | None:
    return _STAMPED.fullmatch(text.strip().replace("\u2013", "-"))
