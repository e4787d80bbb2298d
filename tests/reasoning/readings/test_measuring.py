"""What typed text measures: the grammar of a test, the quantities it gives, how sure they are."""

from __future__ import annotations

import math

import pytest

from tests.building import base, measured, unit_of
from troubleshoot.knowledge.model import Knowledge, Quantity, Read, Test
from troubleshoot.quantities.typed import NotUnderstood
from troubleshoot.reasoning.readings.measuring import quantities_of, read_text, stated_conditions
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.readings.values import Value, Values
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.cases.file import read_case

QUANTITIES = [
    Quantity("volts", "V", "volts"),
    Quantity("volts-unbalance", "percent", "between phases"),
    Quantity("ohms", "ohm", "windings"),
    Quantity("open-pairs", "count", "pairs that read open"),
    Quantity("insulation", "Mohm", "winding to shell"),
    Quantity("outdoor-temperature", "F", "outdoors"),
    Quantity("shell", "F", "shell", per="compressor"),
]
KNOWLEDGE = base(quantities=QUANTITIES)


def test_with(*reads: Read, meter: str | None = None) -> Test:
    return measured("test", {"normal": {"above": 0}}, reads=reads, meter=meter)


test_with.__test__ = False  # type: ignore[attr-defined]


def taken(test: Test, text: str, know: Knowledge = KNOWLEDGE) -> dict[str, Value]:
    typed = read_text(test, text, know)
    return quantities_of(test, typed, know, Values(know, unit_of(know), {}), None)


def test_the_meter_s_accuracy_becomes_a_standard_uncertainty() -> None:
    # JCGM 100, 4.3.7: limits without more are taken as even, error / sqrt(3). The accuracy itself,
    # 1 % of reading + 3 counts, is common practice, no source.
    found = taken(test_with(Read("volts"), meter="voltmeter"), "208.4 V")["volts"]
    assert found.number == 208.4
    assert found.u == pytest.approx((2.084 + 0.3) / math.sqrt(3))


def test_a_stated_plus_or_minus_wins_over_the_meter_s() -> None:
    found = taken(test_with(Read("volts"), meter="voltmeter"), "208 +/- 1 V")["volts"]
    assert found.u == pytest.approx(1 / math.sqrt(3))


def test_other_units_of_the_same_kind_are_converted() -> None:
    assert taken(test_with(Read("volts")), "480 mV")["volts"].number == pytest.approx(0.48)


def test_legs_reduce_each_as_its_read_says_and_are_judged_hard() -> None:
    test = test_with(Read("volts", "lowest"), Read("volts-unbalance", "unbalance", "V"))
    found = taken(test, "230/232/225 V")
    assert found["volts"].number == 225 and not found["volts"].soft
    assert found["volts-unbalance"].number == pytest.approx(100 * 4 / 229)


def test_a_spread_may_be_typed_as_what_it_is() -> None:
    test = test_with(Read("volts-unbalance", "unbalance", "V"))
    assert taken(test, "2.1 %")["volts-unbalance"].number == pytest.approx(2.1)
    assert taken(test, "230/232/225 V")["volts-unbalance"].number == pytest.approx(100 * 4 / 229)


def test_several_values_are_refused_where_one_is_asked_for() -> None:
    with pytest.raises(NotUnderstood, match="more than one number"):
        read_text(test_with(Read("volts")), "208/209/207 V", KNOWLEDGE)


def test_counts_of_legs_are_exact() -> None:
    test = test_with(Read("ohms", "lowest"), Read("open-pairs", "count-open"), meter="ohmmeter")
    found = taken(test, "OL/OL/2.3 ohm")
    assert found["open-pairs"].number == 2 and found["open-pairs"].u == 0
    alone = taken(test, "OL")
    assert alone["ohms"].number == math.inf and alone["open-pairs"] == Value(1.0)


def test_over_range_has_no_uncertainty() -> None:
    assert taken(test_with(Read("ohms"), meter="ohmmeter"), "OL")["ohms"].u == 0


def test_a_reading_of_which_only_a_bound_is_known_is_judged_hard() -> None:
    found = taken(test_with(Read("insulation"), meter="insulation-tester"), ">200 Mohm")
    assert found["insulation"].number == pytest.approx(200, rel=1e-5)
    assert not found["insulation"].soft


@pytest.mark.parametrize("set_point", ["0.6 in wc", "-.60"])
@pytest.mark.parametrize(
    ("name", "text", "outcome"),
    [
        ("room-carbon-monoxide", "<9 ppm", "normal"),
        ("room-carbon-monoxide", "9 ppm", "elevated"),
        ("combustible-gas-sweep", "<10 % LEL", "trace"),
        ("combustible-gas-sweep", "10 % LEL", "leak"),
        ("burner-ground-and-polarity", "<1 ohm", "normal"),
        ("compressor-insulation", "<1 Mohm", "low"),
        ("gas-inlet-pressure-idle", ">14 in wc", "high"),
        ("draft-at-pressure-switch", "-0.94 in wc", "above"),
        ("draft-at-pressure-switch", "-0.30", "below"),
        ("draft-at-pressure-switch", "0.30", "below"),
        ("flame-current", "-2.1 uA", "good"),
        ("compressor-amp-unbalance", "3.6", "normal"),
        ("blower-amps", "8.9/6.7/6.5 A", "high, unbalanced"),
        ("blower-amps", "7.1/7.0/7.1 A", "normal"),
        ("airflow-by-blower-table", "400 cfm/ton", "normal"),
        ("airflow-by-blower-table", "3000 cfm", "low"),
        ("breaker-and-disconnect", "60 A", "wrong-size"),
    ],
)
def test_typed_readings_of_the_shipped_tests_fall_where_a_mechanic_puts_them(
    shipped: Knowledge, name: str, text: str, outcome: str, set_point: str
) -> None:
    """Regression: "<9 ppm" of CO stopped a job, a draft with its minus was none, of amps both high
    and unbalanced only the one was seen, cfm were refused where cfm per ton is judged, and a set
    point with its minus had 0.30 beat it.
    """
    plate = {
        "pressure-switch-set-point": set_point,
        "gas-inlet-maximum": "14 in wc",
        "blower-fla": "7.6 A",
        "cooling-tons": "10 ton",
        "maximum-fuse": "45 A",
    }
    facts = {"supply-phase": "three", "compressor-phase": "three", "blower-motor": "three-phase"}
    case = read_case(
        shipped,
        {"unit": {**facts, **plate}, "readings": [{"test": name, "text": text}]},
    )
    (reading, *_) = take_readings(shipped, case)[0]
    assert ", ".join(reading.seen) == outcome


def test_a_hot_shell_is_no_reading_of_the_crankcase_heater(shipped: Knowledge) -> None:
    """Regression: that test needs two hours off; a shell read while running once made it one."""
    readings = [{"test": "compressor-shell-heat", "text": "178 F"}]
    case = read_case(shipped, {"conditions": {"outdoor-temperature": "98 F"}, "readings": readings})
    found = take_readings(shipped, case)[0]
    assert [reading.test for reading in found] == ["compressor-shell-heat"]


def test_a_test_that_reads_nothing_takes_no_number() -> None:
    look = Test("look", "look", "area", "look", ())
    with pytest.raises(NotUnderstood, match="takes no number") as refused:
        read_text(look, "12", KNOWLEDGE)
    assert refused.value.instead == "choose one of its outcomes"


@pytest.mark.parametrize("text", ["", "perhaps 40", "12 psig", "208/x/207"])
def test_what_is_no_reading_of_the_test_is_refused_with_what_would_do(text: str) -> None:
    with pytest.raises(NotUnderstood) as refused:
        read_text(test_with(Read("volts", "highest")), text, KNOWLEDGE)
    assert refused.value.why and refused.value.instead


def test_stated_conditions_count_everywhere_and_as_exact() -> None:
    unit = unit_of(KNOWLEDGE, circuits=2)
    found = stated_conditions(KNOWLEDGE, unit, {"outdoor-temperature": "35 C", "shell": "150 F"})
    assert found[("outdoor-temperature", None)].number == pytest.approx(95)
    assert found[("outdoor-temperature", None)].u == 0
    assert {place for name, place in found if name == "shell"} == {
        None, Place("compressor", 1), Place("compressor", 2),
    }  # fmt: skip
