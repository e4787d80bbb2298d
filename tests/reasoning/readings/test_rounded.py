"""People write 10 for 10.0: no STOP comes of the digits that were left off."""

from __future__ import annotations

import math
from collections.abc import Iterator

import pytest

from troubleshoot.knowledge.model import Bound, Knowledge, Test
from troubleshoot.quantities.instruments import INSTRUMENTS, default_instrument
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.classify import WITHOUT_ITS_DECIMALS
from troubleshoot.reasoning.readings.readings import Reading, take_readings
from troubleshoot.reasoning.unit.equipment import Unit, read_unit

WHOLE = (*range(1, 30), *range(30, 100, 5), *range(100, 1000, 50))
PROPANE = {"heat": "gas", "fuel": "propane"}
MANIFOLD, STANDS = "gas-manifold-pressure", "over-fired-or-wrong-fuel"


def read(knowledge: Knowledge, unit: Unit, test: Test, text: str) -> Reading:
    """What a number typed at the test's first place is taken for."""
    place = (unit.layout.places(test.per) or (None,))[0]
    case = Case(unit=unit, answers=(Answer(test.id, text=text, places=(place,)),))
    return next(r for r in take_readings(knowledge, case)[0] if r.test == test.id)


def manifold(knowledge: Knowledge, text: str, **plate: str) -> Reading:
    unit = read_unit(knowledge, {**PROPANE, **plate}, {}, {})
    return read(knowledge, unit, knowledge.tests[MANIFOLD], text)


def typical(knowledge: Knowledge) -> Iterator[Unit]:
    """Every typical unit, on natural gas and on propane where it burns gas."""
    for each in knowledge.typical_units.values():
        facts = {**each.facts, **each.plate}
        yield read_unit(knowledge, facts, {}, {})
        if each.facts.get("heat") == "gas":
            yield read_unit(knowledge, {**facts, "fuel": "propane"}, {}, {})


def stopping(knowledge: Knowledge) -> dict[str, frozenset[str]]:
    """The outcomes that call up a STOP, by test, of those whose one number is read on a meter."""
    found: dict[str, frozenset[str]] = {}
    for hazard in knowledge.hazards.values():
        for trigger in hazard.triggers if hazard.stop is not None else ():
            for each in trigger.findings:
                test = knowledge.tests[each.test]
                if [one.legs for one in test.reads] == [None] and test.healthy:
                    found[test.id] = found.get(test.id, frozenset()) | {*each.outcomes}
    return {
        name: bad for name, bad in found.items() if bad.isdisjoint(knowledge.tests[name].healthy)
    }


def reach_of_meter(knowledge: Knowledge, test: Test, number: float) -> float:
    """How far a meter that shows its usual digits may be off at a number."""
    unit = test.reads[0].unit or knowledge.quantities[test.reads[0].quantity].unit
    meter = INSTRUMENTS[test.meter] if test.meter else default_instrument(unit)
    if meter is None:
        return 0.0
    error = abs(number) * meter.percent / 100 + meter.counts * (meter.shows or 1.0) + meter.fixed
    return error * 2.05 / math.sqrt(3)


def test_a_whole_number_stops_only_where_the_meter_itself_may_read_beyond(
    shipped: Knowledge,
) -> None:
    within = beyond = 0
    for unit in typical(shipped):
        for name, bad in stopping(shipped).items():
            test = shipped.tests[name]
            if not unit.allows(test.exists_when):
                continue
            for number in WHOLE:
                found = read(shipped, unit, test, str(number))
                if found.classified is None:
                    break
                low = -math.inf if found.classified.low is None else found.classified.low
                high = math.inf if found.classified.high is None else found.classified.high
                reach = reach_of_meter(shipped, test, number)
                sound = {*found.seen} <= {*test.healthy}
                if sound and low + reach < number < high - reach:
                    within += 1
                    assert found.calls_up.isdisjoint(bad), f"{name} {number}: {found}"
                elif bad & {*found.seen}:
                    beyond += 1
                    assert found.calls_up & bad, f"{name} {number}: {found}"
    assert within > 100 and beyond > 100


def test_the_plate_s_own_value_stops_nothing(shipped: Knowledge) -> None:
    """Regression: 10 in. w.c. of propane was a STOP, 10.0 was not."""
    tried = 0
    for unit in typical(shipped):
        for name, bad in stopping(shipped).items():
            test = shipped.tests[name]
            sound = (o for o in test.outcomes if o.id in test.healthy)
            bounds = (b for o in sound for line in o.limits for b in line.bounds)
            for plate in {b.relative_to for b in bounds if b.relative_to and _lies_well_in(b)}:
                value = unit.plate_value(plate, (unit.layout.places(test.per) or (None,))[0])
                if value is not None and unit.allows(test.exists_when):
                    tried += 1
                    assert read(shipped, unit, test, f"{value:g}").calls_up.isdisjoint(bad)
    assert tried
    for plate in ({}, {"manifold-rating": "10 in. w.c."}):
        assert manifold(shipped, "10 in. w.c.", **plate).calls_up == {"normal"}


def _lies_well_in(bound: Bound) -> bool:
    """Whether the plate's own value lies inside a bound relative to it, not on its edge."""
    at_it = {"percent-of": 100.0, "times": 1.0, "value": None}.get(bound.compared_as, 0.0)
    low = max(x for x in (bound.above, bound.at_least, -math.inf) if x is not None)
    high = min(x for x in (bound.below, bound.at_most, math.inf) if x is not None)
    return at_it is not None and low < at_it < high


@pytest.mark.parametrize("text", ["10 in. w.c.", "10.0 in. w.c.", "25 mbar", "2.5 kPa"])
def test_the_unit_and_the_noughts_make_no_difference(text: str, shipped: Knowledge) -> None:
    assert manifold(shipped, text).calls_up == {"normal"}


@pytest.mark.parametrize("text", ["11 in. w.c.", "11.0 in. w.c.", "10.5 in. w.c.", "12"])
def test_what_the_meter_itself_may_read_beyond_still_stops(text: str, shipped: Knowledge) -> None:
    unit = read_unit(shipped, PROPANE, {}, {})
    case = Case(unit=unit, answers=(Answer(MANIFOLD, text=text, places=(None,)),))
    standing = Reasoner(shipped).conclude(case).standing_stops
    assert STANDS in {fired.hazard.id for fired in standing}


def test_the_doubt_that_rounding_leaves_is_named_and_proves_nothing_sound(
    shipped: Knowledge,
) -> None:
    found = manifold(shipped, "10 in. w.c.", **{"manifold-rating": "9.8 in. w.c."})
    assert found.classified is not None
    assert found.classified.verdict == WITHOUT_ITS_DECIMALS
    assert found.calls_up == {"normal"} and "high" in found.possible
    sharp = manifold(shipped, "9.80 in. w.c.", **{"manifold-rating": "9.8 in. w.c."})
    assert sharp.classified is not None and sharp.classified.verdict == "within"
    assert sharp.possible == {"normal"}


@pytest.mark.parametrize(
    ("text", "called_up"),
    [("12 % LEL", {"leak"}), ("9 % LEL", {"trace", "leak"}), ("2 % LEL", {"trace"})],
)
def test_what_is_milder_than_what_was_read_calls_up_nothing(
    text: str, called_up: set[str], shipped: Knowledge
) -> None:
    """Regression: beside the page that clears the building stood that of a trace at a joint."""
    sweep = shipped.tests["combustible-gas-sweep"]
    assert read(shipped, read_unit(shipped, PROPANE, {}, {}), sweep, text).calls_up == called_up
