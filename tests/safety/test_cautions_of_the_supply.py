"""Cautions that hang on what is known of a unit: which supply it is shown for, what is asked first.

Arc flash at 480 V and what a supply nobody has read counts as: NFPA 70E 130.5 (from memory).
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import test_of
from troubleshoot.knowledge.model import Hazard, Knowledge, Trigger
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.cautions import cautions_before, facts_behind
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.state import VisitState

LIVE = test_of("live", "bad", work_state="energised-open")
SUPPLY, LOW, HIGH = "line-volts-class", "208-to-240-volt", "480-volt"
BY_PLATE: dict[str, Any] = {"nameplate-volts": "208 V", "supply-phase": "three"}
HIGH_BY_PLATE: dict[str, Any] = {**BY_PLATE, "nameplate-volts": "460 V"}
BURNS: dict[str, Any] = {"refrigerant-class": "a2l"}

Needed = dict[str, tuple[str, ...]]


def job(knowledge: Knowledge, unit: dict[str, Any]) -> VisitState:
    read = read_unit(knowledge, unit)
    return VisitState(unit=read, at_work=unit_at_work(read))


def called_up(shipped: Knowledge, *needed: Needed, test: str = "live") -> Knowledge:
    """The shipped facts, and one caution before a live test on units of these kinds."""
    hazard = Hazard("it", "WARNING", "mind", tuple(Trigger(test=test, equipment=n) for n in needed))
    return replace(shipped, hazards={"it": hazard})


ARC = {
    "nothing known": ({}, {HIGH}),
    "480 V by name": ({SUPPLY: HIGH}, {HIGH}),
    "480 V by plate": (HIGH_BY_PLATE, {HIGH}),
    "240 V by name": ({SUPPLY: LOW}, {LOW}),
    "240 V by plate": (BY_PLATE, {LOW}),
    "single phase": ({"supply-phase": "single"}, {LOW}),
    "name against plate": ({**HIGH_BY_PLATE, SUPPLY: LOW}, {HIGH}),
}


@pytest.mark.parametrize(("unit", "volts"), ARC.values(), ids=ARC)
def test_the_arc_flash_told_of_is_that_of_the_supply_and_the_worse_where_nobody_knows(
    unit: dict[str, Any], volts: set[str], shipped: Knowledge
) -> None:
    told = {hazard.id for hazard in cautions_before(shipped, job(shipped, unit), LIVE)}
    assert {v for v in (LOW, HIGH) if f"arc-flash-{v}" in told} == volts


SHOWN: dict[str, tuple[Needed, dict[str, Any], bool]] = {
    "supply not known, unread": ({SUPPLY: ("not-known",)}, {}, True),
    "supply not known, by plate": ({SUPPLY: ("not-known",)}, BY_PLATE, False),
    "another fact, 480 V by plate": (
        {"refrigerant-class": ("a2l",)}, {**HIGH_BY_PLATE, **BURNS}, True),
    "both facts hold": (
        {SUPPLY: (LOW,), "refrigerant-class": ("a2l",)}, {**BY_PLATE, **BURNS}, True),
    "the other fact is not known": (
        {SUPPLY: (LOW,), "refrigerant-class": ("a2l",)}, BY_PLATE, False),
    "the supply is another": ({SUPPLY: (LOW,)}, HIGH_BY_PLATE, False),
    "the supply is unread": ({SUPPLY: (LOW,)}, {}, False),
}  # fmt: skip


@pytest.mark.parametrize(("needed", "unit", "shown"), SHOWN.values(), ids=SHOWN)
def test_a_plate_settles_the_supply_and_every_other_fact_still_has_to_hold(
    needed: Needed, unit: dict[str, Any], shown: bool, shipped: Knowledge
) -> None:
    knowledge = called_up(shipped, needed)
    assert bool(cautions_before(knowledge, job(knowledge, unit), LIVE)) is shown


ASKED: dict[str, tuple[Needed, dict[str, Any], tuple[str, ...]]] = {
    "unread": ({SUPPLY: (HIGH,)}, {}, (SUPPLY,)),
    "by name": ({SUPPLY: (HIGH,)}, {SUPPLY: LOW}, ()),
    "by plate": ({SUPPLY: (HIGH,)}, BY_PLATE, ()),
    "another, plate read": ({"refrigerant-class": ("a2l",)}, BY_PLATE, ("refrigerant-class",)),
    "both open": (
        {"heat": ("gas",), "refrigerant-class": ("a2l",)}, {}, ("heat", "refrigerant-class")),
    "one of two known to hold": (
        {"heat": ("gas",), "refrigerant-class": ("a2l",)}, {"heat": "gas"},
        ("refrigerant-class",)),
    "one of two known to fail": (
        {"heat": ("gas",), "refrigerant-class": ("a2l",)}, {"heat": "electric"}, ()),
    "hangs on nothing": ({}, {}, ()),
}  # fmt: skip


@pytest.mark.parametrize(("needed", "unit", "asked"), ASKED.values(), ids=ASKED)
def test_before_a_caution_what_it_hangs_on_is_asked_where_it_may_still_be_so(
    needed: Needed, unit: dict[str, Any], asked: tuple[str, ...], shipped: Knowledge
) -> None:
    knowledge = called_up(shipped, needed)
    assert facts_behind(knowledge, job(knowledge, unit), LIVE) == asked


def test_a_fact_that_two_cautions_hang_on_is_asked_once_and_for_its_own_test_alone(
    shipped: Knowledge,
) -> None:
    heat: Needed = {"heat": ("gas",)}
    knowledge = called_up(shipped, heat, {SUPPLY: (HIGH,)}, heat)
    assert facts_behind(knowledge, job(knowledge, {}), LIVE) == ("heat", SUPPLY)
    other = called_up(shipped, heat, test="other")
    assert facts_behind(other, job(other, {}), LIVE) == ()
