"""Looking again: what repeating a test that has been read once is expected to tell.

The second report depends on the first only through the truth: P(r2 | h, r1) is the sum over true
outcomes k of P(k | h) M(r1 | k) M(r2 | k), divided by P(r1 | h).
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from troubleshoot.reasoning.choosing.next_test import Candidate, SwitchMinutes, in_order
from troubleshoot.reasoning.choosing.stopping import entropy, least_rate_on
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import Row, pattern_row, report_column
from troubleshoot.reasoning.evidence.ranking import Ranking
from troubleshoot.reasoning.evidence.reading_evidence import (
    Seen,
    SeenByTest,
    by_test,
    members_at,
    share_of,
)
from troubleshoot.reasoning.evidence.weighing import outside_row, row_alone
from troubleshoot.reasoning.readings.readings import report_error


def second_report(row: Row, first: Row, error: float) -> Row:
    """The chance of each second report, given the first report's column over true outcomes."""
    truth = {k: p * first[k] for k, p in row.items()}
    total = math.fsum(truth.values())
    return {
        r: math.fsum(p * report_column(row, {r: 1.0}, error)[k] for k, p in truth.items()) / total
        for r in row
    }


def gain_of_repeating(
    hypotheses: Hypotheses, ranking: Ranking, seen: Seen, others: Sequence[Seen] = ()
) -> float:
    """Expected bits from reading the same test at the same place once more.

    `others`: what else has been read, for cards that join this test with it. A reading from before
    a repair tells nothing any more when repeated: the unit is another now.
    """
    if ranking.present and not seen.reading.after_repair:
        return 0.0
    test = seen.reading.test
    error = report_error(hypotheses.knowledge.tests[test])
    tests = by_test(others)
    usual = hypotheses.usual(test)
    rows = [(ranking.outside, outside_row(hypotheses, test))]
    shared = 1.0 - ranking.outside
    for ranked in ranking.hypotheses:
        share = share_of(hypotheses, ranked.hypothesis, seen)
        if share > 0 and _mentions(ranked.hypothesis, test):
            own = _row(hypotheses, ranked.hypothesis, seen, tests)
            row = {k: share * own[k] + (1 - share) * p for k, p in usual.items()}
            rows.append((ranked.probability, row))
            shared -= ranked.probability
    rows.append((shared, usual))
    seconds = [(chance, second_report(row, seen.column, error)) for chance, row in rows]
    mixed = [math.fsum(chance * row[o] for chance, row in seconds) for o in usual]
    inside = math.fsum(chance * entropy(row.values()) for chance, row in seconds)
    return max(0.0, entropy(mixed) - inside)


def _mentions(hypothesis: Hypothesis, test: str) -> bool:
    picture = hypothesis.picture
    return test in picture.cells or picture.grouped(test) is not None


def _row(hypotheses: Hypotheses, hypothesis: Hypothesis, seen: Seen, tests: SeenByTest) -> Row:
    test = seen.reading.test
    group = hypothesis.picture.grouped(test)
    if group is None:
        return pattern_row(row_alone(hypotheses, hypothesis, test))
    others = members_at(hypotheses, hypothesis, group, test, seen.reading.at, tests)
    return group.row_given(test, others)


def worth_repeating(
    hypotheses: Hypotheses, ranking: Ranking, seen: Sequence[Seen], switch: SwitchMinutes
) -> tuple[Candidate, ...]:
    """The readings that pay to be taken once more, the best rate first.

    Each is repeated once at most. What was computed is known anew when its inputs are; of a test
    with several outcomes at once a second report is not weighed with the first.
    """
    least = least_rate_on(ranking)
    found = []
    for one in seen:
        reading = one.reading
        test = hypotheses.knowledge.tests[reading.test]
        if reading.before or reading.computed or reading.among or test.kind in ("step", "input"):
            continue
        if test.choose == "several":
            continue
        gain = gain_of_repeating(hypotheses, ranking, one, seen)
        again = Candidate(
            test, reading.at, gain, 0.0, test.minutes, switch(test, reading.at), (test.id,)
        )
        if gain > 0 and again.pays(least):
            found.append(again)
    return tuple(sorted(found, key=in_order))
