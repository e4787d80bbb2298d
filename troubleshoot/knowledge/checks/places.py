"""A reading in an example at a place that does not exist.

What: `at` names no kind of place and number that the program knows, or the test is about the
whole unit, or about places of another kind.
Why: the example would not be read as it was meant.
Fix: write the kind and number, such as circuit 2, contactor 1, capacitor condenser fan 1; leave
`at` out for a test of the whole unit.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "places"

_SPOKEN: Final = {
    "circuit": "circuit",
    "compressor": "compressor",
    "contactor": "contactor",
    "condenser-fan": "condenser fan",
    "heat-stage": "heat stage",
    "compressor-capacitor": "capacitor compressor",
    "condenser-fan-capacitor": "capacitor condenser fan",
}
_BLOWER: Final = {"blower-capacitor": "capacitor blower"}
_NUMBER: Final = r" ?(?:[1-9]|[a-h])"
_INSTEAD: Final = "write a kind and number, such as circuit 2 or capacitor condenser fan 1"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every reading of an example at an impossible place."""
    for fault in base.knowledge.faults.values():
        for number, example in enumerate(fault.examples):
            for nth, reading in enumerate(example.readings):
                at = reading.get("at")
                if not isinstance(at, str):
                    continue
                test = base.knowledge.tests[str(reading["test"])]
                if (wrong := _wrong(test, at)) is not None:
                    steps = ("examples", number, "readings", nth, "at")
                    what, instead = wrong
                    yield base.problem(ID, ("fault", fault.id), steps, what, instead)


def _wrong(test: Test, at: str) -> tuple[str, str] | None:
    kinds = {kind for part in at.split(",") for kind in _kinds(part.strip())}
    if not kinds:
        return f"{at} is no place", _INSTEAD
    if test.per is None:
        return f"{test.id} is about the whole unit, not about {at}", "leave at out"
    if test.per == "capacitor":
        fits = any(kind.endswith("-capacitor") for kind in kinds)
    else:
        fits = test.per in kinds
    return None if fits else (f"{test.id} is about a {test.per}, not about {at}", _INSTEAD)


def _kinds(spoken: str) -> Iterator[str]:
    for kind, words in _SPOKEN.items():
        if re.fullmatch(words + _NUMBER, spoken, re.IGNORECASE):
            yield kind
    for kind, words in _BLOWER.items():
        if spoken.lower() == words:
            yield kind
