"""Which tests a rule puts before the rest, whatever they tell: fuses where a leg is lost."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.readings.validity import FiredProcedure
from troubleshoot.reasoning.unit.places import Layout


def looked_at_first(
    fired: Iterable[FiredProcedure], candidates: Sequence[Candidate], layout: Layout
) -> Iterator[tuple[Candidate, FiredProcedure]]:
    """The candidates that rules put first, in the rules' order, each with its rule.

    A rule holds at a circuit, and what it names is looked at there.
    """
    for one in fired:
        for name in one.procedure.look_first:
            for candidate in candidates:
                here = one.circuit in layout.circuits_of(candidate.at)
                if candidate.test.id == name and here:
                    yield candidate, one


def rules_first(
    fired: Iterable[FiredProcedure], candidates: Sequence[Candidate], layout: Layout
) -> tuple[Candidate, ...]:
    """The candidates with those that rules put first before the rest."""
    first = [candidate for candidate, _ in looked_at_first(fired, candidates, layout)]
    by_spot = {(c.test.id, c.at): c for c in (*first, *candidates)}
    return tuple(by_spot.values())
