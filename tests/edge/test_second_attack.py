"""What a second attacker got through: each a way past a STOP, or a word that nobody heard."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.edge.visits import ALL, begin

GAS = ("RTU-7", "smells gas")


def journal_of(data: Path) -> Path:
    (journal,) = sorted((data / "visits").glob("*.journal"))
    return journal


def killed_at_who(data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        person.types(*GAS)
        assert "STOP" in person.said and "Who is asking" in person.last


def test_a_call_that_is_a_stop_stands_though_nobody_said_who_asks(data: Path, clock: Clock) -> None:
    killed_at_who(data, clock)
    assert b"STOP over RTU-7" in started(data, "visits").stdout
    with Person(data, clock=clock) as person:
        person.types("n", "rtu 7")
        assert "- STOP" in person.said and "Which" not in person.last
    with Person(data, clock=clock) as person:
        person.types("y", ALL)
        assert "- STOP" in person.said and "caller say" not in person.last


def test_no_apprentice_lifts_what_was_handed_over(data: Path, clock: Clock) -> None:
    with begin(data, clock, words="no-heat") as person:
        person.types("i smell gas", "over", "the gas company, just now")
    clock.pass_minutes(60)
    visit = journal_of(data).stem
    with Person(data, "reopen", visit, clock=clock) as person:
        person.types(ALL, "1", "1", "y")
        person.types("0 % LEL", "y", "just now")
        assert "Reopened." in person.said
        person.types("q")
    with Person(data, clock=clock) as person:
        person.types("y", "1")
        assert "- STOP" in person.said
        person.types("again")
        assert "cleared" not in person.last and "supervising technician" in person.said
    assert b"STOP over RTU-7" in started(data, "visits").stdout


@pytest.mark.parametrize(
    "done", ["the gas still leaks, nothing repaired", "valve still leaking at the union",
             "not repaired, gas valve is on order"],
)  # fmt: skip
def test_a_result_that_says_there_is_none_reopens_nothing(
    done: str, data: Path, clock: Clock
) -> None:
    with begin(data, clock, words="no-heat") as person:
        person.types("i smell gas", "over", "the gas company, just now")
    clock.pass_minutes(60)
    with Person(data, "reopen", journal_of(data).stem, clock=clock) as person:
        said = " ".join(person.types(ALL, "1", done).split())
        assert "What did they do?" in said and "Which" not in said.rpartition(done)[2]
        assert "Reopened." not in person.said


def test_a_reading_of_another_day_shows_nothing_of_today(data: Path, clock: Clock) -> None:
    with begin(data, clock, words="no-heat") as person:
        person.types("i smell gas", "over", "the gas company, just now")
    clock.pass_minutes(40)
    read = f"{clock.moment:%Y-%m-%d %H:%M}"
    clock.pass_minutes(3 * 24 * 60)
    with Person(data, "reopen", journal_of(data).stem, clock=clock) as person:
        person.types(ALL, "1", "1", "y")
        person.types("0 % LEL", "y", read)
        assert "more than a day ago" in person.last


@pytest.mark.parametrize("cut", [1, 40, 60])
def test_a_cut_off_record_of_a_stop_is_told_of(cut: int, data: Path, clock: Clock) -> None:
    with begin(data, clock, words="no-heat") as person:
        person.types("danger gas")
    journal = journal_of(data)
    kept = journal.read_bytes()
    first = kept.index(b'"event": "danger"')
    whole = kept[: kept.index(b"\n", first)]
    journal.write_bytes(whole[: len(whole) + 1 - cut])
    assert b"cannot be read" in started(data, "visits").stdout
    with Person(data, clock=clock) as person:
        assert "cannot be read" in person.said


@pytest.mark.parametrize("left", [b"", b"\0" * 1400, b" " * 30])
def test_an_emptied_journal_is_told_of_and_nobody_is_told_to_delete_it(
    left: bytes, data: Path, clock: Clock
) -> None:
    with begin(data, clock, words="no-heat") as person:
        person.types("danger gas")
    journal_of(data).write_bytes(left)
    with Person(data, clock=clock) as person:
        said = " ".join(person.said.split())
        assert "a STOP may stand over it" in said and "delete the file" not in said


def test_nothing_read_is_not_nothing_wrong(data: Path) -> None:
    told = started(data, "diagnose", "RTU-9", "--no-input").stdout
    assert b"Nothing was examined" in told and b"Nothing wrong was found" not in told


def test_a_call_that_is_a_stop_is_not_picked_by_a_slip(data: Path, clock: Clock) -> None:
    """Regression: a wrong number in the list of calls stopped the whole job for good."""
    with Person(data, clock=clock) as person:
        person.types("RTU-3", "the alarm for refrigerant, it shows something")
        number = next(
            line.split()[0]
            for line in person.last.splitlines()
            if "refrigerant alarm is on" in line
        )
        person.types(number)
        assert "stops the whole job" in person.last
        person.types("maybe", "n")
        assert "caller say" in person.last and "- STOP" not in person.said
        person.types("not cooling, fan on top wont turn")
        assert "Who is asking" in person.last
