"""A grounded compressor and one that hums: at the screen nobody closes, calls or tries again."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, careful, lead_to, task

LIVE = ("Put every lead back", "Take your own lock off", "Call for the unit", "Line volts at")


def found_grounded(person: Person) -> str:
    """What is said once the windings have been read to ground, with care on the way."""
    person.types("do compressor-insulation")
    lead_to(person, "Compressor windings to ground")
    return " ".join(person.types("0.004 Mohm").split())


def goes_on(person: Person, most: int = 25) -> list[str]:
    """What is asked next, each step done with care and each test left out."""
    asked: list[str] = []
    while person.running and len(asked) < most:
        now = task(person)
        if not now:
            break
        asked.append(now)
        person.types(careful(person) or "s")
    return asked


def test_a_grounded_compressor_is_not_closed_nor_called(data: Path, clock: Clock) -> None:
    """Skipping on led to: leads back, lock off, and a call for the unit, under the caution."""
    with begin(data, clock) as person:
        said = found_grounded(person)
        assert "Leave the unit locked out and tagged: nobody closes its switch" in said
        asked = goes_on(person)
        assert not [each for each in asked if any(live in each for live in LIVE)], asked
    with begin(data, clock, unit="RTU-8") as person:
        found_grounded(person)
        refused = " ".join(person.types("do compressor-amps").split())
        assert "winding grounded" in refused


def test_a_visit_that_found_it_grounded_leaves_the_unit_locked_and_tagged(
    data: Path, clock: Clock
) -> None:
    with begin(data, clock) as person:
        found_grounded(person)
        person.types("done")
        for _ in range(25):
            if not person.running:
                break
            now = task(person)
            assert not any(live in now for live in LIVE[1:]), person.last
            if "lead back" in now:
                assert "found grounded or shorted stay off" in " ".join(person.last.split())
            person.types("back" if "lead back" in now else careful(person))
        said = " ".join(person.said.split())
        assert "The unit stays off and locked: winding grounded stands in the way." in said


def test_a_compressor_that_hums_is_stopped_and_locked_out_next(data: Path, clock: Clock) -> None:
    """The amps of each leg were asked for next, the call still on."""
    with begin(data, clock) as person:
        person.types("do compressor-start-attempt")
        lead_to(person, "What the compressor does on a start")
        said = " ".join(person.types("hums and trips").split())
        assert "Call off now, and lock it out" in said
        asked = goes_on(person, most=3)
        assert "Stop the unit by its controls" in asked[0] or "Switch off, lock" in asked[0], asked


def called_for(person: Person, found: tuple[str, str, str], test: str) -> str:
    """What is said before the call for a test, once something was found at another."""
    first, shown, outcome = found
    person.types(f"do {first}")
    lead_to(person, shown)
    person.types(outcome, f"do {test}")
    lead_to(person, "Call for the unit")
    return " ".join(person.last.split())


def test_what_was_found_is_told_again_before_a_call(data: Path, clock: Clock) -> None:
    """Regression: "the compressor is not called again", and later a bare call for cooling."""
    with begin(data, clock) as person:
        fan = ("condenser-fan-turning", "Condenser fan turning", "stopped")
        said = called_for(person, fan, "cooling-call at circuit 1")
        assert "A condenser fan stands still on a call" in said
        assert "only with a hand on the control" in said


def test_no_compressor_is_read_over_a_coil_of_ice(data: Path, clock: Clock) -> None:
    """Regression: "cooling off, and let it melt", and then its readings, the ice still there."""
    with begin(data, clock, words="weak-cooling") as person:
        person.types("do ice-on-coil")
        lead_to(person, "Ice on the")
        person.types("iced")
        assert "Not now: " in person.types("do suction-line-temperature")
        person.types("do ice-on-coil")
        lead_to(person, "Ice on the")
        person.types("none")
        assert "Not now: " not in person.types("do suction-line-temperature")
