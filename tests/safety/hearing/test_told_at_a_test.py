"""A danger in what is typed at a test: the test says what a bare number is of.

Of carbon monoxide 9 ppm are the limit in a room (40 CFR 50.8, over eight hours), 400 ppm air-free
in a flue (ANSI Z21.47), both from memory: a number is a danger by where it was read.
"""

from __future__ import annotations

import pytest

from tests.building import base
from tests.safety.hearing.invented import ANY, job
from tests.safety.work_state_samples import a_test
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.safety.hearing.dangers import named, spoken_of, told_at

ROOM, FLUE = "room-carbon-monoxide", "flue-carbon-monoxide"
EVACUATE, IN_ROOM = "carbon-monoxide-evacuate", "carbon-monoxide-in-room"


def ids(hazards: tuple[Hazard, ...]) -> list[str]:
    return [hazard.id for hazard in hazards]


@pytest.mark.parametrize(
    ("test", "typed", "dangers"),
    [
        (ROOM, "180 ppm", [EVACUATE, IN_ROOM]),
        (ROOM, "0 ppm", []),
        (ROOM, "normal", []),
        (FLUE, "180 ppm", ["flue-carbon-monoxide-high"]),
        (FLUE, "CO 180 ppm", ["flue-carbon-monoxide-high"]),
        (FLUE, "CO 450 ppm", ["flue-carbon-monoxide-extreme"]),
        (FLUE, "room CO 180 ppm", [EVACUATE, IN_ROOM]),
        (FLUE, "40 ppm", []),
        ("refrigerant-sweep-a2l", "180 ppm", ["flammable-refrigerant-found"]),
        ("refrigerant-sweep-a2l", "none", []),
        ("combustible-gas-sweep", "smoke", ["smoke-or-heat-now"]),
        ("combustible-gas-sweep", "smoke, 3 of us saw it", ["smoke-or-heat-now"]),
    ],
)
def test_a_number_is_a_danger_of_what_the_test_reads(
    test: str, typed: str, dangers: list[str], shipped: Knowledge
) -> None:
    assert ids(told_at(shipped, shipped.tests[test], typed)) == dangers


HEARD = base(
    hazards=[
        job("smell", "gas smell"), job("hot", "panel hot"), job("burning", "on fire"), ANY,
    ]
)  # fmt: skip


@pytest.mark.parametrize(
    ("name", "typed", "dangers"),
    [
        # What a test is called is no danger, whatever number is read at it.
        ("Gas smell", "12", []),
        ("Gas smell", "12, panel hot", ["hot"]),
        ("Gas smell", "gas smell", ["smell"]),
        ("Gas smell", "12 in here, and a gas smell", ["smell"]),
        # A word that only makes a danger behind the test's name is an answer; a number is read.
        ("Panel", "hot", []),
        ("Panel", "hot, 60 C", ["hot"]),
        ("Panel", "60 C", []),
    ],
)
def test_the_name_of_a_test_is_said_before_a_number_and_is_no_danger_itself(
    name: str, typed: str, dangers: list[str]
) -> None:
    assert ids(told_at(HEARD, a_test("t", name=name), typed)) == dangers


@pytest.mark.parametrize(
    "said", ["on fire", "the unit next door's on fire and I rang the office about the keys"]
)
def test_what_is_on_fire_is_heard_whatever_else_is_said(said: str) -> None:
    assert ids(spoken_of(HEARD, said)) == ["burning"]


def test_a_bare_reading_is_left_to_whoever_takes_it_as_one(shipped: Knowledge) -> None:
    """Asked for a reading, its number is judged by the test; in plain words it is a danger."""
    assert ids(spoken_of(shipped, "30 % LEL")) == ids(named(shipped, "30 % LEL")) == ["gas-odour"]
    assert spoken_of(shipped, "30 % LEL", read=False) == ()
    assert ids(spoken_of(shipped, "gas leak, 30 % LEL", read=False)) == ["gas-odour"]


@pytest.mark.parametrize(
    ("said", "stands"),
    [
        ("nest in the flue cap", True),
        ("nest in the flue cap, took it out", False),
        ("looked in, took it out, nest in the flue cap", True),
        ("looked in, nest in the flue cap, took it out", False),
        ("nest in the flue cap, hat in hand, took it out", True),
    ],
)
def test_a_nest_is_out_only_where_that_is_said_of_it_next(
    said: str, stands: bool, shipped: Knowledge
) -> None:
    """What was taken out before may have been the filter; a blocked flue fills the rooms."""
    assert ("flue-or-flame-not-right" in ids(spoken_of(shipped, said))) is stands
