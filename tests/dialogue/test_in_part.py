"""What words may mean of a look though not all of them are its own: which, whether all, what else.

The look at a belt is invented; how people put it is common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, measured, test_of
from troubleshoot.dialogue.in_part import InPart, beside_words, in_part, names_of
from troubleshoot.knowledge.model import Outcome

BELT = replace(
    test_of("belt"),
    name="Vee belt",
    words=("drive belt torn", "shiny belt", "belt threads"),
    how=("Turn the pulley by hand.",),
    outcomes=(
        Outcome("normal"),
        Outcome("torn", means="Threads lie flat at the shaft."),
        Outcome("glazed", words=("shiny", "hard", "off the track", "lying badly")),
        Outcome("two-frayed"),
        Outcome("frayed"),
        Outcome("edge-cut"),
        Outcome("rib-cut"),
    ),
)
SEVERAL = replace(BELT, choose="several")
RULES = replace(base(tests=[BELT]), manner=("badly",))
EVERY = tuple(outcome.id for outcome in BELT.outcomes)


def meant(
    *outcomes: str, all_meant: bool = True, others: tuple[str, ...] = (), alone: bool = True
) -> InPart:
    return InPart(outcomes, all_meant, frozenset(others), alone)


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("torn", meant("torn")),
        ("torn wide on the left", meant("torn")),
        ("torn drive belt at the pulley", meant("torn")),
        ("threads in front", meant("torn")),
        ("two frayed", meant("two-frayed")),
        ("torn wide open", meant("torn", others=("open",))),
        ("my belt is torn", meant("torn", others=("my",), alone=False)),
        ("cut", meant("edge-cut", "rib-cut", all_meant=False)),
        ("cut, the edge", meant("edge-cut")),
        ("cut, not the rib", meant("edge-cut")),
        ("torn, not glazed", meant("torn")),
        ("torn, two of them", meant("torn")),
        ("torn, its black", meant("torn")),
        ("torn, on the left", meant("torn")),
        ("torn, the drive belt", meant("torn")),
        ("torn, the hat blew away", meant("torn", alone=False)),
        ("torn, no sparks", meant("torn", alone=False)),
        ("torn, glazed", meant("torn", "glazed", all_meant=False)),
        ("torn, glazed, two frayed", meant("torn", "glazed", "two-frayed", all_meant=False)),
    ],
)
def test_words_of_an_outcome_mean_it_and_what_else_is_said_is_told(
    typed: str, told: InPart
) -> None:
    assert in_part(RULES, BELT, typed, EVERY) == told


@pytest.mark.parametrize(
    "typed",
    [
        "hello", "torn?", "may be torn", "not torn", "two", "the pulley", "the shaft", "off",
        "lying", "badly", "torn, glazed, not glazed", "torn, glazed, two frayed, edge cut",
    ],
)  # fmt: skip
def test_a_doubt_a_count_a_thing_or_too_many_mean_nothing(typed: str) -> None:
    assert in_part(RULES, BELT, typed, EVERY) is None


def test_what_is_not_offered_is_not_meant() -> None:
    assert in_part(RULES, BELT, "torn", ("normal", "glazed")) is None


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("torn, glazed", meant("torn", "glazed")),
        (
            "torn, glazed, two frayed, edge cut",
            meant("torn", "glazed", "two-frayed", "edge-cut"),
        ),
        ("torn, normal", meant("normal", "torn", all_meant=False)),
        ("torn, cut", meant("torn", "edge-cut", "rib-cut", all_meant=False)),
    ],
)
def test_of_several_all_are_meant_where_each_is_told_by_itself(typed: str, told: InPart) -> None:
    """What is sound is never meant beside what is not."""
    assert in_part(RULES, SEVERAL, typed, EVERY) == told


@pytest.mark.parametrize("count", ["every", "four", "one", "six", "three", "two"])
def test_by_a_count_alone_nothing_is_meant(count: str) -> None:
    """Regression: three meant the outcome that has it, as its stem is another word."""
    legs = test_of("legs", f"{count}-burnt")
    assert in_part(base(tests=[legs]), legs, count, (f"{count}-burnt",)) is None


@pytest.mark.parametrize("own", ["her", "his", "mine", "my", "our", "their", "your"])
def test_what_is_somebodys_own_is_no_part_of_the_unit(own: str) -> None:
    found = in_part(RULES, BELT, f"{own} belt is torn", EVERY)
    assert found is not None and not found.is_one_matter


@pytest.mark.parametrize(("number", "most"), [(3, True), (4, False)])
def test_as_many_as_can_be_asked_about_may_be_meant(number: int, most: bool) -> None:
    look = test_of("rim", *(f"cracked-{letter * 3}" for letter in "abcd"[:number]))
    outcomes = tuple(outcome.id for outcome in look.outcomes)
    found = in_part(base(tests=[look]), look, "cracked", outcomes)
    assert (found is not None) is most


def test_of_a_reading_only_the_words_of_its_outcomes_are_meant() -> None:
    """Its text tells of limits and probes."""
    told = Outcome("low", words=("starved",), means="Put the probe in deeper.")
    reading = replace(measured("pressure", {}), reads="pressure", outcomes=(told,))
    rules = base(tests=[reading])
    assert in_part(rules, reading, "starved", ("low",)) == meant("low")
    assert in_part(rules, reading, "probe deeper", ("low",)) is None


def test_beside_an_outcome_stand_places_amounts_and_what_is_looked_at_by_name() -> None:
    """None of the outcomes' own words, nor what else stands in the text."""
    beside = beside_words(BELT)
    assert {"left", "big", "pulley"} <= beside
    assert beside.isdisjoint({"edge", "rib", "two", "hard", "flat", "shaft", "hand", "coil"})


def test_what_is_looked_at_is_named_by_no_word_of_what_came_of_it() -> None:
    assert names_of(RULES, BELT) == {"vee", "belt", "driv"}
