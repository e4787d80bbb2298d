"""Before the first test only what the call needs to be known of the unit is asked."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.visit.deciding.nameplate import facts_to_ask


def asked(knowledge: Knowledge, complaint: str) -> list[str]:
    return [fact.id for fact in facts_to_ask(knowledge, read_unit(knowledge, {}), complaint)]


def test_of_no_heat_it_is_asked_which_gas(shipped: Knowledge) -> None:
    assert "fuel" in asked(shipped, "no-heat")


def test_how_refrigerant_is_metered_is_asked_before_what_is_judged_by_it(
    shipped: Knowledge,
) -> None:
    for call in ("heat-short-cycles", "weak-cooling"):
        assert "metering" not in asked(shipped, call)
