"""Which two causes a test tells apart best, by what is believed now: why it is asked for."""

from __future__ import annotations

import itertools
import math
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Fault
from troubleshoot.reasoning.choosing.stopping import entropy
from troubleshoot.reasoning.evidence.outcome_chances import Row

HARDLY: Final = 0.25
"""Two causes whose reports differ in a lesser share of all cases are hardly told apart (common
practice, no source)."""
MOST: Final = 12
"""Of the causes that a test speaks of no more than these are held against each other."""


@frozen
class Reports:
    """What a test would report under one cause, and how likely the cause is now, 0 to 1."""

    fault: Fault
    chance: float
    row: Row


def best_told_apart(expected: tuple[Reports, ...]) -> tuple[Fault, Fault] | None:
    """The two causes of which the test is expected to tell most, in the order given; or none.

    `expected`: the likeliest causes that the test speaks of, then the likeliest of those that it
    does not. What it would tell were there only these two, by the chance that it is one of them.
    """
    pairs = [
        (one, other)
        for one, other in itertools.combinations(expected[:MOST] + expected[MOST:][-1:], 2)
        if one.fault.id != other.fault.id and _apart(one.row, other.row) >= HARDLY
    ]
    if not pairs:
        return None
    best = max(pairs, key=lambda pair: _bits(*pair))
    return best[0].fault, best[1].fault


def _apart(one: Row, other: Row) -> float:
    """In which share of all cases two rows differ, 0 to 1."""
    return math.fsum(abs(one[outcome] - other[outcome]) for outcome in one) / 2


def _bits(one: Reports, other: Reports) -> float:
    both = one.chance + other.chance
    if not both:
        return 0.0
    mixed = ((one.chance * one.row[o] + other.chance * other.row[o]) / both for o in one.row)
    doubt = one.chance * entropy(one.row.values()) + other.chance * entropy(other.row.values())
    return both * entropy(mixed) - doubt
