"""The person of these tests sees what is on the screen, and the clock is the test's own."""

from __future__ import annotations

from pathlib import Path

from tests.edge.person import Clock, Person


def test_a_visit_can_be_begun_and_kept_at_a_terminal(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock, columns=40) as person:
        assert "Which unit?" in person.last
        assert "caller say" in person.types("RTU-3")
        assert all(len(line) <= 40 for line in person.said.splitlines())


def test_the_name_of_a_visit_is_the_day_of_the_clock(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock) as person:
        person.types("RTU-3", "no cooling", "")
    kept = [path.name for path in (tmp_path / "data" / "visits").iterdir()]
    assert kept and kept[0].startswith("2026-11-26")
