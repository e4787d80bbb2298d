"""From numbers to outcome words: boundary pairs, relative limits, soft evidence near a limit."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.building import base, case, fault, measured, unit_of
from troubleshoot.knowledge.model import (
    Bound,
    Derivation,
    Knowledge,
    LimitLine,
    Outcome,
    PlateValue,
    Quantity,
    Read,
    Test,
)
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.classify import Classified, classify
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.visit.cases.file import read_case

AMPS = measured(
    "amps",
    {"low": {"below": 5}, "normal": {"at_least": 5, "at_most": 10}, "high": {"above": 10}},
    reads=(Read("amps"),),
)
KNOWLEDGE = base([AMPS], quantities=[Quantity("amps", "A", "amps")])


def judged(x: float, u: float = 0.0, test: Test = AMPS, know: Knowledge = KNOWLEDGE) -> Classified:
    found = classify(test, None, Values(know, unit_of(know), {("amps", None): Value(x, u)}))
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("x", "outcome"),
    [(4.999, "low"), (5.0, "normal"), (10.0, "normal"), (10.001, "high"), (0.0, "low")],
)
def test_limits_include_and_exclude_what_they_say(x: float, outcome: str) -> None:
    assert judged(x).outcome == outcome


def phi(z: float) -> float:
    return 0.5 * (1 + math.erf(z / math.sqrt(2)))


@given(st.floats(0.1, 20), st.floats(0.05, 2))
def test_the_chance_of_each_outcome_is_its_part_of_the_normal_distribution(
    x: float, u: float
) -> None:
    found = judged(x, u)
    low, high = phi((5 - x) / u), 1 - phi((10 - x) / u)
    expected = {"low": low, "normal": 1 - low - high, "high": high}
    for outcome, p in expected.items():
        assert found.chances.get(outcome, 0.0) == pytest.approx(p, abs=1e-9)


def test_the_verdict_follows_the_guard_band() -> None:
    # JCGM 106 / ISO 14253-1: within only with a guard band of the expanded uncertainty (k = 2).
    assert judged(7.0, 0.25).verdict == "within"
    assert judged(5.4, 0.25).verdict == "too close to call with this meter"
    assert judged(4.6, 0.25).verdict == "too close to call with this meter"
    assert judged(4.4, 0.25).verdict == "outside"
    assert (judged(7.0, 0.25).low, judged(7.0, 0.25).high) == (5, 10)


def test_a_reading_on_the_limit_moves_the_ranking_half_as_far() -> None:
    know = base(
        [AMPS],
        [fault("weak", {"almost-always": [{"amps": "low"}]}), fault("other")],
        quantities=[Quantity("amps", "A", "amps")],
    )
    reasoner = Reasoner(know)

    def chance(text: str) -> float:
        found = reasoner.conclude(case(know, Answer("amps", text=text)))
        return next(c.probability for c in found.causes if c.fault.id == "weak")

    assert chance("7 A") < chance("5.0 A") < chance("2 A")


def test_capacitor_7_5_microfarads_read_7_67_and_again_7_66_is_good_and_agrees() -> None:
    # Common practice, no published source: a rated 7.5 uF section that reads 7.67 is good.
    from troubleshoot.quantities.instruments import INSTRUMENTS, agree

    test = measured(
        "capacitance",
        {
            "normal": {
                "relative_to": "rated", "compared_as": "percent-difference",
                "at_least": -6, "at_most": 6,
            },
            "low": {"relative_to": "rated", "compared_as": "percent-difference", "below": -6},
            "high": {"relative_to": "rated", "compared_as": "percent-difference", "above": 6},
        },
        reads=(Read("capacitance"),),
        meter="capacitance-meter",
    )  # fmt: skip
    know = base(
        [test],
        quantities=[Quantity("capacitance", "uF", "measured")],
        plates=[PlateValue("rated", "uF", "nameplate", "rated")],
    )
    found = read_case(know, {"unit": {"rated": "7.5 uF"}, "readings": {"capacitance": "7.67 uF"}})
    reading = take_readings(know, found)[0][0]
    assert reading.classified is not None
    assert reading.seen == ("normal",) and reading.classified.verdict == "within"
    assert reading.classified.low == pytest.approx(7.05)
    assert reading.classified.high == pytest.approx(7.95)
    assert agree(7.67, 7.66, INSTRUMENTS["capacitance-meter"], 0.01)


def test_a_limit_that_leans_on_an_unknown_value_cannot_be_judged() -> None:
    test = measured("amps", {"high": {"relative_to": "rla", "compared_as": "percent-of",
                                      "above": 100}}, reads=(Read("amps"),))  # fmt: skip
    know = base(
        [test],
        quantities=[Quantity("amps", "A", "amps")],
        plates=[PlateValue("rla", "A", "nameplate", "rated load amps")],
    )
    reading = take_readings(know, case(know, Answer("amps", text="12 A")))[0][0]
    assert reading.seen == () and reading.text == "12 A"


def test_open_and_zero_are_outcomes_of_their_own() -> None:
    test = Test(
        "ohms", "ohms", "area", "measurement",
        (
            Outcome("open", limits=(LimitLine((Bound("ohms", reads="open"),)),)),
            Outcome("shorted", limits=(LimitLine((Bound("ohms", reads="zero"),)),)),
            Outcome("normal", limits=(LimitLine((Bound("ohms", above=0),)),)),
        ),
        healthy=("normal",), reads=(Read("ohms"),),
    )  # fmt: skip
    know = base([test], quantities=[Quantity("ohms", "ohm", "ohms")])
    for text, outcome in (("OL", "open"), ("0 ohm", "shorted"), ("12 ohm", "normal")):
        reading = take_readings(know, case(know, Answer("ohms", text=text)))[0][0]
        assert reading.seen == (outcome,)


def test_a_derived_quantity_carries_the_uncertainty_of_its_inputs() -> None:
    know = base(
        quantities=[
            Quantity("a", "F", "a"),
            Quantity("b", "F", "b"),
            Quantity("d", "F-diff", "a less b", computed=(Derivation("difference", ("a", "b")),)),
        ]
    )
    values = Values(know, unit_of(know), {("a", None): Value(50, 0.3), ("b", None): Value(40, 0.4)})
    found = values.get("d", None)
    assert found is not None
    assert found.number == 10 and found.u == pytest.approx(0.5)


def test_legs_are_judged_by_the_worst() -> None:
    test = measured(
        "drop", {"normal": {"below": 0.3}, "worn": {"at_least": 0.3}},
        reads=(Read("drop", "highest"),),
    )  # fmt: skip
    know = base([test], quantities=[Quantity("drop", "V", "drop")])
    reading = take_readings(know, case(know, Answer("drop", text="0.1/0.1/0.62 V")))[0][0]
    assert reading.seen == ("worn",)
    assert reading.chances == {"worn": 1.0}


def test_without_a_healthy_band_the_verdict_is_that_of_the_outcome() -> None:
    test = measured("amps", {"low": {"below": 5}, "high": {"at_least": 5}}, healthy=())
    assert judged(7.0, 0.25, test).verdict == "outside"
    assert (judged(7.0, 0.25, test).low, judged(7.0, 0.25, test).high) == (None, None)


def test_healthy_neighbours_are_one_band() -> None:
    test = measured(
        "amps", {"low": {"below": 5}, "cool": {"at_least": 5, "below": 7},
                 "warm": {"at_least": 7, "at_most": 10}, "high": {"above": 10}},
        healthy=("cool", "warm"),
    )  # fmt: skip
    found = judged(7.1, 0.25, test)
    assert found.verdict == "within" and (found.low, found.high) == (5, 10)
    assert found.chances["cool"] > 0.3 and found.chances["warm"] > 0.3


def test_two_quantities_that_decide_are_judged_hard() -> None:
    line = LimitLine((Bound("amps", above=5), Bound("volts", below=200)))
    rest = LimitLine((Bound("amps", at_most=5),))
    test = Test("t", "t", "area", "computed",
                (Outcome("bad", limits=(line,)), Outcome("normal", limits=(rest,))),
                healthy=("normal",))  # fmt: skip
    know = base([test], quantities=[Quantity("amps", "A", "a"), Quantity("volts", "V", "v")])
    values = Values(
        know, unit_of(know), {("amps", None): Value(5.01, 0.5), ("volts", None): Value(199, 5)}
    )
    found = classify(test, None, values)
    assert found is not None and found.outcome == "bad" and found.chances == {"bad": 1.0}


def test_of_several_quantities_that_decide_the_one_that_is_read_is_shown() -> None:
    """Regression: an outdoor-air fraction was shown as a difference of temperatures in F."""
    line = LimitLine((Bound("spread", above=10), Bound("share", above=20)))
    rest = LimitLine((Bound("share", at_most=20),))
    test = Test("t", "t", "area", "computed",
                (Outcome("high", limits=(line,)), Outcome("normal", limits=(rest,))),
                healthy=("normal",), reads=(Read("share"),))  # fmt: skip
    quantities = [Quantity("spread", "F-diff", "s"), Quantity("share", "percent", "p")]
    know = base([test], quantities=quantities)
    known = {("spread", None): Value(25, 1), ("share", None): Value(60, 3)}
    found = classify(test, None, Values(know, unit_of(know), known))
    assert found is not None and (found.quantity, found.value) == ("share", 60)


def test_a_reading_between_all_limits_has_no_outcome() -> None:
    test = measured("amps", {"low": {"below": 5}, "high": {"above": 10}})
    values = Values(KNOWLEDGE, unit_of(KNOWLEDGE), {("amps", None): Value(7, 0.1)})
    assert classify(test, None, values) is None


def test_an_outcome_at_a_single_point_is_taken_as_read() -> None:
    test = measured("amps", {"normal": {"at_least": 3, "at_most": 3}})
    assert judged(3.0, 0.2, test).chances == {"normal": 1.0}


def test_outcomes_this_equipment_cannot_show_take_no_part() -> None:
    from dataclasses import replace

    txv = {"metering": ("txv",)}
    valve = replace(AMPS.outcomes[1], id="normal-valve", exists_when=txv)
    test = replace(AMPS, outcomes=(valve, *AMPS.outcomes), healthy=("normal", "normal-valve"))
    for metering, outcome in (("txv", "normal-valve"), ("fixed-orifice", "normal")):
        unit = unit_of(KNOWLEDGE, metering=metering)
        found = classify(test, None, Values(KNOWLEDGE, unit, {("amps", None): Value(7, 0.1)}))
        assert found is not None and found.outcome == outcome
