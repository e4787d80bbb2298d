"""Who may do what, and to whom a test or step is handed over."""

from __future__ import annotations

import pytest

from tests.safety.work_state_samples import (
    ENERGISED,
    GAUGES,
    HANDS_IN,
    LOOK_FROM_AFAR,
    PLAIN_UNIT,
    a_test,
)
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.profiles import (
    FULLY_QUALIFIED,
    PROFILES,
    are_profiles,
    hand_over,
    hand_over_on_the_way,
    required,
    spoken,
)
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.work_state import WorkState

GAS_TEST = a_test("manifold", who=("technician", "gas"), work_state="running")
BOTH = a_test("both", who=("gas", "combustion"))


def test_a_fully_qualified_person_hands_nothing_over(shipped: Knowledge) -> None:
    assert [t.id for t in shipped.tests.values() if hand_over(t, FULLY_QUALIFIED)] == []


def test_live_parts_are_left_to_a_qualified_electrical_person_though_a_file_forgets_it() -> None:
    # 29 CFR 1910.333(a)(1) and (c)(2): from memory; the rule itself is common practice
    assert ENERGISED.who == ()
    assert hand_over(ENERGISED, {"technician"}) == "hand over to a qualified electrical person"
    assert hand_over(ENERGISED, {"electrical"}) is None


def test_a_refrigerant_circuit_is_left_to_a_certified_person() -> None:
    phrase = hand_over(GAUGES, {"technician", "electrical"})
    assert phrase == "hand over to a person certified for refrigerant"


def test_every_profile_that_is_missing_is_named() -> None:
    assert hand_over(BOTH, {"technician"}) == (
        "hand over to a qualified gas person and a person qualified in combustion, with an analyzer"
    )
    assert hand_over(BOTH, {"gas"}) == (
        "hand over to a person qualified in combustion, with an analyzer"
    )


@pytest.mark.parametrize("test", [ENERGISED, GAUGES, GAS_TEST], ids=lambda test: test.id)
def test_an_apprentice_alone_hands_over_to_the_supervising_technician(test: object) -> None:
    every_ticket = FULLY_QUALIFIED | {"apprentice"}
    assert hand_over(test, every_ticket) == "hand over to the supervising technician"
    assert hand_over(test, every_ticket | {"supervised"}) is None


def test_a_supervised_apprentice_still_needs_the_qualification_at_hand() -> None:
    profiles = {"apprentice", "supervised"}
    assert hand_over(GAS_TEST, profiles) == "hand over to a qualified gas person"


def test_an_apprentice_alone_may_look() -> None:
    assert hand_over(LOOK_FROM_AFAR, {"apprentice"}) is None


def test_the_way_to_hands_in_work_is_open_only_to_a_qualified_electrical_person(
    shipped: Knowledge,
) -> None:
    steps = steps_to(WorkState(), needs_of(HANDS_IN, None, PLAIN_UNIT), PLAIN_UNIT)
    phrase = hand_over_on_the_way(steps, shipped.tests, {"technician"})
    assert phrase == "hand over to a qualified electrical person"
    assert hand_over_on_the_way(steps, shipped.tests, FULLY_QUALIFIED) is None


def test_every_profile_that_a_rule_asks_for_can_be_spoken(shipped: Knowledge) -> None:
    asked = {profile for test in shipped.tests.values() for profile in required(test)}
    assert asked <= set(PROFILES)


@pytest.mark.parametrize(
    ("typed", "only_profiles"),
    [
        ("3", True),
        ("3, 4", True),
        ("gas", True),
        ("Technician, gas, fire alarm", True),
        ("3 gas", True),
        ("gas fire", False),
        ("gas and fire alarm", False),
        ("3 alarm", False),
        ("elec", False),
        ("9", False),
        ("", False),
        (" , ", False),
    ],
)
def test_what_is_typed_where_it_is_asked_who_asks_is_heard_for_a_danger_but_the_lists_own_words(
    typed: str, only_profiles: bool
) -> None:
    """Gas and fire alarm are words of the list: alone they name no danger, among others they do."""
    assert are_profiles(typed) is only_profiles


@pytest.mark.parametrize("profile", PROFILES)
def test_whoever_may_be_asking_can_be_spoken_of(profile: str) -> None:
    """Regression: what a supervised apprentice had left off could not be told of."""
    assert spoken(["apprentice", profile])
