"""A file that tells of a roof edge near: nothing at the unit before something protects there."""

from __future__ import annotations

from typing import Any

import pytest

from tests.safety.stops.shipped import KNOWLEDGE, concluded, proposed
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.cases.assessment import assess_case
from troubleshoot.visit.cases.file import read_case

UNIT = {"refrigerant": "R-410A", "circuits": 1}
FIRST = "Before anything at the unit: Fall protection at the roof edge."
PROTECTED = {"test": "edge-protection", "outcome": "on"}


def roof(text: str) -> dict[str, Any]:
    return {"test": "roof-conditions", "text": text}


def on_the_roof(readings: list[dict[str, Any]]) -> set[str]:
    """The tests on the roof that are proposed."""
    found = concluded(readings, complaint="no-cooling", unit=UNIT)
    at_work = unit_at_work(found.case.unit)
    return {t for t in proposed(found) if needs_of(KNOWLEDGE.tests[t], None, at_work).roof}


def lines(readings: list[dict[str, Any]]) -> tuple[str, ...]:
    return assessed(readings)[1]


def assessed(readings: list[dict[str, Any]]) -> tuple[Any, tuple[str, ...]]:
    data = {"complaint": "no-cooling", "unit": UNIT, "readings": readings}
    return assess_case(KNOWLEDGE, read_case(KNOWLEDGE, data))


@pytest.mark.parametrize("edge", ["5 ft", "10 ft"])
def test_nothing_at_the_unit_is_proposed_beside_an_open_edge(edge: str) -> None:
    """The STOP was right, and fan, drain and safety string of that unit were proposed below it."""
    assert on_the_roof([roof(edge)]) == set()
    plain, told = assessed([roof(edge)])
    assert FIRST in told
    assert plain["before_anything"] == ["edge-protection"]


def test_whatever_else_a_file_shows_the_protection_comes_first() -> None:
    burnt = {"test": "capacitor-appearance", "outcome": "burnt-terminal"}
    plain, told = assessed([roof("5 ft"), burnt])
    assert plain["ending"] != "shortlist"
    assert FIRST in told
    assert plain["before_anything"] == ["edge-protection"]


def test_no_fault_is_asked_to_explain_the_roof() -> None:
    """The edge was listed as a reading that no cause explains."""
    plain, told = assessed([roof("5 ft")])
    assert plain["unexplained"] == []
    assert not any("not explained" in line for line in told)


@pytest.mark.parametrize("readings", [[], [roof("20 ft")], [roof("5 ft"), PROTECTED]])
def test_the_unit_is_worked_at_where_no_edge_is_open(readings: list[dict[str, Any]]) -> None:
    assert "condenser-fan-turning" in on_the_roof(readings)
    assert FIRST not in lines(readings)


def test_a_later_look_that_finds_the_edge_near_wants_protection_again() -> None:
    assert on_the_roof([roof("5 ft"), PROTECTED, roof("5 ft")]) == set()
