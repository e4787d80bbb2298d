"""What stands over a unit, or may, is told to whoever names it, before anything else is asked."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.cli import clock
from troubleshoot.dialogue.said import Said, Sentence, StopElsewhere, Voice
from troubleshoot.dialogue.standing import (
    goes_on,
    meet_standing,
    met_by,
    met_meanwhile,
    tell_left_before,
    tell_of_unit,
    tell_own,
    tell_unreadable,
    told,
)
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclusions import FiredHazard
from troubleshoot.safety.stops.record import LeftOn
from troubleshoot.visit.events import LeftBefore as LeftBeforeEvent
from troubleshoot.visit.events import Started
from troubleshoot.visit.kept.left_before import LeftBefore
from troubleshoot.visit.kept.stopped import Standing, Stopped
from troubleshoot.visit.kept.unreadable import Unreadable

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
OWN = "2026-11-26-1"
"""The visit that a book of these tests is of."""
DAMAGED = Unreadable(Path("2026-11-20-1.journal"), "RTU-7", True, "Line 3 is damaged")
HARMLESS = Unreadable(Path("2026-11-20-2.journal"), "RTU-7", False, "Line 4 is damaged")
LEFT = LeftBefore(
    ("Circuit 2 was left off.", "Found: stuck."),
    (LeftOn("protection-does-not-open", (2,), ("low-pressure-switch",)),),
)


class Shelf:
    """Visits over which these stand. `asked`: which one was left out, each time it was asked."""

    def __init__(self, knowledge: Knowledge, *standing: Standing, left: Any = None) -> None:
        self.knowledge = knowledge
        self._standing, self._left = standing, left or LeftBefore()
        self.open_in_windows: tuple[str, ...] = ()
        self.asked: list[str] = []

    def standing(self, but: str = "") -> Iterator[Standing]:
        self.asked.append(but)
        return (each for each in self._standing if each.visit != but)

    def elsewhere(self, unit: str, but: str = "") -> tuple[str, ...]:
        return self.open_in_windows

    def met_meanwhile(self, unit: str, but: str = "") -> tuple[Standing, ...]:
        self.asked.append(but)
        return tuple(each for each in self._standing if each.unit == unit)

    def left_before(self, unit: str, but: str = "") -> LeftBefore:
        self.asked.append(but)
        return self._left


@pytest.fixture
def stop(shipped: Knowledge) -> Any:
    """Makes a visit over which the STOP of a smell of gas stands."""
    fired = FiredHazard(shipped.hazards["gas-odour"], (1,), (), True)

    def make(visit: str, unit: str = "RTU-7", over: bool = False) -> Stopped:
        return Stopped(Path(f"{visit}.journal"), unit, fired, over, ())

    return make


def heard(said: Iterable[Said]) -> list[Any]:
    """What was said: sentences as their words, those not to be missed marked, else the thing."""
    return [
        f"{'! ' * each.strong}{'  ' * each.level}{each.text}"
        if isinstance(each, Sentence)
        else each
        for each in said
    ]


def lines_of(damaged: Unreadable) -> list[str]:
    head, *more = damaged.lines
    return [f"! {head}", *(f"  {line}" for line in more)]


def too(visit: str) -> str:
    return f"! Visit {visit} stops it too: gas odor."


def test_every_visit_that_cannot_be_read_is_told_of_and_named(stop: Any) -> None:
    voice = Voice()
    found = tell_unreadable(voice, [DAMAGED, stop("2026-11-24-1"), HARMLESS])
    assert found == {DAMAGED.visit, HARMLESS.visit}
    assert heard(voice.heard()) == [*lines_of(DAMAGED), *lines_of(HARMLESS)]


def test_the_stop_of_a_visit_that_is_gone_on_with_is_told_and_no_other(stop: Any) -> None:
    voice, own = Voice(), stop(OWN)
    damaged_too = Unreadable(Path(f"{OWN}.journal"), "RTU-7", True, "Line 3 is damaged")
    tell_own(voice, [stop("2026-11-24-1"), damaged_too, own], OWN)
    assert heard(voice.heard()) == [StopElsewhere(own)]


def test_of_all_that_stands_over_one_unit_nothing_is_left_out(
    shipped: Knowledge, stop: Any
) -> None:
    """The last visit's is told whole, after a line of each other one."""
    last, first = stop("2026-11-25-1"), stop("2026-11-23-1", "rtu 07")
    elsewhere = stop("2026-11-22-1", "RTU-8")
    voice, shelf = Voice(), Shelf(shipped, stop(OWN), last, elsewhere, DAMAGED, first, HARMLESS)
    assert met_by(shelf, voice, OWN, "RTU-7") is last
    assert shelf.asked == [OWN]
    assert heard(voice.heard()) == [
        f"! Visit {DAMAGED.visit} stops it too: {DAMAGED.reason}.",
        too("2026-11-23-1"),
        StopElsewhere(last),
        "Going on with visit 2026-11-25-1, where it stands.",
    ]


def test_where_a_visit_is_named_late_all_that_stands_is_told_and_what_was_left_off(
    shipped: Knowledge, stop: Any
) -> None:
    other, elsewhere = stop("2026-11-25-1"), stop("2026-11-22-1", "RTU-8")
    shelf = Shelf(shipped, stop(OWN), other, elsewhere, DAMAGED, HARMLESS, left=LEFT)
    voice, book = Voice(), book_of(shipped, [Started()])
    tell_of_unit(shelf, voice, book, "RTU-7")
    assert heard(voice.heard()) == [
        too("2026-11-25-1"), StopElsewhere(other), *lines_of(DAMAGED),
        *(f"! {line}" for line in LEFT.lines),
    ]  # fmt: skip
    assert shelf.asked == [OWN, OWN]


def test_what_was_left_off_is_told_each_time_and_kept_once(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(clock, "now", lambda: NOW)
    book, voice = book_of(shipped, [Started()]), Voice()
    for shelf, kept in ((Shelf(shipped), 0), (Shelf(shipped, left=LEFT), 1)):
        for _ in range(2):
            tell_left_before(shelf, voice, book, "RTU-7")
            assert heard(voice.heard()) == [f"! {line}" for line in LEFT.lines] * kept
            assert [e.kind for e in book.events].count(LeftBeforeEvent.kind) == kept
    assert (book.state.left_before, book.state.left_on) == (LEFT.lines, LEFT.dangers)


def test_a_stop_met_in_another_window_is_told_here_at_once(shipped: Knowledge, stop: Any) -> None:
    """Two windows on one unit: the danger is of whoever sits at the other as well."""
    there, voice = stop("2026-11-26-2"), Voice()
    shelf = Shelf(shipped, there, DAMAGED, stop("2026-11-22-1", "RTU-8"))
    assert met_meanwhile(shelf, voice, book_of(shipped, [Started(name="RTU-7")]))
    in_window = "! A STOP was met over this unit in another window, in visit"
    assert heard(voice.heard()) == [
        f"{in_window} 2026-11-26-2.", StopElsewhere(there),
        f"{in_window} {DAMAGED.visit}.", *lines_of(DAMAGED),
    ]  # fmt: skip
    assert shelf.asked == [OWN]


@pytest.mark.parametrize("name", ["RTU-9", ""])
def test_of_another_unit_or_one_without_a_name_no_window_tells(
    name: str, shipped: Knowledge, stop: Any
) -> None:
    shelf, voice = Shelf(shipped, stop("2026-11-26-2"), stop("2026-11-26-3", "")), Voice()
    assert met_meanwhile(shelf, voice, book_of(shipped, [Started(name=name)])) is False
    assert not voice.heard() and shelf.asked == [OWN] * bool(name)


def test_a_visit_that_is_open_in_another_window_is_told_of_first(shipped: Knowledge) -> None:
    shelf, voice, book = Shelf(shipped, left=LEFT), Voice(), book_of(shipped, [Started()])
    shelf.open_in_windows = ("2026-11-26-2", "2026-11-26-4")
    tell_left_before(shelf, voice, book, "RTU-7")
    elsewhere = "is open in another window: its work and its STOPs are of here too."
    assert heard(voice.heard()) == [
        f"! Visit 2026-11-26-2 to this unit {elsewhere}",
        f"! Visit 2026-11-26-4 to this unit {elsewhere}",
        *(f"! {line}" for line in LEFT.lines),
    ]
    tell_left_before(shelf, voice, book, "")
    assert not voice.heard()


def test_a_unit_without_a_name_is_none_on_which_anything_was_left(shipped: Knowledge) -> None:
    """Taken back, a name takes with it what was told for it."""
    shelf, voice = Shelf(shipped, left=LEFT), Voice()
    book = book_of(shipped, [Started(), LeftBeforeEvent(LEFT.lines, LEFT.dangers)])
    tell_left_before(shelf, voice, book, "")
    assert not voice.heard() and (book.state.left_before, book.state.left_on) == ((), ())


@pytest.mark.parametrize(("over", "on"), [(False, True), (True, False)])
def test_only_a_stop_that_is_open_and_can_be_read_is_gone_on_with(
    over: bool, on: bool, stop: Any
) -> None:
    assert goes_on(stop("2026-11-25-1", over=over)) is on
    assert not goes_on(DAMAGED)


def test_a_stop_is_told_with_the_way_on(stop: Any) -> None:
    voice = Voice()
    for each in (DAMAGED, stop("2026-11-25-1"), stop("2026-11-24-1", over=True)):
        assert told(voice, each) is each
    assert heard(voice.heard()) == [
        "! DANGER - STOP", *lines_of(DAMAGED), StopElsewhere(stop("2026-11-25-1")),
        "Going on with visit 2026-11-25-1, where it stands.",
        StopElsewhere(stop("2026-11-24-1", over=True)),
        "Visit 2026-11-24-1 was handed over at this STOP. Once it has been made safe it goes on "
        "by: troubleshoot reopen 2026-11-24-1",
    ]  # fmt: skip


def asked(shipped: Knowledge, unit: str, standing: Iterable[Standing], *typed: str) -> Any:
    terminal = Lines(*typed)
    found = held(shipped, terminal, lambda voice: meet_standing(shipped, voice, standing, unit))
    return terminal, found


def test_a_visit_whose_damage_hides_no_stop_is_not_offered(shipped: Knowledge, stop: Any) -> None:
    terminal, found = asked(shipped, "RTU-7", [HARMLESS])
    assert found is None and not terminal.said and not terminal.asked
    other = stop("2026-11-25-1", "RTU-8")
    terminal, found = asked(shipped, "RTU-7", [HARMLESS, other], "no idea", "N")
    assert found is None and terminal.asked == ["Is this one of them? Its number, or n >"] * 2
    assert terminal.said[:2] == ["A STOP stands over:", "  1 RTU-8: gas odor"]
    assert "Its number, its name, or n." in terminal.text


@pytest.mark.parametrize(
    ("typed", "wanted"), [("1", 0), ("2", 1), ("RTU 8", 0), ("n", None), ("No", None)]
)
def test_a_mistyped_name_is_taken_for_one_that_is_shown_by_its_number_or_its_name(
    typed: str, wanted: int | None, shipped: Knowledge, stop: Any
) -> None:
    stand = [stop("2026-11-25-1", "RTU-8"), stop("2026-11-24-1", "")]
    terminal, found = asked(shipped, "RTU-7", stand, typed)
    assert len(terminal.asked) == 1
    assert found is (None if wanted is None else stand[wanted])
    assert ("Going on with visit" in terminal.text) is (wanted is not None)


@pytest.mark.parametrize("typed", ["0", "3", "rtu 9"])
def test_a_number_or_a_name_that_is_not_shown_is_asked_again(
    typed: str, shipped: Knowledge, stop: Any
) -> None:
    stand = [stop("2026-11-25-1", "RTU-8"), stop("2026-11-24-1", "")]
    terminal, found = asked(shipped, "RTU-7", stand, typed, "2")
    assert len(terminal.asked) == 2 and found is stand[1]


def test_a_name_over_which_one_stands_is_asked_nothing(shipped: Knowledge, stop: Any) -> None:
    own, other = stop("2026-11-24-1"), stop("2026-11-25-1", "RTU-8")
    terminal, found = asked(shipped, "RTU-7", [other, own])
    assert found is own and not terminal.asked
    assert met_by(Shelf(shipped, other), Voice(), OWN, "RTU-7") is None
