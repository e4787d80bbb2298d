"""What one conclusion costs at the full rule base, by hand: python tests/bench/bench_conclude.py

Draws cases of so many random answers and times, in milliseconds and with warm caches: concluding,
concluding and choosing the next test (goal 15), and the account of a whole case (goal 5).
Arguments: ANSWERS (15), CASES (100), --profile for the functions that cost most.
"""

from __future__ import annotations

import cProfile
import pstats
import random
import statistics
import sys
import time
from collections.abc import Callable

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.choosing.choice_of_test import choose
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.visit.cases.assessment import candidates_for
from troubleshoot.visit.telling.account import account

UNIT = {
    "refrigerant": "R-410A",
    "metering": "txv",
    "circuits": 2,
    "condenser-fans": 2,
    "compressor-phase": "three",
    "condenser-fan-phase": "single",
    "supply-phase": "three",
    "heat": "gas",
}


def random_case(knowledge: Knowledge, unit: Unit, answers: int, dice: random.Random) -> Case:
    """A case of so many tests with an outcome each, drawn blindly from the whole base."""
    judging = [
        test
        for test in knowledge.tests.values()
        if test.outcomes and test.kind != "step" and unit.layout.places(test.per)
    ]
    drawn = []
    for test in dice.sample(judging, answers):
        place = dice.choice(unit.layout.places(test.per))
        usual = test.healthy and dice.random() < 0.7
        outcome = test.healthy[0] if usual else dice.choice(test.outcomes).id
        drawn.append(Answer(test.id, (outcome,), places=(place,)))
    return Case(unit, dice.choice(list(knowledge.complaints)), tuple(drawn))


def timed(action: Callable[[Case], object], cases: list[Case]) -> tuple[float, float]:
    """Median and 95th percentile in milliseconds."""
    times = []
    for case in cases:
        start = time.perf_counter()
        action(case)
        times.append(1000 * (time.perf_counter() - start))
    return statistics.median(times), statistics.quantiles(times, n=20)[-1]


def main() -> None:
    numbers = [int(word) for word in sys.argv[1:] if word.isdigit()]
    answers, repeats = [*numbers, *(15, 100)[len(numbers) :]]
    knowledge = load_shipped()
    start = time.perf_counter()
    reasoner = Reasoner(knowledge)
    built = time.perf_counter()
    unit = read_unit(knowledge, UNIT)
    dice = random.Random(1)
    cases = [random_case(knowledge, unit, answers, dice) for _ in range(repeats)]
    candidates_for(reasoner.conclude(cases[-1]))
    warm = time.perf_counter()
    hypotheses, _ = reasoner.hypotheses(unit)
    print(f"{len(hypotheses.causes)} causes by place and picture, {len(hypotheses.tests)} tests")
    print(f"chain built in {1000 * (built - start):.0f} ms, ", end="")
    print(f"first case of a unit {1000 * (warm - built):.0f} ms")

    def conclude_and_choose(case: Case) -> None:
        found = reasoner.conclude(case)
        choose(candidates_for(found), found.ranking)

    actions: dict[str, Callable[[Case], object]] = {
        "conclude": reasoner.conclude,
        "conclude and choose": conclude_and_choose,
        "account": lambda case: account(reasoner.conclude(case)),
    }
    for name, action in actions.items():
        median, slow = timed(action, cases)
        print(f"{name}, {answers} answers: median {median:.1f} ms, 95 % within {slow:.1f} ms")
    if "--profile" in sys.argv:
        profile = cProfile.Profile()
        profile.runcall(timed, conclude_and_choose, cases)
        pstats.Stats(profile).sort_stats("tottime").print_stats(20)


if __name__ == "__main__":
    main()
