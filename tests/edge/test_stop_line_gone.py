"""An open journal whose STOP was taken out or damaged: every command says that one may stand."""

from __future__ import annotations

import gzip
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.edge.visits import ALL, begin, lead_to

UNIT = "RTU-9"
VISIT = "2026-11-26-1"


def journal_in(data: Path) -> Path:
    (journal,) = (data / "visits").glob("*.journal")
    return journal


def called(data: Path, clock: Clock, words: str) -> Path:
    """A visit that its call has stopped, with a note behind, left open."""
    with Person(data, clock=clock) as person:
        person.types(UNIT, words)
        while "- STOP\n" not in person.last:
            person.types("")
        person.types("note the keys are with the janitor", "q")
    return journal_in(data)


def found(data: Path, clock: Clock) -> Path:
    """A visit that a finding has stopped, with a note behind, left open."""
    with begin(data, clock, unit=UNIT, words="no-heat", who=ALL) as person:
        person.types("do combustible-gas-sweep")
        lead_to(person, "Combustible-gas sweep")
        assert "- STOP" in person.types("leak")
        person.types("note the keys are with the janitor", "q")
    return journal_in(data)


def without(journal: Path, *kinds: str) -> None:
    marks = [f'"event": "{kind}"'.encode() for kind in kinds]
    lines = journal.read_bytes().splitlines(keepends=True)
    left = [line for line in lines if not any(mark in line for mark in marks)]
    assert left != lines
    journal.write_bytes(b"".join(left))


def all_tell(data: Path, clock: Clock, tmp_path: Path, danger: str) -> None:
    """Whether each command says before anything else what may stand over the unit, and why."""
    told = f"{UNIT} cannot be read: a STOP"
    case = tmp_path / "case.yaml"
    case.write_text("unit: {heat: gas}\n", "utf-8")
    listed = started(data, "visits").stdout.decode()
    assert told in listed and danger in listed.splitlines()[0]
    script = started(data, "diagnose", UNIT, "--answers", str(case))
    assert script.returncode == 2 and f"a STOP may stand over {UNIT}".encode() in script.stderr
    for command in ("reopen", "report"):
        done = started(data, command, VISIT)
        first = done.stderr.decode().splitlines()[0]
        assert told in first and danger in first and done.returncode == 6, done.stderr
    for words, typed in (((), (UNIT,)), (("diagnose", UNIT), ())):
        with Person(data, *words, clock=clock) as person:
            person.types(*typed)
            said = " ".join(person.said.split())
            assert told in said and danger in said and "DANGER - STOP" in said
            assert "caller say" not in said and person.exit_code == 4


@pytest.mark.parametrize(
    ("words", "danger"),
    [("i smell gas", "gas odor"), ("the CO alarm went off", "carbon monoxide")],
)
def test_a_call_tells_of_its_stop_though_its_line_was_taken_out(
    words: str, danger: str, data: Path, clock: Clock, tmp_path: Path
) -> None:
    """Regression: the next visit to the unit began with its first question."""
    without(called(data, clock, words), "stop", "danger")
    all_tell(data, clock, tmp_path, danger)


def test_a_finding_tells_of_its_stop_though_its_line_was_taken_out(
    data: Path, clock: Clock, tmp_path: Path
) -> None:
    without(found(data, clock), "stop")
    all_tell(data, clock, tmp_path, "gas")


@pytest.mark.parametrize("garbled", [b"#" * 60, b'"' * 60, b"0" * 60])
def test_a_stop_whose_line_is_garbled_may_stand(
    garbled: bytes, data: Path, clock: Clock, tmp_path: Path
) -> None:
    journal = found(data, clock)
    whole = journal.read_bytes()
    (line,) = (each for each in whole.splitlines() if b'"event": "stop"' in each)
    journal.write_bytes(whole.replace(line, garbled + line[-40:]))
    all_tell(data, clock, tmp_path, "gas")


def test_a_line_that_is_gone_may_have_been_a_stop(data: Path, clock: Clock) -> None:
    """Nothing that is left calls one up, and nobody can tell what was in it."""
    with begin(data, clock, unit=UNIT) as person:
        person.types("note one", "note two", "note three", "q")
    journal = journal_in(data)
    lines = journal.read_bytes().splitlines(keepends=True)
    journal.write_bytes(
        b"".join(line for line in lines if b"note two" not in line and b'"two"' not in line)
    )
    with Person(data, "diagnose", UNIT, clock=clock) as person:
        assert "a STOP may stand over it" in " ".join(person.said.split())
        assert "DANGER - STOP" in person.said and "caller say" not in person.said


def renamed(journal: Path) -> Path:
    return journal.rename(journal.with_name(f"{journal.name}.bak"))


def moved_up(journal: Path) -> Path:
    return journal.rename(journal.parent.parent / journal.name)


def moved_down(journal: Path) -> Path:
    (journal.parent / "archive").mkdir()
    return journal.rename(journal.parent / "archive" / journal.name)


def in_capitals(journal: Path) -> Path:
    return journal.rename(journal.with_suffix(".JOURNAL"))


@pytest.mark.parametrize("strays", [renamed, moved_up, moved_down, in_capitals])
def test_a_stop_does_not_go_with_the_name_of_its_journal(
    strays: Callable[[Path], Path], data: Path, clock: Clock
) -> None:
    """Regression: a script on its unit went on with exit code 0."""
    strays(called(data, clock, "i smell gas"))
    assert f"{UNIT} cannot be read: a STOP was met in it" in started(data, "visits").stdout.decode()
    script = started(data, "diagnose", UNIT, "--no-input")
    assert script.returncode == 2 and f"a STOP may stand over {UNIT}".encode() in script.stderr
    assert started(data, "diagnose", "RTU-4", "--no-input").returncode == 0
    with Person(data, clock=clock) as person:
        assert "DANGER - STOP" in person.types(UNIT) and "gas odor" in person.last


def test_a_journal_that_was_packed_may_be_of_any_unit(data: Path, clock: Clock) -> None:
    journal = called(data, clock, "i smell gas")
    journal.with_name(f"{journal.name}.gz").write_bytes(gzip.compress(journal.read_bytes()))
    journal.unlink()
    script = started(data, "diagnose", UNIT, "--no-input")
    assert script.returncode == 2 and b"a STOP may stand over" in script.stderr
    with Person(data, clock=clock) as person:
        assert "Is this one of them?" in person.types(UNIT)
        assert "DANGER - STOP" in person.types("1")


def test_a_copy_of_a_visit_that_went_on_stops_nothing(data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        person.types(UNIT, "no-cooling", ALL)
        journal = journal_in(data)
        journal.with_name(f"{journal.name}.bak").write_bytes(journal.read_bytes())
        person.types("note one", "q")
    assert b"STOP" not in started(data, "visits").stdout
    assert started(data, "diagnose", UNIT, "--no-input").returncode == 0


@pytest.mark.parametrize(
    "name",
    [
        *("rtu 9 north building", "North Building RTU-9", "RTU-9 North Bldg", "RTU-9 N Building"),
        *(
            "RTU-9",
            "Unit 09, north building",
            "RTU-9 North Buidling",
            "the RTU-9 at North Building",
            "North Building",
        ),
    ],
)
def test_a_script_may_turn_a_units_name_round_and_meets_its_stop(
    name: str, data: Path, clock: Clock
) -> None:
    """Regression: the STOP was shown, and a whole account behind it, exit code 0."""
    with Person(data, clock=clock) as person:
        person.types("RTU-9 North Building", "i smell gas", "", "q")
    script = started(data, "diagnose", name, "--no-input")
    assert script.returncode == 2 and b"a STOP stands over" in script.stderr
    for other in ("RTU-9 South Building", "RTU-90 North Building", "Mill 7", "South Building"):
        assert started(data, "diagnose", other, "--no-input").returncode == 0, other
