"""A STOP whose own record was never written stands by what called it up, for every reader."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.edge.visits import ALL, begin, lead_to

NOTHING = "unit: {heat: gas}\n"


def cut_behind(data: Path, last: str) -> None:
    """Leave the journal whole up to the first record of this kind, as after a power cut."""
    (journal,) = (data / "visits").glob("*.journal")
    kept = []
    for line in journal.read_bytes().splitlines(keepends=True):
        kept.append(line)
        if f'"event": "{last}"'.encode() in line:
            break
    journal.write_bytes(b"".join(kept))


def stands_for_all(data: Path, clock: Clock, tmp_path: Path) -> None:
    """Whether the list, a script and whoever goes on or begins meet the same STOP."""
    answers = tmp_path / "answers.yaml"
    answers.write_text(NOTHING, "utf-8")
    assert b"STOP over RTU-3" in started(data, "visits").stdout
    script = started(data, "diagnose", "RTU-3", "--answers", str(answers))
    assert script.returncode == 2 and b"a STOP stands over RTU-3" in script.stderr
    with Person(data, "diagnose", "RTU-3", clock=clock) as person:
        assert "- STOP" in person.types("n")
    with Person(data, clock=clock) as person:
        assert "- STOP" in person.types("y")


@pytest.mark.parametrize(
    ("call", "last"),
    [
        ("i smell gas", "call"),
        ("i smell gas", "start"),
        ("my partner got shocked and is down", "call"),
    ],
)
def test_a_dangerous_call_stands_though_its_stop_was_not_written(
    data: Path, clock: Clock, tmp_path: Path, call: str, last: str
) -> None:
    with Person(data, clock=clock) as person:
        person.types("RTU-3", call)
    cut_behind(data, last)
    stands_for_all(data, clock, tmp_path)


def test_a_danger_found_stands_though_its_stop_was_not_written(
    data: Path, clock: Clock, tmp_path: Path
) -> None:
    with begin(data, clock, unit="RTU-3", words="no-heat", who=ALL) as person:
        person.types("do combustible-gas-sweep")
        lead_to(person, "Combustible-gas sweep")
        assert "- STOP" in person.types("leak")
    (journal,) = (data / "visits").glob("*.journal")
    lines = journal.read_bytes().splitlines(keepends=True)
    journal.write_bytes(b"".join(line for line in lines if b'"event": "stop"' not in line))
    stands_for_all(data, clock, tmp_path)


def test_a_call_that_tells_no_danger_stops_nothing(data: Path, clock: Clock) -> None:
    with Person(data, clock=clock) as person:
        person.types("RTU-3", "it blows cold air")
    cut_behind(data, "call")
    assert b"STOP" not in started(data, "visits").stdout
