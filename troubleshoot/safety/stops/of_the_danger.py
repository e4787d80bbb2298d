"""Whether what was read is of the danger, and of now: not of another gas, nor before the repair."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.safety.estimates import leads_to_estimate
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR

_SHARE: Final = r"\b(?:lel|lfl)\b"
_FUEL: Final = r"methane|ch4|natural gas|propane|lp gas|combustibles?|combustible gas|fuel gas"
_MONOXIDE: Final = r"co|carbon monoxide|monoxide"
_REFRIGERANT: Final = r"refrigerant|freon|r ?-?[0-9]{2,4}[a-z]?|a2l"
_OTHERS: Final = r"co2|carbon dioxide|dioxide|h2s|hydrogen sul\w+|o2|oxygen|humidity|nox|no2"
_OWN: Final[Mapping[str, str]] = MappingProxyType(
    {
        GAS_SWEEP: rf"{_SHARE}|\b(?:{_FUEL})\b",
        ROOM_AIR: rf"\b(?:{_MONOXIDE})\b",
        REFRIGERANT_SWEEP: rf"{_SHARE}|\b(?:{_REFRIGERANT})\b",
    }
)
"""The gas that each sweep of the air reads, as people name it."""
_ANY: Final = rf"(?:{_FUEL}|{_MONOXIDE}|{_REFRIGERANT}|{_OTHERS})"
_NAMED: Final = re.compile(
    rf"(?:\bppm|%|\bpct|\bper ?cent) ?(?:of )?{_ANY}\b"
    rf"|\b(?<!gas ){_ANY}(?: (?:is|was|at|reads?|reading|shows?|level|now))* ?[:=]? ?<?-?[0-9]"
)
"""A gas that is named beside a number."""

_REPAIR: Final = (
    r"(?:repair|fix|replac|work|job|mend|remade|remaking|chang|tighten|shut|clos|seal|we (?:came|"
    r"arrived|started|began)|he (?:came|arrived|started|began)|they (?:came|arrived|started|began)|"
    r"anything|any of)"
)
_BEFORE: Final = re.compile(
    rf"\b(?:before|prior to|ahead of|until)\b[^.;,]{{0,30}}?\b{_REPAIR}|\bbefore(?:hand)?\W*$"
    r"|\b(?:when|as) (?:we|i|they|he|she) (?:arrived|came|got (?:here|there|up))\b"
    r"|\b(?:on|at|upon) (?:our |his |their |my )?arrival\b|\bat first\b|\bto begin with\b"
)
_SINCE: Final = re.compile(r"\b(?:after\w*|now|since|then|again|finally|at the end|still)\b")

BEFORE: Final = (
    "That was read before it was made safe, and shows nothing of now. Have it read again, then "
    "give what was shown."
)
ANOTHER_GAS: Final = (
    "That is of another gas than the danger, and shows nothing of it. Have the danger's own gas "
    "read, then give what was shown."
)
BELOW_ZERO: Final = (
    "There is no gas below zero: the instrument was not zeroed in clean air. Have it read again, "
    "then give what was shown."
)
A_GUESS: Final = "That is about so much, and nobody can rest on it. Give the number that was read."


def why_not_now(said: str) -> str:
    """Why a reading, in small letters, is not of now; empty where it may be."""
    return BEFORE if _BEFORE.search(said) and not _SINCE.search(said) else ""


def why_another_gas(said: str, sweep: str) -> str:
    """Why a reading, in small letters, is not of the gas of a sweep; empty where it may be."""
    own = _OWN.get(sweep)
    if own is None or re.search(own, said):
        return ""
    return ANOTHER_GAS if _NAMED.search(said) else ""


def why_no_number(said: str, number: str, of_gas: bool) -> str:
    """Why a number as it stands in what was said is none of an instrument; empty where it may be.

    `of_gas`: it is of gas in the air; volts may stand below zero.
    """
    if of_gas and number.startswith("-"):
        return BELOW_ZERO
    return A_GUESS if leads_to_estimate(said.partition(number)[0]) else ""
