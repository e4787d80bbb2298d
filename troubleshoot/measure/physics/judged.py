"""What is said of examined units, by the rules or by a peer, and what that is worth."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.measure.calibration import calibration_error, calibration_error_by_luck
from troubleshoot.reasoning.choosing.next_test import NAMED
from troubleshoot.reasoning.conclusions import Conclusions


@frozen
class Judged:
    """What is said of one unit: the cards of its true faults; causes, the likeliest first.

    `chance`: of the first cause; `among_faults`: the same given that there is a fault at all.
    """

    truth: tuple[str, ...]
    call: str
    causes: tuple[str, ...]
    chance: float
    among_faults: float

    @property
    def right(self) -> bool:
        return self.causes[0] in self.truth

    @property
    def named(self) -> bool:
        """Whether the first cause is said to be sure."""
        return self.chance >= NAMED

    def within(self, places: int) -> bool:
        """Whether every true fault is among the first causes."""
        return set(self.truth) <= set(self.causes[:places])


def judged(truth: tuple[str, ...], found: Conclusions) -> Judged:
    """What the rules say, each cause at its likeliest place."""
    causes = found.causes
    names = tuple(dict.fromkeys(cause.fault.id for cause in causes))
    chance = causes[0].probability
    among = chance / math.fsum(cause.probability for cause in causes)
    return Judged(truth, found.case.complaint or "", names, chance, among)


@frozen
class Figures:
    """Shares of many units: right first, in three; wrong of those said to be sure; sound ones for
    which a cause was said to be sure. Counts stand beside the shares of few."""

    first: float
    three: float
    calibration: float
    by_luck: float
    sure: int
    sure_and_wrong: int
    sound: int
    accused: int


def figures(said: Sequence[Judged]) -> Figures:
    """The figures of units with one fault each, those with nothing wrong apart."""
    faulty = [one for one in said if one.truth]
    sound = [one for one in said if not one.truth]
    sure = [one for one in faulty if one.named]
    return Figures(
        _share(one.right for one in faulty),
        _share(one.within(3) for one in faulty),
        calibration_error(faulty) if faulty else 0.0,
        calibration_error_by_luck(faulty) if faulty else 0.0,
        len(sure),
        sum(not one.right for one in sure),
        len(sound),
        sum(one.named for one in sound),
    )


@frozen
class OfTwo:
    """Shares of units with two faults: one of the two leads, both are among five; once the right
    one that leads is put right, the other leads, or is in three."""

    one_first: float
    both_in_five: float
    other_first: float
    other_in_three: float


def of_two(said: Sequence[Judged], after: Sequence[Judged]) -> OfTwo:
    """`after`: of those where one of the two led, what is said of the other after its repair."""
    return OfTwo(
        _share(one.right for one in said),
        _share(one.within(5) for one in said),
        _share(one.right for one in after),
        _share(one.within(3) for one in after),
    )


def _share(hits: Iterable[bool]) -> float:
    """How many of these hold; of none, none."""
    counted = list(hits)
    return sum(counted) / len(counted) if counted else 0.0
