"""A folder or journal that is taken away while the program runs: nothing is said to be kept in it.

What is said to be kept is on the disk where it will be looked up; else the STOP is said first, then
that it is not on record, and why.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.visits import begin


def journal_in(data: Path) -> Path:
    (journal,) = (data / "visits").glob("*.journal")
    return journal


def folder_removed(data: Path) -> None:
    shutil.rmtree(data)


def folder_moved(data: Path) -> None:
    data.rename(data.with_name("elsewhere"))


def visits_removed(data: Path) -> None:
    shutil.rmtree(data / "visits")


def another_folder_in_its_place(data: Path) -> None:
    data.rename(data.with_name("elsewhere"))
    (data / "visits").mkdir(parents=True)


def journal_removed(data: Path) -> None:
    journal_in(data).unlink()


def journal_renamed(data: Path) -> None:
    journal_in(data).rename(data / "visits" / "away.bak")


def journal_copied_and_renamed(data: Path) -> None:
    """As tools do that keep two folders alike."""
    journal = journal_in(data)
    copy = journal.with_name(".copy")
    shutil.copy2(journal, copy)
    copy.replace(journal)


def journal_emptied(data: Path) -> None:
    journal_in(data).write_bytes(b"")


WAYS = (
    *(folder_removed, folder_moved, visits_removed, another_folder_in_its_place),
    *(journal_removed, journal_renamed, journal_copied_and_renamed, journal_emptied),
)
each_way = pytest.mark.parametrize("takes_away", WAYS, ids=lambda way: way.__name__)


def not_on_record(person: Person) -> str:
    """All that is said before the reason, by a program that has ended with the code for it."""
    assert not person.running and person.exit_code == 6, person.said
    before, _, why = " ".join(person.last.split()).partition("cannot be kept")
    assert "moved, removed or replaced" in why, person.last
    return before


@each_way
def test_a_stop_met_after_it_was_taken_away_is_said_not_to_be_on_record(
    takes_away: Callable[[Path], None], data: Path, clock: Clock
) -> None:
    with begin(data, clock, unit="RTU-9", words="no heat") as person:
        takes_away(data)
        person.types("danger gas leak")
        said = not_on_record(person)
        assert "- STOP" in said and "Hand over to:" in said and "not on record" in said
        assert "is closed" not in said and "reopen" not in said


@each_way
def test_a_stop_that_was_on_record_is_said_to_be_so_no_more(
    takes_away: Callable[[Path], None], data: Path, clock: Clock
) -> None:
    with Person(data, clock=clock) as person:
        person.types("RTU-9", "i smell gas", "3", "", "over", "gas utility")
        takes_away(data)
        person.types("now")
        said = not_on_record(person)
        assert "- STOP" in said and "not on record" in said and "is closed" not in said


@pytest.mark.parametrize("leaves", ["q", "\x04"])
def test_whoever_leaves_is_not_told_that_the_visit_is_kept(
    leaves: str, data: Path, clock: Clock
) -> None:
    with Person(data, clock=clock) as person:
        person.types("RTU-9", "i smell gas", "3", "")
        folder_moved(data)
        person.types(leaves) if leaves == "q" else person.pastes(leaves)
        said = not_on_record(person)
        assert "- STOP" in said and "not on record" in said and "is kept" not in said


def test_a_plain_answer_is_not_taken_as_kept(data: Path, clock: Clock) -> None:
    with begin(data, clock, unit="RTU-9") as person:
        journal_removed(data)
        person.types("note dirty filters")
        said = not_on_record(person)
        assert "STOP" not in said and "Noted" not in said


def test_a_visit_that_lies_where_it_was_goes_on(data: Path, clock: Clock) -> None:
    with begin(data, clock, unit="RTU-9") as person:
        (data / "visits" / "other").mkdir()
        assert "Noted." in person.types("note dirty filters")
