"""What a weighing of refrigerant comes to, and whether its cylinder bears it out."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.instruments import (
    INSTRUMENTS,
    Instrument,
    standard_uncertainty,
    uncertainty_as_typed,
)
from troubleshoot.quantities.typed import Leg, NotUnderstood
from troubleshoot.reasoning.readings.measuring import read_quantity
from troubleshoot.reasoning.readings.meters import Meters, at_worst
from troubleshoot.visit.weighing import ADDED, Weighing

SCALE: Final = INSTRUMENTS["charging-scale"]
"""By whose accuracy weights are compared, where none is listed."""
BEYOND_SCALE: Final = 2.0
"""Standard uncertainties that a difference has to exceed before it is one (JCGM 100, 6.3.3)."""
WEIGHED: Final = "charge-weight"
"""The quantity that a weight is read as."""


def scale_of(meters: Meters) -> Instrument:
    """The scale that is listed, else what is taken for one."""
    own = meters.of_kind(SCALE.id)
    return at_worst(SCALE, own, and_its_kind=False) if own else SCALE


def weight_read(knowledge: Knowledge, typed: str) -> Leg:
    """A weight in pounds, whatever unit it was typed in. Raises NotUnderstood."""
    (leg,) = read_quantity(knowledge.quantities[WEIGHED], typed).values
    if leg.bound is not None:
        raise NotUnderstood(typed, "is a bound, and no weight", "write what the scale shows")
    return leg


def pounds_of(knowledge: Knowledge, weighing: Weighing) -> float | None:
    """How much was moved: as told, or by the cylinder's two weights; None where neither is."""
    if weighing.weight:
        return weight_read(knowledge, weighing.weight).value
    return _by_the_cylinder(knowledge, weighing)


def _by_the_cylinder(knowledge: Knowledge, weighing: Weighing) -> float | None:
    """By how much the cylinder became lighter, or heavier where refrigerant was recovered."""
    if not (weighing.before and weighing.after):
        return None
    before, after = (weight_read(knowledge, each).value for each in _both(weighing))
    return before - after if weighing.way == ADDED else after - before


def _both(weighing: Weighing) -> tuple[str, str]:
    return weighing.before, weighing.after


def cylinder_says(
    knowledge: Knowledge, weighing: Weighing, scale: Instrument = SCALE
) -> Iterator[str]:
    """What of a cylinder's weights does not fit, a sentence each; then what is left in it."""
    moved = _by_the_cylinder(knowledge, weighing)
    if moved is not None and weighing.weight:
        told = weight_read(knowledge, weighing.weight)
        if abs(moved - told.value) > BEYOND_SCALE * _u(knowledge, weighing, told, moved, scale):
            yield (
                f"The cylinder's weights do not fit: {in_pounds(told.value)} {weighing.way}, and "
                f"by them it was {in_pounds(moved)}."
            )
    if weighing.tare:
        yield from _over_its_tare(knowledge, weighing)


def _u(
    knowledge: Knowledge, weighing: Weighing, told: Leg, moved: float, scale: Instrument
) -> float:
    """The standard uncertainty of the difference between a weight and what a cylinder shows.

    Both weights of a cylinder are read on one scale, which is off by its percents in both alike.
    """
    counts = replace(scale, percent=0.0)
    both = (weight_read(knowledge, each) for each in _both(weighing))
    return math.hypot(
        *uncertainty_as_typed(told.value, scale, told.resolution),
        *(u for leg in both for u in uncertainty_as_typed(leg.value, counts, leg.resolution)),
        standard_uncertainty(moved, replace(scale, counts=0.0, fixed=0.0), 0.0),
    )


def _over_its_tare(knowledge: Knowledge, weighing: Weighing) -> Iterator[str]:
    tare = weight_read(knowledge, weighing.tare).value
    for name, typed in (("before", weighing.before), ("after", weighing.after)):
        if typed and weight_read(knowledge, typed).value < tare:
            yield f"The cylinder was lighter {name} it than its tare: one of the two is wrong."
            return
    if weighing.after:
        left = weight_read(knowledge, weighing.after).value - tare
        yield f"Left in the cylinder: {in_pounds(left)}."


def in_pounds(pounds: float) -> str:
    """A weight as it is shown, in pounds."""
    return f"{pounds:.2f} lb"


def weighing_words(knowledge: Knowledge, weighing: Weighing, *, where: bool = True) -> str:
    """A weighing in a few words, its weight in pounds beside what was typed in another unit.

    `where`: with its circuit.
    """
    pounds = pounds_of(knowledge, weighing)
    how_much = ", weight not told" if pounds is None else f" {in_pounds(pounds)}"
    if weighing.weight and weight_read(knowledge, weighing.weight).typed_unit not in (None, "lb"):
        how_much = f"{how_much} ({weighing.weight})"
    way = "from" if weighing.way == ADDED else "into"
    cylinder = f"{way} {weighing.cylinder}" if weighing.cylinder else "cylinder not told"
    circuit = f", {weighing.circuit}" if where else ""
    return f"{weighing.way}{how_much}{circuit}, {cylinder}"
