"""Words that say that a tool or a part was left in a unit: my pliers are still in the blower.

What is in a pouch, a bag or a hand is not left in. Common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.safety.hearing.vocabulary import stem, stems
from troubleshoot.safety.hearing.words import raw_words

_PUT_AWAY: Final = re.compile(
    r"\b(?:in|into|on) (?:my|the|his|a) (?:tool )?"
    r"(?:pouch|bag|pocket|toolbox|bucket|truck|van|belt|hand|curb|cart|box)\b"
)
_TOOLS: Final = stems(
    "tool tools pliers wrench wrenches screwdriver driver nutdriver flashlight headlamp rag towel "
    "bit drill impact hammer probe clamp clamps jumper magnet tray socket ratchet mirror knife "
    "cutters snips strippers hacksaw tape thermometer sniffer manometer multimeter phone pen "
    "cloth bag brush"
)
_PARTS: Final = stems("screw screws bolt bolts nut nuts washer washers clip clips cap lead leads")
"""What belongs in a unit, and is left in it only where it fell or was lost there."""
_LEFT: Final = stems(
    "left leave forgot forgotten dropped drop fell fallen falling lost lose missing find"
)
_IN: Final = stems("in inside behind under")
_NOT_LEFT: Final = stems(
    "out found back got retrieved removed pulled grabbed no none not never nothing"
)


def tells_of_left_in(said: str) -> bool:
    """Whether something of the technician's is said to be in the unit still, or not to be found."""
    rest = _PUT_AWAY.sub(" ", said.lower().replace("'", "").replace("screw driver", "screwdriver"))
    words = {stem(word) for word in raw_words(rest)}
    is_tool = bool(words & _TOOLS)
    if is_tool and "still" in words and "out" not in words:
        return True
    if words & _NOT_LEFT and not {"cant", "cannot", "couldnt"} & {*raw_words(rest)}:
        return False
    return bool(words & _LEFT and (is_tool or words & _PARTS)) or (is_tool and bool(words & _IN))
