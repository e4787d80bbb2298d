"""What is said at the call: facts of the unit beside it are no danger, plain words of one are."""

from __future__ import annotations

import pytest

from tests.safety.hearing.test_spoken_dangers import lines
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.not_here_and_now import here_and_now
from troubleshoot.safety.hearing.reporting import reported

KNOWLEDGE = load_shipped()
DANGERS = [tuple(line.split(": ", 1)) for line in lines("call_dangers.txt")]
STANDING = [tuple(line.split(": ", 1)) for line in lines("call_not_asked.txt")]
FACTS_AND_DANGER = [tuple(line.split(": ", 1)) for line in lines("facts_dangers.txt")]


@pytest.mark.parametrize("typed", lines("facts_harmless.txt"))
def test_facts_of_the_unit_beside_a_call_stop_nothing(typed: str) -> None:
    """Regression: the ignition of a burner that goes out was a fire, its fuel gas in the air."""
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()


@pytest.mark.parametrize(("hazard", "typed"), FACTS_AND_DANGER)
def test_a_danger_in_plain_words_beside_facts_stops(hazard: str, typed: str) -> None:
    heard = (*spoken_of(KNOWLEDGE, typed), *told_among(KNOWLEDGE, typed))
    assert hazard in {each.id for each in heard}


@pytest.mark.parametrize(("hazard", "typed"), DANGERS)
def test_it_is_told_first_as_what_it_is(hazard: str, typed: str) -> None:
    """Regression: it was asked whether that is a danger, or a flame with no call was a fire."""
    assert spoken_of(KNOWLEDGE, typed)[0].id == reported(KNOWLEDGE, typed)[0].id == hazard
    assert told_among(KNOWLEDGE, typed)


@pytest.mark.parametrize("typed", lines("call_harmless.txt"))
def test_what_is_near_to_it_stops_nothing(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()


@pytest.mark.parametrize("typed", lines("call_asked.txt"))
def test_what_passes_as_it_starts_or_comes_every_year_is_asked_about(typed: str) -> None:
    """Regression: an ordinary inrush was a lost leg, dust of each autumn a fire."""
    left = here_and_now(typed)
    assert spoken_of(KNOWLEDGE, left) == told_among(KNOWLEDGE, left) == ()
    assert left != typed or hints(typed)


@pytest.mark.parametrize(("hazard", "typed"), STANDING)
def test_what_may_stand_now_stops(hazard: str, typed: str) -> None:
    left = here_and_now(typed)
    heard = (*spoken_of(KNOWLEDGE, left), *told_among(KNOWLEDGE, left))
    assert hazard in {each.id for each in heard}
