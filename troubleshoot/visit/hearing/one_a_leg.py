"""At a test for dead a number is one a leg, in volts or alone: no range, no line of the list.

1 and 2 are dead and ghost volts in the list, and 0 to 2 V stands on no meter. Such numbers are
asked for again where they would prove a circuit dead; where they are high they count as ever.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import as_said
from troubleshoot.safety.hearing.other_numbers import without_other_numbers

A_RANGE: Final = "a range stands on no meter; the highest number read is wanted"
OF_THE_LIST: Final = (
    "without a unit that may be of the list, or of the meter; the highest number on the meter, "
    "with its unit, is wanted"
)
OF_NO_LEG: Final = (
    "two numbers without a unit are of no legs that I know; the highest on the meter, with its "
    "unit, is wanted"
)
_PART: Final = r"(?:legs?|phases?|lines?|poles?|pairs?)"
_NOT_VOLTS: Final = r"(?![0-9.,]*[0-9])(?! ?(?:v|vac|vdc|volts?|ppm)\b)"
NAMED: Final = re.compile(
    rf"\b[lt][123]\b|\b{_PART} ?#?[123]\b{_NOT_VOLTS}|\b[23] ?(?={_PART}\b)"
    rf"|(?<=\ball )[23]\b{_NOT_VOLTS}"
)
"""Figures that name a leg, or count them, and are read on no meter: L1, leg 2, all 3 legs."""
_UNIT: Final = r"(?: ?(?:[mk]?v|volts?)[ .-]*(?:[ad]\.?c\.?)?)"
_NUMBER: Final = r"(?<![\w.])\d*\.?\d+"
_RANGE: Final = re.compile(
    rf"{_NUMBER}{_UNIT}? ?(?:-|\u2010|\u2013|\u2014|\.\.+|to|thru|through|till|until|up to) ?"
    r"(?=\.?\d)"
)
_BARE: Final = re.compile(rf"(?P<reads>\b(?:reads?|reading|shows?|showing|is|at) )?({_NUMBER})")
_IN_VOLTS: Final = re.compile(rf"{_NUMBER}{_UNIT}(?!\w)")
_NOTHING_BETWEEN: Final = re.compile(rf"{_NUMBER}(?:[\s,;/&+]|and|or)+{_NUMBER}")


def unclear_legs(said: str, listed: int) -> str:
    """Why the numbers said at a test for dead are none of its meter; empty where they may be.

    `listed`: how many answers the list beside the question has.
    """
    line = without_other_numbers(as_said(said))
    rest = NAMED.sub(" ", line)
    if _RANGE.search(rest):
        return A_RANGE
    if _IN_VOLTS.search(rest):
        return ""
    found = [(each[2], bool(each["reads"])) for each in _BARE.finditer(rest)]
    of_list = [
        number for number, reads in found if not reads and choice(number, listed) is not None
    ]
    alone = rest.strip(" .,;:#()+") == "".join(number for number, _ in found)
    if found and len(of_list) == len(found) and rest == line and not alone:
        return OF_THE_LIST
    return OF_NO_LEG if _NOTHING_BETWEEN.fullmatch(rest.strip()) else ""
