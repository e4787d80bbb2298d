"""What a table of logged readings costs, by hand: python -m tests.bench.logged [ROWS ...]

Tables of so many rows (45, 450, 4500) of the demo site, its units in turn, each row a past visit of
it with its numbers a little moved. Prints, for one process and for two, the seconds on the clock,
those of the processors, and the most memory that one process held; goals on two quiet processors:
45 rows in 1 s, 30,000 in 120 s. Asserts nothing.
"""

from __future__ import annotations

import csv
import os
import random
import re
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import Final

SITE: Final = Path(__file__).parents[2] / "scenarios" / "college" / "readings.csv"
ROWS: Final = (45, 450, 4500)
_NUMBER: Final = re.compile(r"[0-9]+\.?[0-9]*")


def logged_rows(count: int) -> Iterator[Mapping[str, str]]:
    """So many rows, the units in turn; the numbers of each time round are others."""
    with SITE.open(encoding="utf-8", newline="") as stream:
        past = list(csv.DictReader(stream))
    by_unit: dict[str, list[dict[str, str]]] = {}
    for row in past:
        by_unit.setdefault(row["unit"], []).append(row)
    dice = random.Random(1)
    for number in range(count):
        visits = list(by_unit.values())[number % len(by_unit)]
        row = visits[number // len(by_unit) % len(visits)]
        yield {
            key: text if key in ("unit", "date") or not text else _moved(text, dice)
            for key, text in row.items()
        }


def _moved(text: str, dice: random.Random) -> str:
    """A reading with its number moved by up to one in a hundred, as many digits as before."""
    number = _NUMBER.match(text)
    assert number is not None
    digits = len(number[0].partition(".")[2])
    return f"{float(number[0]) * dice.uniform(0.99, 1.01):.{digits}f}{text[number.end() :]}"


def write_log(path: Path, count: int) -> None:
    """Write a table of so many rows."""
    rows = iter(logged_rows(count))
    first = next(rows)
    with path.open("w", encoding="utf-8", newline="") as stream:
        writer = csv.DictWriter(stream, list(first))
        writer.writeheader()
        writer.writerow(first)
        writer.writerows(rows)


def run(*words: str) -> tuple[float, float, float]:
    """Seconds on the clock, seconds of all processors, and the most MB that one process held."""
    program = (
        "import resource, sys\n"
        "from troubleshoot.cli.failures import run_command\n"
        "from troubleshoot.cli.main import cli\n"
        "import gc; gc.set_threshold(1_000_000)\n"
        "run_command(cli)\n"
        "own, others = map(resource.getrusage, (resource.RUSAGE_SELF, resource.RUSAGE_CHILDREN))\n"
        "seconds = sum(each.ru_utime + each.ru_stime for each in (own, others))\n"
        "print(seconds, max(own.ru_maxrss, others.ru_maxrss) / 1024, file=sys.stderr)\n"
    )
    start = time.perf_counter()
    done = subprocess.run(
        [sys.executable, "-c", program, *words], capture_output=True, text=True, check=True
    )
    clock = time.perf_counter() - start
    seconds, megabytes = done.stderr.splitlines()[-1].split()
    return clock, float(seconds), float(megabytes)


def main(counts: list[int]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        os.environ["TROUBLESHOOT_DATA"] = f"{folder}/data"
        run("units", "demo")
        for count in counts:
            log = Path(folder) / f"{count}.csv"
            write_log(log, count)
            for workers in (1, 2):
                to = f"{folder}/{count}-{workers}.csv"
                found = run("assess", "--all", str(log), "--to", to, "--workers", str(workers))
                print(
                    f"{count:>6} rows, {workers} processes: {found[0]:7.1f} s, processors "
                    f"{found[1]:7.1f} s ({1000 * found[1] / count:5.1f} ms a row), "
                    f"{found[2]:5.0f} MB",
                    flush=True,
                )


if __name__ == "__main__":
    main([int(word) for word in sys.argv[1:]] or list(ROWS))
