"""Cases of somebody who saw no card, judged: python tests/bench/cases.py [FOLDER]

Prints each case whose truth does not lead, then how often it does and is among three, how often
what was held at 0.9 or more was wrong, and the calibration error of what leads in ten bins.
"""

from __future__ import annotations

import argparse
from pathlib import Path

from tests.cases.judging import calibration, judged
from troubleshoot.knowledge.load import load_shipped

APART = Path(__file__).parents[1] / "cases" / "apart"
SURE = 0.9


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("folder", type=Path, nargs="?", default=APART)
    cases = judged(load_shipped(), parser.parse_args().folder)
    for case in cases:
        if not case.first:
            told = "; ".join(f"{fault} {share:.0%}" for fault, share in case.told[:4])
            print(f"{case.name}: {', '.join(case.truth) or 'nothing wrong'}; told: {told}")
    first, in_three = (sum(getattr(c, key) for c in cases) for key in ("first", "in_three"))
    print(
        f"{len(cases)} cases: first {first / len(cases):.3f}, in three {in_three / len(cases):.3f}"
    )
    sure = [case for case in cases if case.chance >= SURE]
    print(f"at {SURE} or more {len(sure)}, wrong of these {sum(not case.first for case in sure)}")
    print(f"calibration error {calibration(cases):.3f}")


if __name__ == "__main__":
    main()
