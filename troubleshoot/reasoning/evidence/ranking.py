"""Ranking: from readings to the chance of each cause, with the weight of every finding kept.

S(h) = log prior + the sum of the weights of evidence, then softmax. Sums are order-free (sorted,
fsum): the same answers give the same bits. Literature: Good 1985; Pattipati and Alexandridis 1990.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from types import MappingProxyType

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint, Fault
from troubleshoot.knowledge.vocabulary import PROBABILITY
from troubleshoot.reasoning.evidence.causes_behind import alone, priors
from troubleshoot.reasoning.evidence.grades import (
    PRIOR_NOTHING_WRONG_IN_SEARCH,
    PRIOR_NOTHING_WRONG_ON_COMPLAINT,
    PRIOR_NOTHING_WRONG_ON_ROUND,
    PRIOR_OUTSIDE,
)
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.reading_evidence import Seen, SeenByTest, by_test, share_of
from troubleshoot.reasoning.evidence.weighing import (
    THE_COMPLAINT,
    Weight,
    outside_weights,
    weights_of,
)
from troubleshoot.reasoning.unit.places import Place

PARTS_OF_PRIOR = 100.0
"""How common an effect is, as a chance: the weight of its word in a hundred (no source)."""


@frozen
class Ranked:
    """One hypothesis with its chance, and the findings for and against."""

    hypothesis: Hypothesis
    probability: float
    weights: tuple[Weight, ...]


@frozen
class Cause:
    """A fault at a place, its pictures summed: what people are shown."""

    fault: Fault
    at: Place | None
    probability: float
    weights: tuple[Weight, ...]


@frozen
class Ranking:
    """The chance of each cause, of nothing wrong, and of something outside the rules.

    `present`: the repaired faults, each where it best fits the answers from before the repair.
    """

    hypotheses: tuple[Ranked, ...]
    nothing_wrong: float
    outside: float
    present: tuple[Hypothesis, ...] = ()

    @property
    def best_cause(self) -> float:
        """The chance of the likeliest cause."""
        groups = self._by_cause()
        return max((math.fsum(r.probability for r in g) for g in groups), default=0.0)

    def causes(self) -> tuple[Cause, ...]:
        """Causes by chance, pictures summed; ties by id and place."""
        found = []
        for members in self._by_cause():
            best = max(members, key=lambda r: r.probability)
            total = math.fsum(r.probability for r in members)
            found.append(Cause(best.hypothesis.fault, best.hypothesis.at, total, best.weights))
        return tuple(sorted(found, key=lambda c: (-c.probability, c.fault.id, str(c.at))))

    def _by_cause(self) -> Iterable[list[Ranked]]:
        groups: dict[tuple[str, Place | None], list[Ranked]] = {}
        for ranked in self.hypotheses:
            key = (ranked.hypothesis.fault.id, ranked.hypothesis.at)
            groups.setdefault(key, []).append(ranked)
        return groups.values()


def rank(
    hypotheses: Hypotheses,
    seen: Sequence[Seen],
    complaint: Complaint | None = None,
    repaired: Iterable[str] = (),
    routine: bool = False,
    told_repaired: Iterable[str] = (),
    among: Sequence[Hypothesis] | None = None,
    cleared: Mapping[str, Weight] = MappingProxyType({}),
) -> Ranking:
    """The ranking of all causes on these readings.

    `cleared`: by fault, what a rule that holds says against it.
    `among`: the causes that a search for what a round has found is among; None where none is on.
    `told_repaired`: put right before, as somebody tells: what lies behind is likelier, as after a
    repair in vain, and the cause itself stays.
    """
    tests = by_test(seen)
    mended = frozenset(repaired)
    running = hypotheses.causes if among is None else among
    live = [h for h in running if h.fault.id not in mended]
    present = tuple(_present(hypotheses, tests, mended))
    outside, nothing = _special_priors(routine, in_search=among is not None)
    told = frozenset(told_repaired)
    in_vain = (*present, *(h for h in hypotheses.causes if h.fault.id in told))

    def against(h: Hypothesis) -> tuple[Weight, ...]:
        return (cleared[h.fault.id],) if h.fault.id in cleared else ()

    kept = [
        (h, prior, _weightiest(weights_of(hypotheses, h, tests, complaint, present), against(h)))
        for h, prior in priors(live, in_vain)
    ]
    called = math.fsum(prior * math.exp(_called(weights)) for _, prior, weights in kept) or 1.0
    scale = (1 - outside - nothing) / called
    logs = [_sum([math.log(prior * scale)], weights) for _, prior, weights in kept]
    logs.append(math.log(nothing))
    logs.append(_sum([math.log(outside)], outside_weights(hypotheses, seen, present)))
    chances = _softmax(logs)
    ranked = tuple(Ranked(h, p, weights) for (h, _, weights), p in zip(kept, chances, strict=False))
    return Ranking(ranked, chances[-2], chances[-1], present)


def _weightiest(weights: tuple[Weight, ...], more: tuple[Weight, ...]) -> tuple[Weight, ...]:
    """What weighs on one cause, in its order, as `weights` are already."""
    if not more:
        return weights
    return tuple(sorted((*weights, *more), key=lambda w: (-abs(w.weight), str(w.tests))))


def _called(weights: Iterable[Weight]) -> float:
    """What the complaint says of a cause; it leaves nothing-wrong and outside as they were.

    Their priors say how often a call comes to that, whatever the call.
    """
    return next((each.weight for each in weights if each.tests == THE_COMPLAINT), 0.0)


def _present(
    hypotheses: Hypotheses, tests: SeenByTest, mended: Iterable[str]
) -> Iterator[Hypothesis]:
    """The place and picture in which each repaired fault best fits what was seen."""
    for fault in sorted(mended):
        choices = [h for h in (*hypotheses.causes, *hypotheses.effects) if h.fault.id == fault]
        if choices:
            best = max(
                choices,
                key=lambda h: math.fsum(w.weight for w in weights_of(hypotheses, h, tests, None)),
            )
            yield alone(hypotheses, best)


def rank_effects(hypotheses: Hypotheses, seen: Sequence[Seen]) -> tuple[Cause, ...]:
    """What happened (effects), each judged on its own against nothing having happened.

    None that a reading contradicts: what its card says is never so did not happen.
    """
    tests = by_test(seen)
    groups: dict[tuple[str, Place | None], list[tuple[float, Hypothesis, tuple[Weight, ...]]]] = {}
    for hypothesis in hypotheses.effects:
        if _contradicted(hypotheses, hypothesis, tests):
            continue
        weights = weights_of(hypotheses, hypothesis, tests, None)
        logs = _sum([math.log(hypothesis.prior / PARTS_OF_PRIOR)], weights)
        key = (hypothesis.fault.id, hypothesis.at)
        groups.setdefault(key, []).append((logs, hypothesis, weights))
    found = []
    for members in groups.values():
        silent = 1 - math.fsum(h.prior for _, h, _ in members) / PARTS_OF_PRIOR
        *_, without = _softmax([*(logs for logs, _, _ in members), math.log(silent)])
        _, best, weights = max(members, key=lambda member: member[0])
        found.append(Cause(best.fault, best.at, 1 - without, weights))
    return tuple(sorted(found, key=lambda c: (-c.probability, c.fault.id, str(c.at))))


def _contradicted(hypotheses: Hypotheses, hypothesis: Hypothesis, tests: SeenByTest) -> bool:
    """Whether something was seen at its place that its card says is never so."""
    return any(
        chance <= PROBABILITY["never"]
        and named.issuperset(one.reading.seen)
        and share_of(hypotheses, hypothesis, one) == 1
        for test, cells in hypothesis.picture.cells.items()
        for named, chance in cells
        for one in tests.get(test, ())
    )


def _special_priors(routine: bool, in_search: bool) -> tuple[float, float]:
    if in_search:
        return PRIOR_OUTSIDE, PRIOR_NOTHING_WRONG_IN_SEARCH
    nothing = PRIOR_NOTHING_WRONG_ON_ROUND if routine else PRIOR_NOTHING_WRONG_ON_COMPLAINT
    return PRIOR_OUTSIDE, nothing


def _sum(first: list[float], weights: Iterable[Weight]) -> float:
    return math.fsum(sorted([*first, *(w.weight for w in weights)]))


def _softmax(logs: Sequence[float]) -> list[float]:
    top = max(logs)
    parts = [math.exp(x - top) for x in logs]
    total = math.fsum(sorted(parts))
    return [part / total for part in parts]
