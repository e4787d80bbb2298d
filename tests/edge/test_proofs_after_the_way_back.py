"""What proves a repair with the unit running is asked once the locked-out unit is back."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person
from tests.edge.visits import DEAD_WORK, HANDS_IN, begin, careful, events_of, lead_to, task

WHAT_WAS_READ = "What did you read?"
LOCK_OFF = "Take your own lock off"
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


def test_they_are_asked_after_the_way_back_and_not_before(tmp_path: Path, clock: Clock) -> None:
    """Regression: flue and rise were asked for while the record said locked out."""
    with locked_out(tmp_path, clock) as person:
        said = person.types("repaired condenser-fan-capacitor-weak")
        assert WHAT_WAS_READ in said and "New section" in said
        said = person.types(what_was_read(person))
        assert "Still to come, once the unit is back" in said
        assert STILL not in said and "Step: " in said
        for _ in range(30):
            if WHAT_WAS_READ in screen(person):
                break
            person.types("off" if LOCK_OFF in task(person) else careful(person))
        while WHAT_WAS_READ in screen(person):
            person.types(what_was_read(person))
        assert STILL in person.last
        end = person.types("n")
        assert "The repair is not proved: Fan amps" in " ".join(end.split())
        assert "back as it was" not in end
    assert events_of(tmp_path).count('"event": "repaired"') == 2
