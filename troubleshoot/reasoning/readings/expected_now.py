"""What a reading should show now, where the unit and its air are known.

It is what sound units of its kind show in this weather. Where the rules judge a reading by what is
held to this unit (its own record, what its data plate states, the target that is published for its
kind in this weather), that stands alone: the verdict tells it.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import chain

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.quantities.ranges import OutOfRange
from troubleshoot.quantities.span import Span
from troubleshoot.reasoning.readings.classify import outcomes_here
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.places import Place

_HELD_TO = ("difference", "percent-difference")
"""How a limit compares with what the reading should be; a share of the data plate's is a limit."""


@frozen
class Expected:
    """The range of a sound unit, in the unit of the reading as people write it."""

    span: Span
    unit: str


def expected_now(reading: Reading, values: Values) -> Expected | None:
    """What a sound unit would show in place of this reading; None where that is not known.

    None too where what judged it is held to this unit, and where it does not count.
    """
    judged = reading.classified
    if judged is None or not reading.valid:
        return None
    test = values.knowledge.tests[reading.test]
    if any(_held_to(test, reading.at, values)):
        return None
    read = [one.quantity for one in test.reads]
    quantity = judged.quantity if judged.quantity in read or not read else read[0]
    span = of_its_like(quantity, reading.at, values)
    unit = values.knowledge.quantities[quantity].unit.removesuffix("-diff")
    return None if span is None else Expected(span, unit)


def _held_to(test: Test, place: Place | None, values: Values) -> Iterator[bool]:
    """For each sound limit here whether it is relative to what this unit is known to read."""
    unit = values.unit
    for outcome in outcomes_here(test, unit):
        lines = outcome.limits if outcome.id in test.healthy else ()
        for bound in chain(*(each.bounds for each in lines if unit.proves(each.when, place))):
            is_held = bound.relative_to is not None and bound.compared_as in _HELD_TO
            if is_held and unit.proves(bound.when, place):
                yield values.get(bound.relative_to or "", place) is not None


def of_its_like(quantity: str, place: Place | None, values: Values) -> Span | None:
    """What sound units of its kind show in this weather."""
    from troubleshoot.quantities.expected import Conditions, expected  # with the first such reading

    facts = values.unit.facts
    refrigerant, metering = facts.get("refrigerant"), facts.get("metering")
    outdoor, dry_bulb = (
        values.get(name, place) for name in ("outdoor-temperature", "entering-air-temperature")
    )
    if refrigerant is None or metering is None or outdoor is None or dry_bulb is None:
        return None
    is_mixed = values.get("mixed-air-temperature", place) is not None
    wet_bulb = None if is_mixed else values.get("return-wet-bulb", place)
    conditions = Conditions(
        refrigerant,
        metering,
        outdoor.number,
        dry_bulb.number,
        None if wet_bulb is None else wet_bulb.number,
    )
    rla, tons = (values.plate_value(name, place) for name in ("compressor-rla", "cooling-tons"))
    try:
        found = expected(conditions, rla, tons)
    except OutOfRange:
        return None
    return found.get(quantity)
