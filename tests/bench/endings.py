"""Every call on every typical unit, however it answers: python tests/bench/endings.py

Prints how long the visits are, and every objection. The goal: none.
"""

from __future__ import annotations

from collections import Counter

from tests.dialogue.constant import MODES, ConstantVisit
from tests.dialogue.test_every_ending import CALLS, objections
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.conclude import Reasoner


def main() -> None:
    knowledge = load_shipped()
    reasoner = Reasoner(knowledge)
    tests: list[int] = []
    ends: Counter[str] = Counter()
    for call in CALLS:
        for name, typical in knowledge.typical_units.items():
            for mode in MODES:
                visit = ConstantVisit(reasoner, typical.unit, call, mode)
                visit.drive()
                tests.append(len(visit.asked))
                ends[type(visit.end).__name__] += 1
                for objection in objections(visit):
                    print(f"{call}, {name}, {mode}: {objection}", flush=True)
    tests.sort()
    print(f"{len(tests)} visits, {dict(ends)}; tests asked: median {tests[len(tests) // 2]}, "
          f"95th percentile {tests[int(0.95 * len(tests))]}, most {tests[-1]}")  # fmt: skip


if __name__ == "__main__":
    main()
