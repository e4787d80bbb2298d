"""Dangers told in people's own words stop at the call, at a test and at the step that asks."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.test_asked_where_words_hint import at_a_test, at_the_complaint, is_asked
from tests.edge.test_dangers_of_a_stranger import orders_of, shown
from tests.edge.visits import begin, lead_to
from troubleshoot.knowledge.model import Knowledge

TOLD = {
    "took a shot of 410 right in the face": "refrigerant-on-skin",
    "cut my hand and its bleeding": "cut-and-bleeding",
    "lady in the store passed out, headache, everybody's sick": "carbon-monoxide-evacuate",
    "im alone and i fell through the hatch": "somebody-fell",
    "nitrogen bottle tipped and its whistling": "cylinder-escaping",
    "torch caught the insulation": "smoke-or-heat-now",
    "dizzy and shaky up here": "dizzy-or-sick",
}


def stops_with(person: Person, orders: str) -> bool:
    return "STOP" in person.last and orders in shown(person)


@pytest.mark.parametrize(("typed", "hazard"), TOLD.items())
def test_at_the_call_it_stops_in_its_own_words(
    typed: str, hazard: str, data: Path, clock: Clock, shipped: Knowledge
) -> None:
    with at_the_complaint(data, clock) as person:
        person.types(typed)
        assert stops_with(person, orders_of(shipped, hazard)), person.last


@pytest.mark.parametrize("typed", [*TOLD][:2])
def test_at_a_test_too(typed: str, data: Path, clock: Clock, shipped: Knowledge) -> None:
    with at_a_test(data, clock) as person:
        person.types(typed)
        assert stops_with(person, orders_of(shipped, TOLD[typed])), person.last


def test_wind_that_takes_somebody_stops_where_the_roof_is_asked_about(
    data: Path, clock: Clock, shipped: Knowledge
) -> None:
    with begin(data, clock) as person:
        person.types("do walk-round")
        lead_to(person, "Roof, go or no go")
        assert "how near the work comes to an unguarded edge" in shown(person)
        person.types("wind is about to blow me off of here")
        assert stops_with(person, orders_of(shipped, "wind-or-slick-roof")), person.last


@pytest.mark.parametrize(
    ("typed", "hazard"),
    [
        ("somebody left a jumper across the rollout", "jumpered-safety"),
        ("flue pipe fell off", "carbon-monoxide-in-room"),
    ],
)
def test_whoever_says_yes_is_told_of_what_was_said(
    typed: str, hazard: str, data: Path, clock: Clock, shipped: Knowledge
) -> None:
    with at_a_test(data, clock) as person:
        person.types(typed)
        if is_asked(person):
            person.types("y")
        assert stops_with(person, orders_of(shipped, hazard)), person.last
