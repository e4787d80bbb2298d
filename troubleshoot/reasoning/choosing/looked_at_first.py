"""Which tests a rule puts before the rest, whatever they tell: fuses where a leg is lost."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.readings.validity import FiredProcedure, circuits_about
from troubleshoot.reasoning.unit.places import Layout, Place


def looked_at_first(
    fired: Iterable[FiredProcedure],
    candidates: Sequence[Candidate],
    layout: Layout,
    readings: Sequence[Reading],
) -> Iterator[tuple[Candidate, FiredProcedure]]:
    """The candidates that rules put first, in the rules' order, each with its rule.

    A rule holds at a circuit, and what it names is looked at there, and only at what was found: of
    two fans the one that stands is spun by hand, not the one that turns.
    """
    for one in fired:
        for name in one.procedure.look_first:
            for candidate in candidates:
                here = one.circuit in layout.circuits_of(candidate.at)
                if candidate.test.id != name or not here:
                    continue
                if _is_about(one, candidate.at, layout, readings):
                    yield candidate, one


def _is_about(
    fired: FiredProcedure, at: Place | None, layout: Layout, readings: Sequence[Reading]
) -> bool:
    """Whether each finding that the rule rests on was read where it speaks of this place."""
    for finding in fired.procedure.when.findings:
        read = [
            place
            for reading in readings
            if reading.valid and reading.test == finding.test
            if not set(finding.outcomes).isdisjoint(reading.seen)
            if fired.circuit in circuits_about(layout, reading)
            for place in reading.among or (reading.at,)
        ]
        if read and not any(layout.speaks_about(place, at) for place in read):
            return False
    return True


def put_first(
    fired: Iterable[FiredProcedure],
    candidates: Sequence[Candidate],
    layout: Layout,
    readings: Sequence[Reading],
    *,
    dead: bool,
    least: float,
) -> tuple[Candidate, FiredProcedure] | None:
    """What a rule puts first now, and the rule.

    With hands inside (`dead`) what needs the power back waits for what tells more in the minutes
    that closing up, powering on and locking out again would take; not for what does not pay, at the
    `least` rate, and so is not done either.
    """
    near = (c for c in candidates if dead and not c.switch_minutes and c.pays(least))
    at_hand = max((c.rate for c in near), default=0.0)
    for first, rule in looked_at_first(fired, candidates, layout, readings):
        if not first.switch_minutes or first.rate >= at_hand:
            return first, rule
    return None


def rules_first(
    fired: Iterable[FiredProcedure],
    candidates: Sequence[Candidate],
    layout: Layout,
    readings: Sequence[Reading],
) -> tuple[Candidate, ...]:
    """The candidates with those that rules put first before the rest."""
    first = [candidate for candidate, _ in looked_at_first(fired, candidates, layout, readings)]
    by_spot = {(c.test.id, c.at): c for c in (*first, *candidates)}
    return tuple(by_spot.values())
