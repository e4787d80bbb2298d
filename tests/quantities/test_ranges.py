"""The error that every formula raises outside its range."""

import math

import pytest

from troubleshoot.quantities.ranges import OutOfRange, require, require_all


def test_a_value_inside_the_bounds_passes_and_the_bounds_say_whether_they_belong_to_it() -> None:
    require("voltage", 660, "V", above=0, at_most=660)
    require("voltage", 0, "V", at_least=0, below=1)
    with pytest.raises(OutOfRange):
        require("voltage", 0, "V", above=0)
    with pytest.raises(OutOfRange):
        require("voltage", 1, "V", below=1)


def test_the_error_names_the_value_its_unit_and_what_it_must_be() -> None:
    with pytest.raises(OutOfRange) as raised:
        require("voltage", 700, "V", above=0, at_most=660)
    assert raised.value.key == "voltage"
    assert str(raised.value) == (
        "voltage is 700 V; it must be above 0 V and at most 660 V; read it again"
    )


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf])
def test_what_is_no_finite_number_is_outside_every_range(value: float) -> None:
    with pytest.raises(OutOfRange, match="over range or missing"):
        require("voltage", value)


def test_of_several_values_there_must_be_one_and_each_must_be_inside() -> None:
    require_all("values", [1, 2], "uF", above=0)
    with pytest.raises(OutOfRange, match="no value"):
        require_all("values", [], "uF", above=0)
    with pytest.raises(OutOfRange, match="-2 uF"):
        require_all("values", [1, -2], "uF", above=0)
