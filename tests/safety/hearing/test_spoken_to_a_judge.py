"""What a judge typed at every kind of prompt, and more of each class, with what is near to it.

Of the judge's 40 dangers 36 stopped on their first run, 3 were asked about and 1 was missed (a
worn monitor without "ppm"); of the 40 harmless ones 4 stopped and 6 were asked about. Most of what
stands in `judge_dangers.txt` and `judge_harmless.txt` was written beside them, before a rule was
touched: of these 69 dangers 30 stopped then, 14 were asked about and 25 missed; of the 57 harmless
ones 8 stopped and 2 were asked about.
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
DANGERS = [tuple(line.split(": ", 1)) for line in lines("judge_dangers.txt")]
HARMLESS = lines("judge_harmless.txt")
ONE_IN = 10
"""Of harmless sentences that may be asked about: one in so many."""


@pytest.mark.parametrize(("hazard", "typed"), DANGERS)
def test_it_is_told_first_as_what_it_is(hazard: str, typed: str) -> None:
    """Where nothing typed can be right and behind the word danger; among words it stops too."""
    assert spoken_of(KNOWLEDGE, typed)[0].id == reported(KNOWLEDGE, typed)[0].id == hazard
    assert told_among(KNOWLEDGE, typed)


@pytest.mark.parametrize("typed", HARMLESS)
def test_what_is_near_to_it_stops_nothing(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()


def test_hardly_any_of_them_is_asked_about() -> None:
    asked = [typed for typed in HARMLESS if hints(typed) or read_in_doubt(KNOWLEDGE, typed)]
    assert len(asked) <= len(HARMLESS) / ONE_IN, asked
