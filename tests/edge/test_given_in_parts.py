"""What is given on the way of a hand-over, or of its result, is kept as it is given."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.edge.visits import ALL, careful, events_of, task

VISIT = "2026-11-26-1"
CREW = "gas utility crew 4"
DONE = "The joint that leaked was made tight, and tested under pressure"
READ = "0 % LEL"


def leaves(person: Person) -> None:
    person.types("q")


def dies(person: Person) -> None:
    person.kills_it()


each_way = pytest.mark.parametrize("goes", [leaves, dies], ids=["q", "kill -9"])


def stopped(data: Path, clock: Clock) -> Person:
    person = Person(data, clock=clock)
    person.types("RTU-9", "i smell gas")
    while "- STOP\n" not in person.last:
        person.types("")
    return person


def to_the_sweep(person: Person) -> None:
    """Give the word of whoever cleared the place, see the cock open, and come to the sweep."""
    for _ in range(20):
        now = task(person)
        if "Combustible-gas sweep" in now:
            return
        person.types(careful(person) or "cleared")
    raise AssertionError(person.said[-2000:])


def handed_over(data: Path, clock: Clock) -> None:
    with stopped(data, clock) as person:
        person.types("over", "the gas utility", "just now")
        assert "closed as stopped" in person.said
    clock.pass_minutes(60)


@each_way
def test_who_was_told_is_kept_before_the_time_is(
    goes: Callable[[Person], None], data: Path, clock: Clock
) -> None:
    with stopped(data, clock) as person:
        assert "When were they told?" in person.types("over", "the gas utility, badge 77")
        goes(person)
    assert "badge 77" in events_of(data)
    with Person(data, clock=clock) as person:
        person.types("y", ALL, "over")
        said = " ".join(person.last.split())
        assert "badge 77" in said and "When were they told?" in said
        assert "Who was told" in person.types("u")
        person.types("the gas company", "just now")
        assert "closed as stopped" in person.said
    assert "Told: the gas company" in started(data, "visits").stdout.decode() or (
        "told: the gas company" in started(data, "report", VISIT).stdout.decode()
    )


@each_way
def test_each_part_of_the_result_is_kept(
    goes: Callable[[Person], None], data: Path, clock: Clock
) -> None:
    handed_over(data, clock)
    with Person(data, "reopen", VISIT, clock=clock) as person:
        assert "What did they do" in person.types(ALL, CREW)
        goes(person)
    with Person(data, "reopen", VISIT, clock=clock) as person:
        said = " ".join(person.types(ALL).split())
        assert CREW in said and "What did they do" in said and "Who made it safe" not in said
        assert "What did they read" in person.types(DONE, "y")
        goes(person)
    with Person(data, "reopen", VISIT, clock=clock) as person:
        said = " ".join(person.types(ALL).split())
        assert DONE in said and "What did they read" in said
        assert "What did they do" not in said and "safety device" in person.types("u")
        person.types("y", READ, "y", "2026-11-26 09:50")
        assert "Reopened." in person.said
    report = started(data, "report", VISIT).stdout.decode()
    assert CREW in report and DONE in report and READ in report


@each_way
def test_a_reopened_visit_that_broke_off_before_its_sweep_is_no_new_stop(
    goes: Callable[[Person], None], data: Path, clock: Clock
) -> None:
    """Regression: it had to be handed over again, and its tag knew of nobody who was told."""
    handed_over(data, clock)
    with Person(data, "reopen", VISIT, clock=clock) as person:
        person.types(ALL, CREW, DONE, "y", READ, "y", "2026-11-26 09:50")
        assert "Reopened." in person.said
        to_the_sweep(person)
        goes(person)
    clock.pass_minutes(2)
    with Person(data, clock=clock) as person:
        person.types("y", ALL)
        said = " ".join(person.last.split())
        assert "- STOP" in said and "Told: the gas utility" in said and "again" in said
        person.types("again")
        to_the_sweep(person)
        assert "- STOP" not in person.types("0 % LEL")


def test_another_danger_meanwhile_asks_all_of_it_anew(data: Path, clock: Clock) -> None:
    handed_over(data, clock)
    with Person(data, "reopen", VISIT, clock=clock) as person:
        person.types(ALL, CREW)
        assert "- STOP" in person.types("danger fire")
        person.types("over", "the fire department", "just now")
    clock.pass_minutes(60)
    with Person(data, "reopen", VISIT, clock=clock) as person:
        person.types(ALL)
        assert "Who made it safe?" in person.last and CREW not in person.last
