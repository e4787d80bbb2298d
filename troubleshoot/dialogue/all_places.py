"""A look at one of several that is told of all: both turning fine, all fans turning.

Only what is sound is taken for each, from a look that needs no hand on it: what is wrong is said of
the one that it is wrong with.
"""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from troubleshoot.dialogue.said import Voice
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.visit.events import Answered, Event

_MANY: Final = {"two": 2, "2": 2, "three": 3, "3": 3, "four": 4, "4": 4}
_OF_ALL: Final = re.compile(
    r"(?:they're |theyre |they are )?(?:(?P<both>both)|all (?:of them|(?:the )?"
    rf"(?:(?P<many>{'|'.join(_MANY)})\b(?: \w*s)?|(?:fans|motors|blades))))\b"
)
_BUT: Final = re.compile(r"\b(?:but|except|not|though|one)\b")


def at_all_places(voice: Voice, unit: Unit, test: Test, typed: str, event: Event) -> Event:
    """The same event, at each place of the test where its words are of all that the unit has."""
    if not isinstance(event, Answered) or event.text or not {*event.outcomes} <= {*test.healthy}:
        return event
    if test.per is None or test.kind != "look" or test.work_state == "locked-out":
        return event
    places = unit.layout.places(test.per)
    if len(places) < 2 or not _is_of_all(typed.lower(), len(places)):
        return event
    names = ", ".join(str(place) for place in places)
    voice.say(f"Taken for each: {names}.")
    return replace(event, at=tuple(str(place) for place in places))


def _is_of_all(typed: str, count: int) -> bool:
    found = _OF_ALL.match(" ".join(typed.split()))
    if found is None or _BUT.search(typed):
        return False
    counted = 2 if found["both"] else _MANY.get(found["many"] or "", count)
    return counted == count
