"""Weighing: what each finding says about each hypothesis, in nats, against the background.

log P(seen | hypothesis) - log P(seen | background) (Good 1985, weight of evidence). A finding that
a card does not mention weighs exactly 0.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from troubleshoot.knowledge.model import Complaint
from troubleshoot.reasoning.grades import PROBABILITY
from troubleshoot.reasoning.groups import Group
from troubleshoot.reasoning.hypotheses import Hypotheses, Hypothesis, pattern_row, report_column
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.readings import ERROR_OF_QUESTION, Reading, report_error
from troubleshoot.reasoning.rows import NONE_OF_THEM, Row, Signs
from troubleshoot.reasoning.several import combined, combined_signs

COMPLAINT = "complaint"
COMPLAINT_BACKGROUND = PROBABILITY["seldom"]
UNIFORM_SHARE_OUTSIDE = 0.25
"""How far the row of "something outside the rules" leans from the background to even."""


@dataclass(frozen=True, slots=True)
class Weight:
    """What one finding, or one group of findings, says about one hypothesis, in nats."""

    tests: tuple[tuple[str, Place | None], ...]
    weight: float


@dataclass(frozen=True, slots=True)
class Seen:
    """A reading as evidence: the chance of the report for each true outcome (a column).

    `usual` is the chance of the report under the background. `void_for` names the faults about
    which the reading says nothing.
    """

    reading: Reading
    column: Row
    usual: float
    void_for: frozenset[str] = frozenset()


SeenByTest = Mapping[str, Sequence[Seen]]


def as_seen(hypotheses: Hypotheses, reading: Reading, void_for: frozenset[str]) -> Seen:
    """A reading with the chance of its report for each true outcome."""
    error = report_error(hypotheses.knowledge.tests[reading.test])
    made = hypotheses.background(reading.test)
    chances = reading.chances
    if isinstance(made, Signs):
        signs = [s for s in reading.seen if s in made.signs]
        chances = dict.fromkeys(signs or [NONE_OF_THEM], 1.0)
    row = pattern_row(made)
    column = report_column(row, chances, error)
    for earlier in reading.before:
        again = report_column(row, earlier, error)
        column = {outcome: chance * again[outcome] for outcome, chance in column.items()}
    return Seen(reading, column, _likelihood(row, column), void_for)


def by_test(seen: Sequence[Seen]) -> SeenByTest:
    """Readings by their test, in the order taken."""
    found: dict[str, list[Seen]] = {}
    for one in seen:
        found.setdefault(one.reading.test, []).append(one)
    return found


def weights_of(
    hypotheses: Hypotheses,
    hypothesis: Hypothesis,
    tests: SeenByTest,
    complaint: Complaint | None,
    present: tuple[Hypothesis, ...] = (),
) -> tuple[Weight, ...]:
    """What each finding says about one hypothesis; findings that say nothing are left out.

    With faults known to be `present` as well, a reading is weighed as what this fault adds.
    """
    picture = hypothesis.picture
    found: list[Weight] = []
    for test in picture.cells:
        if test not in tests or (picture.grouped(test) is not None and not present):
            continue
        for one in tests[test]:
            found.append(single_weight(hypotheses, hypothesis, one, present))
    for group in picture.groups if not present else ():
        members = {t: tests[t] for t in group.tests if t in tests}
        if members:
            found.extend(_group_weights(hypotheses, hypothesis, group, members))
    if complaint is not None:
        found.append(Weight(((COMPLAINT, None),), complaint_weight(complaint, picture.fault.id)))
    spoken = [w for w in found if w.weight]
    return tuple(sorted(spoken, key=lambda w: (-abs(w.weight), str(w.tests))))


def share_of(hypotheses: Hypotheses, hypothesis: Hypothesis, one: Seen) -> float:
    """How much of a reading is about this hypothesis: 1, 0, or a share where the place is open."""
    reading = one.reading
    if hypothesis.fault.id in one.void_for:
        return 0.0
    layout = hypotheses.unit.layout
    if reading.among:
        about = sum(layout.speaks_about(p, hypothesis.at) for p in reading.among)
        return about / len(reading.among)
    return float(layout.speaks_about(reading.at, hypothesis.at))


def single_weight(
    hypotheses: Hypotheses, hypothesis: Hypothesis, one: Seen, present: tuple[Hypothesis, ...]
) -> Weight:
    """log P(seen | hypothesis) - log P(seen | without it), for a share of the places."""
    test = one.reading.test
    at = ((test, one.reading.at),)
    share = share_of(hypotheses, hypothesis, one)
    if share <= 0:
        return Weight(at, 0.0)
    own = hypotheses.row(hypothesis.picture, test)
    before = hypotheses.background(test)
    healthy = hypotheses.knowledge.tests[test].healthy
    for other in () if one.reading.after_repair else present:
        if test in other.picture.cells and share_of(hypotheses, other, one) > 0:
            there = hypotheses.row(other.picture, test)
            if isinstance(own, Signs) and isinstance(there, Signs) and isinstance(before, Signs):
                own, before = combined_signs(own, there, before), there
            else:
                row = combined(pattern_row(own), pattern_row(there), pattern_row(before), healthy)
                own, before = row, there
    if isinstance(own, Signs) and isinstance(before, Signs):
        ratio = _signs_ratio(hypotheses, own, before, one.reading)
    else:
        ratio = _likelihood(pattern_row(own), one.column) / _likelihood(
            pattern_row(before), one.column
        )
    return Weight(at, math.log(share * ratio + 1 - share))


def _signs_ratio(hypotheses: Hypotheses, own: Signs, before: Signs, reading: Reading) -> float:
    """How much likelier this set of signs is; it may be misreported."""
    error = report_error(hypotheses.knowledge.tests[reading.test])
    signs = frozenset(s for s in reading.seen if s in before.signs)
    usual = before.chance(signs)
    return (own.chance(signs) * (1 - error) + error * usual) / usual


def _likelihood(row: Row, column: Row) -> float:
    return math.fsum(p * column[o] for o, p in row.items())


def _group_weights(
    hypotheses: Hypotheses, hypothesis: Hypothesis, group: Group, members: SeenByTest
) -> Iterator[Weight]:
    """One weight for the whole group; further readings of a member (other places) count singly."""
    first: dict[str, Seen] = {}
    for test, readings in members.items():
        for one in readings:
            if share_of(hypotheses, hypothesis, one) <= 0:
                continue
            if test in first:
                yield single_weight(hypotheses, hypothesis, one, ())
            else:
                first[test] = one
    if first:
        likelihood = group.likelihood({test: one.column for test, one in first.items()})
        usual = math.prod(one.usual for one in first.values())
        share = min(share_of(hypotheses, hypothesis, one) for one in first.values())
        places = tuple((test, one.reading.at) for test, one in first.items())
        yield Weight(places, math.log(share * likelihood / usual + 1 - share))


def complaint_weight(complaint: Complaint, fault: str) -> float:
    """The complaint as a finding: a start, never a filter."""
    if fault in complaint.impossible_for:
        chance = PROBABILITY["never"]
    elif fault in complaint.faults:
        first = complaint.faults[0] == fault
        chance = PROBABILITY["almost-always" if first else "often"]
    else:
        return 0.0
    blurred = [
        (1 - ERROR_OF_QUESTION) * p + ERROR_OF_QUESTION * (1 - p)
        for p in (chance, COMPLAINT_BACKGROUND)
    ]
    return math.log(blurred[0] / blurred[1])


def outside_weights(hypotheses: Hypotheses, seen: Sequence[Seen]) -> tuple[Weight, ...]:
    """Something outside the rules: three parts background, one part even."""
    found = []
    for one in seen:
        row = pattern_row(hypotheses.background(one.reading.test))
        even = 1 / len(row)
        mixed = {
            o: (1 - UNIFORM_SHARE_OUTSIDE) * p + UNIFORM_SHARE_OUTSIDE * even
            for o, p in row.items()
        }
        ratio = _likelihood(mixed, one.column) / _likelihood(row, one.column)
        found.append(Weight(((one.reading.test, one.reading.at),), math.log(ratio)))
    return tuple(found)
