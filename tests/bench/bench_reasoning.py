"""What an answer costs at the full rule base, by hand: python tests/bench/bench_reasoning.py

Plays visits with answers drawn at random and times each turn: concluding, and choosing what comes
next. Prints median and 95th percentile in milliseconds.
"""

from __future__ import annotations

import random
import statistics
import time

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.answers import Case
from troubleshoot.visit.case_file import read_case
from troubleshoot.visit.scripted import ScriptedVisit, start_event

VISITS = 20


def main() -> None:
    knowledge = load_shipped()
    dice = random.Random(1)
    turns: list[float] = []
    unit = dict(knowledge.typical_units["measured-two-circuits"].unit)
    data = {"unit": unit, "complaint": "no-cooling"}
    for _ in range(VISITS):
        case: Case = read_case(knowledge, data)
        visit = ScriptedVisit(knowledge, case, start_event(case, data))
        for _ in range(40):
            start = time.perf_counter()
            found = visit.decider.reasoner.conclude(visit.state.case)
            decision = visit.decider.decide(visit.state, found)
            turns.append(1000 * (time.perf_counter() - start))
            if decision.kind in ("ending", "stop") or decision.test is None:
                break
            if decision.step is not None:
                visit.take(decision, found)
                continue
            outcomes = found.hypotheses.outcomes(decision.test.id)
            if not outcomes:
                visit.take(decision, found)
                continue
            at = None if decision.at is None else [str(decision.at)]
            visit.add({"event": "answer", "test": decision.test.id, "at": at,
                       "outcomes": [dice.choice(outcomes)]})  # fmt: skip
    turns.sort()
    late = turns[int(0.95 * len(turns))]
    median = statistics.median(turns)
    print(f"{len(turns)} turns: median {median:.1f} ms, 95th percentile {late:.1f} ms")


if __name__ == "__main__":
    main()
