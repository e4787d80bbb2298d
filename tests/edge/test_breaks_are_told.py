"""After a break the screen says first what counts no more, and that hands come out.

Regression: an answer to a nameplate question after an hour with the hands inside was taken, and
nothing before the cautions said that a break had been noticed.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import ALL, DEAD_WORK, HANDS_IN, begin, careful, lead_to, task

PLATE_WORK = "do capacitance-out-of-circuit at capacitor condenser fan 1"


def first_lines(person: Person) -> str:
    """What the last answer brought on the screen, in one line."""
    return " ".join(person.last.split())


def is_told(said: str) -> None:
    told = said.index("A break was noticed")
    orders = said.index("Hands out: it counts as live")
    assert told < orders
    assert "is your own lock still on" in said and "Make no call" in said
    for later in ("WARNING", "DANGER", "CAUTION", "Step:", "Test:"):
        assert later not in said[:orders], said


@pytest.mark.parametrize("minutes", [65, 90])
def test_a_break_at_a_nameplate_question_is_told_before_the_cautions(
    minutes: int, data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        person.types("clean", PLATE_WORK)
        for _ in range(20):
            if "From the nameplate" in person.last:
                break
            person.types("discharged" if "Step: Bleed" in task(person) else "")
        assert "From the nameplate" in person.last, person.said[-2000:]
        clock.pass_minutes(minutes)
        person.types("35 uF")
        is_told(first_lines(person).split("35 uF", 1)[1])
        assert "locked out" in first_lines(person) and "the look at the roof" in first_lines(person)


def test_a_break_at_a_test_with_the_hands_inside_is_told_first(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        clock.pass_minutes(65)
        person.types("clean")
        is_told(first_lines(person))


@pytest.mark.parametrize("minutes", [1, 90])
def test_going_on_says_that_states_are_asked_again_only_where_they_are(
    minutes: int, data: Path, clock: Clock
) -> None:
    """After seconds it said so too, and asked none of them."""
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
    clock.pass_minutes(minutes)
    with Person(data, clock=clock) as person:
        person.types("y", ALL)
        said = first_lines(person)
        assert ("are asked again" in said) is (minutes == 90), said
        assert ("still counts" in said) is (minutes == 1), said


def test_a_visit_that_is_gone_on_with_tells_first_what_expired(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
    clock.pass_minutes(90)
    with Person(data, clock=clock) as person:
        person.types("y")
        is_told(first_lines(person))
        assert "Who is asking" in person.last


def test_a_short_break_is_none(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        clock.pass_minutes(15)
        person.types("clean")
        assert "A break was noticed" not in person.said


ASKED_FOR = {
    "Roof, go or no go": "the look at the roof",
    "Tell the people inside": "people told",
    "Put the fire panel on test": "the fire panel on test",
    "Arc-rated clothing": "arc-rated clothing on",
    "Sweep for flammable refrigerant": "air swept",
    "Combustible-gas sweep": "air swept",
    "Prove the meter": "the proof of the meter",
    "Stop the unit by its controls": "stopped by its controls",
    "Switch off, lock, tag and try": "locked out",
    "Test for dead": "dead",
    "Discharge and meter": "capacitors discharged",
}
"""Step, as the screen names it -> what was said to count no more."""


def test_what_counts_no_more_is_told_in_the_order_in_which_it_is_asked_again(
    data: Path, clock: Clock
) -> None:
    """Regression: the lock was told first and the roof last, and the roof was asked first."""
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        clock.pass_minutes(65)
        person.types("clean")
        said = first_lines(person)
        told = said.partition("It counts no more: ")[2].partition(".")[0].split(", ")
        assert "is asked again in this order, as at the start." in said
        person.types(DEAD_WORK)
        asked: list[str] = []
        for _ in range(60):
            if HANDS_IN in task(person):
                break
            now = next((w for step, w in ASKED_FOR.items() if f"Step: {step}" in task(person)), "")
            asked += [now] if now and now not in asked else []
            person.types(careful(person))
    assert HANDS_IN in task(person) and len(asked) > 6
    assert [each for each in asked if each in told] == told


@pytest.mark.parametrize("minutes", [31, 61, 1440, -5])
def test_whoever_starts_again_is_told_first_that_hands_come_out(
    minutes: float, data: Path, clock: Clock
) -> None:
    """Regression: the first screen asked to go on, and the test that was chosen was gone."""
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        person.kills_it()
    clock.pass_minutes(minutes)
    with Person(data, clock=clock) as person:
        said = first_lines(person)
        assert said.startswith("Hands out of it: it counts as live"), said
        assert "As it was left at RTU-7:" in said and "panels off" in said
        assert said.endswith("Go on with it? (y/n, Enter is y)") or "is open. Go on" in said
        person.types("y")
        is_told(first_lines(person))
        person.types(ALL)
        lead_to(person, HANDS_IN)


def test_a_test_that_was_chosen_is_led_to_again_after_a_break(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.types(DEAD_WORK)
        lead_to(person, HANDS_IN)
        clock.pass_minutes(65)
        person.types("clean")
        is_told(first_lines(person))
        assert task(person).startswith("Step: Roof")
        lead_to(person, HANDS_IN)


def test_whoever_starts_again_at_a_closed_unit_is_given_no_order(data: Path, clock: Clock) -> None:
    with begin(data, clock) as person:
        person.kills_it()
    clock.pass_minutes(90)
    with Person(data, clock=clock) as person:
        assert "Hands out" not in person.said
