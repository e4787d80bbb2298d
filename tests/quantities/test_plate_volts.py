"""Volts are read off a data plate as they are stamped there.

Voltages of motors beside those of systems: ANSI C84.1, annex, from memory.
"""

from __future__ import annotations

import pytest

from troubleshoot.quantities.catalogue import answer
from troubleshoot.quantities.plate_volts import PlateVolts, plate_volts
from troubleshoot.quantities.typed import Expected, NotUnderstood, read

BOTH = PlateVolts(208, 230)


@pytest.mark.parametrize(
    ("stamped", "volts"),
    [
        ("208/230", BOTH), ("208-230", BOTH), ("208 or 230", BOTH), ("208/230 V", BOTH),
        ("208\u2013230V", BOTH), ("208 to 230 volts", BOTH), ("200-240", PlateVolts(200, 240)),
        ("208-230/3/60", PlateVolts(208, 230, 3)), ("208/230V 3ph 60Hz", PlateVolts(208, 230, 3)),
        ("460/3/60", PlateVolts(460, 460, 3)), ("230-1-60", PlateVolts(230, 230, 1)),
        ("208/230, single phase", PlateVolts(208, 230, 1)), ("575/3", PlateVolts(575, 575, 3)),
    ],
)  # fmt: skip
def test_a_range_and_the_phases_are_read(stamped: str, volts: PlateVolts) -> None:
    assert plate_volts(stamped) == volts


@pytest.mark.parametrize("typed", ["460", "460 V", "208/209/207", "1/2", "", "about 230", "208/30"])
def test_what_is_stamped_otherwise_is_left_to_the_reader_of_numbers(typed: str) -> None:
    assert plate_volts(typed) is None


@pytest.mark.parametrize("stamped", ["208/460", "115/230", "277/480", "230/208", "999/3/60"])
def test_volts_of_two_supplies_are_no_range(stamped: str) -> None:
    with pytest.raises(NotUnderstood, match="the service that feeds it"):
        plate_volts(stamped)


@pytest.mark.parametrize(
    ("stamped", "measured", "limits", "verdict"),
    [
        ("460/3/60", "60 V", (414, 506), "outside"),
        ("460/3/60", "452 V", (414, 506), "within"),
        ("208-230/1/60", "185 V", (187.2, 253), "outside"),
        ("208/230V 3ph 60Hz", "240 V", (187.2, 253), "within"),
        ("575/3/60", "60 V", (517.5, 632.5), "outside"),
    ],
)
def test_supply_is_judged_by_the_volts_of_the_plate_and_by_no_phases_or_hertz(
    stamped: str, measured: str, limits: tuple[float, float], verdict: str
) -> None:
    """10 % either way of the plate (NEMA MG 1, 12.44); a dead leg once passed for 60 Hz."""
    found = answer("service-voltage", [("nominal", stamped), ("measured", measured)])
    figures = {each.name: each.figure for each in found.results}
    assert (figures["low-limit"], figures["high-limit"]) == pytest.approx(limits)
    assert figures["verdict"] == verdict


@pytest.mark.parametrize("system", ["208/3/60", "480/3/60", "240-1-60"])
def test_a_systems_volts_stay_a_systems_with_their_phases(system: str) -> None:
    """Source: ANSI C84.1, whose voltages of systems these are (from memory)."""

    def judged(nominal: str, measured: str) -> object:
        pairs = [("nominal", nominal), ("measured", measured)]
        return [(each.name, each.figure) for each in answer("service-voltage", pairs).results]

    assert judged(system, "60 V") == judged(system[:3], "60 V")
    assert ("verdict", "outside") in judged(system, "60 V")


@pytest.mark.parametrize("stamped", ["460/3/60", "460 / 3 / 60", "230/1/60", "208-230/3/60"])
def test_no_plate_is_taken_for_readings_of_three_legs(stamped: str) -> None:
    with pytest.raises(NotUnderstood, match="data plate") as refused:
        read(stamped, Expected("V", legs=True))
    assert "each leg as read" in refused.value.instead


@pytest.mark.parametrize(
    "typed", ["208/3/59", "460/3/460", "208/230/3", "L1-L2 208, L2-L3 3, L3-L1 60"]
)
def test_a_lost_leg_is_still_read(typed: str) -> None:
    names = ("L1-L2", "L2-L3", "L3-L1")
    assert len(read(typed, Expected("V", legs=True, names=names)).values) == 3
