"""The engine's choice against the true optimum, on subsets small enough to solve exactly.

Faults and tests are drawn from the rule base; each test is taken as sound / not sound. The optimum
is found by dynamic programming over what has been answered and the work state; the engine's policy
is followed through the same tree. Cost: minutes with changes of state, and what a wrong call costs.
"""

from __future__ import annotations

import math
import random
from collections.abc import Mapping, Sequence
from dataclasses import field
from functools import cache

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.choosing.next_test import QUESTION_MINUTES
from troubleshoot.reasoning.choosing.stopping import VALUE_OF_RIGHT, entropy, least_rate, pays
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, pattern_row
from troubleshoot.reasoning.readings.readings import report_error
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to, switch_minutes
from troubleshoot.safety.transitions import after_step
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import WorkState

Answered = tuple[int, ...]
"""By test: -1 not asked, 0 sound, 1 not sound."""


@frozen
class Subset:
    """Priors of some faults, and for some tests the chance of "not sound" under each fault.

    `changes`: minutes from one work state to another; none where nothing has to be changed.
    """

    priors: tuple[float, ...]
    unsound: tuple[tuple[float, ...], ...]
    minutes: tuple[float, ...]
    states: tuple[str, ...]
    changes: Mapping[tuple[str, str], float] = field(default_factory=dict)


def draw_subset(hypotheses: Hypotheses, faults: int, tests: int, dice: random.Random) -> Subset:
    """Some faults of one neighbourhood, and the tests that speak most of them."""
    first = dice.choice(hypotheses.causes)
    near = [h for h in hypotheses.causes if set(h.picture.cells) & set(first.picture.cells)]
    chosen = dice.sample(near, min(faults, len(near)))
    spoken: dict[str, int] = {}
    for hypothesis in chosen:
        for test in hypothesis.picture.cells:
            spoken[test] = spoken.get(test, 0) + 1
    able = [t for t in spoken if hypotheses.knowledge.tests[t].healthy]
    names = sorted(able, key=lambda t: (-spoken[t], t))[:tests]
    total = math.fsum(h.prior for h in chosen)
    return Subset(
        tuple(h.prior / total for h in chosen),
        tuple(tuple(_unsound(hypotheses, h.picture, t) for h in chosen) for t in names),
        tuple(hypotheses.knowledge.tests[t].minutes + QUESTION_MINUTES for t in names),
        tuple(hypotheses.knowledge.tests[t].work_state for t in names),
        _changes(hypotheses, [hypotheses.knowledge.tests[t] for t in names]),
    )


def _changes(hypotheses: Hypotheses, tests: Sequence[Test]) -> Mapping[tuple[str, str], float]:
    """Minutes from the work state of one test to that of another, by the steps of a visit."""
    unit, rules = unit_at_work(hypotheses.unit), hypotheses.knowledge.tests
    needs = {test.work_state: needs_of(test, None, unit) for test in tests}
    reached = {"any": WorkState()}
    for name, wanted in needs.items():
        work = WorkState()
        for step in steps_to(work, wanted, unit):
            work = after_step(work, step, (CONFIRMED[step.id],), unit)
        reached[name] = work
    return {
        (now, then): switch_minutes(work, wanted, unit, rules)
        for now, work in reached.items()
        for then, wanted in needs.items()
        if then not in ("any", now)
    }


def _unsound(hypotheses: Hypotheses, picture: object, test: str) -> float:
    known = hypotheses.knowledge.tests[test]
    row = pattern_row(hypotheses.row(picture, test))  # type: ignore[arg-type]
    sound = math.fsum(p for o, p in row.items() if o in known.healthy or o == NONE_OF_THEM)
    error = report_error(known)
    return (1 - sound) * (1 - error) + sound * error


def ratio_to_optimum(subset: Subset) -> float:
    """Expected cost of the engine's policy over that of the best policy."""
    best, engine = _Solver(subset, greedy=False), _Solver(subset, greedy=True)
    start = (-1,) * len(subset.minutes)
    return engine.cost(start, "any") / best.cost(start, "any")


class _Solver:
    """Expected cost from a state of knowledge: the best of all choices, or the engine's."""

    def __init__(self, subset: Subset, greedy: bool) -> None:
        self.subset = subset
        self.greedy = greedy
        self.cost = cache(self._cost)
        self.chances = cache(self._chances)

    def _chances(self, answered: Answered) -> tuple[float, ...]:
        joint = list(self.subset.priors)
        for row, answer in zip(self.subset.unsound, answered, strict=True):
            if answer >= 0:
                joint = [p * (u if answer else 1 - u) for p, u in zip(joint, row, strict=True)]
        total = math.fsum(joint)
        return tuple(p / total for p in joint)

    def _cost(self, answered: Answered, state: str) -> float:
        stop = VALUE_OF_RIGHT * (1 - max(self.chances(answered)))
        open_ = [i for i, answer in enumerate(answered) if answer < 0]
        if self.greedy:
            chosen = self._greedy(answered, state, open_)
            return stop if chosen is None else self._after(answered, state, chosen)
        return min([stop, *(self._after(answered, state, i) for i in open_)])

    def _after(self, answered: Answered, state: str, test: int) -> float:
        """Cost of doing a test now and going on well from either answer."""
        wanted = self.subset.states[test]
        cost = self._minutes(state, test)
        state = state if wanted == "any" else wanted
        p = self._not_sound(answered, test)
        for answer, chance in ((1, p), (0, 1 - p)):
            if chance > 0:
                cost += chance * self.cost(_with(answered, test, answer), state)
        return cost

    def _minutes(self, state: str, test: int) -> float:
        """Minutes of a test from a work state."""
        return self.subset.minutes[test] + self.subset.changes.get(
            (state, self.subset.states[test]), 0.0
        )

    def _not_sound(self, answered: Answered, test: int) -> float:
        row = self.subset.unsound[test]
        return math.fsum(c * u for c, u in zip(self.chances(answered), row, strict=True))

    def _greedy(self, answered: Answered, state: str, open_: Sequence[int]) -> int | None:
        """The engine's rule: the best gain per minute among the tests that pay."""
        chances = self.chances(answered)
        least = least_rate(entropy(chances), max(chances))
        best: tuple[float, int] | None = None
        for test in open_:
            row = self.subset.unsound[test]
            p = self._not_sound(answered, test)
            inside = math.fsum(c * entropy((u, 1 - u)) for c, u in zip(chances, row, strict=True))
            gain = entropy((p, 1 - p)) - inside
            calls = [[c * u for c, u in zip(chances, row, strict=True)],
                     [c * (1 - u) for c, u in zip(chances, row, strict=True)]]  # fmt: skip
            surer = math.fsum(max(call) for call in calls) - max(chances)
            cost = self._minutes(state, test)
            if pays(gain, surer, cost, least) and (best is None or gain / cost > best[0]):
                best = (gain / cost, test)
        return None if best is None else best[1]


def _with(answered: Answered, test: int, answer: int) -> Answered:
    return (*answered[:test], answer, *answered[test + 1 :])
