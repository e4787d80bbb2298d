"""Windings as they are read out: 22/38/60, nothing to ground.

The ohms are the reading. Of the ground an ohmmeter shows a dead short at most, and no insulation
(IEEE 43 wants it at 500 V and more, from memory): that is kept as a note, and proves nothing.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.units import unit
from troubleshoot.reasoning.readings.measuring import expected_for

_NOTHING: Final = r"(?:nothing|none|no (?:shorts?|continuity|reading|path)|open|ol|infinite|clear)"
_GROUND: Final = r"(?:to|on) (?:the )?(?:ground|earth|case|can|shell|frame)"
_BESIDE: Final = re.compile(
    r"(?P<read>.*?[0-9].*?)(?: ?[,;.] ?| )(?:(?:and|but|with) )?"
    rf"(?P<said>{_NOTHING} {_GROUND}|no grounds?)",
    re.IGNORECASE,
)
_OHMS: Final = "resistance"


def ohms_and_ground(knowledge: Knowledge, test: Test, typed: str) -> tuple[str, str] | None:
    """The ohms of windings, and what is said beside them: that nothing goes to ground.

    None where the test reads no ohms, or anything else is said.
    """
    if not test.reads or unit(expected_for(test, knowledge)[0].unit).kind != _OHMS:
        return None
    found = _BESIDE.fullmatch(" ".join(typed.split()).rstrip(" .!"))
    return None if found is None else (found["read"], found["said"])
