"""What a visit has left off meets whoever names its unit next, until it has been read sound."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from troubleshoot.cli import clock
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.closing import close
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.standing import tell_left_before
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.route import steps_to_leave_off
from troubleshoot.safety.steps import CANNOT_LOCK, LOCK_OFF, LOCKOUT
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.record import LeftOn
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Closing, Event, LeftBefore, Started, StepDone

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


NO_NAME = ["", "gas-smell", *[""] * 12]
TOLD = "the gas utility, just now"
DONE, READ = "1", "0 % LEL"
RESULT = ["", "2", DONE, "y", READ, "y"]


def test_whoever_names_the_unit_only_at_the_hand_over_is_told_at_once(
    shelf: JournalShelf, typed: Callable[..., None], command: Call, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: nothing was said of what an earlier visit had left off, nor was it kept off."""
    closed(shelf, "RTU-7", STUCK)
    typed(*NO_NAME, "over", "rtu 07", TOLD)
    _, out, _ = command()
    said = " ".join(out.split())
    assert said.index("Which unit is it?") < said.index(LEFT) < said.index("Who was told")
    _, report, _ = command("report", "2026-11-26-2")
    assert LEFT in report
    monkeypatch.setattr(clock, "now", lambda: DAY + timedelta(minutes=5))
    typed(*RESULT, "just now", "cleared", "done", *["safe", "told", "none"] * 9, "q")
    _, out, _ = command("reopen", "2026-11-26-2")
    assert LEFT in " ".join(out.split())


def test_at_the_hand_over_a_stop_of_another_visit_to_the_unit_is_told_too(
    typed: Callable[..., None], command: Call
) -> None:
    typed("RTU-7", "gas-smell", *[""] * 12, "q")
    command()
    typed("n", "", "n", "gas-smell", *[""] * 12, "over", "rtu 07", TOLD)
    _, out, _ = command()
    named = " ".join(out.partition("Which unit is it?")[2].partition("Who was told")[0].split())
    assert "2026-11-26-1" in named and "gas odor" in named and "Going on" not in named


def begun_on(shelf: JournalShelf, name: str, *events: Event) -> VisitBook:
    """A visit to a unit that was told what was left off on it before."""
    book = shelf.new()
    book.add(Started(name, "no-cooling", profiles=("refrigerant",), unit=UNIT))
    tell_left_before(shelf, Voice(), book, name)
    for event in events:
        book.add(event)
    return book


@pytest.mark.parametrize(
    ("events", "stays"),
    [
        ((), True),
        ((Answered("low-pressure-switch", ("circuit 1",), ("normal",)),), True),
        ((Answered("low-pressure-switch", ("circuit 2",), ("normal",)),), False),
        ((Answered("low-pressure-switch", ("circuit 2",), ("normal",)), STUCK), True),
    ],
)
def test_it_holds_in_the_visit_until_it_is_read_sound_there(
    events: tuple[Event, ...], stays: bool, shelf: JournalShelf, shipped: Knowledge
) -> None:
    """Regression: it was told of, and the next visit gave the circuit back."""
    closed(shelf, "RTU-7", STUCK)
    book = begun_on(shelf, "RTU 7", *events)
    off = left_off(conclude_visit(Reasoner(shipped), book.state))
    assert [each.hazard.id for each in off.circuits] == ["protection-does-not-open"] * stays


STOPPED = Answered("condenser-fan-turning", ("condenser fan 1",), ("stopped",))


def test_what_takes_it_away_may_be_chosen_on_the_next_visit(
    shelf: JournalShelf, shipped: Knowledge
) -> None:
    """Regression: whatever runs was forbidden, so the mended fan could not be read turning."""
    closed(shelf, "RTU-7", STOPPED)
    book, decider = begun_on(shelf, "RTU-7"), Decider(shipped)
    conclusions = conclude_visit(decider.reasoner, book.state)
    refused = {
        test: decider.forbidden(conclusions, test, "condenser fan 1")
        for test in ("condenser-fan-turning", "condenser-fan-amps")
    }
    assert refused["condenser-fan-turning"] is None
    assert refused["condenser-fan-amps"] is not None


def test_what_the_next_visit_did_not_read_it_leaves_off_as_it_was_found(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    closed(shelf, "RTU-7", STUCK)
    book = begun_on(shelf, "RTU-7", Closing())
    decider = Decider(shelf.knowledge)
    conclusions = conclude_visit(decider.reasoner, book.state)
    close(book, Voice(), decider.decide(book.state, conclusions), conclusions)
    book.close()
    said = begun(shelf, typed, command, "RTU-7")
    assert said.count(LEFT) == 1 and "(visit 2026-11-26-1)" in said
    assert "Found: Low-pressure switch, opening point" in said


def test_a_unit_that_was_left_locked_stays_locked(shelf: JournalShelf, shipped: Knowledge) -> None:
    """No way back leads over a lock that an earlier danger still holds."""
    hazard = next(h for h in shipped.hazards.values() if h.keeps_off == "unit")
    book = begun_on(shelf, "RTU-9")
    locked = StepDone("lockout", ("locked",))
    left = LeftBefore(("left off",), (LeftOn(hazard.id, (1,), ("ground-and-bond",)),))
    for event in (left, StepDone("roof-conditions", ("safe",)), locked, Closing()):
        book.add(event)
    decider = Decider(shipped)
    conclusions = conclude_visit(decider.reasoner, book.state)
    steps = steps_to_leave_off(book.state.work, book.state.at_work)
    assert left_off(conclusions).unit and LOCK_OFF not in [step.id for step in steps]
    decision = decider.decide(book.state, conclusions)
    assert decision.step is None or decision.step.id != LOCK_OFF


def test_a_name_taken_back_is_not_that_units_visit(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    closed(shelf, "RTU-7", STUCK)
    typed("RTU-7", "u", "RTU-8", "q")
    command()
    _, report, _ = command("report", "2026-11-26-2")
    assert LEFT not in report


FROZEN = StepDone(LOCKOUT, (CANNOT_LOCK,), text="handle froze")
AGAIN = StepDone(LOCKOUT, (CANNOT_LOCK,))
OWN_LOCK = StepDone(LOCKOUT, ("locked",))
AT_THE_BREAKER = StepDone(LOCKOUT, ("locked",), text="MCC")
SWITCH_LEFT = "The switch was left as it is: it takes no lock, or does not open fully."
NO_LOCK = "The switch could not be locked off on 2026-11-26 by a person certified for refrigerant"


def test_a_switch_without_a_lock_stays_an_item_of_the_unit(
    shelf: JournalShelf, typed: Callable[..., None], command: Call
) -> None:
    """Regression: a frozen disconnect closed as a unit that is back as it was; nobody was told."""
    closed(shelf, "RTU-7", FROZEN)
    said = begun(shelf, typed, command, "RTU-7")
    assert NO_LOCK in said and "(visit 2026-11-26-1)" in said
    assert "sees to it: nobody reaches in behind it." in said

    # A lock at the breaker makes the unit safe and mends no switch; its own lock ends the item.
    closed(shelf, "RTU-7", AT_THE_BREAKER)
    assert NO_LOCK in begun(shelf, typed, command, "RTU-7")
    closed(shelf, "RTU-7", OWN_LOCK)
    assert NO_LOCK not in begun(shelf, typed, command, "RTU-7")


def test_it_is_closed_with_a_tag_on_the_switch_and_not_as_it_was(shelf: JournalShelf) -> None:
    book = shelf.new()
    for event in (Started("RTU-7", "no-cooling", unit=UNIT), FROZEN, AGAIN, Closing()):
        book.add(event)
    decider, voice = Decider(shelf.knowledge), Voice()
    conclusions = conclude_visit(decider.reasoner, book.state)
    close(book, voice, Decision("ending"), conclusions)
    said = " ".join(str(line) for line in voice.heard())
    assert "This switch of RTU-7 cannot be locked off" in said
    assert 'Reported: "handle froze".' in said and "Told: ____________" in said
    assert "supervisor or licensed electrician" in said
    assert said.count(SWITCH_LEFT) == 1 and "back as it was" not in said
    book.close()
