"""Readings as evidence: the chance of each report, and which readings speak about what.

A finding speaks about a hypothesis at its own place and what feeds it or is fed by it. One whose
place is open is shared over the places it may belong to.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.evidence.groups import Group
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, Row, Signs, report_column
from troubleshoot.reasoning.readings.readings import Reading, report_error
from troubleshoot.reasoning.unit.places import Layout, Place


@frozen
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
    """A reading with the chance of its report, or of all reports so far, for each true outcome."""
    row = hypotheses.usual(reading.test)
    columns = report_columns(hypotheses, reading)
    column = {outcome: math.prod(each[outcome] for each in columns) for outcome in row}
    return Seen(reading, column, likelihood(row, column), void_for)


def report_columns(hypotheses: Hypotheses, reading: Reading) -> tuple[Row, ...]:
    """The chance of each report for each true outcome, the earlier readings of the same first."""
    error = report_error(hypotheses.knowledge.tests[reading.test])
    made = hypotheses.background(reading.test)
    chances = reading.chances
    if isinstance(made, Signs):
        signs = [s for s in reading.seen if s in made.signs]
        chances = dict.fromkeys(signs or [NONE_OF_THEM], 1.0)
    row = hypotheses.usual(reading.test)
    columns = (report_column(row, each, error, row) for each in (*reading.before, chances))
    return tuple(_unknown_left_open(hypotheses, reading, column) for column in columns)


def left_open(hypotheses: Hypotheses, reading: Reading) -> frozenset[str]:
    """The outcomes against which a sound number says nothing: their measure is not known here."""
    if reading.classified is None:
        return frozenset()
    unit = hypotheses.unit
    return frozenset(
        outcome.id
        for outcome in hypotheses.knowledge.tests[reading.test].outcomes
        if not unit.proves(outcome.ruled_out_when, reading.at)
    )


def _unknown_left_open(hypotheses: Hypotheses, reading: Reading, column: Row) -> Row:
    """The column of a number: what it cannot rule out reads sound as often as what is sound."""
    open_ones = left_open(hypotheses, reading)
    if not open_ones:
        return column
    healthy = {NONE_OF_THEM, *hypotheses.knowledge.tests[reading.test].healthy}
    sound = max(column[o] for o in column if o in healthy)
    return {o: max(chance, sound) if o in open_ones else chance for o, chance in column.items()}


def likelihood(row: Row, column: Row) -> float:
    """The chance of a report, from its chance under each true outcome."""
    return math.fsum(p * column[o] for o, p in row.items())


def by_test(seen: Sequence[Seen]) -> SeenByTest:
    """Readings by their test, in the order taken."""
    found: dict[str, list[Seen]] = {}
    for one in seen:
        found.setdefault(one.reading.test, []).append(one)
    return found


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


def joined_readings(
    hypotheses: Hypotheses,
    hypothesis: Hypothesis,
    group: Group,
    tests: SeenByTest,
    present: tuple[Hypothesis, ...] = (),
) -> tuple[Mapping[str, Seen], Sequence[Seen]]:
    """One reading of each member of a group, all of one circuit, and the readings left single.

    Of several circuits the one with the most members read, the lowest in number. Where a fault
    already there speaks about a member as well, all are single.
    """
    about = {
        test: sorted(
            (one for one in tests[test] if share_of(hypotheses, hypothesis, one) > 0),
            key=lambda one: (one.reading.at != hypothesis.at, str(one.reading.at)),
        )
        for test in group.tests
        if test in tests
    }
    everything = [one for readings in about.values() for one in readings]
    if any(there_as_well(hypotheses, one, present) for one in everything):
        return {}, everything
    layout = hypotheses.unit.layout
    best: dict[str, Seen] = {}
    for circuit in sorted(layout.circuits_of(hypothesis.at)):
        here = {
            test: next((one for one in readings if circuit in circuits_of(layout, one)), None)
            for test, readings in about.items()
        }
        found = {test: one for test, one in here.items() if one is not None}
        if len(found) > len(best):
            best = found
    return best, [one for one in everything if one is not best.get(one.reading.test)]


def circuits_of(layout: Layout, one: Seen) -> frozenset[int]:
    """The circuits that a reading may be about."""
    places = one.reading.among or (one.reading.at,)
    return frozenset().union(*(layout.circuits_of(place) for place in places))


def members_at(
    hypotheses: Hypotheses,
    hypothesis: Hypothesis,
    group: Group,
    test: str,
    at: Place | None,
    tests: SeenByTest,
) -> Mapping[str, Row]:
    """What the other members of a group read where `test` is done, as columns."""
    layout = hypotheses.unit.layout
    here = layout.circuits_of(at)
    found: dict[str, Row] = {}
    for member in group.tests:
        about = [
            one
            for one in tests.get(member, ())
            if member != test
            and share_of(hypotheses, hypothesis, one) == 1
            and here & circuits_of(layout, one)
        ]
        if about:
            found[member] = min(about, key=lambda o: (o.reading.at != at, str(o.reading.at))).column
    return found


def there_as_well(
    hypotheses: Hypotheses, one: Seen, present: Iterable[Hypothesis]
) -> tuple[Hypothesis, ...]:
    """The faults already there that speak about a reading; none for one taken after the repair."""
    if one.reading.after_repair:
        return ()
    test = one.reading.test
    return tuple(
        other
        for other in present
        if (test in other.picture.cells or other.picture.grouped(test) is not None)
        and share_of(hypotheses, other, one) > 0
    )
