"""Cards that physics contradicts: a unit with the fault shows what its card leaves no chance."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.vocabulary import PROBABILITY
from troubleshoot.measure.physics.draws import Drawn
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, Row, pattern_row
from troubleshoot.reasoning.evidence.weighing import row_alone
from troubleshoot.reasoning.readings.readings import Reading


@frozen
class Contradiction:
    """A finding of a unit with this card's fault that the card leaves as rare as "never"."""

    card: str
    test: str
    outcome: str


@frozen
class Contradicted:
    """A contradiction, on how many of the units drawn with the fault."""

    what: Contradiction
    units: int
    of: int


def contradictions(drawn: Drawn, found: Conclusions) -> Iterator[Contradiction]:
    """What was read on the one drawn unit against the card of its fault, each once.

    A card speaks in the picture that allows the finding most, of the places where its fault is.
    """
    against: dict[Contradiction, None] = {}
    for card in drawn.cards:
        here = [
            h for h in found.hypotheses.causes if h.fault.id == card and _is_at(drawn, found, h)
        ]
        for reading in found.readings:
            if _is_against(found.hypotheses, here, reading):
                against[Contradiction(card, reading.test, "/".join(reading.seen))] = None
    yield from against


def counted(drawn: Iterable[Drawn], found: Iterable[Contradiction]) -> Iterator[Contradicted]:
    """How often each comes, the most frequent share first."""
    of = Counter(card for unit in drawn for card in unit.cards)
    units = Counter(found)
    all_ = (Contradicted(what, often, of[what.card]) for what, often in units.items())
    yield from sorted(
        all_, key=lambda c: (-c.units / c.of, c.what.card, c.what.test, c.what.outcome)
    )


def _is_at(drawn: Drawn, found: Conclusions, hypothesis: Hypothesis) -> bool:
    at = found.case.unit.layout.circuits_of(hypothesis.at)
    return drawn.faults.circuit == 0 or drawn.faults.circuit in at


def _is_against(hypotheses: Hypotheses, here: list[Hypothesis], reading: Reading) -> bool:
    layout = hypotheses.unit.layout
    about = [h for h in here if layout.speaks_about(reading.at, h.at)]
    spoken_of = all(reading.test in h.picture.cells for h in about)
    if not reading.valid or not reading.chances or not about or not spoken_of:
        return False
    usual = _chance(hypotheses, pattern_row(hypotheses.background(reading.test)), reading)
    most = max(
        _chance(hypotheses, pattern_row(row_alone(hypotheses, h, reading.test)), reading)
        for h in about
    )
    return most <= PROBABILITY["never"] and most < usual


def _chance(hypotheses: Hypotheses, row: Row, reading: Reading) -> float:
    """The chance of what was read, near a limit of either side of it."""
    healthy = hypotheses.knowledge.tests[reading.test].healthy
    named = {o: o if o in row or o not in healthy else NONE_OF_THEM for o in reading.chances}
    return math.fsum(p * row.get(named[o], 0.0) for o, p in reading.chances.items())
