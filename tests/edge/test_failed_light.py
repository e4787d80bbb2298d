"""A light that failed, however it is told, is waited out with the cock shut before all else."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin, careful, lead_to, task

START, STOP, SHUT = "Call for the unit", "Stop the unit by its controls", "Shut the gas cock"
WAIT, SWEEP = "Wait out the purge", "Combustible-gas sweep"
SEQUENCE, ROD = "Watch one full sequence", "Flame rod and its lead"


def steps_on(person: Person, clock: Clock, wanted: str) -> list[str]:
    """The steps from here to one or a test, each done with care, the purge waited out."""
    done: list[str] = []
    while wanted not in task(person):
        assert person.running and len(done) < 40, person.said[-3000:]
        done.append(task(person))
        if WAIT in done[-1]:
            clock.pass_minutes(6)
        person.types("waited" if WAIT in done[-1] else careful(person))
    return done


def order_of(done: list[str]) -> list[str]:
    """The steps at the burner, in the order in which they were asked for."""
    return [step for each in done for step in (STOP, SHUT, WAIT, SWEEP) if step in each]


def test_a_start_for_heat_that_failed_is_waited_out_before_the_next(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with begin(tmp_path, clock, words="no-heat") as person:
        person.types("do gas-valve-volts")
        steps_on(person, clock, START)
        person.types("does not start")
        done = steps_on(person, clock, START)
        assert order_of(done) == [STOP, SHUT, WAIT, SWEEP, SWEEP]


VOLTS = "Volts at the gas valve in the trial"


@pytest.mark.parametrize("outcome", ["no flame", "lights then quits"])
def test_what_is_read_in_the_trial_is_read_while_a_burner_tries_that_does_not_light(
    outcome: str, tmp_path: Path
) -> None:
    """Regression: a burner that never lit was waited out and called anew, its volts never asked."""
    clock = Clock(tmp_path)
    with begin(tmp_path, clock, words="no-heat") as person:
        person.types("do gas-valve-volts")
        steps_on(person, clock, START)
        person.types(outcome)
        assert f"Test: {VOLTS}" in task(person)
        person.types("24.4 V", "do flame-rod")
        assert order_of(steps_on(person, clock, ROD))[:4] == [STOP, SHUT, WAIT, SWEEP]


@pytest.mark.parametrize(("words", "lights"), [("no-heat", True), ("no-cooling", False)])
def test_a_full_sequence_that_may_light_the_burner_is_led_to_as_a_light(
    words: str, lights: bool, tmp_path: Path
) -> None:
    """Regression: "no heat" and `do operating-sequence` lit it with no air swept, nobody told."""
    clock = Clock(tmp_path)
    with begin(tmp_path, clock, words=words) as person:
        person.types("do operating-sequence")
        way = steps_on(person, clock, SEQUENCE)
        assert "Tell the people inside" in way[0] and "Roof" in way[1]  # before the ladder, on any
        done = " ".join(way)
        for step in (SWEEP, "CO in the air", "fire panel on test"):
            assert (step in done) is lights, (step, done)
        for caution in ("One bang is enough", "carbon monoxide in room", "hot surfaces"):
            assert (caution in " ".join(person.last.split())) is lights, caution


def test_a_sequence_that_drops_out_is_waited_out_before_hands_go_in(tmp_path: Path) -> None:
    """Regression: the cock was shut and the air swept with the call on, and nothing waited out."""
    clock = Clock(tmp_path)
    with begin(tmp_path, clock, words="no-heat") as person:
        person.types("do operating-sequence")
        lead_to(person, SEQUENCE)
        person.types("lights then quits")
        person.types("do flame-rod")
        assert order_of(steps_on(person, clock, ROD))[:4] == [STOP, SHUT, WAIT, SWEEP]


def test_a_reading_of_the_trial_that_is_taken_back_is_not_read_again_without_a_purge(
    tmp_path: Path,
) -> None:
    """A walk found it: minutes after a trial that was told and taken back it was to be read on."""
    clock = Clock(tmp_path)
    with begin(tmp_path, clock, words="no-heat") as person:
        person.types("do gas-valve-volts")
        steps_on(person, clock, START)
        person.types("no flame", "24.4 V")
        clock.pass_minutes(6)
        person.types("u", "do gas-valve-volts")
        assert order_of(steps_on(person, clock, VOLTS))[:4] == [STOP, SHUT, WAIT, SWEEP]
