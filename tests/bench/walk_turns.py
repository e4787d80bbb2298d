"""People at the terminal for long: python tests/bench/walk_turns.py [--turns N] [--seed S] [--full]

Types so many lines into real conversations and prints what was met, the time of a turn, and every
objection of the officer with the visit that led to it. On a thinned rule base, which costs a
quarter; --full takes the shipped one. The goal: no objection. Run several with other seeds beside
each other to use more cores.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
import time
from pathlib import Path

from tests.edge.walk.small_rules import small
from tests.edge.walk.walker import Walk
from troubleshoot.knowledge.load import load_shipped

MOST_OBJECTIONS = 10
TOLD_EVERY = 1_000


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--turns", type=int, default=100_000)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--full", action="store_true")
    asked = parser.parse_args()
    knowledge = load_shipped() if asked.full else small(load_shipped())
    with tempfile.TemporaryDirectory() as home:
        walk = Walk(knowledge, asked.seed, Path(home))
        begun, told = time.process_time(), 0
        for turns in (*range(TOLD_EVERY, asked.turns, TOLD_EVERY), asked.turns):
            walk.go(turns, MOST_OBJECTIONS)
            spent = 1000 * (time.process_time() - begun) / walk.met["turns"]
            print(f"{spent:.1f} ms a turn, {dict(walk.met)}", flush=True)
            for objection in walk.objections[told:]:
                print(objection, flush=True)
            told = len(walk.objections)
            if told >= MOST_OBJECTIONS:
                break
    print(f"{walk.met['turns']} turns, {len(walk.objections)} objections")
    sys.exit(1 if walk.objections else 0)


if __name__ == "__main__":
    main()
