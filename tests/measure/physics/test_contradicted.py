"""A card that physics contradicts is found, with the finding and how often."""

from __future__ import annotations

from dataclasses import replace

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from troubleshoot.knowledge.model import Evidence, Finding, Knowledge
from troubleshoot.measure.physics.cases import case_of, examined
from troubleshoot.measure.physics.contradicted import (
    Contradicted,
    Contradiction,
    contradictions,
    counted,
)
from troubleshoot.measure.physics.draws import ROUND, singles
from troubleshoot.reasoning.conclude import Reasoner

LOADED = Contradiction("filters-loaded", "air-filters", "loaded")


def found_on_loaded_filters(knowledge: Knowledge) -> list[Contradicted]:
    """What the readings of units with loaded filters, one on each call, have against the card."""
    reasoner = Reasoner(knowledge)
    drawn = (each for each in singles(len(ROUND), "7") if each[0].cards == ("filters-loaded",))
    units = list(examined(drawn))
    against = [
        each
        for unit in units
        for each in contradictions(
            unit.drawn, reasoner.conclude(case_of(knowledge, unit, unit.rows))
        )
    ]
    return list(counted((unit.drawn for unit in units), against))


def doctored(knowledge: Knowledge, evidence: tuple[Evidence, ...]) -> Knowledge:
    card = replace(knowledge.faults["filters-loaded"], evidence=evidence, overrides=(), given=())
    return replace(knowledge, faults={**knowledge.faults, card.id: card})


def test_what_a_card_calls_never_and_its_fault_shows_is_found(shipped: Knowledge) -> None:
    never = Evidence("never", (Finding("air-filters", ("loaded",)),))
    found = found_on_loaded_filters(doctored(shipped, (never,)))
    assert found == [Contradicted(LOADED, 2, 2)]


def test_what_a_card_expects_or_does_not_speak_of_is_not_against_it(shipped: Knowledge) -> None:
    loaded = Evidence("almost-always", (Finding("air-filters", ("loaded",)),))
    assert found_on_loaded_filters(doctored(shipped, (loaded,))) == []
    assert found_on_loaded_filters(doctored(shipped, ())) == []
