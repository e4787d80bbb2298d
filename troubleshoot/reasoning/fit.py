"""How well the leading cause fits what was read, and what stays unexplained."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from troubleshoot.reasoning.hypotheses import Hypotheses, Hypothesis, pattern_row
from troubleshoot.reasoning.ranking import Cause, Ranking
from troubleshoot.reasoning.readings import Reading
from troubleshoot.reasoning.weighing import Seen, share_of, single_weight

SURPRISING = 2.0
"""Above this many standard deviations, the answers that fit worst are worth repeating."""
WORST_FITTING = 3


@dataclass(frozen=True, slots=True)
class Misfit:
    """How surprising the readings are under the leading cause, and those that fit worst."""

    z: float
    worst: tuple[Reading, ...]


def misfit(hypotheses: Hypotheses, ranking: Ranking, seen: Sequence[Seen]) -> Misfit:
    """Surprise z of the leader: (sum of -log2 P(report) - expected) / standard deviation."""
    if not seen or not ranking.hypotheses:
        return Misfit(0.0, ())
    leader = max(ranking.hypotheses, key=lambda r: r.probability).hypothesis
    excess, variance = [], []
    for one in seen:
        row = hypotheses.background(one.reading.test)
        if share_of(hypotheses, leader, one) > 0:
            row = hypotheses.row(leader.picture, one.reading.test)
        chances = [p for p in pattern_row(row).values() if p > 0]
        expected = -math.fsum(p * math.log2(p) for p in chances)
        spread = math.fsum(p * math.log2(p) ** 2 for p in chances) - expected**2
        own = math.fsum(p * one.column[o] for o, p in pattern_row(row).items())
        excess.append((-math.log2(own) - expected, one.reading))
        variance.append(spread)
    total = math.sqrt(math.fsum(variance)) or 1.0
    worst = sorted(excess, key=lambda pair: (-pair[0], pair[1].test, str(pair[1].at)))
    z = math.fsum(sorted(x for x, _ in excess)) / total
    return Misfit(z, tuple(r for x, r in worst[:WORST_FITTING] if x > 0))


def unexplained(
    hypotheses: Hypotheses,
    seen: Sequence[Seen],
    accepted: Iterable[Cause],
    effects: Iterable[Cause],
) -> tuple[Reading, ...]:
    """Abnormal readings that no accepted cause and no effect of it makes likelier."""
    known = {(c.fault.id, c.at) for c in (*accepted, *effects)}
    explaining = [
        h for h in (*hypotheses.causes, *hypotheses.effects) if (h.fault.id, h.at) in known
    ]
    return tuple(
        one.reading
        for one in seen
        if is_abnormal(hypotheses, one.reading)
        and not any(_explains(hypotheses, h, one) for h in explaining)
    )


def is_abnormal(hypotheses: Hypotheses, reading: Reading) -> bool:
    """Whether a reading shows something a sound unit would not."""
    test = hypotheses.knowledge.tests[reading.test]
    return bool(test.healthy) and any(o not in test.healthy for o in reading.seen)


def _explains(hypotheses: Hypotheses, hypothesis: Hypothesis, one: Seen) -> bool:
    group = hypothesis.picture.grouped(one.reading.test)
    if group is not None and share_of(hypotheses, hypothesis, one) > 0:
        alone = group.likelihood({one.reading.test: one.column})
        return alone > one.usual
    if one.reading.test not in hypothesis.picture.cells:
        return False
    return single_weight(hypotheses, hypothesis, one, ()).weight > 0
