"""Measuring by physics: units drawn, read each way, ranked by rules and peer, visited whole."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure.physics.cases import EVERYTHING, GAPS, WAYS, Examined, case_of, examined
from troubleshoot.measure.physics.contradicted import Contradiction, contradictions, counted
from troubleshoot.measure.physics.draws import pairs, singles
from troubleshoot.measure.physics.forest import Forest, training_set
from troubleshoot.measure.physics.judged import Judged, OfTwo, judged, of_two
from troubleshoot.measure.physics.lines import (
    call_lines,
    card_lines,
    contradicted_lines,
    single_lines,
    two_lines,
    visit_lines,
)
from troubleshoot.measure.physics.visits import PhysicalVisit
from troubleshoot.reasoning.conclude import Reasoner

Said = Mapping[str, Sequence[Judged]]
"""By the way of reading."""


def measure_by_physics(knowledge: Knowledge, visits: int, seed: int) -> Iterator[str]:
    """The lines of the figures: of so many units with one fault or none, and half as many with two.

    Each card is drawn in its turn, so that 39 units hold all of them once.
    """
    reasoner = Reasoner(knowledge)
    one = tuple(examined(singles(visits, f"{seed}")))
    two = tuple(examined(pairs((visits + 1) // 2, f"{seed}")))
    others = training_set(seed)
    forests = {way: Forest(others, way, seed) for way in WAYS}
    by_rules, against = _by_rules(reasoner, one)
    by_trees = {way: tuple(forest.judge(one)) for way, forest in forests.items()}
    yield from single_lines(by_rules, by_trees)
    yield from two_lines(dict(_of_two(reasoner, two, forests)), len(two))
    visited = [PhysicalVisit(reasoner, unit).visit() for unit in one]
    yield from visit_lines(visited)
    yield from card_lines(by_rules, by_trees, visited)
    yield from call_lines(by_rules)
    yield from contradicted_lines(counted((unit.drawn for unit in one), against))


def _by_rules(reasoner: Reasoner, units: Sequence[Examined]) -> tuple[Said, list[Contradiction]]:
    """What the rules say of each unit, read each way; what its card has against its readings."""
    said: dict[str, list[Judged]] = {way: [] for way in WAYS}
    against: list[Contradiction] = []
    for unit in units:
        for way in WAYS:
            found = reasoner.conclude(case_of(reasoner.knowledge, unit, unit.read(way)))
            said[way].append(judged(unit.drawn.cards, found))
            if way == EVERYTHING:
                against += contradictions(unit.drawn, found)
    return said, against


def _of_two(
    reasoner: Reasoner, units: Sequence[Examined], forests: Mapping[str, Forest]
) -> Iterator[tuple[tuple[str, str], OfTwo]]:
    """By way of reading, and by who says it; the forest is told of no repair."""
    for way in (EVERYTHING, GAPS):
        said, after = [], []
        for unit in units:
            first = _of_one_repaired(reasoner, unit, way, ())
            said.append(first)
            if first.right:
                after.append(_of_one_repaired(reasoner, unit, way, first.causes[:1]))
        yield (way, "rules"), of_two(said, after)
        yield (way, "forest"), of_two(tuple(forests[way].judge(units)), ())


def _of_one_repaired(
    reasoner: Reasoner, unit: Examined, way: str, repaired: tuple[str, ...]
) -> Judged:
    """What the rules say once these are repaired, all readings being from before."""
    case = case_of(reasoner.knowledge, unit, unit.read(way), repaired)
    left = tuple(card for card in unit.drawn.cards if card not in repaired)
    return judged(left, reasoner.conclude(case))
