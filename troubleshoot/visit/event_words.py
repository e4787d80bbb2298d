"""What the values of an event may be, key by key, whatever kind of event holds them.

A journal is written by this program, but perhaps by another version of it, under other rules. Keys
that are not named here are left to the event's own effect.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any, Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.measuring import read_quantity, read_text
from troubleshoot.visit.event_shapes import Event


class Unknown(ValueError):
    """An event holds what today's rules do not know; the message says what."""


def check_words(knowledge: Knowledge, event: Event) -> None:
    """Check every value that is named here. Raises Unknown."""
    for key, fits in _KINDS.items():
        if key in event and not fits(event[key]):
            raise Unknown(f"{key} is {_quoted(event[key])}")
    for key, known in _names(knowledge).items():
        if event.get(key) is not None and event[key] not in known:
            raise Unknown(f"the {key} {event[key]} is not in today's rules")
    if event["event"] == "note" and event["text"] is None:
        raise Unknown("it says nothing")
    if event["event"] in ("answer", "step"):
        _check_answer(knowledge, event)
    check_conditions(knowledge, event.get("conditions", {}))


def check_conditions(knowledge: Knowledge, conditions: Mapping[str, Any]) -> None:
    """Check what held during a reading. Raises Unknown."""
    for name, text in conditions.items():
        quantity = knowledge.quantities.get(name)
        if quantity is None:
            raise Unknown(f"the quantity {name} is not in today's rules")
        try:
            read_quantity(quantity, text)
        except NotUnderstood:
            raise Unknown(f"{_quoted(text)} is no {name}") from None


def _check_answer(knowledge: Knowledge, event: Event) -> None:
    """Check that a test has such outcomes and reads such a text, and that there is either."""
    test = knowledge.tests[event["test" if event["event"] == "answer" else "step"]]
    known = {outcome.id for outcome in test.outcomes}
    gone = [each for each in event.get("outcomes", ()) if each not in known]
    if gone:
        raise Unknown(f"{gone[0]} is no outcome of {test.id} in today's rules")
    if not event.get("outcomes"):
        text = event.get("text")
        if text is None or not test.reads:
            raise Unknown(f"it says nothing of {test.id}")
        try:
            read_text(test, text, knowledge)
        except NotUnderstood:
            raise Unknown(f"{_quoted(text)} is no reading of {test.id}") from None


def _names(knowledge: Knowledge) -> Mapping[str, Mapping[str, Any]]:
    return {
        "test": knowledge.tests,
        "step": knowledge.tests,
        "fault": knowledge.faults,
        "hazard": knowledge.hazards,
    }


def _quoted(value: object) -> str:
    text = str(value)
    return f'"{text[:40]}..."' if len(text) > 40 else f'"{text}"'


def _text(value: object) -> bool:
    return isinstance(value, str)


def _text_or_nothing(value: object) -> bool:
    return value is None or isinstance(value, str)


def _truth(value: object) -> bool:
    return isinstance(value, bool)


def _texts(value: object) -> bool:
    return isinstance(value, list | tuple) and all(isinstance(each, str) for each in value)


def _minutes(value: object) -> bool:
    """A number of minutes, or none where nobody knows."""
    known = isinstance(value, int | float) and not isinstance(value, bool)
    return value is None or (known and math.isfinite(value))  # type: ignore[arg-type]


def _named_texts(value: object) -> bool:
    return isinstance(value, Mapping) and all(isinstance(each, str) for each in value.values())


_KINDS: Final[Mapping[str, Callable[[object], bool]]] = {
    **dict.fromkeys(("test", "step", "fault", "name", "told", "told_at", "ending"), _text),
    **dict.fromkeys(("reason", "words", "why_invalid", "hazard", "time"), _text),
    **dict.fromkeys(("text", "place", "instrument", "complaint"), _text_or_nothing),
    **dict.fromkeys(("shared", "again", "chosen", "routine", "cured", "same_day"), _truth),
    **dict.fromkeys(("outcomes", "profiles", "repaired"), _texts),
    **dict.fromkeys(("conditions", "result"), _named_texts),
    "at": lambda value: _text_or_nothing(value) or _texts(value),
    "valid": lambda value: value is None or _truth(value),
    "minutes_away": _minutes,
}
