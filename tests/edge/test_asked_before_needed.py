"""A fact is asked before the caution or the step that hangs on it, seen from a terminal."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import DEAD_WORK, HANDS_IN, begin, careful, task

FACTS = {
    "Which line voltage?": "208-to-240-volt",
    "What kind of blower motor?": "single-phase-capacitor",
    "How many refrigerant circuits?": "1",
    "How many condenser fans?": "2",
}
HIGH_VOLTS = "gear over 240 up to 600 V asks for category 2"
LOW_VOLTS = "gear up to 240 V asks for"


def to(person: Person, wanted: str, facts: dict[str, str]) -> None:
    """Do with care what is asked, and answer facts that are known, until `wanted` is asked for."""
    for _ in range(80):
        if wanted in task(person):
            return
        assert person.running, person.said[-3000:]
        known = (typed for asked, typed in facts.items() if asked in person.last)
        person.types(next(known, careful(person)))
    raise AssertionError(person.said[-3000:])


def order(person: Person, *words: str) -> list[int]:
    said = " ".join(person.said.split())
    assert all(each in said for each in words), said
    return [said.index(each) for each in words]


@pytest.mark.parametrize("aim", [DEAD_WORK, "do contactor-coil-volts at contactor 1"])
def test_a_208_volt_unit_is_never_met_with_the_cautions_of_480(tmp_path: Path, aim: str) -> None:
    """Regression: the volts were asked after lock-out and both proofs, cautions of 480 V before."""
    with begin(tmp_path, Clock(tmp_path)) as person:
        person.types(aim)
        to(person, HANDS_IN if aim == DEAD_WORK else "Test: Coil volts while called", FACTS)
        asked, low = order(person, "Which line voltage?", LOW_VOLTS)
        assert asked < low
        assert HIGH_VOLTS not in " ".join(person.said.split())
        assert "A second person in sight" not in person.said


def test_what_holds_a_charge_is_asked_before_the_first_of_it_is_bled(tmp_path: Path) -> None:
    """Regression: the blower's kind was asked once its capacitor had been bled."""
    with begin(tmp_path, Clock(tmp_path)) as person:
        person.types(DEAD_WORK)
        to(person, HANDS_IN, FACTS)
        *facts, bled = order(person, *list(FACTS)[1:], "Step: Discharge and meter")
        assert max(facts) < bled


def test_a_480_volt_panel_with_only_control_to_be_read_takes_two_people(tmp_path: Path) -> None:
    """Regression: only tests of line volts asked for somebody in sight; the lugs are there too."""
    with begin(tmp_path, Clock(tmp_path)) as person:
        person.types("do cooling-call at circuit 1")
        to(person, "Test: Cooling call", {"Which line voltage?": "480-volt"})
        together, opened = order(
            person, "Step: A second person in sight", "Step: Open the panel with the power on"
        )
        assert together < opened


PLATE_VOLTS = "From the nameplate"


def at_the_plate_of_live_volts(person: Person) -> None:
    """On the way to line volts, with 208 V told of the service, at the question for the plate."""
    person.types("do line-volts-idle")
    to_words(person, PLATE_VOLTS, {"Which line voltage?": "208-to-240-volt"})


def to_words(person: Person, wanted: str, facts: dict[str, str]) -> None:
    for _ in range(60):
        if wanted in person.last:
            return
        known = (typed for asked, typed in facts.items() if asked in person.last)
        person.types(next(known, careful(person)))
    raise AssertionError(person.said[-3000:])


def test_a_plate_of_460_volts_beside_the_test_asks_for_what_480_takes(tmp_path: Path) -> None:
    """A walk found it: 460 told right before the test, and the test came, alone at 480 V."""
    with begin(tmp_path, Clock(tmp_path)) as person:
        at_the_plate_of_live_volts(person)
        person.types("460")
        assert task(person).startswith("Step: A second person in sight"), person.said[-2000:]


def test_an_hour_that_ends_at_a_plate_question_asks_for_the_roof_before_the_test(
    tmp_path: Path,
) -> None:
    """A walk found it: "invalid" was typed there, once the look at the roof had grown old."""
    clock = Clock(tmp_path)
    with begin(tmp_path, clock) as person:
        for place, rated in (("compressor 1", "35"), ("condenser fan 1", "")):
            person.types(f"do capacitance-out-of-circuit at capacitor {place}")
            to_words(person, f"From the nameplate, capacitor {place}", FACTS)
            clock.pass_minutes(25)
            if rated:
                person.types(rated)
                clock.pass_minutes(20)
                person.types("35 uF")
        assert "Kept as not counting" in person.types("invalid the leads were swapped")
        assert task(person).startswith("Step: Roof, go or no go"), person.said[-2000:]
