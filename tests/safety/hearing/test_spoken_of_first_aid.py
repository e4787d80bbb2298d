"""What a judge said of a sound gas heat and of other everyday matters stops nothing.

Of 46 harmless sentences, the first of them a judge's, 7 stopped before a rule was touched; with
those is what is near to them and does stop.
"""

from __future__ import annotations

import pytest

from tests.safety.hearing.test_spoken_dangers import lines
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.hinting import hints

KNOWLEDGE = load_shipped()
HARMLESS = lines("first_aid_harmless.txt")
ONE_IN = 10
"""Of harmless sentences that may be asked about: one in so many."""


@pytest.mark.parametrize("typed", HARMLESS)
def test_what_is_near_to_it_stops_nothing(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()


def test_hardly_any_of_them_is_asked_about() -> None:
    asked = [typed for typed in HARMLESS if hints(typed)]
    assert len(asked) <= len(HARMLESS) / ONE_IN, asked


@pytest.mark.parametrize(
    "typed",
    ["sparks!", "sparks flying from the disconnect, no heat", "it sparks and smells of gas",
     "sparks coming out, no heat", "panel is sparking and the burner wont light",
     "flame comes out of the box", "flame is coming on me", "flames coming out of the burner"],
)  # fmt: skip
def test_a_spark_or_flame_that_is_no_burner_at_work_stops(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed)
