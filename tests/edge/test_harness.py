"""The person of these tests sees what is on the screen, and the clock is the test's own.

The program that is kept ready and one that a shell starts are the same to whoever starts them.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import run, started

anew_or_kept_ready = pytest.mark.parametrize("anew", [True, False], ids=["anew", "kept ready"])


@anew_or_kept_ready
def test_a_visit_can_be_begun_and_kept_at_a_terminal(anew: bool, tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock, columns=40, anew=anew) as person:
        assert "Which unit?" in person.last
        assert "caller say" in person.types("RTU-3")
        assert all(len(line) <= 40 for line in person.said.splitlines())


@anew_or_kept_ready
def test_the_name_of_a_visit_is_the_day_of_the_clock(anew: bool, tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    with Person(tmp_path / "data", clock=clock, anew=anew) as person:
        person.types("RTU-3", "no cooling", "")
    kept = [path.name for path in (tmp_path / "data" / "visits").iterdir()]
    assert kept and kept[0].startswith("2026-11-26")


@anew_or_kept_ready
def test_it_ends_with_its_exit_code_or_is_killed_with_none(anew: bool, tmp_path: Path) -> None:
    with Person(tmp_path, "visits", clock=Clock(tmp_path), anew=anew) as person:
        assert person.exit_code == 0
    with Person(tmp_path, clock=Clock(tmp_path), anew=anew) as person:
        person.types("RTU-3", "no cooling", "q")
        assert person.exit_code == 4
    with Person(tmp_path, clock=Clock(tmp_path), anew=anew) as person:
        person.kills_it()
        assert person.exit_code is None


def test_a_pipe_is_read_and_answered_alike(tmp_path: Path) -> None:
    typed = "RTU-3\ncafé, no cooling\nno cooling\n\n\n".encode() + b"\xe9\nq\n"
    for words in ([], ["visits"], ["no-such-command"], ["assess", "-", "--json"]):
        alike = [
            (done.returncode, done.stdout, done.stderr)
            for anew in (True, False)
            for done in [started(tmp_path / str(anew), *words, typed=typed, anew=anew)]
        ]
        assert alike[0] == alike[1], words
        assert alike[0][1] or alike[0][2]


def test_a_bound_on_memory_holds_in_both(tmp_path: Path) -> None:
    """A case that is no more than it may be, and takes more than there is."""
    typed = b"complaint: " + b"x " * 450_000
    for anew in (True, False):
        done = run(["assess", "-"], {}, typed, anew=anew)
        assert done.returncode == 3
        done = run(["assess", "-"], {}, typed, most_memory=1_000_000, anew=anew)
        assert done.returncode != 3
