"""The places that the words of an event name on the unit of its visit."""

from __future__ import annotations

from tests.visit.events.effects import ONE, TWO, UNIT
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.steps import Step
from troubleshoot.visit.events.places import places_from, step_place


def test_a_step_has_the_place_that_its_words_name(shipped: Knowledge) -> None:
    unit = read_unit(shipped, UNIT)
    assert step_place(Step("gauges-on", "circuit 2"), unit) == TWO
    capacitor = unit.layout.places("capacitor")[0]
    assert step_place(Step("capacitor-discharge", str(capacitor)), unit) == capacitor
    for place in (None, "None", "blower drive", "circuit 3"):
        assert step_place(Step("drive-discharge", place), unit) is None


def test_places_are_those_named_or_all_of_the_kind(shipped: Knowledge) -> None:
    unit = read_unit(shipped, UNIT)
    assert places_from(None, "circuit", unit) == (ONE, TWO)
    assert places_from(None, None, unit) == (None,)
    assert places_from(None, "a-kind-it-has-none-of", unit) == (None,)
    assert places_from("circuit 2", "circuit", unit) == (TWO,)
    assert places_from(("circuit 2", "circuit 1"), "circuit", unit) == (TWO, ONE)
