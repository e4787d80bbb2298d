"""Volts are read off a data plate as they are stamped there.

Voltages of motors beside those of systems: ANSI C84.1, annex, from memory.
"""

from __future__ import annotations

import pytest

from troubleshoot.quantities.plate_volts import PlateVolts, plate_volts
from troubleshoot.quantities.typed import NotUnderstood

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
