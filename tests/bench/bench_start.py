"""Start-up and answer times of whole processes, by hand: python tests/bench/bench_start.py

Prints medians in milliseconds beside their budgets; asserts nothing, since a slow machine is no
defect.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

RUNS = 15
CASE = """\
unit: {refrigerant: R-410A, metering: txv, circuits: 2, compressor-rla: 8.9 A}
conditions: {outdoor-temperature: 94 F, minutes-running: 20}
complaint: fails-hot-afternoons
readings:
  - {test: suction-pressure, at: circuit 1, text: 128 psig}
  - {test: suction-line-temperature, at: circuit 1, text: 54 F}
  - {test: compressor-start-attempt, at: circuit 2, outcome: hums-and-trips}
  - {test: contactor-contacts, at: contactor 2, outcome: pole-burnt-away}
"""


def run(words: list[str], typed: str = "") -> float:
    start = time.perf_counter()
    subprocess.run(
        [sys.executable, "-c", "from troubleshoot.cli.main import main; main()", *words],
        input=typed,
        text=True,
        capture_output=True,
        check=False,
    )
    return 1000 * (time.perf_counter() - start)


def report(name: str, budget: int, words: list[str], typed: str = "") -> None:
    run(words, typed)
    median = statistics.median(run(words, typed) for _ in range(RUNS))
    print(f"{name:<34} {median:6.0f} ms   budget {budget}")


def main() -> None:
    with tempfile.TemporaryDirectory() as folder:
        os.environ["TROUBLESHOOT_DATA"] = folder
        case = Path(folder) / "case.yaml"
        case.write_text(CASE, "utf-8")
        report("--help", 100, ["--help"])
        report("assess, as a process", 300, ["assess", str(case), "--json"])
        report("rules check", 2000, ["rules", "check"])
        os.environ["TROUBLESHOOT_DATA"] = str(Path(folder) / "visits")
        report("first question", 250, ["diagnose"])


if __name__ == "__main__":
    main()
