"""The numbers people type: 5,000 and 1 1/2 and -6, each with the worth of its last digit."""

import re
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.quantities.typed_text import Unclear

_MOST_DIGITS: Final = 15
_RULER: Final = frozenset({2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64})
"""Denominators that people write as fractions: rulers, motor sizes, parts of an hour."""

_FRACTION: Final = re.compile(
    r"(?P<sign>[-+]?)(?:(?P<whole>[0-9]{1,4})[ -])?"
    r"(?P<top>[0-9]{1,3})/(?P<bottom>[0-9]{1,3})(?![0-9./])"
)
_DECIMAL: Final = re.compile(
    r"(?P<sign>[-+]?)(?P<whole>[1-9][0-9]{0,2}(?:,[0-9]{3})+(?![0-9,])|[0-9]*)"
    r"(?:\.(?P<decimals>[0-9]*))?"
)
_AFTER_COMMA: Final = re.compile(r",([0-9]+)")
_EXPONENT: Final = re.compile(r" ?[eE][-+]?[0-9]")
_SECOND_NUMBER: Final = re.compile(r" ?[-+/;]? ?[0-9.<>]|, [0-9]")
_CLOCK: Final = re.compile(r" ?:(?! ?1$)")


@frozen
class Number:
    """A number as typed; `resolution` is one step of its last digit, always above zero."""

    value: float
    resolution: float


def take_number(text: str) -> tuple[Number, str]:
    """Return the number that `text` begins with, and the rest, which holds no second number.

    Raises Unclear when there is none, when it could mean two numbers, or when it is too long.
    """
    fraction = _FRACTION.match(text)
    if fraction:
        number, end = _from_fraction(fraction), fraction.end()
    else:
        decimal = _DECIMAL.match(text)
        if not decimal or not (decimal["whole"] or decimal["decimals"]):
            raise Unclear("does not begin with a number that I can read")
        number, end = _from_decimal(decimal), decimal.end()
        _refuse_split_number(text, end)
    rest = text[end:]
    if _SECOND_NUMBER.match(rest):
        raise Unclear("holds more than one number where one is asked for")
    return number, rest.strip()


def is_ruler_fraction(text: str) -> bool:
    """Say whether `text` begins with a fraction as on a ruler, like 1/2 or 1 3/8 or 5/16."""
    match = _FRACTION.match(text)
    return match is not None and _is_on_ruler(match)


def is_mixed_fraction(text: str) -> bool:
    """Say whether `text` begins with a whole number and a fraction, like 1 1/2."""
    match = _FRACTION.match(text)
    return match is not None and match["whole"] is not None


def _is_on_ruler(match: re.Match[str]) -> bool:
    return 0 < int(match["top"]) < int(match["bottom"]) and int(match["bottom"]) in _RULER


def _from_fraction(match: re.Match[str]) -> Number:
    if not _is_on_ruler(match):
        raise Unclear(
            "is no fraction that a ruler shows, and could be two values",
            "write it with a decimal point",
        )
    bottom = int(match["bottom"])
    value = int(match["whole"] or 0) + int(match["top"]) / bottom
    return Number(-value if match["sign"] == "-" else value, 1.0 / bottom)


def _from_decimal(match: re.Match[str]) -> Number:
    whole, decimals = match["whole"].replace(",", ""), match["decimals"] or ""
    if len(whole) + len(decimals) > _MOST_DIGITS:
        raise Unclear("has more digits than any meter shows")
    value = float(f"{match['sign']}{whole or '0'}.{decimals or '0'}")
    # Adding zero turns minus zero into zero.
    return Number(value + 0.0, float(f"1e-{len(decimals)}"))


def _refuse_split_number(text: str, end: int) -> None:
    """Raise Unclear when the digits go on in a way that could mean another number."""
    rest = text[end:]
    if rest.startswith(",") and not rest.startswith(", "):
        after = _AFTER_COMMA.match(rest)
        raise Unclear(
            "has a comma that could be a decimal point or a slip between thousands",
            f"write {text[:end]}.{after[1]} or leave the comma out" if after else "leave it out",
        )
    if rest.startswith("."):
        raise Unclear("has two decimal points")
    if _EXPONENT.match(rest):
        raise Unclear("has an exponent", "write the number out")
    if _CLOCK.match(rest):
        raise Unclear(
            "could be minutes and seconds or hours and minutes", "write it like 1 min 30 s"
        )
