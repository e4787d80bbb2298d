"""Readings are judged by the accuracy of the listed instrument, and never carelessly so."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.instruments import INSTRUMENTS
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.meters import Listed, at_worst, meters_of
from troubleshoot.reasoning.readings.readings import Reading, take_readings
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.declared import CONFIRMED

GOOD = Listed("new gauge", "manometer", percent=0.5, fixed=0.002)
BAD = Listed("old gauge", "manometer", percent=5.0, counts=2, fixed=0.05)


def read(knowledge: Knowledge, test: str, text: str, *listed: Listed) -> Reading:
    unit = read_unit(knowledge, {"maximum-external-static": "0.6 in wc"})
    case = Case(unit, answers=(Answer(test, text=text),), meters=meters_of(knowledge, listed))
    return next(each for each in take_readings(knowledge, case)[0] if each.test == test)


def u_of(reading: Reading) -> float:
    assert reading.classified is not None
    return reading.classified.u


def test_a_better_instrument_settles_what_its_kind_leaves_open(shipped: Knowledge) -> None:
    """0.61 in wc against 0.6: a manometer errs 1.5 % + 0.02, the listed one 0.5 % + 0.002."""
    by_kind = read(shipped, "external-static", "0.610 in wc")
    by_list = read(shipped, "external-static", "0.610 in wc", GOOD)
    assert len(by_kind.possible) > 1 and by_list.possible == {*by_list.seen}
    assert u_of(by_list) == pytest.approx((0.61 * 0.005 + 0.002) / math.sqrt(3))


def test_of_several_of_a_kind_the_worst_counts(shipped: Knowledge) -> None:
    alone = read(shipped, "external-static", "0.61 in wc", BAD)
    both = read(shipped, "external-static", "0.61 in wc", GOOD, BAD)
    assert u_of(both) == u_of(alone) > u_of(read(shipped, "external-static", "0.61 in wc"))
    meters = meters_of(shipped, (GOOD, BAD))
    assert meters.named(shipped.tests["external-static"], "in-wc") == "new gauge or old gauge"


def test_another_kind_and_a_plus_minus_of_ones_own_change_nothing(shipped: Knowledge) -> None:
    clamp = Listed("blue clamp", "clamp-ammeter", 0.1)
    by_kind = read(shipped, "external-static", "0.61 in wc")
    assert read(shipped, "external-static", "0.61 in wc", clamp) == by_kind
    told = "0.61 +/- 0.03 in wc"
    assert read(shipped, "external-static", told, GOOD) == read(shipped, "external-static", told)


@pytest.mark.parametrize(
    ("test", "text", "kind"),
    [
        ("flame-current", "1.1 uA", "microammeter"),
        ("room-carbon-monoxide", "8 ppm", "carbon-monoxide-monitor"),
        ("combustible-gas-sweep", "3 % LEL", "combustible-gas-detector"),
        ("verified-dead", "0.4 V", "voltmeter"),
    ],
)
def test_where_a_stop_or_a_step_hangs_on_it_no_list_makes_it_better(
    test: str, text: str, kind: str, shipped: Knowledge
) -> None:
    by_kind = read(shipped, test, text)
    assert read(shipped, test, text, Listed("x", kind)) == by_kind
    worse = read(shipped, test, text, Listed("x", kind, percent=40.0, counts=9, fixed=9.0))
    assert by_kind.possible <= worse.possible
    assert worse.classified is not None and by_kind.classified is not None
    assert u_of(worse) > u_of(by_kind)


def test_what_is_held_to_its_kind_is_what_hands_depend_on(shipped: Knowledge) -> None:
    held = meters_of(shipped, (GOOD,)).held_to_kind
    steps = {step for step in CONFIRMED if shipped.tests[step].reads}
    assert steps <= held
    assert "room-carbon-monoxide" in held and "combustible-gas-sweep" in held
    assert held.isdisjoint({"capacitance-out-of-circuit", "external-static", "blower-amps"})


ACCURACY = st.floats(min_value=0.0, max_value=20.0)


@given(st.lists(st.tuples(ACCURACY, ACCURACY, ACCURACY), min_size=1, max_size=3), st.booleans())
def test_the_worst_is_as_bad_as_each(
    accuracies: list[tuple[float, float, float]], and_its_kind: bool
) -> None:
    kind = INSTRUMENTS["thermometer"]
    own = [Listed("x", kind.id, *each) for each in accuracies]
    worst = at_worst(kind, own, and_its_kind=and_its_kind)
    for each in (*own, *((kind,) if and_its_kind else ())):
        assert worst.percent >= each.percent and worst.counts >= each.counts
        assert worst.fixed >= each.fixed
    assert replace(worst, percent=kind.percent, counts=kind.counts, fixed=kind.fixed) == kind
