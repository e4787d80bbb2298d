"""After a call that gave no steady flame come the cock and the purge, before anything is asked.

NFPA 54 and the makers' lighting instructions, from memory: gas off, five minutes, then a sweep.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.test_unit_off_is_stopped import tasks_to
from tests.edge.visits import DEAD_WORK, HANDS_IN, begin, careful, task

CALL = "Call for the unit"
NEXT = ["Stop the unit by its controls", "Shut the gas cock", "Wait out the purge"]


def called_for(person: Person, test: str) -> None:
    """Lead a unit that stood locked out to the call for a test."""
    person.types(DEAD_WORK)
    tasks_to(person, HANDS_IN, 60)
    person.types("clean", f"do {test}")
    tasks_to(person, CALL, 60)


@pytest.mark.parametrize("then", ["", "do thermostat-settings", "do flame-current", "done"])
def test_the_cock_comes_next(then: str, tmp_path: Path, clock: Clock) -> None:
    """Whatever is chosen after it; a reading had only in the trial was not what it was for."""
    with begin(tmp_path, clock, words="no-heat") as person:
        person.types("208/3/60, gas, R-410A, TXV, one circuit, one fan")
        called_for(person, "flue-gas-analysis")
        person.types("no steady flame")
        if then:
            assert NEXT[0] in task(person)
            person.types(then)
        if then == "done":
            person.types(then)
        for wanted in NEXT:
            assert wanted in task(person), person.said[-1500:]
            person.types(careful(person))


def test_what_is_read_in_the_trial_is_read_first(tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path, clock, words="no-heat") as person:
        person.types("208/3/60, gas, R-410A, TXV, one circuit, one fan")
        called_for(person, "ignition-trials")
        person.types("no steady flame")
        assert "Test: Watch the ignition trials" in task(person)
        person.types("locks out")
        for wanted in NEXT:
            assert wanted in task(person), person.said[-1500:]
            person.types(careful(person))


def test_on_the_way_out_no_proof_comes_before_the_cock(tmp_path: Path, clock: Clock) -> None:
    with begin(tmp_path, clock, words="no-heat") as person:
        person.types("208/3/60, gas, R-410A, TXV, one circuit, one fan")
        person.types(DEAD_WORK)
        tasks_to(person, HANDS_IN, 60)
        person.types("clean", "repaired gas-shut-off-or-tank-empty")
        for _ in range(60):
            is_proof = "What did you read?" in " ".join(person.last.split())
            if CALL in task(person) and not is_proof:
                break
            person.types("" if is_proof else careful(person))
        person.types("no steady flame")
        assert NEXT[0] in task(person) and "Proof:" not in person.last
