"""A journal that is damaged lifts no STOP: whoever begins is told of it by name."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.visit.kept.samples import long_visit, stopped_visit, write_journal

UNIT = "Quarry Street clinic, unit 2"
VISIT = "2026-11-25-1"


@pytest.fixture
def data(tmp_path: Path) -> Path:
    return tmp_path / "data"


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
