"""When a test still pays: what it tells against its minutes and what a wrong repair costs.

A visit ends when no test pays any more. A test pays by its bits per minute, measured against how
much doubt is left, or because the wrong calls it alone would spare cost more than it does.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from troubleshoot.reasoning.evidence.ranking import Ranking

WRONG_REPAIR_MINUTES = 180.0
"""A wrong part fitted and a second visit, the way there included (common practice, no source)."""
VALUE_OF_RIGHT = 3 * WRONG_REPAIR_MINUTES
"""What a right first call is worth in minutes: on the curve of minutes against wrong calls (in
DEVELOPERS.md) no value has a tenth of them wrong at 95 minutes, and this one keeps within those."""


def entropy(row: Iterable[float]) -> float:
    """Shannon entropy in bits."""
    return -math.fsum(p * math.log2(p) for p in row if p > 0)


def least_rate(doubt_bits: float, best: float) -> float:
    """The bits per minute below which a test does not pay, for what a wrong repair would cost.

    `best`: the chance that the best call would be right now.
    """
    return doubt_bits / (1.1 * VALUE_OF_RIGHT * max(1 - best, 1e-12))


def least_rate_on(ranking: Ranking) -> float:
    """The least rate as the causes stand: the doubt is which of them it is.

    Nothing wrong and something outside the rules are left out: a visit is paid by the cause that it
    finds, and with them it goes on looking longer and calls no more causes right. Where there is
    one cause alone, or none, the doubt is whether it is there.
    """
    chances = [r.probability for r in ranking.hypotheses]
    best = ranking.best_cause
    if len(chances) < 2:
        chances += [ranking.nothing_wrong, ranking.outside]
        best = max(chances)
    total = math.fsum(chances)
    return least_rate(entropy(p / total for p in chances), best / total)


def pays(gain: float, surer: float, cost: float, least: float) -> bool:
    """Whether a test pays, by its bits per minute or by the wrong calls it alone spares."""
    return gain / cost > least or VALUE_OF_RIGHT * surer > cost
