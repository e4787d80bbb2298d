"""What is told at a question about the flue is flue gas, unless it speaks of air people breathe.

The two have limits of their own: 9 ppm in a room, 400 ppm air-free in a flue. In doubt it is the
room's: one word of a room, of a monitor or of somebody is enough.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Test

_FLUE: Final = "flue"
_MONOXIDE: Final = re.compile(
    r"(?<!flue )(?<!stack )\b(?P<name>co|carbon monoxide|monoxide)\b", re.IGNORECASE
)
_BREATHED: Final = re.compile(
    r"\b(?:rooms?|ambient|indoors?|inside|outdoors?|building|house|space|hall|shop|office|class|"
    r"supply|duct|registers?|grilles?|diffusers?|return|monitors?|alarms?|detectors?|sensors?|"
    r"clip(?:ped|-on| on)?|worn|wear(?:ing|s)?|personal|pocket|badge|belt|chest|collar|"
    r"i|i'm|im|me|my|us|our|we|he|she|they|people|person|somebody|everybody|kids?|"
    r"breath(?:e|ed|ing|s)?|headaches?|dizzy|sick|"
    r"(?<!excess )air(?![- ]?free))\b",
    re.IGNORECASE,
)


def as_asked(test: Test | None, typed: str) -> str:
    """What was typed where a test is asked for, carbon monoxide said of the flue that it reads.

    As it stands where the test reads no flue gas, or the words may be of a room: CO 40 ppm, O2
    7.5 % becomes flue CO 40 ppm, O2 7.5 %.
    """
    reads = () if test is None else test.reads
    is_flue_gas = any(one.quantity.split("-")[0] == _FLUE for one in reads)
    if not is_flue_gas or _BREATHED.search(typed.replace("\u2019", "'")):
        return typed
    return _MONOXIDE.sub(rf"{_FLUE} \g<name>", typed)
