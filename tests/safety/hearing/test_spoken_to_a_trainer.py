"""What a trainer said and what was written down beside it: sentences, and readings told in words.

Of 40 dangers (`stranger_dangers.txt` behind the trainer's own) 7 stopped as what they are on their
first run, 3 as another, 11 were asked about and 19 missed; behind the word danger 18 were taken for
what they are, 7 for another and 15 for no one danger. Of 40 harmless ones 2 stopped and 5 were
asked about. Of the 29 readings 2 stopped as what they are, 1 as another, 8 were asked about and 18
set aside; of the 30 harmless ones 2 stopped.
"""

from __future__ import annotations

import pytest

from tests.safety.hearing.test_spoken_dangers import lines
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.netted import read_in_doubt
from troubleshoot.safety.hearing.reporting import reported

KNOWLEDGE = load_shipped()
DANGERS = [
    tuple(line.split(": ", 1))
    for name in ("stranger_dangers.txt", "stranger_readings.txt")
    for line in lines(name)
]
HARMLESS = [*lines("stranger_harmless.txt"), *lines("harmless_readings.txt")]
ONE_IN = 10
"""Of harmless sentences that may be asked about: one in so many."""


@pytest.mark.parametrize(("hazards", "typed"), DANGERS)
def test_it_is_heard_as_what_it_is(hazards: str, typed: str) -> None:
    """Where nothing typed can be right, among words, and behind the word danger, the first told."""
    right = {*hazards.split("|")}
    assert right & {hazard.id for hazard in spoken_of(KNOWLEDGE, typed)[:1]}
    assert right & {hazard.id for hazard in told_among(KNOWLEDGE, typed)[:1]}
    assert right & {hazard.id for hazard in reported(KNOWLEDGE, typed)[:1]}


@pytest.mark.parametrize("typed", HARMLESS)
def test_what_is_near_to_it_stops_nothing(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()


def test_hardly_any_of_them_is_asked_about() -> None:
    asked = [typed for typed in HARMLESS if hints(typed) or read_in_doubt(KNOWLEDGE, typed)]
    assert len(asked) <= len(HARMLESS) / ONE_IN, asked


@pytest.mark.parametrize(
    "typed",
    [
        "gas inlet was 20 inches last week", "the gas inlet limit is 15 in wc",
        "the sheet says the gas inlet should be under 20 inches",
    ],
)  # fmt: skip
def test_a_number_that_may_be_none_that_is_read_now_is_asked_about(typed: str) -> None:
    assert [hazard.id for hazard in read_in_doubt(KNOWLEDGE, typed)] == ["gas-pressure-too-high"]
    assert "gas-pressure-too-high" not in [each.id for each in spoken_of(KNOWLEDGE, typed)]


@pytest.mark.parametrize(
    ("typed", "shows"),
    [
        # 14 in wc: the limit of the rules' own test of the gas at the inlet
        ("gas inlet 14 inches", False), ("gas inlet 14.2 inches", True),
        ("gas inlet 0.5 psi", False), ("gas inlet 0.6 psi", True),
        # 5 V from the cabinet to a ground that does not come through the unit
        ("cabinet to ground 5 V", False), ("cabinet to ground 5.1 V", True),
        ("cabinet to ground 80 mV", False), ("cabinet to ground 80 V", True),
        # 400 ppm air-free
        ("flue co 400 ppm", False), ("flue co 401 ppm", True),
        ("suction 0", False), ("suction -1", True), ("suction minus one", True),
    ],
)  # fmt: skip
def test_how_much_is_a_danger_stands_with_the_test_that_reads_it(typed: str, shows: bool) -> None:
    dangers = {
        "gas-pressure-too-high", "unexplained-voltage", "flue-carbon-monoxide-extreme",
        "compressor-pulls-a-vacuum",
    }  # fmt: skip
    assert bool(dangers & {hazard.id for hazard in spoken_of(KNOWLEDGE, typed)}) is shows
