"""What a visit has left off meets whoever names its unit next, until it has been read sound."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from datetime import datetime
from pathlib import Path

import pytest

from troubleshoot.cli import clock
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.closing import close
from troubleshoot.dialogue.said import Voice
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Closing, Event, Started

Call = Callable[..., tuple[int, str, str]]

DAY = datetime.fromisoformat("2026-11-26T09:30:00+00:00")
UNIT = {"heat": "gas", "refrigerant": "R-410A", "circuits": "2"}
STUCK = Answered("low-pressure-switch", ("circuit 2",), ("stuck",))
LEFT = "Circuit 2 was left off and tagged on 2026-11-26 by a person certified for refrigerant"


@pytest.fixture(autouse=True)
def _that_day(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(clock, "now", lambda: DAY)


@pytest.fixture
def shelf(shipped: Knowledge, tmp_path: Path) -> Iterator[JournalShelf]:
    with JournalShelf(shipped, tmp_path / "data" / "visits") as shelf:
        yield shelf


def closed(shelf: JournalShelf, name: str, *events: Event) -> VisitBook:
    """A visit to a unit that is closed after these events."""
    book = shelf.new()
    start = Started(name, "no-cooling", profiles=("refrigerant",), unit=UNIT)
    for event in (start, *events, Closing()):
        book.add(event)
    decider = Decider(shelf.knowledge)
    conclusions = conclude_visit(decider.reasoner, book.state)
    decision = decider.decide(book.state, conclusions)

    close(book, Voice(), decision, conclusions)
    book.close()
    return book


def begun(shelf: JournalShelf, typed: Callable[..., None], command: Call, name: str) -> str:
    """What the screen says to whoever begins a visit to this unit, in one line."""
    typed(name, "q")
    code, out, err = command()
    assert code == 4, err
    return " ".join(out.split())


def test_whoever_names_the_unit_next_is_told_before_anything_is_asked(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    """Regression: the next visit knew nothing of a circuit that was left off and tagged."""
    closed(shelf, "RTU-7", STUCK)
    said = begun(shelf, typed, command, "rtu 07")
    assert LEFT in said and "because of: protection does not open (visit 2026-11-26-1)" in said
    assert "Found: Low-pressure switch, opening point" in said
    assert "may remove the tag" in said
    assert said.index(LEFT) < said.index("What does the caller say?")


def test_no_other_unit_is_told_of_it(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    closed(shelf, "RTU-7", STUCK)
    closed(shelf, "RTU-8")
    assert "left off" not in begun(shelf, typed, command, "RTU-8")


def test_a_visit_that_reads_nothing_of_it_lets_it_stand(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    closed(shelf, "RTU-7", STUCK)
    closed(shelf, "RTU-7")
    assert LEFT in begun(shelf, typed, command, "RTU-7")


@pytest.mark.parametrize(("place", "over"), [("circuit 2", True), ("circuit 1", False)])
def test_only_a_sound_reading_where_it_was_takes_it_away(
    place: str, over: bool, shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    closed(shelf, "RTU-7", STUCK)
    closed(shelf, "RTU-7", Answered("low-pressure-switch", (place,), ("normal",)))
    assert (LEFT not in begun(shelf, typed, command, "RTU-7")) is over


def test_left_off_again_it_is_told_once_as_it_was_left_last(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    closed(shelf, "RTU-7", STUCK)
    closed(shelf, "RTU-7", STUCK)
    said = begun(shelf, typed, command, "RTU-7")
    assert said.count("left off and tagged") == 1 and "(visit 2026-11-26-2)" in said


def test_both_reports_show_it(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    closed(shelf, "RTU-7", STUCK)
    begun(shelf, typed, command, "RTU-7")
    _, first, _ = command("report", "2026-11-26-1")
    assert "## How the unit was left" in first and "Circuit 2 stays off and tagged" in first
    _, second, _ = command("report", "2026-11-26-2")
    assert "## Left off before this visit" in second and LEFT in second
    _, plain, _ = command("report", "2026-11-26-2", "--json")
    account = json.loads(plain)
    assert account["left_before"][0].startswith(LEFT) and account["left_off"] == []


def test_a_script_that_names_the_unit_is_told_too(shelf: JournalShelf, command: Call) -> None:
    closed(shelf, "RTU-7", STUCK)
    _, out, _ = command("diagnose", "RTU-7", "--json")
    assert json.loads(out)["left_before"][0].startswith(LEFT)
    _, out, _ = command("diagnose", "RTU-8", "--json")
    assert json.loads(out)["left_before"] == []


def test_a_name_taken_back_is_not_that_units_visit(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    closed(shelf, "RTU-7", STUCK)
    typed("RTU-7", "u", "RTU-8", "q")
    command()
    _, report, _ = command("report", "2026-11-26-2")
    assert LEFT not in report
