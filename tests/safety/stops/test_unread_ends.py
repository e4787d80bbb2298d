"""What is still to be read before a unit that is kept off is back: place by place, until it was."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, case, test_of, unit_of
from tests.safety.stops.test_bans import (
    FAN,
    LOOK,
    ONE,
    ROOM,
    TWO,
    bad_at,
    concluded,
    hazard,
    knowing,
)  # fmt: skip
from troubleshoot.knowledge.model import Ban, Finding
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.standing import Forbidden, unread_ends, would_lift

CURED, AIRED = Finding("cure", ("normal",)), Finding("room", ("normal",))
UNTIL = Ban(tests=("fan",), until=(CURED, AIRED))
CURE_ONE, CURE_TWO, AIR = ("cure", ONE), ("cure", TWO), ("room", None)
Spots = list[tuple[str, Place | None]]


def unread(*answers: Answer, ban: Ban = UNTIL, keeps_off: str | None = "unit") -> Spots:
    """What is unread at a unit of two circuits, the first of which was found bad."""
    bite = replace(hazard(ban), keeps_off=keeps_off)  # type: ignore[arg-type]
    return list(unread_ends(concluded(knowing(bite), *bad_at(ONE), *answers)))


def cured(*places: Place | None, outcome: str = "normal", shared: bool = False) -> Answer:
    return Answer("cure", (outcome,), places=places, shared=shared)


@pytest.mark.parametrize(
    ("answers", "left"),
    [
        ([], [CURE_ONE, CURE_TWO, AIR]),
        ([cured(TWO)], [CURE_ONE, AIR]),
        ([Answer("room", ("normal",))], [CURE_ONE, CURE_TWO]),
        ([cured(ONE), cured(TWO)], [AIR]),
        ([cured(ONE, TWO, shared=True)], [AIR]),
        ([cured(ONE, outcome="bad")], [CURE_TWO, AIR]),
        ([cured(ONE), cured(TWO), Answer("room", ("normal",))], []),
    ],
    ids=["nothing read", "there", "of no place", "both", "both in one", "read bad", "all read"],
)
def test_each_place_is_left_until_it_was_read(answers: list[Answer], left: Spots) -> None:
    """Read bad it is no more to be read first: it says what is wrong."""
    assert unread(*answers) == left


@pytest.mark.parametrize("keeps_off", ["circuit", "heat", "nothing", None])
def test_only_what_keeps_the_unit_off_is_read_before_its_power(keeps_off: str | None) -> None:
    assert unread(keeps_off=keeps_off) == []


def test_a_ban_at_a_circuit_leaves_the_unit_its_power() -> None:
    assert unread(ban=replace(UNTIL, at="circuit")) == []


@pytest.mark.parametrize(("metering", "left"), [("txv", [CURE_ONE]), ("fixed-orifice", [])])
def test_nothing_is_waited_for_that_this_unit_cannot_show(metering: str, left: Spots) -> None:
    cure = test_of("cure", "bad", per="circuit", exists_when={"metering": ("txv",)})
    knowledge = base([LOOK, FAN, ROOM, cure], hazards=[replace(hazard(UNTIL), keeps_off="unit")])
    unit = unit_of(knowledge, circuits=1, metering=metering)

    def found(*answers: Answer) -> Conclusions:
        return Reasoner(knowledge).conclude(case(knowledge, *bad_at(ONE), *answers, unit=unit))

    assert list(unread_ends(found())) == [*left, AIR]
    aired = found(Answer("room", ("normal",)))
    assert list(unread_ends(aired)) == left
    assert (Forbidden(aired).by(FAN, None) is not None) is bool(left), "the ban ends with them"


@pytest.mark.parametrize(
    ("metering", "at", "left"),
    [
        ("txv", "unit", [CURE_ONE, CURE_TWO, AIR]),
        ("txv", "circuit", [CURE_ONE, AIR]),
        ("fixed-orifice", "unit", [AIR]),
        ("fixed-orifice", "circuit", [AIR]),
    ],
)
def test_what_would_lift_it_is_what_this_unit_can_show_where_it_was_found(
    metering: str, at: str, left: Spots
) -> None:
    """Sent to the sound circuit, somebody opens for nothing what was left alone."""
    cure = test_of("cure", "bad", per="circuit", exists_when={"metering": ("txv",)})
    bite = hazard(replace(UNTIL, at=at))  # type: ignore[arg-type]
    knowledge = base([LOOK, FAN, ROOM, cure], hazards=[bite])
    unit = unit_of(knowledge, circuits=2, metering=metering)
    found = Reasoner(knowledge).conclude(case(knowledge, *bad_at(ONE), unit=unit))
    (fired,) = found.hazards
    assert list(would_lift(found, fired)) == left


def test_what_is_only_likely_keeps_nothing_off_and_waits_for_nothing() -> None:
    bite = replace(hazard(UNTIL), keeps_off="unit")
    found = concluded(knowing(bite), *bad_at(ONE))
    guessed = tuple(replace(each, found=False) for each in found.hazards)
    assert list(unread_ends(replace(found, hazards=guessed))) == []
