"""What called a hazard up stands: a finding does, a complaint until its all-clear was given."""

from __future__ import annotations

import pytest

from tests.building import base, case, test_of
from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.reasoning.chaining.chains import likely
from troubleshoot.reasoning.chaining.clearing import (
    cleared_complaint,
    has_happened,
    is_of_a_repair,
    was_found,
)
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.readings import Reading

KNOWN = base(
    [test_of("clear", "not-yet"), test_of("look", "bad")],
    complaints=[Complaint("smells", "it smells", all_clear="clear"), Complaint("cold", "cold")],
)


@pytest.mark.parametrize(
    ("because", "cleared", "found"),
    [
        (("possible:look:bad",), True, True), (("seen:look:bad",), True, True),
        (("complaint:smells",), False, True), (("complaint:smells",), True, False),
        (("fault:f",), False, False), ((), False, False),
        (("fault:f", "possible:look:bad"), True, True),
        (("unit:complaint",), False, False),
    ],
)  # fmt: skip
def test_a_finding_or_an_uncleared_complaint_called_it_up(
    because: tuple[str, ...], cleared: bool, found: bool
) -> None:
    assert was_found(because, cleared) is found


@pytest.mark.parametrize(
    ("because", "warns"),
    [
        ((likely("f"),), True), (("complaint:smells", likely("f")), True),
        (("possible:look:bad",), False), ((), False),
    ],
)  # fmt: skip
def test_a_likely_cause_among_others_warns_whoever_repairs_it(
    because: tuple[str, ...], warns: bool
) -> None:
    assert is_of_a_repair(because) is warns


@pytest.mark.parametrize(
    ("complaint", "answers", "cleared"),
    [
        ("smells", [Answer("clear", ("normal",))], True),
        ("smells", [], False),
        ("smells", [Answer("look", ("normal",))], False),
        ("smells", [Answer("clear", ("not-yet",))], False),
        ("smells", [Answer("clear", ("normal",), valid=False)], False),
        ("cold", [Answer("clear", ("normal",))], False),
        ("gone-by-now", [Answer("clear", ("normal",))], False),
        (None, [Answer("clear", ("normal",))], False),
    ],
)
def test_a_complaint_is_cleared_by_its_own_all_clear_that_counts_and_is_sound(
    complaint: str | None, answers: list[Answer], cleared: bool
) -> None:
    known = case(KNOWN, *answers, complaint=complaint)
    readings = Reasoner(KNOWN).conclude(known).readings
    assert cleared_complaint(KNOWN, known, readings) is cleared


def reading(*possible: str, valid: bool = True) -> Reading:
    return Reading("clear", None, possible, {}, None, valid=valid)


@pytest.mark.parametrize(
    ("readings", "cleared"),
    [
        ((reading("normal"), reading()), True),
        ((reading(),), False),
        ((reading("normal"), reading("not-yet")), False),
        ((reading("normal"), reading("not-yet", valid=False)), False),
        ((reading("normal", valid=False), reading("normal")), True),
        ((reading("normal", "not-yet"),), False),
    ],
)
def test_every_all_clear_that_says_anything_must_be_sound(
    readings: tuple[Reading, ...], cleared: bool
) -> None:
    assert cleared_complaint(KNOWN, case(KNOWN, complaint="smells"), readings) is cleared


@pytest.mark.parametrize(
    ("repaired", "stands"),
    [((), True), (("filters-loaded",), True), (("circuit-empty",), False)],
)
def test_an_effect_stands_until_it_is_itself_repaired(
    repaired: tuple[str, ...], stands: bool, shipped: Knowledge
) -> None:
    """What was found empty is not called for because something else was put right."""
    hazard, effect = shipped.hazards["empty-circuit-stays-off"], shipped.faults["circuit-empty"]
    assert has_happened(hazard, (likely(effect.id),), (effect,), repaired) is stands
