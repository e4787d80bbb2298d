"""A heat pump, hot-gas reheat, a varying compressor, a two-speed blower: refused in words.

Whoever says so, at the call or at a test, is told that the rules know nothing of it. No cause is
named and no test proposed; what stands, and whatever danger is said, holds as ever.
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from tests.cli.lines import book_of
from tests.practice.playing import reasoner_of
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import AskTest, DoStep, Settled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.beyond_said import beyond_said
from troubleshoot.visit.cases.assessment import assess_case
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.deciding.nameplate import facts_of_place
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Started, replay

BEYOND = {
    "heat-pump": "fitted",
    "hot-gas-reheat": "fitted",
    "compressor-capacity": "variable",
    "blower-speeds": "two",
}


@pytest.mark.parametrize(
    ("said", "heard"),
    [
        ("it's a heat pump and it is not heating", {"heat-pump": "fitted"}),
        ("no heat. reversing valve stuck", {"heat-pump": "fitted"}),
        ("digital scroll, not cooling", {"compressor-capacity": "variable"}),
        ("the inverter compressor will not start", {"compressor-capacity": "variable"}),
        ("two speed blower, weak air", {"blower-speeds": "two"}),
        ("clammy, and it has hot gas reheat", {"hot-gas-reheat": "fitted"}),
        ("not a heat pump, no heat", {}),
        ("there is no heat pump here", {}),
        ("no heat", {}),
        ("two speed condenser fan", {}),
        ("scroll compressor hums", {}),
    ],
)
def test_it_is_heard_in_passing_but_not_where_it_is_denied(
    shipped: Knowledge, said: str, heard: Mapping[str, str]
) -> None:
    assert beyond_said(shipped, said) == heard


@pytest.mark.parametrize("fact", BEYOND)
@pytest.mark.parametrize("complaint", ["no-cooling", "no-heat", "cold-but-clammy"])
def test_nothing_is_proposed_and_nothing_named(
    shipped: Knowledge, fact: str, complaint: str
) -> None:
    start = Started(complaint=complaint, unit={fact: BEYOND[fact]}, profiles=("electrical",))
    decision = Decider(shipped, reasoner_of(shipped)).decide(replay(shipped, [start]))
    assert (decision.kind, decision.ending) == ("ending", "outside")


@pytest.mark.parametrize("fact", BEYOND)
def test_a_file_is_told_why_and_gets_no_cause(shipped: Knowledge, fact: str) -> None:
    readings = [{"test": "gas-supply-look", "outcome": "shut"}]
    unit = {"heat": "gas", fact: BEYOND[fact]}
    case = read_case(shipped, {"unit": unit, "complaint": "no-heat", "readings": readings})
    plain, lines = assess_case(shipped, case)
    assert (plain["ending"], plain["causes"], plain["would_separate"]) == ("outside", [], [])
    assert plain["beyond"] == [shipped.facts[fact].beyond[BEYOND[fact]]]
    assert "outside what the rules know" in "\n".join(lines)


def test_a_stop_stands_before_it(shipped: Knowledge) -> None:
    readings = [{"test": "rollout-switches", "outcome": ["tripped", "soot"]}]
    unit = {"heat": "gas", "heat-pump": "fitted"}
    case = read_case(shipped, {"unit": unit, "complaint": "no-heat", "readings": readings})
    plain, _ = assess_case(shipped, case)
    assert plain["ending"] == "stopped" and plain["stop"]


def test_said_at_a_test_it_ends_the_search(shipped: Knowledge) -> None:
    start = Started(complaint="no-cooling", unit={"heat": "none"}, profiles=("electrical",))
    book = book_of(shipped, [start])
    dialogue = Dialogue(lambda voice: turns(book, voice))
    for _ in range(12):
        if isinstance(dialogue.prompt, AskTest):
            break
        dialogue.answer("safe" if isinstance(dialogue.prompt, DoStep) else "")
    assert isinstance(dialogue.prompt, AskTest)
    dialogue.answer("it is a heat pump")
    assert book.state.unit.facts["heat-pump"] == "fitted"
    assert isinstance(dialogue.prompt, Settled)
    assert dialogue.prompt.decision.ending == "outside"


def test_a_danger_said_with_it_stays_a_danger(shipped: Knowledge) -> None:
    start = Started(complaint="no-cooling", unit={"heat": "none"}, profiles=("electrical",))
    book = book_of(shipped, [start])
    dialogue = Dialogue(lambda voice: turns(book, voice))
    while not isinstance(dialogue.prompt, AskTest):
        dialogue.answer("safe" if isinstance(dialogue.prompt, DoStep) else "")
    dialogue.answer("the heat pump is on fire")
    assert "heat-pump" not in book.state.unit.facts


@pytest.mark.parametrize(
    ("test", "fact"),
    [
        ("heater-bank-amps", "heat-pump"),
        ("space-humidity", "hot-gas-reheat"),
        ("compressor-windings", "compressor-capacity"),
        ("airflow-by-blower-table", "blower-speeds"),
    ],
)
def test_it_is_asked_where_it_matters(shipped: Knowledge, test: str, fact: str) -> None:
    state = replay(shipped, [Started(complaint="no-cooling")])
    asked = facts_of_place(shipped, state.unit, shipped.tests[test], frozenset())
    assert fact in [each.id for each in asked]
