"""The number of a unit, a room or a time of day is on no instrument, and none is read off it.

Regression: 0 % LEL on RTU 5 was 5 % LEL, none at unit 2 a STOP for gas.
"""

from __future__ import annotations

from datetime import datetime

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.answering import step_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.other_numbers import without_other_numbers
from troubleshoot.safety.steps import DEAD_TEST, GAS_SWEEP, Step
from troubleshoot.visit.events import Aimed
from troubleshoot.visit.state import VisitState

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")


def outcomes(shipped: Knowledge, step: str, typed: str) -> tuple[str, ...]:
    test = shipped.tests[step]
    return step_event_from(shipped, VisitState(), test, Step(step), typed, NOW).outcomes


@pytest.mark.parametrize(
    "typed",
    [
        "0 % LEL on RTU 5", "0 % LEL at 9:00", "none at unit 2", "unit 5 has its disconnect on",
        "0 % LEL in room 12", "0 % LEL at 2 pm", "nothing on rtu-4 at 14:30",
    ],
)  # fmt: skip
def test_it_is_no_reading_of_gas(typed: str, shipped: Knowledge) -> None:
    with pytest.raises(NotAnAnswer):
        outcomes(shipped, GAS_SWEEP, typed)


@pytest.mark.parametrize(
    ("step", "typed"),
    [
        (GAS_SWEEP, "25 % LEL on RTU 5"), (GAS_SWEEP, "reads 25 at 9:00"),
        (DEAD_TEST, "still 277 V on unit 2"), (DEAD_TEST, "got 277 V at 9:00"),
    ],
)  # fmt: skip
def test_what_is_measured_beside_it_counts(step: str, typed: str, shipped: Knowledge) -> None:
    assert not {*outcomes(shipped, step, typed)} & {"none", "dead", "trace"}


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("0 % lel on rtu 5", "0 % lel on rtu"), ("at 9:00 it read 3", "at o'clock it read 3"),
        ("unit 277 v", "unit 277 v"), ("unit reads 5", "unit reads 5"), ("room 12 %", "room 12 %"),
        ("25 ppm", "25 ppm"), ("unit no. 7", "unit no"), ("10 psi at 2 pm", "10 psi at o'clock"),
    ],
)  # fmt: skip
def test_only_the_figures_of_names_and_times_are_left_out(said: str, left: str) -> None:
    assert " ".join(without_other_numbers(said).split()) == left


@pytest.mark.parametrize(
    "typed", ["do not turn the disconnect on", "do nothing with it", "do not touch the meter"]
)
def test_what_forbids_is_no_command(typed: str, shipped: Knowledge) -> None:
    """Regression: do not turn the disconnect on led to the test of the disconnect."""
    visit = AtWork(shipped, "in")
    visit.types(typed)
    assert not any(isinstance(event, Aimed) for event in visit.events)
