"""A journal that is damaged lifts no STOP: whoever begins is told of it by name."""

from __future__ import annotations

import json
import os
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.visit.kept.samples import long_visit, stopped_visit, write_journal

UNIT = "Quarry Street clinic, unit 2"
VISIT = "2026-11-25-1"


def damaged(data: Path, before: bytes, after: bytes, name: str = VISIT) -> Path:
    """A visit that a STOP halted, with one place of its journal not as it was written."""
    path = write_journal(data / "visits", name, stopped_visit())
    whole = path.read_bytes()
    assert before in whole
    path.write_bytes(whole.replace(before, after, 1))
    return path


@pytest.mark.parametrize(
    ("before", "after"),
    [(b"ice on", b"ide on"), (b'"event": "stop"', b'"event": "stoq"'), (b'"crack"', b'"crack\xff')],
)
def test_a_damaged_byte_lets_nobody_begin_on_the_unit(
    before: bytes, after: bytes, data: Path, tmp_path: Path
) -> None:
    """Regression: the STOP of a journal with one bad byte met nobody."""
    path = damaged(data, before, after)
    with Person(data, clock=Clock(tmp_path)) as person:
        said = " ".join(person.last.split())
        assert f"Visit {VISIT} to {UNIT} cannot be read: a STOP was met in it" in said
        assert "is open. Go on" not in said
        assert "move the file out of its folder" in said
        person.types("quarry street clinic unit 02")
        assert "DANGER - STOP" in person.last
        assert person.exit_code == 4
    assert list(path.parent.iterdir()) == [path]


def test_where_its_name_is_damaged_it_is_asked_whose_it_is(data: Path, tmp_path: Path) -> None:
    damaged(data, b"Quarry", b"Quarrz")
    with Person(data, clock=Clock(tmp_path)) as person:
        said = " ".join(person.types("RTU-7").split())
        assert f"1 a unit without a name: visit {VISIT} cannot be read" in said
        assert "DANGER - STOP" in person.types("1")
        assert person.exit_code == 4


def test_damage_without_the_marks_of_a_stop_is_told_and_stops_nobody(
    data: Path, tmp_path: Path
) -> None:
    """Regression: the damaged latest visit was offered to go on with, and nothing else."""
    whole = write_journal(data / "visits", "2026-11-25-1", long_visit()[:5])
    broken = write_journal(data / "visits", "2026-11-25-2", long_visit()[:5])
    broken.write_bytes(broken.read_bytes().replace(b"ice on", b"ide on"))
    closed = write_journal(data / "visits", "2026-11-25-3", long_visit())
    closed.write_bytes(closed.read_bytes().replace(b"ice on", b"ide on"))
    with Person(data, clock=Clock(tmp_path)) as person:
        said = " ".join(person.last.split())
        assert f"Visit {broken.stem} to {UNIT} cannot be read: a STOP may stand over it." in said
        assert f"Visit {whole.stem} is open. Go on with it?" in said and closed.stem not in said
        assert "Which unit?" in person.types("n")
        assert "caller say" in person.types(UNIT)


def test_a_script_shows_it_first_and_is_refused_on_its_unit(data: Path) -> None:
    damaged(data, b"ice on", b"ide on")
    done = started(data, "diagnose", "RTU-9", "--json")
    (row,) = json.loads(done.stdout)["standing"]
    assert row["readable"] is False and row["visit"] == VISIT and row["unit"] == UNIT
    done = started(data, "diagnose", UNIT.upper(), "--no-input")
    assert done.returncode == 2 and VISIT.encode() in done.stderr


def too_long(path: Path) -> None:
    with path.open("ab") as journal:
        journal.write(b"a" * 10_000_001)


def emptied(path: Path) -> None:
    path.write_bytes(b"")


def cut_in_its_first_record(path: Path) -> None:
    path.write_bytes(path.read_bytes()[:40])


def zeroed(path: Path) -> None:
    path.write_bytes(b"\0" * 4_000)


def a_pipe(path: Path) -> None:
    path.unlink()
    os.mkfifo(path)


def a_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


def a_link_to_nowhere(path: Path) -> None:
    path.unlink()
    path.symlink_to("gone")


def renamed_inside(path: Path) -> None:
    path.write_bytes(path.read_bytes().replace(b"Quarry", b"Quarrx"))


WAYS = (
    *(too_long, emptied, cut_in_its_first_record, zeroed),
    *(a_pipe, a_folder, a_link_to_nowhere, renamed_inside),
)


@pytest.mark.parametrize("spoil", WAYS, ids=lambda spoil: spoil.__name__)
def test_no_script_goes_past_a_journal_that_cannot_be_read(
    spoil: Callable[[Path], None], data: Path
) -> None:
    """Regression: it went on with exit code 0, and was told to divide the journal."""
    spoil(write_journal(data / "visits", VISIT, stopped_visit()))
    done = started(data, "diagnose", UNIT, "--json")
    assert done.returncode == 2 and VISIT.encode() in done.stderr
    (row,) = json.loads(done.stdout)["standing"]
    assert row["readable"] is False and row["visit"] == VISIT
    listed = started(data, "visits").stdout.decode()
    assert "move the file out of its folder" in listed
    assert "divide" not in listed and "delete" not in listed


NAME_LOST = [spoil for spoil in WAYS if spoil is not too_long]


@pytest.mark.parametrize("spoil", NAME_LOST, ids=lambda spoil: spoil.__name__)
def test_whoever_begins_is_asked_whether_it_is_this_unit(
    spoil: Callable[[Path], None], data: Path, tmp_path: Path
) -> None:
    spoil(write_journal(data / "visits", VISIT, stopped_visit()))
    with Person(data, clock=Clock(tmp_path)) as person:
        said = " ".join(person.types("RTU-7").split())
        assert f"visit {VISIT} cannot be read, and a STOP" in said
        assert "DANGER - STOP" in person.types("1")
        assert person.exit_code == 4


def test_of_one_that_is_too_long_what_was_written_is_used(data: Path) -> None:
    too_long(write_journal(data / "visits", VISIT, stopped_visit()))
    done = started(data, "diagnose", "RTU-9", "--json")
    (row,) = json.loads(done.stdout)["standing"]
    assert done.returncode == 0 and row["unit"] == UNIT
    assert "a STOP was met in it" in row["lines"][0]


@pytest.mark.parametrize("spoil", [too_long, zeroed])
def test_what_is_gone_may_have_been_a_stop(spoil: Callable[[Path], None], data: Path) -> None:
    """No mark of a STOP in what is left says nothing of the rest."""
    path = write_journal(data / "visits", VISIT, long_visit()[:5])
    begun = path.read_bytes()
    spoil(path)
    if spoil is zeroed:
        path.write_bytes(begun + b"\0" * 500 + b"\n")
    done = started(data, "diagnose", UNIT, "--no-input")
    assert done.returncode == 2 and b"a STOP may stand over" in done.stderr


def spoil_header(path: Path) -> None:
    path.write_bytes(path.read_bytes().replace(b'"format": ', b'"format": 9'))


def spoil_length(path: Path) -> None:
    path.write_bytes(path.read_bytes() + b"x" * 10_000_000)


def become_folder(path: Path) -> None:
    path.unlink()
    path.mkdir()


def become_pipe(path: Path) -> None:
    path.unlink()
    os.mkfifo(path)


@pytest.mark.parametrize(
    ("spoil", "told"),
    [
        (lambda path: path.write_bytes(path.read_bytes().replace(b"ice on", b"ide on")), "was met"),
        (spoil_header, "may stand"),
        (spoil_length, "may stand"),
        (lambda path: path.write_bytes(b""), "may stand"),
        (lambda path: os.truncate(path, 50_000_000), "may stand"),
        (become_folder, "may stand"),
        (become_pipe, "may stand"),
    ],
)
def test_the_report_of_a_visit_that_cannot_be_read_says_first_that_a_stop_may_stand(
    spoil: Callable[[Path], object], told: str, data: Path
) -> None:
    """Regression: it said only what is wrong with the file, as `visits` and a start never do."""
    spoil(write_journal(data / "visits", VISIT, stopped_visit()))
    done = started(data, "report", VISIT)
    first, *more = done.stderr.decode().splitlines()
    assert done.returncode == 6 and not done.stdout
    assert f"Visit {VISIT}" in first and "cannot be read: a STOP" in first and told in first
    assert "Do not start on its unit" in more[0]
    account = json.loads(started(data, "report", VISIT, "--json").stdout)
    assert account["error"][0]["problem"] == first
    assert [row["visit"] for row in account["standing"]] == [VISIT]


def test_the_report_of_a_visit_whose_end_is_cut_off_says_so_first(data: Path) -> None:
    path = write_journal(data / "visits", VISIT, stopped_visit()[:5])
    path.write_bytes(path.read_bytes() + b"\0\0\0")
    done = started(data, "report", VISIT)
    assert f"Visit {VISIT}" in done.stderr.decode().splitlines()[0]
    assert "a STOP may stand over it" in done.stderr.decode().splitlines()[0]


@pytest.mark.parametrize("ending", ["closed", "shortlist", "found", "", "zzz", "stopped"])
def test_a_stop_that_nothing_lifted_is_told_alike_whatever_the_end_says(
    ending: str, data: Path, tmp_path: Path
) -> None:
    """Regression: an end that said "shortlist" hid it from the list and from whoever began."""
    end = {"event": "end", "ending": ending}
    write_journal(data / "visits", VISIT, [*stopped_visit(), end])
    listed = started(data, "visits").stdout.decode()
    assert f"STOP over {UNIT}, visit {VISIT}: heat exchanger breach" in listed
    assert f"{VISIT}  {'stopped' if ending == 'stopped' else 'open'} " in listed
    told = json.loads(started(data, "report", VISIT, "--json").stdout)
    assert told["stop"]["id"] == "heat-exchanger-breach"
    assert bool(told["not_understood"]) is (ending != "stopped")
    done = started(data, "diagnose", UNIT, "--no-input")
    assert done.returncode == 2 and f"visit {VISIT}".encode() in done.stderr
    with Person(data, clock=Clock(tmp_path)) as person:
        if "Go on with it?" in person.last:
            person.types("n")
        assert "DANGER - STOP" in person.types(UNIT)


def test_a_visit_closed_after_its_stop_was_lifted_is_told_by_none(data: Path) -> None:
    write_journal(data / "visits", VISIT, [*long_visit()[:-4], *long_visit()[-2:]])
    assert b"STOP over" not in started(data, "visits").stdout
    told = json.loads(started(data, "report", VISIT, "--json").stdout)
    assert told["stop"] is None and told["not_understood"] == []
