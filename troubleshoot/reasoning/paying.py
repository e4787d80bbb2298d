"""When a test still pays: what it tells against its minutes and what a wrong repair costs.

A visit ends when no test pays any more. A test pays by its bits per minute, measured against how
much doubt is left, or because the wrong calls it alone would spare cost more than it does.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from troubleshoot.reasoning.ranking import Ranking

WRONG_REPAIR_MINUTES = 180.0
"""A wrong part fitted and a second visit, the way there included (common practice, no source)."""
VALUE_OF_RIGHT = 3 * WRONG_REPAIR_MINUTES


def entropy(row: Iterable[float]) -> float:
    """Shannon entropy in bits."""
    return -math.fsum(p * math.log2(p) for p in row if p > 0)


def doubt(ranking: Ranking) -> float:
    """Entropy of the whole ranking in bits."""
    chances = [r.probability for r in ranking.hypotheses]
    return entropy([*chances, ranking.nothing_wrong, ranking.outside])


def least_rate(doubt_bits: float, best: float) -> float:
    """The bits per minute below which a test does not pay, for what a wrong repair would cost.

    `best`: the chance that the best call would be right now.
    """
    return doubt_bits / (1.1 * VALUE_OF_RIGHT * max(1 - best, 1e-9))


def least_rate_on(ranking: Ranking) -> float:
    """The least rate as the causes stand."""
    return least_rate(
        doubt(ranking), max(ranking.best_cause, ranking.nothing_wrong, ranking.outside)
    )


def pays(gain: float, surer: float, cost: float, least: float) -> bool:
    """Whether a test pays, by its bits per minute or by the wrong calls it alone spares."""
    return gain / cost > least or VALUE_OF_RIGHT * surer > cost
