"""A heat pump, hot-gas reheat, a varying compressor, a two-speed blower: refused in words.

Whoever says so, at the call or at a test, is told that the rules know nothing of it. No cause is
named and no test proposed; what stands, and whatever danger is said, holds as ever.
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from tests.building import base
from tests.cli.lines import Lines, book_of, held
from tests.practice.playing import reasoner_of
from troubleshoot.dialogue.complaint import ask_complaint
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import AskTest, DoStep, Settled
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.unit_told import takes_plate_line
from troubleshoot.knowledge.model import EquipmentFact, Knowledge
from troubleshoot.reasoning.unit.beyond_said import beyond_named, beyond_said
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
        ("digital scroll, not cooling", {"compressor-capacity": "variable"}),
        ("the inverter compressor will not start", {"compressor-capacity": "variable"}),
        ("two speed blower, weak air", {"blower-speeds": "two"}),
        ("clammy, and it has hot gas reheat", {"hot-gas-reheat": "fitted"}),
        ("not a heat pump, no heat", {"heat-pump": "not-fitted"}),
        ("there is no heat pump here", {"heat-pump": "not-fitted"}),
        (
            "no cooling, not a heat pump, somebody says the reversing valve leaks",
            {"heat-pump": "not-fitted"},
        ),
        (
            "there is no reversing valve, it is a straight cool unit",
            {"heat-pump": "not-fitted"},
        ),
        ("it has no hot gas reheat", {"hot-gas-reheat": "not-fitted"}),
        ("no heat. reversing valve stuck", {}),
        ("leaking reversing valve, no cooling", {}),
        ("the reheat coil leaks", {}),
        ("i do not believe it is a heat pump", {}),
        ("not one of those heat pumps", {}),
        ("never said it was a straight cool", {}),
        ("it is a heat pump, there is no reversing valve", {}),
        ("no heat", {}),
        ("two speed condenser fan", {}),
        ("scroll compressor hums", {}),
    ],
)
def test_it_is_heard_in_passing_but_not_where_it_is_denied(
    shipped: Knowledge, said: str, heard: Mapping[str, str]
) -> None:
    assert beyond_said(shipped, said) == heard


@pytest.mark.parametrize(
    ("said", "named"),
    [
        ("leaking reversing valve, no cooling", ["heat-pump"]),
        ("no heat. reversing valve stuck", ["heat-pump"]),
        ("i do not believe it is a heat pump", ["heat-pump"]),
        ("it is a heat pump, there is no reversing valve", ["heat-pump"]),
        ("the reheat coil leaks", ["hot-gas-reheat"]),
        ("no cooling, not a heat pump, somebody says the reversing valve leaks", []),
        ("it's a heat pump and it is not heating", []),
        ("no cooling", []),
    ],
)
def test_what_is_only_named_is_asked(shipped: Knowledge, said: str, named: list[str]) -> None:
    assert [fact.id for fact in beyond_named(shipped, said)] == named


def test_one_word_names_nothing_in_passing() -> None:
    """It may be said of anything: it will not turn."""
    words = {"fixed": ("turns",), "variable": ("varying drive",)}
    drive = EquipmentFact(
        "drive", ("fixed", "variable"), "?", words=words, beyond={"variable": "none"}
    )
    assert beyond_said(base(facts=[drive]), "it turns") == {}
    assert beyond_said(base(facts=[drive]), "it has a varying drive") == {"drive": "variable"}


@pytest.mark.parametrize(("answer", "value"), [("no", "not-fitted"), ("yes", "fitted")])
def test_a_part_named_at_the_call_is_asked_about_once(
    shipped: Knowledge, answer: str, value: str
) -> None:
    """Regression: a leaking reversing valve ended the visit, though the unit had none."""
    book, terminal = book_of(shipped, []), Lines("leaking reversing valve, no cooling", answer, "1")
    held(shipped, terminal, lambda voice: ask_complaint(book, voice))
    assert terminal.text.count(shipped.facts["heat-pump"].asks) == 1
    assert book.state.unit.facts["heat-pump"] == value


def test_undo_at_that_question_asks_for_the_call_again(shipped: Knowledge) -> None:
    book, terminal = book_of(shipped, []), Lines("leaking reversing valve", "u", "no cooling")
    told = held(shipped, terminal, lambda voice: ask_complaint(book, voice))
    assert told == ("no cooling", "no-cooling")


def test_a_denied_kind_is_taken_as_denied_at_the_call(shipped: Knowledge) -> None:
    """Regression: no cooling, not a heat pump, was taken as a heat pump."""
    said = "no cooling, not a heat pump, somebody says the reversing valve leaks"
    book, terminal = book_of(shipped, []), Lines(said, "1")
    held(shipped, terminal, lambda voice: ask_complaint(book, voice))
    assert book.state.unit.facts["heat-pump"] == "not-fitted"


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


def test_a_part_named_at_a_test_ends_no_search(shipped: Knowledge) -> None:
    book, voice = book_of(shipped, [Started(complaint="no-cooling")]), Voice()
    said = "the reversing valve leaks"
    assert not takes_plate_line(book, voice, reasoner_of(shipped), said)
    assert "unit heat pump fitted says so" in " ".join(map(str, voice.heard()))
    assert "heat-pump" not in book.state.unit.facts
    denied = "there is no reversing valve, it is a straight cool unit"
    assert takes_plate_line(book, voice, reasoner_of(shipped), denied)
    assert book.state.unit.facts["heat-pump"] == "not-fitted"


def test_a_heat_pump_that_was_told_is_not_denied_in_passing(shipped: Knowledge) -> None:
    start = Started(complaint="no-cooling", unit={"heat-pump": "fitted"})
    book = book_of(shipped, [start])
    assert not takes_plate_line(book, Voice(), reasoner_of(shipped), "straight cool in here")
    assert book.state.unit.facts["heat-pump"] == "fitted"


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
