"""Who may do what, and what of a unit makes the work more dangerous: one fact at a time."""

from __future__ import annotations

from typing import Any

import pytest

from tests.safety.work_state_samples import a_test
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.profiles import (
    FULLY_QUALIFIED,
    PROFILES,
    TECHNICIAN,
    hand_over,
    hand_over_on_the_way,
    required,
    spoken,
)
from troubleshoot.safety.steps import Step
from troubleshoot.safety.unit_at_work import supply_is_known, unit_at_work

SAID = {
    "apprentice": "an apprentice",
    "supervised": "whoever supervises them",
    "technician": "a technician",
    "electrical": "a qualified electrical person",
    "licensed-electrician": "a licensed electrician",
    "refrigerant": "a person certified for refrigerant",
    "gas": "a qualified gas person",
    "combustion": "a person qualified in combustion, with an analyzer",
    "fire-alarm": "a licensed fire-alarm person",
    "building-controls": "the people who look after the building's controls",
    "utility": "the utility",
    "owner": "the building's owner",
}


@pytest.mark.parametrize(
    ("facts", "needed"),
    [
        ({}, set()),
        ({"exposes": "control"}, {"electrical"}),
        ({"exposes": "line"}, {"electrical"}),
        ({"work_state": "running-open"}, {"electrical"}),
        ({"work_state": "energised-open"}, {"electrical"}),
        ({"work_state": "locked-out"}, set()),
        ({"work_state": "running"}, set()),
        ({"needs_state": ("gauges-on",)}, {"refrigerant"}),
        ({"needs_state": ("charge-recovered",)}, {"refrigerant"}),
        ({"needs_state": ("gas-shut", "meter-proved")}, set()),
        ({"who": ("gas",), "exposes": "line"}, {"gas", "electrical"}),
    ],
)
def test_what_a_test_opens_says_who_does_it(facts: dict[str, Any], needed: set[str]) -> None:
    assert required(a_test("t", kind="look", **facts)) == needed


def test_each_profile_is_spoken_of_in_its_own_words_and_in_one_order() -> None:
    assert {name: spoken([name]) for name in SAID} == SAID
    assert spoken(reversed(SAID)) == " and ".join(SAID.values())


def test_the_profiles_that_a_person_can_give() -> None:
    assert PROFILES == (
        "apprentice", "supervised", "technician", "electrical", "refrigerant", "gas", "combustion",
        "fire-alarm",
    )  # fmt: skip
    assert set(PROFILES) - {"apprentice", "supervised"} == FULLY_QUALIFIED
    assert TECHNICIAN == "technician"


@pytest.mark.parametrize("needed", ["electrical", "refrigerant", "gas", "combustion", "fire-alarm"])
def test_an_apprentice_alone_does_nothing_that_asks_for_a_qualification(needed: str) -> None:
    test = a_test("t", kind="look", who=(needed,))
    alone, watched = {"apprentice", needed}, {"apprentice", "supervised", needed}
    assert hand_over(test, alone) == "hand over to the supervising technician"
    assert hand_over(test, watched) is None
    assert hand_over(test, {needed}) is None
    assert hand_over(test, set()) == f"hand over to {SAID[needed]}"


@pytest.mark.parametrize(
    ("held", "technician"),
    [
        ({"apprentice"}, False), (set(), False), ({"apprentice", "supervised"}, True),
        ({"gas"}, True), ({"technician"}, True),
    ],
)  # fmt: skip
def test_whoever_is_qualified_or_supervised_counts_as_a_technician(
    held: set[str], technician: bool
) -> None:
    phrase = hand_over(a_test("t", kind="look", who=("technician",)), held)
    assert phrase == (None if technician else "hand over to a technician")
    assert hand_over(a_test("t", kind="look", who=("apprentice",)), held) is None


def test_the_first_step_on_the_way_that_is_beyond_somebody_is_handed_over() -> None:
    tests = {
        "lockout": a_test("lockout", who=("technician",), kind="step"),
        "gas-cock-shut": a_test("gas-cock-shut", who=("gas",), kind="step"),
        "charge-recovered": a_test("charge-recovered", who=("refrigerant",), kind="step"),
    }
    way = [Step(name) for name in tests]
    assert hand_over_on_the_way(way, tests, {"technician"}) == (
        "hand over to a qualified gas person"
    )
    assert hand_over_on_the_way(way, tests, {"technician", "gas", "refrigerant"}) is None
    assert hand_over_on_the_way([], tests, set()) is None


@pytest.mark.parametrize(
    ("unit", "volts_480", "known"),
    [
        ({}, True, False),
        ({"supply-phase": "three"}, True, False),
        ({"supply-phase": "single"}, False, True),
        ({"nameplate-volts": "277 V"}, False, True),
        ({"nameplate-volts": "278 V"}, True, True),
        ({"nameplate-volts": "208 V", "supply-phase": "three"}, False, True),
        ({"nameplate-volts": "460 V", "supply-phase": "three"}, True, True),
        ({"line-volts-class": "480-volt"}, True, True),
        ({"line-volts-class": "208-to-240-volt", "nameplate-volts": "460 V"}, True, True),
    ],
)
def test_a_supply_counts_as_480_volts_until_it_is_known_to_be_less(
    unit: dict[str, Any], volts_480: bool, known: bool, shipped: Knowledge
) -> None:
    read = read_unit(shipped, unit)
    assert unit_at_work(read).volts_480 is volts_480
    assert supply_is_known(read) is known


def test_places_that_hold_a_charge_and_circuits_are_those_of_the_unit(shipped: Knowledge) -> None:
    read = read_unit(shipped, {"circuits": 2})
    at_work = unit_at_work(read)
    assert at_work.circuits == ("circuit 1", "circuit 2")
    assert at_work.capacitors == tuple(map(str, read.layout.places("capacitor")))
    assert at_work.capacitors and at_work.drives == ("blower motor", "blower drive")
