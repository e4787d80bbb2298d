"""Readings that contradict each other: both are named, and the later one counts."""

from __future__ import annotations

from datetime import datetime
from typing import Any

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.cli import clock
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.commands import Commands
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Event, Repaired, Started
from troubleshoot.visit.telling.contradicting import contradictions

UNIT = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": "1", "compressor-rla": "8.9 A",
    "condenser-fans": "1", "capacitor-rated": {"capacitor condenser fan 1": "7.5 uF"},
}  # fmt: skip
CAN = "capacitance-out-of-circuit"
AT = "capacitor condenser fan 1"
CIRCUIT = "circuit 1"


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    noon = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
    monkeypatch.setattr(clock, "now", lambda: noon)


def visit(shipped: Knowledge, *events: Event, **unit: Any) -> VisitBook:
    start = Started(complaint="no-cooling", unit={**UNIT, **unit})
    return book_of(shipped, [start, *events])


def told(decider: Decider, book: VisitBook, *events: Event) -> list[str]:
    """What contradicts what was there before these events."""
    before = conclude_visit(decider.reasoner, book.state)
    for event in events:
        book.add(event)
    return list(contradictions(before, conclude_visit(decider.reasoner, book.state)))


def stops_of(decider: Decider, book: VisitBook) -> set[str]:
    hazards = conclude_visit(decider.reasoner, book.state).hazards
    return {fired.hazard.id for fired in hazards if fired.stops}


def typed(decider: Decider, book: VisitBook, line: str) -> str:
    """What a command says."""
    terminal = Lines()

    def part(voice: Any) -> Talk[bool]:
        commands = Commands(book, voice, decider)
        conclusions = conclude_visit(decider.reasoner, book.state)
        return (yield from commands.serve(line, Decision("ending"), conclusions))

    assert held(book.knowledge, terminal, part)
    return terminal.text


def reading(test: str, at: str, text: str | None = None, outcome: str = "") -> Answered:
    return Answered(test, (at,), (outcome,) if outcome else (), text)


@pytest.mark.parametrize(
    ("again", "now"),
    [(reading(CAN, AT, "5 uF"), "very low (5 uF)"), (reading(CAN, AT, outcome="open"), "open")],
)
def test_the_same_read_twice_names_both(
    again: Answered, now: str, shipped: Knowledge, decider: Decider
) -> None:
    book = visit(shipped, reading(CAN, AT, "7.4 uF"))
    (sentence,) = told(decider, book, again)
    assert f"was normal (7.4 uF), and is now {now}. The later one counts." in sentence


def test_what_agrees_or_follows_a_repair_contradicts_nothing(
    shipped: Knowledge, decider: Decider
) -> None:
    book = visit(shipped, reading(CAN, AT, "5.1 uF"))
    assert told(decider, book, reading(CAN, AT, "5.2 uF")) == []
    book.add(Repaired("condenser-fan-capacitor-weak"))
    assert told(decider, book, reading(CAN, AT, "7.5 uF")) == []


SUPERHEAT = reading("superheat", CIRCUIT, "30 F")
SUCTION = reading("suction-pressure", CIRCUIT, "128 psig")
LINE = reading("suction-line-temperature", CIRCUIT, "54 F")
"""Together 9.9 F of superheat."""


@pytest.mark.parametrize(
    ("first", "then", "counts"),
    [
        ((SUPERHEAT, SUCTION), LINE, "normal-txv"),
        ((SUCTION, LINE), SUPERHEAT, "high"),
        ((SUCTION, LINE), reading("suction-line-temperature", CIRCUIT, "75 F"), "high"),
    ],
)
def test_typed_against_computed_the_later_counts(
    first: tuple[Answered, ...],
    then: Answered,
    counts: str,
    shipped: Knowledge,
    decider: Decider,
) -> None:
    """Regression: what was typed once stood against every reading taken after it, unsaid."""
    book = visit(shipped, *first)
    sentences = told(decider, book, then)
    assert len([s for s in sentences if "Superheat" in s and "9.88 F" in s]) == 1
    after = conclude_visit(decider.reasoner, book.state)
    valid = [r.seen for r in after.readings if r.test == "superheat" and r.valid]
    assert valid == [(counts,)]


def test_a_file_too_counts_the_later(shipped: Knowledge) -> None:
    readings = [
        {"test": each.test, "at": CIRCUIT, "text": each.text} for each in (SUPERHEAT, SUCTION, LINE)
    ]
    case = {"complaint": "no-cooling", "unit": {**UNIT}, "readings": readings}
    found = Reasoner(shipped).conclude(read_case(shipped, case))
    kept = {r.seen: r.valid for r in found.readings if r.test == "superheat"}
    assert kept == {("normal-txv",): True, ("high",): False}


def test_a_plate_put_right_judges_anew(shipped: Knowledge, decider: Decider) -> None:
    """Regression: nothing put a plate value right that had been read wrong."""
    book = visit(shipped, reading(CAN, AT, "7.4 uF"))
    said = typed(decider, book, f"unit capacitor-rated 10 uF at {AT}")
    assert "capacitor rated was 7.5 uF at capacitor condenser fan 1, and is now" in said
    assert "was normal (7.4 uF), and is now very low (7.4 uF)." in said
    assert "10 uF" in typed(decider, book, "unit")


@pytest.mark.parametrize("line", ["u", "unit capacitor-rated 5 at capacitor condenser fan 1"])
def test_no_word_taken_back_and_no_plate_lifts_a_stop_for_a_step(
    line: str, shipped: Knowledge, decider: Decider
) -> None:
    """A can of 5.12 uF stopped its motor; an undo, or 5 for 7.5 on its plate, started it again."""
    book = visit(shipped, Answered(CAN, (AT,), text="5.12 uF"))
    assert stops_of(decider, book) == {"weak-capacitor-motor-stays-off"}
    assert "Only the same finding, taken afresh" in typed(decider, book, line)
    assert stops_of(decider, book) == {"weak-capacitor-motor-stays-off"}
    book.add(Answered(CAN, (AT,), text="7.4 uF"))
    assert not stops_of(decider, book)


def test_a_fact_told_late_judges_what_could_not_be(shipped: Knowledge, decider: Decider) -> None:
    start = Started(complaint="no-cooling", unit={"metering": "txv", "circuits": "1"})
    book = book_of(shipped, [start, SUCTION, LINE])
    said = typed(decider, book, "unit r410a")
    assert "refrigerant is now R-410A." in said
    assert "Judged anew: Superheat" in said and "is now normal TXV" in said


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("unit circuits 2", "cannot be changed once something was read"),
        ("unit compressor-rla many", "compressor RLA: does not begin with a number"),
        ("unit", "unit NAME VALUE puts one right"),
    ],
)
def test_what_cannot_be_put_right_says_why(
    line: str, says: str, shipped: Knowledge, decider: Decider
) -> None:
    book = visit(shipped, SUCTION)
    before = book.state.unit_data
    assert says in typed(decider, book, line)
    assert book.state.unit_data == before
