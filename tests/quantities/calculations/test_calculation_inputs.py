"""Typed keys and values of a calculation: what is understood, what is refused, what is assumed."""

from collections.abc import Mapping

import pytest

from troubleshoot.quantities.calculations.inputs import WrongUse, WrongValue, read_inputs
from troubleshoot.quantities.calculations.model import Given, Value
from troubleshoot.quantities.catalogue import find


def given(name: str, **typed: str) -> Given:
    pairs = [(key.replace("_", "-"), text) for key, text in typed.items()]
    return read_inputs(find(name), pairs)


def values(name: str, **typed: str) -> Mapping[str, Value]:
    return given(name, **typed).values


def refusal(name: str, **typed: str) -> list[tuple[str, str]]:
    with pytest.raises(WrongUse) as raised:
        given(name, **typed)
    return [(each.key, each.problem) for each in raised.value.problems]


def test_a_value_is_taken_to_the_unit_of_its_parameter() -> None:
    found = values("resistance-at-temperature", resistance="2 kohm", t1="20 C", t2="212 F")
    assert found["resistance"] == 2000
    assert found["t1"] == pytest.approx(68)
    assert found["t2"] == 212


def test_a_bare_number_is_taken_in_the_unit_asked_for_and_that_is_said() -> None:
    found = given("slip", sync="1800", running="1750 rpm")
    assert found.values == {"sync": 1800, "running": 1750}
    assert found.notes == ("Units assumed, none was typed: sync in rpm.",)


def test_a_default_is_taken_and_that_is_said() -> None:
    found = given("capacitance-under-load", current="4 A", voltage="370 V")
    assert found.number("frequency") == 60
    assert found.notes == ("frequency was not given: 60 Hz was taken.",)


def test_an_absolute_pressure_becomes_the_gauge_pressure_at_the_site() -> None:
    typed = {"refrigerant": "R-410A", "line_temperature": "50 F"}
    at_sea = values("superheat", suction_pressure="132.696 psia", **typed)
    assert at_sea["suction-pressure"] == pytest.approx(118, abs=0.01)
    aloft = values("superheat", suction_pressure="132.696 psia", altitude="5000 ft", **typed)
    assert aloft["suction-pressure"] == pytest.approx(120.47, abs=0.01)


def test_inches_of_mercury_could_be_a_vacuum_and_are_no_absolute_pressure() -> None:
    problems = refusal(
        "superheat", refrigerant="R-22", suction_pressure="20 inHg", line_temperature="50 F"
    )
    assert [key for key, _ in problems] == ["suction-pressure"]


@pytest.mark.parametrize(
    "typed", ["40/5", "40 uF / 5 uF", "40, 5", "40,5", "40; 5", "40uF,5uF", "40.0,5.0"]
)
def test_several_values_may_be_parted_in_any_clear_way(typed: str) -> None:
    assert values("capacitors-in-parallel", values=typed)["values"] == (40, 5)


def test_a_key_given_again_adds_a_value_where_several_belong() -> None:
    pairs = [("values", "40 uF"), ("values", "5 uF")]
    assert read_inputs(find("capacitors-in-parallel"), pairs).values["values"] == (40, 5)


def test_where_two_values_belong_a_comma_cannot_part_thousands() -> None:
    assert values("repeatability", values="460,461,459")["values"] == (460, 461, 459)
    assert refusal("repeatability", values="460,061")[0][0] == "values"


def test_where_one_value_is_enough_a_comma_that_could_part_thousands_is_refused() -> None:
    assert refusal("circuit-ampacity", largest="2000 A", others="1,500")[0][0] == "others"


@pytest.mark.parametrize("typed", ["+/-6 %", "±6%", "6 %", "+-6", "6"])
def test_a_tolerance_may_be_written_as_on_the_label(typed: str) -> None:
    assert values("capacitance-deviation", rated="40 uF", tolerance=typed)["tolerance"] == 6


def test_a_share_may_be_written_as_a_percentage_or_as_a_part_of_one() -> None:
    typed = {"return_air": "75 F", "outdoor": "35 F"}
    assert values("mixed-air-temperature", fraction="20 %", **typed)["fraction"] == 20
    assert values("mixed-air-temperature", fraction="20", **typed)["fraction"] == 20
    assert values("mixed-air-temperature", fraction="0.2", **typed)["fraction"] == 20
    assert values("mixed-air-temperature", fraction="0.2 %", **typed)["fraction"] == 0.2
    unsure = given("mixed-air-temperature", fraction="0.2 +/- 0.05", **typed)
    assert unsure.spreads["fraction"] == pytest.approx(5)


def test_a_bare_1_could_be_one_or_a_hundred_percent() -> None:
    problems = refusal("mixed-air-temperature", return_air="75 F", outdoor="35 F", fraction="1")
    assert problems == [("fraction", "'1' could be 1 % or 100 %")]


def test_over_range_is_understood_where_a_winding_may_be_open_and_nowhere_else() -> None:
    assert values("winding-check", c_r="OL", c_s="OL", r_s="4")["c-r"] == float("inf")
    assert refusal("slip", sync="OL", running="1750")[0][0] == "sync"


def test_a_bound_is_no_figure_to_compute_with() -> None:
    problems = refusal("insulation-resistance-at-40c", resistance=">200 Mohm", temperature="70 F")
    assert problems == [("resistance", "'>200 Mohm' is a bound and no figure")]


def test_a_calculation_in_any_unit_takes_the_first_one_typed_and_converts_the_others() -> None:
    found = given(
        "conformance", reading="40.1 uF", low_limit="37600 nF", high_limit="42.4", u="0.2"
    )
    assert found.unit == "uF"
    assert found.values["low-limit"] == pytest.approx(37.6)


def test_an_uncertainty_of_a_temperature_is_a_difference_of_temperatures() -> None:
    found = given("conformance", reading="50 F", high_limit="55 F", u="0.5 C")
    assert found.number("u") == pytest.approx(0.9)


def test_every_problem_is_named_at_once() -> None:
    assert refusal("slip", sync="1,5", running="fast") == [
        (
            "sync",
            "'1,5' has a comma that could be a decimal point or a slip between thousands",
        ),
        ("running", "'fast' does not begin with a number that I can read"),
    ]


def test_unknown_missing_and_double_keys_are_wrong_use_and_no_wrong_value() -> None:
    pairs = [("sync", "1800"), ("sync", "1750"), ("runing", "1700")]
    with pytest.raises(WrongUse) as raised:
        read_inputs(find("slip"), pairs)
    assert not isinstance(raised.value, WrongValue)
    assert [str(each) for each in raised.value.problems] == [
        "sync is given twice; give it once.",
        "runing is no parameter of slip; did you mean running?",
        "running is missing; give running=..., speed under load.",
    ]


def test_alternatives_are_given_as_many_as_they_ask_for() -> None:
    assert refusal("moist-air", dry_bulb="80 F") == [("wet-bulb", "wet-bulb is missing")]
    assert refusal("moist-air", dry_bulb="80 F", wet_bulb="67 F", dew_point="60 F") == [
        ("dew-point", "dew-point comes on top of wet-bulb")
    ]
    assert refusal(
        "moist-air", dry_bulb="80 F", wet_bulb="67 F", pressure="13 psia", altitude="3000 ft"
    ) == [("altitude", "altitude comes on top of pressure")]
    assert refusal("fan-laws", speed_1="1000", speed_2="900") == [("flow", "flow is missing")]


def test_a_word_must_be_one_of_its_choices() -> None:
    assert values("excess-air", o2="5 %", gas="propane")["gas"] == "propane"
    assert refusal("excess-air", o2="5 %", gas="coal")[0][0] == "gas"
    assert values("saturation", refrigerant="r22", temperature="40")["refrigerant"] == "R-22"
