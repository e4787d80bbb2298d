"""Each number that is told in a unit is heard with its bound, and what has none is not."""

from __future__ import annotations

import pytest

from troubleshoot.safety.stops.numbers_shown import numbers_in

LEL, LFL, PPM, VOLTS = "percent-LEL", "percent-LFL", "ppm", "V"


@pytest.mark.parametrize(
    ("typed", "units", "told"),
    [
        ("0 ppm CO, 20.9 % O2", (PPM,), [("0 ppm", PPM)]),
        ("20 % LEL before, 0 % lel now", (LEL,), [("20 % LEL", LEL), ("0 % lel", LEL)]),
        ("under 9 ppm; now 2 ppm.", (PPM,), [("under 9 ppm", PPM), ("2 ppm", PPM)]),
        ("7 in. wc, steady", ("in-wc",), [("7 in wc", "in-wc")]),
        ("L1 5V, L2 -0.2 V", (VOLTS,), [("5 V", VOLTS), ("-0.2 V", VOLTS)]),
        (">= 1,000 ppm", (PPM,), [(">= 1,000 ppm", PPM)]),
        (".5 ppm", (PPM,), [(".5 ppm", PPM)]),
        ("8 lb 4 oz", ("lb", "oz"), [("8 lb 4 oz", "lb")]),
        ("0 % LFL", (LEL, LFL), [("0 % LFL", LFL)]),
        ("4-gas meter shows 3", (LEL,), []),
    ],
)
def test_each_number_that_is_told_in_a_unit_is_heard_with_its_bound(
    typed: str, units: tuple[str, ...], told: list[tuple[str, str]]
) -> None:
    assert list(numbers_in(typed, units)) == told
