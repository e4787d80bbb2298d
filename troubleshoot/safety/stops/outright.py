"""What is asked outright before a STOP may be lifted, since no list of words hears all evasions.

Each is one question of yes or no in the trade's words. A yes is kept with the question as it was
asked; after a no nothing is lifted, and it is told what is missing.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.safety.steps import GAS_SWEEP, REFRIGERANT_SWEEP, ROOM_AIR


@frozen
class Outright:
    """A question of yes or no, and what is missing where the answer is no."""

    question: str
    missing: str


DEVICES: Final = Outright(
    "Is every safety device in place and as it was made, none bridged, blocked, set past its mark "
    "or left out?",
    "Have each put back as it was made first: what gets round one makes nothing safe. The STOP "
    "stands.",
)
WATCHERS_TOO: Final = Outright(
    "Is the sensor or alarm that watches for it plugged in, uncovered and armed, and every other "
    "safety device in place and as it was made, none bridged, blocked, set past its mark or left "
    "out?",
    DEVICES.missing,
)
"""Of what a sensor gives the alarm for: a quiet one may be unplugged, covered or silenced."""
WATCHED: Final = frozenset({REFRIGERANT_SWEEP, ROOM_AIR, "smoke-detector"})
"""What shows that a danger has gone for which a sensor gives the alarm."""
_AGAIN: Final = "Have it read again in that way, then give what was shown. The STOP stands."
READ: Final[Mapping[str, Outright]] = MappingProxyType(
    {
        GAS_SWEEP: Outright(
            "Was it read on this unit, after what was done, with the gas on as far as what was "
            "made tight, and any detector bumped today?",
            _AGAIN,
        ),
        ROOM_AIR: Outright(
            "Was it read in the rooms of this unit, after what was done, with a detector bumped "
            "today?",
            _AGAIN,
        ),
        REFRIGERANT_SWEEP: Outright(
            "Was it read on this unit, after what was done, with a detector bumped today?", _AGAIN
        ),
    }
)
"""What shows the air clear -> what is asked of a reading or look that was told of it."""
READ_BY_ANOTHER: Final = Outright(
    "Was it read on this unit, after what was done, with an instrument proved today?", _AGAIN
)
SEEN: Final = Outright(
    "Was it seen or read on this unit, after what was done?",
    "Have it looked at again there, then give what was seen. The STOP stands.",
)
"""Of what no instrument shows: a look from before, or at the next unit, shows nothing either."""


def asked_of_what_was_done(hazard: Hazard) -> Outright | None:
    """What is asked once it is told what was done; nothing of what keeps nothing of a unit off."""
    if hazard.keeps_off == "nothing":
        return None
    return WATCHERS_TOO if hazard.all_clear in WATCHED else DEVICES


def asked_of_a_reading(knowledge: Knowledge, hazard: Hazard) -> Outright | None:
    """What is asked of what shows a danger gone.

    Nothing of a look where nothing of a unit is kept off: nobody sees a storm on one.
    """
    own = knowledge.tests.get(hazard.all_clear or "")
    if own is None:
        return None
    look = None if hazard.keeps_off == "nothing" else SEEN
    return READ.get(own.id, READ_BY_ANOTHER if own.reads else look)
