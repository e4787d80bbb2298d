"""Whoever is hurt is told of at any prompt, and what is everyday at a gas unit stops none of them.

A judge typed these at prompts where they were no answer: they were refused as no number, noted, or
taken for a fire.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.test_asked_where_words_hint import (
    at_a_fact,
    at_a_step,
    at_a_test,
    at_the_complaint,
)
from tests.edge.test_dangers_of_a_stranger import orders_of, shown
from troubleshoot.knowledge.model import Knowledge

PROMPTS = (at_the_complaint, at_a_fact, at_a_test, at_a_step)
TOLD = {
    "the lift is touching the overhead wires": "machine-on-a-line",
    "he touched the wire and is not moving": "held-by-current",
    "my mate is hung up on the contactor and cant let go": "held-by-current",
    "ladder kicked out and Im lying on the ground": "somebody-fell",
    "tip of my aluminium ladder is touching the power line": "line-down-or-touched",
    "my sniffer is going crazy round the manifold": "gas-odour",
    "arc flash in the panel, his face is burnt": "burns-and-eyes",
    "note I scalded my hand on the discharge line": "burns-and-eyes",
    "the receptionist passed out next to the supply vent": "carbon-monoxide-evacuate",
}


@pytest.mark.parametrize("at", PROMPTS)
@pytest.mark.parametrize(("typed", "hazard"), TOLD.items())
def test_it_stops_at_any_prompt_with_its_own_orders(
    at: Callable[[Path, Clock], Person],
    typed: str,
    hazard: str,
    data: Path,
    clock: Clock,
    shipped: Knowledge,
) -> None:
    with at(data, clock) as person:
        person.types(typed)
        assert "STOP" in person.last and orders_of(shipped, hazard) in shown(person), person.last


@pytest.mark.parametrize(
    "typed",
    ["no heat, it sparks but wont light", "no heat, gas heat, spark", "flame comes on then dies"],
)
def test_an_igniter_and_a_flame_that_dies_are_calls(typed: str, data: Path, clock: Clock) -> None:
    person: Person = at_the_complaint(data, clock)
    with person:
        person.types(typed)
        assert "STOP" not in person.last, person.last
