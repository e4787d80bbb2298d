"""What is said at the call: facts of the unit beside it are no danger, plain words of one are."""

from __future__ import annotations

import pytest

from tests.safety.hearing.test_spoken_dangers import lines
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of

KNOWLEDGE = load_shipped()
FACTS_AND_DANGER = [tuple(line.split(": ", 1)) for line in lines("facts_dangers.txt")]


@pytest.mark.parametrize("typed", lines("facts_harmless.txt"))
def test_facts_of_the_unit_beside_a_call_stop_nothing(typed: str) -> None:
    """Regression: the ignition of a burner that goes out was a fire, its fuel gas in the air."""
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()


@pytest.mark.parametrize(("hazard", "typed"), FACTS_AND_DANGER)
def test_a_danger_in_plain_words_beside_facts_stops(hazard: str, typed: str) -> None:
    heard = (*spoken_of(KNOWLEDGE, typed), *told_among(KNOWLEDGE, typed))
    assert hazard in {each.id for each in heard}
