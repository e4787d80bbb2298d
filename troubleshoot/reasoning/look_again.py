"""Looking again: what repeating a test that has been read once is expected to tell.

The second report depends on the first only through the truth: P(r2 | h, r1) is the sum over true
outcomes k of P(k | h) M(r1 | k) M(r2 | k), divided by P(r1 | h).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from troubleshoot.reasoning.hypotheses import Hypotheses, pattern_row, report_column
from troubleshoot.reasoning.next_test import entropy
from troubleshoot.reasoning.ranking import Ranking
from troubleshoot.reasoning.readings import report_error
from troubleshoot.reasoning.rows import Row
from troubleshoot.reasoning.weighing import Seen, share_of


def second_report(row: Row, first: Row, error: float) -> Row:
    """The chance of each second report, given the first report's column over true outcomes."""
    truth = {k: p * first[k] for k, p in row.items()}
    total = math.fsum(truth.values())
    return {
        r: math.fsum(p * report_column(row, {r: 1.0}, error)[k] for k, p in truth.items()) / total
        for r in row
    }


def gain_of_repeating(hypotheses: Hypotheses, ranking: Ranking, seen: Seen) -> float:
    """Expected bits from reading the same test at the same place once more."""
    test = seen.reading.test
    error = report_error(hypotheses.knowledge.tests[test])
    usual = second_report(pattern_row(hypotheses.background(test)), seen.column, error)
    mixed = dict.fromkeys(usual, 0.0)
    inside, shared = 0.0, 1.0
    for ranked in ranking.hypotheses:
        hypothesis, chance = ranked.hypothesis, ranked.probability
        spoken = test in hypothesis.picture.cells and share_of(hypotheses, hypothesis, seen) > 0
        if not spoken:
            continue
        row = second_report(
            pattern_row(hypotheses.row(hypothesis.picture, test)), seen.column, error
        )
        shared -= chance
        inside += chance * entropy(row.values())
        for outcome, p in row.items():
            mixed[outcome] += chance * p
    for outcome, p in usual.items():
        mixed[outcome] += shared * p
    return max(0.0, entropy(mixed.values()) - inside - shared * entropy(usual.values()))


def worth_repeating(
    hypotheses: Hypotheses, ranking: Ranking, seen: Sequence[Seen], most: int = 3
) -> tuple[tuple[Seen, float], ...]:
    """The readings whose repeat tells most, the best first; ties by test and place."""
    gains = [(one, gain_of_repeating(hypotheses, ranking, one)) for one in seen]
    gains.sort(key=lambda pair: (-pair[1], pair[0].reading.test, str(pair[0].reading.at)))
    return tuple((one, gain) for one, gain in gains[:most] if gain > 0)
