"""Whoever is hurt or about to be hears the orders of that danger first; what is near stops nothing.

A judge's sentences and more of each class: a machine on a line, current, burns, gas that lights
late, who went down inside, fire that spreads, clouds, chemicals and flames in refrigerant. Before a
rule was touched 23 of the 59 dangers stopped, 5 as what they are, and 9 were asked about; of the 46
harmless ones 7 stopped and 1 was asked about. Of 140 more dangers of these classes, written then by
whoever mended it and kept apart, 63 stopped, 26 were asked about and 51 missed; of 140 harmless
ones 12 stopped and 4 were asked about. With the rules of that day it was 132, 3 and 5; 4 and 4.
"""

from __future__ import annotations

import pytest

from tests.safety.hearing.test_spoken_dangers import lines
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.hinting import hints
from troubleshoot.safety.hearing.reporting import reported

KNOWLEDGE = load_shipped()
DANGERS = [tuple(line.split(": ", 1)) for line in lines("first_aid_dangers.txt")]
HARMLESS = lines("first_aid_harmless.txt")
ONE_IN = 10
"""Of harmless sentences that may be asked about: one in so many."""


@pytest.mark.parametrize(("hazard", "typed"), DANGERS)
def test_it_is_told_first_as_what_it_is(hazard: str, typed: str) -> None:
    """Where nothing typed can be right and behind the word danger; among words it stops too."""
    assert spoken_of(KNOWLEDGE, typed)[0].id == reported(KNOWLEDGE, typed)[0].id == hazard
    assert hazard in [each.id for each in told_among(KNOWLEDGE, typed)]


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


@pytest.mark.parametrize(
    "typed",
    ["the boom touched the power line, the truck is live",
     "the crane is on the power line, the cabinet is live too"],
)  # fmt: skip
def test_nobody_is_told_to_get_off_a_machine_on_a_line(typed: str) -> None:
    """OSHA 1926.1408(g) (from memory): in most circumstances the operator stays in the cab."""
    told = reported(KNOWLEDGE, typed)
    assert told[0].what_to_do.startswith("On the machine: stay in the cab or bucket")
    said = " ".join(hazard.what_to_do for hazard in told)
    assert "off the metal" not in said and "switch" not in said and "hop" not in said
