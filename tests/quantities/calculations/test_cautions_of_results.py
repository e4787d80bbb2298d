"""What a result must not be used for is said beside it."""

from __future__ import annotations

import pytest

from troubleshoot.quantities.catalogue import answer


def cautions(name: str, **typed: str) -> str:
    pairs = [(key.replace("_", "-"), text) for key, text in typed.items()]
    return " ".join(answer(name, pairs).cautions)


def test_a_compressor_is_protected_at_175_percent_first() -> None:
    """NEC 440.22(A): 175 percent, and up to 225 only where it does not start on that."""
    told = cautions("circuit-ampacity", largest="20 A", others="3 A")
    assert "175 percent" in told and "225 percent only where it does not start" in told


def test_of_two_targets_it_is_told_which_to_go_by() -> None:
    """Regression: at 67 F wet bulb and 95 F outdoors it gave 13 and 12, and no word of which."""
    told = cautions("target-superheat", return_wet_bulb="67 F", outdoor_dry_bulb="95 F")
    assert "go by the table" in told


FLOODS = "Liquid reaches the compressor"


@pytest.mark.parametrize(
    ("line", "is_told"), [("53 F", True), ("57 F", True), ("58.5 F", False), ("50 F", True)]
)
def test_a_superheat_with_liquid_in_it_is_no_mere_number(line: str, is_told: bool) -> None:
    """Makers' charging charts have no entry under 5 F; R-410A at 150 psig boils at 52.8 F."""
    told = cautions(
        "superheat", refrigerant="R-410A", suction_pressure="150 psig", line_temperature=line
    )
    assert (FLOODS in told) is is_told
    assert ("do not leave it running" in told) is is_told
    assert ("Negative superheat cannot be" in told) is (line == "50 F")


@pytest.mark.parametrize(
    ("metering", "wet_bulb", "is_told"),
    [("fixed-orifice", "57 F", True), ("txv", "57 F", False), ("fixed-orifice", "67 F", False)],
)
def test_no_charge_is_judged_by_a_superheat_that_is_hardly_there(
    metering: str, wet_bulb: str, is_told: bool
) -> None:
    """Makers' charging charts have no entry under 5 F; what is expected said 0 to 9, no more."""
    told = cautions(
        "expected",
        refrigerant="R-410A",
        metering=metering,
        outdoor_dry_bulb="105 F" if wet_bulb == "57 F" else "85 F",
        return_dry_bulb="75 F",
        return_wet_bulb=wet_bulb,
    )
    assert ("do not judge or set the charge by superheat" in told) is is_told


def in_weather(outdoor: str, **more: str) -> tuple[object, str]:
    """What is expected of the superheat of an R-22 orifice, None for nothing; and the cautions."""
    given = {
        "refrigerant": "R-22",
        "metering": "fixed-orifice",
        "outdoor-dry-bulb": outdoor,
        "return-dry-bulb": "75 F",
        **{key.replace("_", "-"): text for key, text in more.items()},
    }
    found = answer("expected", [*given.items()])
    figures = {each.name: each.figure for each in found.results}
    return figures.get("superheat"), " ".join(found.cautions)


@pytest.mark.parametrize(
    ("outdoor", "wet_bulb", "is_given"),
    [
        ("105 F", "58 F", False),  # the shortcut's target is under 0
        ("105 F", "65 F", False),  # 5 F by the shortcut; the charging table has a dash at 64 F
        ("112 F", "72 F", False),  # the charging table ends at 110 F
        ("95 F", "65 F", True),
        ("75 F", "60 F", True),
    ],
)
def test_no_superheat_is_expected_where_no_target_is_charted(
    outdoor: str, wet_bulb: str, is_given: bool
) -> None:
    """Regression: it said 0 to 4 F of a sound unit, in weather that target-superheat refuses.

    Source: makers' charging tables for fixed orifices, which have no entry there.
    """
    superheat, told = in_weather(outdoor, return_wet_bulb=wet_bulb)
    assert (superheat is not None) is is_given
    assert ("do not judge or set the charge by superheat" in told) is not is_given
    assert ("superheat is left out" in told) is not is_given


def test_without_a_wet_bulb_it_is_expected_where_some_room_has_a_target() -> None:
    """At 75 F and 60 percent humidity it is 66 F; the charging table ends at 110 F outdoors."""
    assert in_weather("95 F")[0] is not None
    superheat, told = in_weather("112 F")
    assert superheat is None and "superheat is left out" in told


def test_the_units_own_chart_says_its_superheat_in_any_weather() -> None:
    superheat, told = in_weather("105 F", return_wet_bulb="58 F", chart_superheat="8 F")
    assert superheat is not None and "is left out" not in told
