"""External static told by its two sides: 1.15 supply, -.20 return is 1.35 in wc across the unit.

The return side lies under the room's pressure and the supply side over it, whether or not the sign
is told; what stands across the unit is both together (common practice, no source).
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Test

_STATIC: Final = "external-static"
_UNIT: Final = r"(?: ?(?:in\.? ?w\.?c\.?|in\.?|inch(?:es)?|\"|wc|iwc))?"
_NUMBER: Final = r"(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
_SUPPLY: Final = rf"\+?(?P<supply>{_NUMBER}){_UNIT} (?:on (?:the )?)?(?:supply|sup|sa)"
_RETURN: Final = rf"-?(?P<back>{_NUMBER}){_UNIT} (?:on (?:the )?)?(?:return|ret|ra)"
_NAMED_SUPPLY: Final = rf"(?:supply|sup|sa):? \+?(?P<supply>{_NUMBER}){_UNIT}"
_NAMED_RETURN: Final = rf"(?:return|ret|ra):? -?(?P<back>{_NUMBER}){_UNIT}"
_JOINED: Final = r"(?:,|;| and| /)? "
_SIDES: Final = tuple(
    re.compile(rf"{first}{_JOINED}{second}", re.IGNORECASE)
    for one, other in ((_SUPPLY, _RETURN), (_NAMED_SUPPLY, _NAMED_RETURN))
    for first, second in ((one, other), (other, one))
)
_DIGITS: Final = 3


def across_the_unit(test: Test, typed: str) -> str | None:
    """The static across the unit in in wc, where a line tells both sides of it and nothing else.

    None for another test, and for one side alone.
    """
    if [one.quantity for one in test.reads] != [_STATIC]:
        return None
    said = " ".join(typed.split()).rstrip(" .")
    found = next(filter(None, (sides.fullmatch(said) for sides in _SIDES)), None)
    if found is None:
        return None
    return f"{round(float(found['supply']) + float(found['back']), _DIGITS):g} in wc"
