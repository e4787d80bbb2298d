"""Rows shared out among processes: in order, never many at once, and none of them kept."""

from __future__ import annotations

import io
import os
import signal
import subprocess
import sys
import tracemalloc
from collections.abc import Iterator
from pathlib import Path

import pytest

from troubleshoot.cli.failures import Failure
from troubleshoot.cli.side_by_side import AHEAD, ROWS, judged_rows
from troubleshoot.outside.lines import Lines
from troubleshoot.outside.table import Row, begin_table
from troubleshoot.records.logged import judging
from troubleshoot.records.logged.judging import Judged
from troubleshoot.records.logged.results import Tally

MANY = 40 * ROWS


class Quick:
    """Judges at once, so that only what carries the rows is looked at."""

    def __init__(self, *parts: object) -> None: ...

    def judged(self, row: Row) -> Judged:
        return Judged(row.line, row.cells["unit"], {}, dangers=(row.cells["note"],))


@pytest.fixture(autouse=True)
def quick(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(judging, "Judge", Quick)


def rows_of(count: int, drawn: list[int] | None = None) -> Iterator[Row]:
    for number in range(count):
        if drawn is not None:
            drawn.append(number)
        yield Row(number, {"unit": f"RTU-{number}", "note": "x" * 100})


@pytest.mark.parametrize("workers", [1, 2, 3])
@pytest.mark.parametrize("count", [0, 1, ROWS, MANY + 1])
def test_every_row_comes_once_and_in_order(workers: int, count: int) -> None:
    found = [each.row for each in judged_rows(rows_of(count), workers, ())]
    assert found == list(range(count))


def test_few_rows_are_on_their_way_at_once() -> None:
    drawn: list[int] = []
    found = judged_rows(rows_of(MANY, drawn), 2, ())
    next(found)
    assert len(drawn) <= ROWS * (2 * AHEAD + 1)
    found.close()


def test_memory_does_not_grow_with_the_table(tmp_path: Path) -> None:
    """Twenty times the rows, read from a file and counted: a tenth more at the peak, at most."""

    def peak(rows: int) -> int:
        path = tmp_path / f"{rows}.csv"
        path.write_text("unit,note\n" + "".join(f"RTU-{n},{'y' * 200}\n" for n in range(rows)))
        tracemalloc.start()
        try:
            tally = Tally()
            with Lines(str(path)) as lines:
                for judged in judged_rows(begin_table(lines, "log.csv")[1], 1, ()):
                    tally.take(judged)
            assert next(tally.lines()).startswith(f"{rows} rows")
            return tracemalloc.get_traced_memory()[1]
        finally:
            tracemalloc.stop()

    peak(100)
    assert peak(4000) < 1.1 * peak(200)


def test_a_process_that_dies_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    text = "unit,note\n" + "RTU-1,x\n" * (ROWS + 1)
    monkeypatch.setattr(Quick, "judged", _kill)
    with pytest.raises(Failure, match="ended from outside"):
        list(judged_rows(begin_table(io.StringIO(text), "log.csv")[1], 2, ()))


LEFT = """
import os, sys, time
from troubleshoot.cli.side_by_side import ROWS, judged_rows
from troubleshoot.outside.table import Row
from troubleshoot.records.logged import judging

class Slow:
    def __init__(self, *parts): print(os.getpid(), flush=True)
    def judged(self, row): time.sleep(600)

judging.Judge = Slow
list(judged_rows([Row(n, {}) for n in range(2 * ROWS)], 2, ()))
"""


def test_no_process_outlives_the_one_that_began_it() -> None:
    """Killed outright, the first one can tell the others nothing."""
    with subprocess.Popen([sys.executable, "-c", LEFT], stdout=subprocess.PIPE, text=True) as first:
        assert first.stdout is not None
        others = [int(first.stdout.readline()) for _ in range(2)]
        first.kill()
        try:  # what they write to ends when the last of them has gone
            assert first.communicate(timeout=120)[0] == ""
        except subprocess.TimeoutExpired:
            for other in others:
                os.kill(other, signal.SIGKILL)
            raise


def _kill(self: Quick, row: Row) -> Judged:
    os._exit(9)
