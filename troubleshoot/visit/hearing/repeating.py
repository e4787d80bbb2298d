"""Whether two readings of the same thing agree, by the meter's repeatability."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.quantities.instruments import agree, repeatability_limit
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.measuring import read_text
from troubleshoot.reasoning.readings.meters import kind_of


def agreement(knowledge: Knowledge, test: Test, first: str, second: str) -> str | None:
    """A sentence on whether two typed readings agree; nothing where that cannot be said."""
    try:
        one = read_text(test, first, knowledge).values
        other = read_text(test, second, knowledge).values
    except NotUnderstood:
        return None
    if len(one) != 1 or len(other) != 1 or one[0].over_range or other[0].over_range:
        return None
    unit = one[0].unit
    meter = kind_of(test, unit)
    if meter is None or other[0].unit != unit:
        return None
    resolution = max(one[0].resolution, other[0].resolution)
    limit = repeatability_limit(one[0].value, meter, resolution)
    said = unit.removesuffix("-diff")
    spread = f"{one[0].value:g} and {other[0].value:g} {said}"
    if agree(one[0].value, other[0].value, meter, resolution):
        return f"The two readings agree: {spread}, within the meter's {limit:.2g} {said}."
    return (
        f"The two readings do not agree: {spread}, more than the meter's {limit:.2g} {said}. "
        "Clean the points, check the leads and read once more."
    )
