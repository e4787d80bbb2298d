"""What proves a repair live is asked with the power back, before the panel goes on."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import DEAD_WORK, HANDS_IN, begin, careful, events_of, lead_to, task

WHAT_WAS_READ = "What did you read?"
LOCK_OFF = "Take your own lock off"
PANELS_ON = "Put the panels and guards on"
STILL = "Is the complaint still there?"
READ = {
    "New section within its tolerance": "5.1 uF",
    "Fan starts from rest": "starts three times, full speed",
    "Fan amps": "dunno",
}


def locked_out(tmp_path: Path, clock: Clock) -> Person:
    person = begin(tmp_path, clock)
    person.types(DEAD_WORK)
    lead_to(person, HANDS_IN)
    return person


def screen(person: Person) -> str:
    """What was said last, in one line."""
    return " ".join(person.last.split())


def what_was_read(person: Person) -> str:
    """What is typed at the proof that is asked for."""
    proof = screen(person).rpartition("Proof: ")[2]
    return next(typed for asked, typed in READ.items() if proof.startswith(asked))


def test_they_are_asked_before_the_panel_goes_on_and_not_while_locked_out(
    tmp_path: Path, clock: Clock
) -> None:
    """Regression: flue and rise were asked for while the record said locked out."""
    with locked_out(tmp_path, clock) as person:
        said = person.types("repaired condenser-fan-capacitor-weak")
        assert WHAT_WAS_READ not in said  # what judges it stands on the plate, and comes first
        said += person.types("5 uF")
        assert WHAT_WAS_READ in said and "New section" in said
        assert "Read live, with the panel off: Fan amps" in " ".join(said.split())
        said = person.types(what_was_read(person))
        assert STILL not in said and WHAT_WAS_READ not in said
        led_on(person, WHAT_WAS_READ)
        assert PANELS_ON not in person.said
        while STILL not in screen(person):
            is_asked = "Proof: " in screen(person)
            person.types(what_was_read(person) if is_asked else "")
        assert STILL in person.last
        person.types("n")
        led_on(person, "The visit is closed")
        assert "The repair is not proved, for want of a sound reading: Fan amps" in screen(person)
        assert "back as it was" not in person.last
    assert events_of(tmp_path).count('"event": "repaired"') == 2


def led_on(person: Person, until: str) -> None:
    """Do what is asked for, until something is said."""
    for _ in range(40):
        if until in screen(person):
            return
        person.types("switched on" if LOCK_OFF in task(person) else careful(person))
    raise AssertionError(person.said[-3000:])
