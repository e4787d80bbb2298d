"""A gas cock left shut, or a plug left untested, meets whoever comes to the unit next."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.edge.visits import ALL, begin, careful, task, to_a_task

GAS = {"What heat": "gas", "Natural gas or": "natural-gas", "Which line": "208-to-240-volt"}
LOOK, OPEN = "See whether the gas cock is open", "Open the gas cock again"
PLUG, TRIALS = "Test the plug of the tap", "Test: Watch the ignition trials"
MANIFOLD = "Test: Manifold pressure"
UNTESTED = "The plug of the outlet tap has not been tested under gas"
STAYS = "The gas cock stays shut and tagged until it has been."
CLOSED, BACK = "The visit is closed", "The unit is back as it was."
FIRST = "2026-11-26-1"


def walked(person: Person, clock: Clock, wanted: str, **typed: str) -> list[str]:
    """What was asked on the way to `wanted`: done with care, or as it is `typed`, by its name."""
    asked: list[str] = []
    others = {name.replace("_", " "): word for name, word in typed.items()}
    for _ in range(120):
        now = task(person)
        if wanted in now or wanted in person.last:
            return asked
        asked.append(now)
        if "Wait out the purge" in now:
            clock.pass_minutes(6)
            person.types("waited")
            continue
        known = (word for words, word in GAS.items() if words in person.last)
        other = (word for name, word in others.items() if name in now)
        person.types(next(other, None) or next(known, careful(person)))
    raise AssertionError(f"{asked} {person.said[-3000:]}")


def again(data: Path, clock: Clock, who: str = ALL) -> Person:
    """The next visit, its unit's name spelt otherwise."""
    clock.pass_minutes(1)
    return begin(data, clock, "rtu 07", "no-heat", who)


def manifold_read(data: Path, clock: Clock) -> Person:
    person = begin(data, clock, words="no-heat")
    person.types("do gas-manifold-pressure")
    walked(person, clock, MANIFOLD)
    return person


def untested(data: Path, clock: Clock) -> str:
    """What the screen says last of a visit whose plug cannot be tested."""
    with manifold_read(data, clock) as person:
        person.types("3.5 inwc", "done")
        walked(person, clock, CLOSED, Test_the_plug="cannot")
        return " ".join(person.last.split())


def at(asked: list[str], step: str) -> int:
    return next(n for n, each in enumerate(asked) if step in each)


def test_an_untested_plug_stands_on_the_tag_and_in_both_reports(tmp_path: Path) -> None:
    """Regression: the last screen told of it, and nothing else did."""
    said = untested(tmp_path, Clock(tmp_path))
    tag = said.partition("Write on the tag of the gas cock:")[2]
    assert "Do not open the gas cock of RTU-7" in tag and UNTESTED in tag
    assert f"{UNTESTED}. {STAYS}" in tag and BACK not in said
    report = started(tmp_path, "report", FIRST).stdout.decode()
    left = report.partition("## How the unit was left")[2].partition("\n## ")[0]
    assert UNTESTED in left
    plain = json.loads(started(tmp_path, "report", FIRST, "--json").stdout)
    assert plain["left_off"] == [f"{UNTESTED}. {STAYS}"]


def test_the_next_visit_is_told_and_led_to_it_before_a_burner_is_lit(tmp_path: Path) -> None:
    """Regression: it said nothing, opened no cock with leak fluid and lit the burner."""
    clock = Clock(tmp_path)
    untested(tmp_path, clock)
    with again(tmp_path, clock) as person:
        said = " ".join(person.said.split())
        assert "The gas cock was left shut on 2026-11-26" in said
        assert said.index(UNTESTED) < said.index("What does the caller say?")
        person.types("do ignition-trials")
        asked = walked(person, clock, TRIALS, See_whether_the_gas_cock="shut")
        assert at(asked, LOOK) < at(asked, OPEN) < at(asked, PLUG)


@pytest.mark.parametrize("found", ["shut", "open"])
def test_it_is_led_to_before_the_close_and_tight_it_is_told_no_more(
    found: str, tmp_path: Path
) -> None:
    clock = Clock(tmp_path)
    untested(tmp_path, clock)
    with again(tmp_path, clock) as person:
        person.types("done")
        asked = walked(person, clock, CLOSED, See_whether_the_gas_cock=found)
        assert at(asked, LOOK) < at(asked, PLUG) and any(OPEN in a for a in asked) is (
            found == "shut"
        )
        assert BACK in " ".join(person.last.split())
    with again(tmp_path, clock) as person:
        assert UNTESTED not in " ".join(person.said.split()) and "left shut" not in person.said


def test_a_visit_that_does_not_test_it_hands_it_on_as_it_was_left(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    untested(tmp_path, clock)
    with again(tmp_path, clock) as person:
        person.types("done")
        walked(person, clock, CLOSED, Test_the_plug="cannot", See_whether_the_gas_cock="shut")
    with again(tmp_path, clock) as person:
        assert f"{UNTESTED} (visit {FIRST})" in " ".join(person.said.split())


def test_who_may_open_no_cock_leaves_it_shut_and_hands_it_on(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    untested(tmp_path, clock)
    with again(tmp_path, clock, who="3 4") as person:
        person.types("done")
        asked = walked(person, clock, CLOSED, See_whether_the_gas_cock="shut")
        assert not any(OPEN in each or PLUG in each for each in asked)
        assert BACK not in " ".join(person.last.split())
    with again(tmp_path, clock) as person:
        assert f"{UNTESTED} (visit {FIRST})" in " ".join(person.said.split())


def test_a_visit_that_stays_open_hands_it_on_too(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with manifold_read(tmp_path, clock) as person:
        person.types("q")
    with again(tmp_path, clock) as person:
        assert UNTESTED in " ".join(person.said.split())


def test_no_other_unit_is_told_and_a_name_taken_back_takes_it_along(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    untested(tmp_path, clock)
    with Person(tmp_path, clock=clock) as person:
        assert UNTESTED in " ".join(person.types("RTU-7").split())
        person.types("u")
        assert UNTESTED not in " ".join(person.types("RTU-8").split())
        person.types("no-heat", ALL)
        to_a_task(person)
        person.types("do ignition-trials")
        asked = walked(person, clock, TRIALS)
        assert not any(LOOK in each or PLUG in each for each in asked)


def test_a_cock_left_shut_for_failed_lights_is_looked_at_before_the_next(tmp_path: Path) -> None:
    """Regression: the next visit took the gas as on."""
    clock = Clock(tmp_path)
    with begin(tmp_path, clock, words="no-heat") as person:
        person.types("do ignition-trials")
        walked(person, clock, TRIALS)
        person.types("locks out", "done")
        walked(person, clock, CLOSED)
    with again(tmp_path, clock) as person:
        assert "The gas cock was left shut" in " ".join(person.said.split())
        person.types("do ignition-trials")
        asked = walked(person, clock, TRIALS, See_whether_the_gas_cock="shut")
        assert at(asked, LOOK) < at(asked, OPEN)
