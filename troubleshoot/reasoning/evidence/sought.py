"""The causes that a search is among: those whose card shows what was found, where it was found.

A round finds what no caller complained of, on a unit that mostly runs: its sound readings would
outweigh every cause, though the finding stands.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from troubleshoot.knowledge.vocabulary import PROBABILITY
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.reading_evidence import Seen
from troubleshoot.reasoning.unit.places import Place

Found = tuple[str, Place | None]


def sought(
    hypotheses: Hypotheses, seen: Sequence[Seen], search: Collection[Found]
) -> tuple[Hypothesis, ...]:
    """The hypotheses that show one of these findings now and then or more; all if none does."""
    readings = [s.reading for s in seen if (s.reading.test, s.reading.at) in search]
    found = [(r.test, r.at, frozenset(r.seen)) for r in readings]
    shown = tuple(
        h for h in hypotheses.causes if any(shows(hypotheses, h, *each) for each in found)
    )
    return shown or hypotheses.causes


def shows(
    hypotheses: Hypotheses,
    hypothesis: Hypothesis,
    test: str,
    at: Place | None,
    seen: frozenset[str],
) -> bool:
    """Whether a cause shows one of these outcomes now and then or more, at its own place."""
    if not hypotheses.unit.layout.speaks_about(at, hypothesis.at):
        return False
    return any(
        chance >= PROBABILITY["sometimes"] and not named.isdisjoint(seen)
        for named, chance in hypothesis.picture.cells.get(test, ())
    )


def showing(
    hypotheses: Hypotheses, test: str, at: Place | None, seen: frozenset[str]
) -> Iterator[Hypothesis]:
    """The causes that show an outcome of a test at a place."""
    return (h for h in hypotheses.causes if shows(hypotheses, h, test, at, seen))
