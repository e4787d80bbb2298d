"""Every form of answer that people type is read into the unit that the question asks for."""

import math

import pytest

from troubleshoot.quantities.typed import Bound, Expected, Leg, NotUnderstood, read
from troubleshoot.quantities.units import UnitError


def one(text: str, unit: str, *, over_range: bool = False) -> Leg:
    (leg,) = read(text, Expected(unit, allow_over_range=over_range)).values
    return leg


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [
        ("118 psig", "psig", 118.0),
        ("118#", "psig", 118.0),
        ("118 lbs", "psig", 118.0),
        ("118 psi", "psig", 118.0),
        ("46F", "F", 46.0),
        ("46 °F", "F", 46.0),
        ("46 deg. F", "F", 46.0),
        ("8 C", "F", 46.4),
        ("9 F", "F-diff", 9.0),
        ("5 C", "F-diff", 9.0),
        ("9.8 mfd", "uF", 9.8),
        ("9.8uF", "uF", 9.8),
        ("9.8MFD", "uF", 9.8),
        ("9.8 \u00b5F", "uF", 9.8),
        ("9.8 \u03bcF", "uF", 9.8),
        ("9800 nF", "uF", 9.8),
        ("460V", "V", 460.0),
        ("24 vac", "V", 24.0),
        ("24 V DC", "V", 24.0),
        ("30 mV", "V", 0.03),
        ("12.5a", "A", 12.5),
        ("12.5 amps", "A", 12.5),
        (".5 A", "A", 0.5),
        ("2.1 \u00b5A", "uA", 2.1),
        ("0.35 in. w.c.", "in-wc", 0.35),
        ('3.5" wc', "in-wc", 3.5),
        ("3.5\u201d w.c.", "in-wc", 3.5),
        ("3.5 in wc", "in-wc", 3.5),
        ("3.5 inches of water", "in-wc", 3.5),
        ("10 in vac", "psig", -4.911541474703635),
        ("10 inches of vacuum", "psig", -4.911541474703635),
        # A compound gauge shows a vacuum as inches of mercury below zero.
        ("-10 inHg", "psig", -4.911541474703635),
        ('-10" Hg', "kPa-gauge", -33.86388640341),
        ('3.5"', "in-wc", 3.5),
        ("3.5''", "in", 3.5),
        ("45 Meg", "Mohm", 45.0),
        ("45M", "Mohm", 45.0),
        ("45 Mohm", "Mohm", 45.0),
        ("45 M\u2126", "Mohm", 45.0),
        ("1.2k", "ohm", 1200.0),
        ("1.2 kohm", "ohm", 1200.0),
        ("10 \u03a9", "ohm", 10.0),
        ("5,000", "ohm", 5000.0),
        ("1,250,000.5 ohm", "ohm", 1250000.5),
        ("1/2", "A", 0.5),
        ("1/2 hp", "hp", 0.5),
        ("1 1/2", "in", 1.5),
        ("1-1/2 in", "in", 1.5),
        ("3\u00bd in", "in", 3.5),
        ("-\u00bd in", "in", -0.5),
        ('1/4"/ft', "in-per-ft", 0.25),
        ("2 ft 6 in", "in", 30.0),
        ("3' 6 1/2\"", "in", 42.5),
        ("8 lb 4 oz", "lb", 8.25),
        ("9 lbs 3 ozs", "lb", 9.1875),
        # A psi is 6894.757293168 Pa, an inch of water at 60 F 248.840070179 Pa (NIST SP 811).
        ("4 oz", "in-wc", 6894.757293168 / 4 / 248.840070179),
        ("8.7 mbar", "in-wc", 870 / 248.840070179),
        ("1/4 in per foot", "in-per-ft", 0.25),
        ("13.5#", "lb", 13.5),
        ("1 min 30 s", "min", 1.5),
        ("90 sec", "min", 1.5),
        ("-6%", "percent", -6.0),
        ("\u22126 %", "percent", -6.0),
        ("+6 pct", "percent", 6.0),
        ("15 % LEL", "percent-LEL", 15.0),
        ("3.2:1", "ratio", 3.2),
        ("3.2 to 1", "ratio", 3.2),
        ("50 %", "ratio", 0.5),
        ("400 cfm/ton", "cfm-per-ton", 400.0),
        ("100,000 BTU", "Btu/h", 100000.0),
        ("2 ft\u00b3", "ft3", 2.0),
        ("-0", "A", 0.0),
    ],
)
def test_a_typed_value_is_read_into_the_unit_asked_for(text: str, unit: str, value: float) -> None:
    assert one(text, unit).value == pytest.approx(value, rel=1e-12)
    assert one(text, unit).unit == unit


def test_what_was_typed_is_kept_as_typed() -> None:
    assert read("  118 psig ", Expected("psig")).text == "  118 psig "


@pytest.mark.parametrize(
    "text", ["~128 psig", "about 128", "approx. 128 psig", "around 128", "roughly 128#", "ca. 128"]
)
def test_a_word_that_says_about_is_let_pass(text: str) -> None:
    assert one(text, "psig").value == 128.0


@pytest.mark.parametrize("text", ["118", "5,000", "1 1/2"])
def test_a_missing_unit_is_assumed_and_marked_as_assumed(text: str) -> None:
    assert one(text, "psig").typed_unit is None


@pytest.mark.parametrize("text", ["46 deg", "46°", "46\u00ba", "46 degrees"])
def test_degrees_alone_leave_the_scale_assumed(text: str) -> None:
    leg = one(text, "F")
    assert (leg.value, leg.typed_unit) == (46.0, None)


@pytest.mark.parametrize("text", ["0.5 psig", "0.5 psi", "3.447 kPag", "0.03447 barg"])
def test_fuel_gas_is_told_over_the_air_of_the_room(text: str) -> None:
    """Regression: 0.5 psig at a gas inlet was refused. It is 13.85 in. of water at 60 F."""
    assert one(text, "in-wc").value == pytest.approx(13.85, abs=0.02)


@pytest.mark.parametrize("text", ["300 psig", "3 barg"])
def test_what_a_gauge_shows_is_no_fall_of_pressure(text: str) -> None:
    with pytest.raises(NotUnderstood):
        one(text, "psi")


@pytest.mark.parametrize(
    ("text", "unit", "typed_unit"),
    [
        ("118#", "psig", "psig"),
        ("8 C", "F", "C"),
        ("1.2k", "ohm", "kohm"),
        ("8 bar", "psig", "bar-gauge"),
    ],
)
def test_the_typed_unit_is_told(text: str, unit: str, typed_unit: str) -> None:
    assert one(text, unit).typed_unit == typed_unit


@pytest.mark.parametrize(
    ("text", "unit", "resolution"),
    [
        ("118", "psig", 1.0),
        ("118.0", "psig", 0.1),
        ("24.5 V", "V", 0.1),
        ("1.755 V", "V", 0.001),
        ("1.2k", "ohm", 100.0),
        ("5,000", "ohm", 1.0),
        ("3/8", "in", 0.125),
        ("8 C", "F", 1.8),
        ("8 lb 4 oz", "lb", 1 / 16),
        ("20 in Hg vac", "psig", 0.4911541),
        ("20 in vac", "psig", 0.4911541),
    ],
)
def test_the_resolution_is_the_last_digit_typed(text: str, unit: str, resolution: float) -> None:
    assert one(text, unit).resolution == pytest.approx(resolution)


@pytest.mark.parametrize(
    "text",
    [
        "OL",
        "ol",
        "O.L",
        "0L",
        "OL Mohm",
        "over range",
        "open",
        "infinite",
        "infinity",
        "\u221e ohm",
    ],
)
def test_over_range_is_more_than_any_resistance(text: str) -> None:
    leg = one(text, "Mohm", over_range=True)
    assert (leg.over_range, leg.value, leg.resolution) == (True, math.inf, 0.0)


def test_a_capacitance_may_be_over_range() -> None:
    assert one("OL", "uF", over_range=True).over_range


def test_over_range_is_never_allowed_for_a_voltage() -> None:
    with pytest.raises(UnitError, match="never over range"):
        Expected("V", allow_over_range=True)


@pytest.mark.parametrize(
    ("text", "unit", "value", "bound"),
    [
        (">200 Mohm", "Mohm", 200.0, "more-than"),
        ("> 200", "Mohm", 200.0, "more-than"),
        ("over 200 Meg", "Mohm", 200.0, "more-than"),
        ("more than 200", "Mohm", 200.0, "more-than"),
        ("200+ meg", "Mohm", 200.0, "more-than"),
        ("500+", "Mohm", 500.0, "more-than"),
        ("\u2265200", "Mohm", 200.0, "more-than"),
        ("<0.1 V", "V", 0.1, "less-than"),
        ("less than 0.1 V", "V", 0.1, "less-than"),
        ("118", "psig", 118.0, None),
        # More vacuum is a lower gauge pressure.
        (">20 in. Hg vac", "psig", -9.823083, "less-than"),
        ("<-20 inHg", "psig", -9.823083, "less-than"),
        ("<20 in. Hg vac", "psig", -9.823083, "more-than"),
    ],
)
def test_a_bound_is_kept_with_its_limit(
    text: str, unit: str, value: float, bound: Bound | None
) -> None:
    leg = one(text, unit)
    assert leg.value == pytest.approx(value)
    assert leg.bound == bound


@pytest.mark.parametrize(
    ("text", "unit", "value", "plus_minus"),
    [
        ("118 +/- 2", "psig", 118.0, 2.0),
        ("118±2", "psig", 118.0, 2.0),
        ("118 + / - 2 psi", "psig", 118.0, 2.0),
        ("118 psig +- 2 psig", "psig", 118.0, 2.0),
        ("46 F ± 2 F", "F", 46.0, 2.0),
        ("10 C ± 1 C", "F", 50.0, 1.8),
        ("40 uF ± 6%", "uF", 40.0, 2.4),
        ("40 ± 6 %", "uF", 40.0, 2.4),
        ("50 ± 2 %", "percent", 50.0, 2.0),
        ("50 % ± 2 %", "ratio", 0.5, 0.02),
        ("118", "psig", 118.0, None),
    ],
)
def test_a_plus_or_minus_is_read_as_a_difference(
    text: str, unit: str, value: float, plus_minus: float | None
) -> None:
    leg = one(text, unit)
    assert leg.value == pytest.approx(value)
    assert leg.plus_minus == (None if plus_minus is None else pytest.approx(plus_minus))
