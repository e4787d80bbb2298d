"""Minutes against wrong first calls: python tests/bench/value_curve.py [TIMES ...] [--visits N]

What a right first call is held to be worth is multiplied by TIMES; each value leads visits to the
same faults on the same calls, N on each unit that `rules measure` visits. Prints a row a unit, and
one of all, with standard errors. 150 visits and four values take nine minutes of processor.
"""

from __future__ import annotations

import argparse
import math
import time
from collections.abc import Iterator, Sequence
from statistics import fmean, stdev
from typing import Final

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.measure.faulty_unit import draw
from troubleshoot.measure.searched import searched, visits_of
from troubleshoot.measure.simulated import SimulatedVisit, Visit
from troubleshoot.reasoning.choosing import stopping
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import read_unit

SHIPPED: Final = stopping.VALUE_OF_RIGHT
HEAD: Final = (
    "| value | visits | minutes, mean | first call wrong | named "
    "| a shortlist, the fault second or third | a shortlist without the fault | says 0.9 or more |"
    "\n| --- | --- | --- | --- | --- | --- | --- | --- |"
)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("times", type=float, nargs="*", default=[1, 1.5, 2, 3])
    parser.add_argument("--visits", type=int, default=150)
    parser.add_argument("--seed", type=int, default=1)
    given = parser.parse_args()
    reasoner = Reasoner(load_shipped())
    begun = time.process_time()
    print(HEAD, flush=True)
    for times in given.times:
        stopping.VALUE_OF_RIGHT = times * SHIPPED
        by_unit = list(_visits(reasoner, given.visits, given.seed))
        for name, visits in by_unit:
            print(_row(f"x{times:g}, {name}", visits), flush=True)
        print(_row(f"x{times:g}", [v for _, visits in by_unit for v in visits]), flush=True)
    print(f"{time.process_time() - begun:.0f} s of processor")


def _visits(reasoner: Reasoner, visits: int, seed: int) -> Iterator[tuple[str, list[Visit]]]:
    """The engine's visits to each unit that is measured."""
    for name, typical in reasoner.knowledge.typical_units.items():
        if typical.serves == "measuring":
            unit = read_unit(reasoner.knowledge, typical.unit)
            drawn = list(draw(reasoner, unit, visits, seed))
            yield name, visits_of(SimulatedVisit, reasoner, typical.unit, drawn)


def _row(name: str, visits: Sequence[Visit]) -> str:
    found, minutes = searched(visits), [v.minutes for v in visits]
    called = sum(not v.stopped for v in visits)
    shares = (
        found.wrong, found.named_and_wrong, found.truth_further_down, found.truth_not_listed,
        found.sure,
    )  # fmt: skip
    shown = [f"{p:.1%} ±{math.sqrt(p * (1 - p) / called):.1%}" for p in shares]
    mean = f"{fmean(minutes):.1f} ±{stdev(minutes) / math.sqrt(len(minutes)):.1f}"
    return f"| {name} | {len(visits)} | {mean} | {' | '.join(shown)} |"


if __name__ == "__main__":
    main()
