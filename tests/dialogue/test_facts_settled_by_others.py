"""What another fact settles is not asked; facts are heard in a line without commas."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.facts_listed import facts_listed
from troubleshoot.visit.deciding.nameplate import still_matters
from troubleshoot.visit.events import FactTold, Started
from troubleshoot.visit.events.replaying import replay


@pytest.mark.parametrize(
    ("told", "fact", "matters"),
    [
        ({}, "fuel", True), ({"heat": "gas"}, "fuel", True), ({"heat": "electric"}, "fuel", False),
        ({"heat": "electric"}, "draft", False), ({"heat": "electric"}, "heat-stages", True),
        ({"heat": "electric"}, "metering", True),
    ],
)  # fmt: skip
def test_what_nothing_can_hang_on_any_more_is_not_asked(
    told: dict[str, str], fact: str, matters: bool, shipped: Knowledge
) -> None:
    """Regression: "electric heat" was taken, and at once "natural gas or propane?" asked."""
    unit = replay(shipped, [Started(complaint="no-heat", unit=dict(told))]).unit
    if fact in shipped.facts:
        assert still_matters(shipped, unit, shipped.facts[fact]) is matters


def test_three_phase_at_the_supply_is_three_at_the_compressor(shipped: Knowledge) -> None:
    """Regression: single or three-phase compressor, after 208/3/60 (common practice, no source)."""
    state = replay(shipped, [Started(complaint="no-cooling"), FactTold("supply-phase", "three")])
    assert state.unit.facts["compressor-phase"] == "three"
    assert "condenser-fan-phase" not in state.unit.facts


@pytest.mark.parametrize(
    ("line", "fact", "value"),
    [
        ("208/3/60 gas 410a txv 2 circ 2 fans belt drive", "blower-drive", "belt"),
        ("208/3/60 gas 410a txv two fans belt drive", "blower-drive", "belt"),
        ("208/3/60 gas 410a txv 2 circ 2 fans belt drive", "condenser-fans", "several"),
        ("208/3/60 gas 410a txv 2 circ 2 fans belt drive", "circuits", "two-or-more"),
        ("no gas here its electric", "heat", "electric"),
        ("no gas up here, it's electric", "heat", "electric"),
        ("not propane its natural gas", "fuel", "natural-gas"),
    ],
)
def test_facts_are_heard_in_a_line_without_commas(
    line: str, fact: str, value: str, shipped: Knowledge
) -> None:
    """Regression: a belt drive behind the fans was a variable-speed drive, without a word."""
    said, _ = facts_listed(shipped, "fuel", line)
    assert said.get(fact) == value and "variable-speed-drive" not in said


@pytest.mark.parametrize("line", ["no gas here", "not gas", "no gas its broken", "no gas its gas"])
def test_a_denial_alone_tells_no_value(line: str, shipped: Knowledge) -> None:
    said, _ = facts_listed(shipped, "fuel", line)
    assert said.get("heat") != "gas" and "fuel" not in said
