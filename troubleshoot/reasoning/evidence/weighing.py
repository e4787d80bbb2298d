"""Weighing: what each finding says about each hypothesis, in nats, against the background.

log P(seen | hypothesis) - log P(seen | background) (Good 1985, weight of evidence). A finding that
a card does not mention weighs exactly 0.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint
from troubleshoot.knowledge.vocabulary import PROBABILITY
from troubleshoot.reasoning.evidence.groups import Group
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import DEFINING, Row, Signs, pattern_row
from troubleshoot.reasoning.evidence.reading_evidence import (
    Seen,
    SeenByTest,
    joined_readings,
    left_open,
    likelihood,
    share_of,
    there_as_well,
)
from troubleshoot.reasoning.evidence.two_faults import together
from troubleshoot.reasoning.readings.readings import Reading, report_error
from troubleshoot.reasoning.unit.places import Place

COMPLAINT = "complaint"
THE_COMPLAINT = ((COMPLAINT, None),)
"""What the weight of the complaint says its tests are."""
SHOWN_AT_ONCE = math.log(100)
"""A finding that is a hundred times likelier with a fault than without shows it by itself (common
practice, no source)."""
UNIFORM_SHARE_OUTSIDE = 0.25
"""How far the row of "something outside the rules" leans from the background to even."""


@frozen
class Weight:
    """What one finding, or one group of findings, says about one hypothesis, in nats."""

    tests: tuple[tuple[str, Place | None], ...]
    weight: float


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
        if test in tests and picture.grouped(test) is None:
            for one in tests[test]:
                found.append(single_weight(hypotheses, hypothesis, one, present))
    for group in picture.groups:
        joined, apart = joined_readings(hypotheses, hypothesis, group, tests, present)
        found.extend(single_weight(hypotheses, hypothesis, one, present) for one in apart)
        if joined:
            found.append(_group_weight(hypotheses, hypothesis, group, joined))
    if complaint is not None:
        shown = any(w.weight > SHOWN_AT_ONCE for w in found)
        found.append(Weight(THE_COMPLAINT, complaint_weight(complaint, picture.fault.id, shown)))
    spoken = [w for w in found if w.weight]
    if len(spoken) < 2:
        return tuple(spoken)
    return tuple(sorted(spoken, key=lambda w: (-abs(w.weight), str(w.tests))))


def row_alone(hypotheses: Hypotheses, hypothesis: Hypothesis, test: str) -> Row | Signs:
    """The row of a test under a hypothesis, nothing else being known."""
    group = hypothesis.picture.grouped(test)
    return hypotheses.row(hypothesis.picture, test) if group is None else group.row_given(test, {})


def rows_beside(
    hypotheses: Hypotheses, own: Row | Signs, one: Seen, present: Iterable[Hypothesis]
) -> tuple[Row | Signs, Row | Signs]:
    """A row and the background, both as they are with the faults already there."""
    test = one.reading.test
    usual = hypotheses.background(test)
    healthy = hypotheses.knowledge.tests[test].healthy
    before = usual
    for other in there_as_well(hypotheses, one, present):
        there = row_alone(hypotheses, other, test)
        own = together(own, there, usual, healthy)
        before = together(before, there, usual, healthy)
    return own, before


def single_weight(
    hypotheses: Hypotheses, hypothesis: Hypothesis, one: Seen, present: tuple[Hypothesis, ...]
) -> Weight:
    """log P(seen | hypothesis) - log P(seen | without it), for a share of the places."""
    test = one.reading.test
    at = ((test, one.reading.at),)
    share = share_of(hypotheses, hypothesis, one)
    if share <= 0:
        return Weight(at, 0.0)
    own, before = rows_beside(hypotheses, row_alone(hypotheses, hypothesis, test), one, present)
    if isinstance(own, Signs) and isinstance(before, Signs):
        ratio = _signs_ratio(hypotheses, own, before, one.reading)
    elif not present:
        ratio = likelihood(pattern_row(own), one.column) / one.usual
    else:
        ratio = likelihood(pattern_row(own), one.column) / likelihood(
            pattern_row(before), one.column
        )
    return Weight(at, math.log(share * ratio + 1 - share))


def _signs_ratio(hypotheses: Hypotheses, own: Signs, before: Signs, reading: Reading) -> float:
    """How much likelier this set of signs is; it may be misreported."""
    error = report_error(hypotheses.knowledge.tests[reading.test])
    signs = frozenset(s for s in reading.seen if s in before.signs)
    unknown = (left_open(hypotheses, reading) & before.signs.keys()) - signs
    usual = before.chance_within(signs, signs | unknown)
    return (own.chance_within(signs, signs | unknown) * (1 - error) + error * usual) / usual


def _group_weight(
    hypotheses: Hypotheses, hypothesis: Hypothesis, group: Group, joined: Mapping[str, Seen]
) -> Weight:
    """One weight for the whole group."""
    own = group.likelihood({test: one.column for test, one in joined.items()})
    usual = math.prod(one.usual for one in joined.values())
    share = min(share_of(hypotheses, hypothesis, one) for one in joined.values())
    places = tuple((test, one.reading.at) for test, one in joined.items())
    return Weight(places, math.log(share * own / usual + 1 - share))


def complaint_weight(complaint: Complaint, fault: str, shown: bool = False) -> float:
    """The complaint as a finding: a start, never a filter.

    A caller's loose words are in the grades themselves: a fault that is not listed brings the
    call now and then all the same. `shown`: one finding shows it by itself; then no list of a call
    argues it away, unless its card says that it never brings this one.
    """
    grade = complaint.brought_by.get(fault, "seldom" if shown else complaint.unlisted)
    return math.log(PROBABILITY[grade] / PROBABILITY[complaint.unlisted])


def outside_weights(
    hypotheses: Hypotheses, seen: Sequence[Seen], present: tuple[Hypothesis, ...] = ()
) -> tuple[Weight, ...]:
    """What each finding says for something outside the rules."""
    found = []
    for one in seen:
        test = one.reading.test
        own, before = rows_beside(hypotheses, outside_row(hypotheses, test), one, present)
        ratio = likelihood(pattern_row(own), one.column) / likelihood(
            pattern_row(before), one.column
        )
        found.append(Weight(((test, one.reading.at),), math.log(ratio)))
    return tuple(found)


def outside_row(hypotheses: Hypotheses, test: str) -> Row:
    """The row of something outside the rules: three parts background, one part even.

    An outcome that defines a fault of the rules is no likelier than ever.
    """
    row = hypotheses.usual(test)
    open_ones = [o for o, p in row.items() if p > DEFINING]
    left, kept = math.fsum(row[o] for o in open_ones), 1 - UNIFORM_SHARE_OUTSIDE
    even = UNIFORM_SHARE_OUTSIDE * left / len(open_ones) if open_ones else 0.0
    return {o: row[o] if o not in open_ones else kept * row[o] + even for o in row}
