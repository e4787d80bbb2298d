"""What is told to have gone before a visit goes on again voids it: at every prompt of a restart.

Lock and proof: 29 CFR 1910.147(f)(3), NFPA 70E 120.5, from memory.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, DEAD_WORK, HANDS_IN, begin, lead_to

LIVE = "Hands out: it counts as live."
STANDS = "Does it still stand"
PROMPTS: dict[str, tuple[tuple[str, ...], str]] = {
    "going on": ((), "Go on with it?"),
    "who asks": (("y",), "Who is asking?"),
    "naming": (("n",), "Which unit?"),
    "of the named": (("n", "RTU-7"), "Go on with it?"),
}
"""What is typed after the start, and the prompt at which the state is told."""
TOLD = ("lock aint on it no more", "power is back on up there", "hung my lock on rtu 6 by mistake")
DOUBTED = ("took my lock along for a minute", "went to lunch and back", "we have 208 again")
NOT_TOLD = ("lock is still on", "the panel is off", "power is still off")


@pytest.fixture
def locked(data: Path, clock: Clock) -> Path:
    """A visit to RTU-7 left with the hands inside, and a later one that has done nothing yet."""
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        person.types("q")
    return data


def lapsed(data: Path) -> list[str]:
    """The words of what was kept as gone, in any visit."""
    records = (
        json.loads(line)["event"]
        for journal in sorted((data / "visits").glob("*.journal"))
        for line in journal.read_text("utf-8").splitlines()
    )
    return [str(each["words"]) for each in records if each.get("event") == "state-gone"]


@pytest.fixture
def at(locked: Path, clock: Clock) -> Callable[[str], Person]:
    """Leads to one of `PROMPTS`, the later visit being offered first where the unit is named."""

    def go(where: str) -> Person:
        typed, asked = PROMPTS[where]
        if where == "of the named":
            begin(locked, clock, unit="RTU-8").__enter__().types("q")
        person = Person(locked, clock=clock)
        person.types(*typed) if typed else None
        assert asked in person.last, person.last
        return person

    return go


@pytest.mark.parametrize("said", TOLD)
@pytest.mark.parametrize("where", PROMPTS)
def test_it_is_heard_and_asked_again(
    where: str, said: str, at: Callable[[str], Person], locked: Path, clock: Clock
) -> None:
    """Regression: "lock aint on it no more" was no number from 1 to 8, and the visit went on."""
    with at(where) as person:
        shown = person.types(said)
        assert LIVE in shown and PROMPTS[where][1] in " ".join(shown.split())
        person.kills_it()
    assert lapsed(locked) == [said]
    with Person(locked, clock=clock) as person:
        person.types("RTU-7", ALL)
        assert HANDS_IN not in person.last
        lead_to(person, HANDS_IN)
        assert "Step: Switch off, lock, tag and try" in person.said


@pytest.mark.parametrize("where", PROMPTS)
def test_what_nobody_can_tell_is_asked_about(
    where: str, at: Callable[[str], Person], locked: Path
) -> None:
    with at(where) as person:
        for said in DOUBTED[:2]:
            assert STANDS in person.types(said), said
            assert PROMPTS[where][1] in " ".join(person.types("y").split())
        assert STANDS in person.types(DOUBTED[2])
        assert LIVE in person.types("n")
        person.types("q")
    assert lapsed(locked) == [DOUBTED[2]]


def test_what_still_stands_is_no_such_word(at: Callable[[str], Person], locked: Path) -> None:
    with at("who asks") as person:
        for said in NOT_TOLD:
            shown = person.types(said)
            assert LIVE not in shown and STANDS not in shown, said
        assert HANDS_IN in person.types(ALL)
    assert not lapsed(locked)


def test_a_unit_that_is_told_of_by_number_is_the_one(locked: Path, clock: Clock) -> None:
    """What is told of RTU-7 is kept there, whichever visit is asked about."""
    begin(locked, clock, unit="RTU-8").__enter__().types("q")
    with Person(locked, clock=clock) as person:
        assert "Kept in visit 2026-11-26-1 to RTU-7" in person.types("rtu 7 has its power back on")
        person.types("q")
