"""How well the leading cause fits what was read, and what stays unexplained."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.choosing.stopping import entropy
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import Row, pattern_row, reported
from troubleshoot.reasoning.evidence.ranking import Cause, Ranking
from troubleshoot.reasoning.evidence.reading_evidence import (
    Seen,
    by_test,
    joined_readings,
    likelihood,
    report_columns,
    share_of,
)
from troubleshoot.reasoning.evidence.weighing import row_alone, rows_beside, single_weight
from troubleshoot.reasoning.readings.readings import Reading, report_error

SURPRISING = 2.0
"""Above this many standard deviations, the answers that fit worst are worth repeating."""
WORST_FITTING = 3


@frozen
class Misfit:
    """How surprising the readings are under the leading cause, and those that fit worst."""

    z: float
    worst: tuple[Reading, ...]


@frozen
class _Surprise:
    """By how many bits a reading surprised beyond what was expected, and the variance of that."""

    excess: float
    variance: float
    reading: Reading


def misfit(hypotheses: Hypotheses, ranking: Ranking, seen: Sequence[Seen]) -> Misfit:
    """Surprise z of the leader: (sum of -log2 P(report) - expected) / standard deviation.

    Readings that a card joins are taken one after the other, each given those before it.
    """
    if not seen or not ranking.hypotheses:
        return Misfit(0.0, ())
    leader = max(ranking.hypotheses, key=lambda r: r.probability).hypothesis
    found = sorted(
        _surprises(hypotheses, leader, ranking.present, seen),
        key=lambda s: (-s.excess, s.reading.test, str(s.reading.at)),
    )
    spread = math.sqrt(math.fsum(s.variance for s in found)) or 1.0
    z = math.fsum(s.excess for s in found) / spread
    return Misfit(z, tuple(s.reading for s in found[:WORST_FITTING] if s.excess > 0))


def _surprises(
    hypotheses: Hypotheses,
    leader: Hypothesis,
    present: tuple[Hypothesis, ...],
    seen: Sequence[Seen],
) -> Iterator[_Surprise]:
    tests = by_test(seen)
    together: set[int] = set()
    for group in leader.picture.groups:
        joined, _ = joined_readings(hypotheses, leader, group, tests, present)
        past: dict[str, Row] = {}
        for test, one in joined.items():
            together.add(id(one))
            yield _surprise(hypotheses, group.row_given(test, past), one)
            past[test] = one.column
    for one in seen:
        if id(one) not in together:
            yield _surprise(hypotheses, _row(hypotheses, leader, present, one), one)


def _row(
    hypotheses: Hypotheses, leader: Hypothesis, present: tuple[Hypothesis, ...], one: Seen
) -> Row:
    """What a reading shows under the leader, beside the faults already there."""
    share = share_of(hypotheses, leader, one)
    alone = row_alone(hypotheses, leader, one.reading.test)
    own, before = (pattern_row(r) for r in rows_beside(hypotheses, alone, one, present))
    return {o: share * own[o] + (1 - share) * p for o, p in before.items()}


def _surprise(hypotheses: Hypotheses, row: Row, one: Seen) -> _Surprise:
    """How surprising a reading is under a row; repeats are each judged given those before."""
    error = report_error(hypotheses.knowledge.tests[one.reading.test])
    excess, variance = 0.0, 0.0
    for column in report_columns(hypotheses, one.reading):
        chances = [p for p in reported(row, error).values() if p > 0]
        expected = entropy(chances)
        variance += math.fsum(p * math.log2(p) ** 2 for p in chances) - expected**2
        chance = likelihood(row, column)
        excess += -math.log2(chance) - expected
        row = {o: p * column[o] / chance for o, p in row.items()}
    return _Surprise(excess, variance, one.reading)


def unexplained(
    hypotheses: Hypotheses,
    seen: Sequence[Seen],
    accepted: Iterable[Cause],
    effects: Iterable[Cause],
    present: Iterable[Hypothesis] = (),
) -> tuple[Reading, ...]:
    """Abnormal readings that no accepted cause, effect or repaired fault makes likelier."""
    known = {(c.fault.id, c.at) for c in (*accepted, *effects)}
    everything = (*hypotheses.causes, *hypotheses.effects)
    explaining = [h for h in everything if (h.fault.id, h.at) in known]
    return tuple(
        one.reading
        for one in seen
        if is_abnormal(hypotheses, one.reading)
        and not any(_explains(hypotheses, h, one) for h in explaining)
        and (one.reading.after_repair or not any(_explains(hypotheses, h, one) for h in present))
    )


def is_abnormal(hypotheses: Hypotheses, reading: Reading) -> bool:
    """Whether a reading shows something a sound unit would not: a step tells of no unit."""
    test = hypotheses.knowledge.tests[reading.test]
    return test.kind != "step" and any(o not in test.healthy for o in reading.seen if test.healthy)


def _explains(hypotheses: Hypotheses, hypothesis: Hypothesis, one: Seen) -> bool:
    return single_weight(hypotheses, hypothesis, one, ()).weight > 0
