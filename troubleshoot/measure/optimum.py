"""A way of choosing tests against the true optimum, on subsets small enough to solve exactly.

The optimum is found by dynamic programming over what has been answered and the work state; a policy
is followed through the same tree. Cost: minutes with changes of state, and what a wrong call costs.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from functools import cache
from statistics import fmean

from troubleshoot.frozen import frozen
from troubleshoot.measure.policies import Look, Policy
from troubleshoot.measure.subset import Subset
from troubleshoot.reasoning.choosing.stopping import VALUE_OF_RIGHT, entropy, least_rate

Answered = tuple[int, ...]
"""By test: -1 not asked, 0 sound, 1 not sound."""
NOTHING_TO_SAVE = 1e-9


@frozen
class Costs:
    """Expected minutes, a wrong call's among them: of a policy, and of the two it lies between.

    `optimum`: no policy is cheaper. `free`: the likeliest fault is called without any test (none is
    free: its question alone takes a minute).
    """

    policy: float
    optimum: float
    free: float

    @property
    def lost(self) -> float | None:
        """The share lost of the saving that tests can bring: (policy - optimum) / (free - optimum).

        0 of the optimum, 1 of the free stop, more where testing costs more than it spares. None
        where no test brings any saving.
        """
        saving = self.free - self.optimum
        return (self.policy - self.optimum) / saving if saving > NOTHING_TO_SAVE else None

    @property
    def ratio(self) -> float:
        """Over the optimum. It flatters: what no policy can spare stands above and below."""
        return self.policy / self.optimum


def costs_of(subset: Subset, policies: Sequence[Policy]) -> tuple[Costs, ...]:
    """What each policy comes to on a subset."""
    start = (-1,) * len(subset.minutes)
    optimum = _Solver(subset).cost(start, "any")
    free = VALUE_OF_RIGHT * (1 - max(subset.priors))
    return tuple(Costs(_Solver(subset, p).cost(start, "any"), optimum, free) for p in policies)


def together(costs: Sequence[Costs]) -> Costs:
    """The mean of many: in what it has lost each subset counts by what there is to save on it."""
    return Costs(
        fmean(c.policy for c in costs),
        fmean(c.optimum for c in costs),
        fmean(c.free for c in costs),
    )


class _Solver:
    """Expected cost from a state of knowledge: the best of all choices, or that of a policy."""

    def __init__(self, subset: Subset, policy: Policy | None = None) -> None:
        self.subset = subset
        self.policy = policy
        self.cost = cache(self._cost)
        self.chances = cache(self._chances)
        tests = range(len(subset.minutes))
        at_start = {i: self._look((-1,) * len(tests), "any", i, i) for i in tests}
        self.listed = sorted(tests, key=lambda i: -at_start[i].rate)

    def _chances(self, answered: Answered) -> tuple[float, ...]:
        joint = list(self.subset.priors)
        for row, answer in zip(self.subset.unsound, answered, strict=True):
            if answer >= 0:
                joint = [p * (u if answer else 1 - u) for p, u in zip(joint, row, strict=True)]
        total = math.fsum(joint)
        return tuple(p / total for p in joint)

    def _cost(self, answered: Answered, state: str) -> float:
        stop = VALUE_OF_RIGHT * (1 - max(self.chances(answered)))
        if self.policy is not None:
            chosen = self._chosen(self.policy, answered, state)
            return stop if chosen is None else self._after(answered, state, chosen)
        return min([stop, *(self._after(answered, state, i) for i in _left(answered))])

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

    def _chosen(self, policy: Policy, answered: Answered, state: str) -> int | None:
        """The test that a policy goes on with."""
        chances = self.chances(answered)
        least = least_rate(entropy(chances), max(chances))
        left = (self._look(answered, state, i, self.listed.index(i)) for i in _left(answered))
        worth = [look for look in left if policy.worth(look, least)]
        return max(worth, key=policy.merit).test if worth else None

    def _look(self, answered: Answered, state: str, test: int, number: int) -> Look:
        """What a test would tell now, and what it would take."""
        chances, row = self.chances(answered), self.subset.unsound[test]
        p = self._not_sound(answered, test)
        inside = math.fsum(c * entropy((u, 1 - u)) for c, u in zip(chances, row, strict=True))
        gain = entropy((p, 1 - p)) - inside
        calls = [[c * u for c, u in zip(chances, row, strict=True)],
                 [c * (1 - u) for c, u in zip(chances, row, strict=True)]]  # fmt: skip
        surer = math.fsum(max(call) for call in calls) - max(chances)
        return Look(test, gain, surer, self._minutes(state, test), number)


def _left(answered: Answered) -> Iterator[int]:
    """The tests that have not been done."""
    return (test for test, answer in enumerate(answered) if answer < 0)


def _with(answered: Answered, test: int, answer: int) -> Answered:
    return (*answered[:test], answer, *answered[test + 1 :])
