"""A number that is told of every leg, or called good besides: .9 all three; 480 479 481 all good.

What is made of it changes nothing: the number is judged as it was read. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.readings.measuring import reads

_LEGS: Final = 3
_GOOD: Final = re.compile(
    r"[\s,;]+(?:(?:they are|its|it is|thats|so|all|looks?|nice and) )*"
    r"(?:good|fine|ok|okay|even|normal|the same)\s*$",
    re.IGNORECASE,
)
_OF_EACH: Final = re.compile(
    r"(?P<number>-?\.?\d[\d.]*\s*[a-z\u03a9]{0,4}?)\s*,?\s+(?:(?:on|at|across) )?"
    r"(?:all (?:three|3)|each(?: one)?|every (?:one|leg|pair)|each (?:leg|pair))"
    r"(?: (?:legs|pairs|phases|windings))?\s*",
    re.IGNORECASE,
)


def number_of_all_legs(knowledge: Knowledge, test: Test, typed: str) -> str:
    """The numbers of such a reading; empty where it is none.

    What shows that a danger has gone is typed as it is read.
    """
    if any(hazard.all_clear == test.id for hazard in knowledge.hazards.values()):
        return ""
    bare = _GOOD.sub("", typed.strip().rstrip(" .!"))
    found = _OF_EACH.fullmatch(bare)
    told = (" ".join([found["number"].strip()] * _LEGS), found["number"]) if found else (bare,)
    return next((each for each in told if each != typed and reads(test, each, knowledge)), "")
