"""What was done about a STOP: one of the remedies of its hazard, picked and not read from words.

No sentence is judged here. What people write of a repair has no end, and each list of what repairs
nothing left some of it out; so the hazard says what may take it away, and whoever brings the result
back says which of them it was, or that it was none.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Hazard
from troubleshoot.outside.numbers import choice
from troubleshoot.safety.stops.result import NotAResult

OF_ANY: Final = (
    "All that its orders say was done",
    "What it came from was repaired or replaced",
    "It was seen or read wrongly, and is not there",
)
"""Of a hazard that lists none of its own: whoever it stopped takes it afresh right after."""
NONE_OF_THESE: Final = "None of these, or not all of it"
NOTHING_DONE: Final = "Then the STOP stands: have it made safe first."
_LEAST_WORDS: Final = 3
"""Of the beginning of a remedy, to be taken for it: people type a word for many things."""


def remedies_of(hazard: Hazard) -> tuple[str, ...]:
    """What may have been done about a hazard, in the order of the list; the last is none of it."""
    return (*(hazard.remedies or OF_ANY), NONE_OF_THESE)


def remedy(typed: str, hazard: Hazard) -> str:
    """The remedy that a number of the list or its own words mean; empty where it was none of them.

    Raises NotAResult for everything else.
    """
    listed = remedies_of(hazard)
    if (number := choice(typed, len(listed))) is not None:
        return _done(listed[number - 1])
    said = _words(typed)
    begun = [each for each in listed if _words(each)[: len(said)] == said]
    if len(begun) == 1 and len(said) >= _LEAST_WORDS and "?" not in typed:
        return _done(begun[0])
    raise NotAResult(
        f"Give the number of what was done, from 1 to {len(listed)}. A note keeps words beside it: "
        "note and what to write."
    )


def _done(picked: str) -> str:
    return "" if picked == NONE_OF_THESE else picked


def _words(said: str) -> list[str]:
    return re.findall(r"\w+", said.lower())
