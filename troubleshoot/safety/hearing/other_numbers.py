"""Figures that are on no instrument: the number of a unit, of a room, a time of day.

They are left out before a number is looked for: 0 % LEL on RTU 5 at 9:00 tells of nothing but 0 %.
"""

from __future__ import annotations

import re
from typing import Final

_NOT_MEASURED: Final = (
    r"(?![0-9.,]*[0-9])"
    r"(?! ?(?:%|percent|pct|ppm|v|vac|vdc|volts?|kv|mv|amps?|a|f|psig?|in|uf|ohms?)(?![a-z]))"
)
_OF_A_NAME: Final = re.compile(
    r"\b(?:rtu|ahu|mau|doas|erv|unit|rooftop|roof top|room|rm|suite|floor|gate|dock|bay|store|shop|"
    rf"building|bldg|apartment|apt|phone|ext|visit|lock|tag)[ #.-]{{0,3}}(?:no\.? ?|number )?[0-9]+"
    rf"{_NOT_MEASURED}"
)
_CLOCK: Final = re.compile(
    r"\b(?:[01]?[0-9]|2[0-3]):[0-5][0-9](?: ?[ap]\.?m\b\.?)?|\b(?:1[0-2]|[1-9]) ?[ap]\.?m\b\.?"
)


def without_other_numbers(said: str) -> str:
    """What was said, in small letters, without the figures behind a name, nor a time of day."""
    return _CLOCK.sub(" o'clock ", _OF_A_NAME.sub(_name_alone, said))


def _name_alone(found: re.Match[str]) -> str:
    return found[0].rstrip("0123456789#.- ")
