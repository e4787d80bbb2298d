"""The table of expected values: made again it is the stored one, and straight lines serve it."""

from __future__ import annotations

import json
from itertools import islice

import pytest

pytest.importorskip("scipy", reason="the optional extra physics is not installed")

from troubleshoot.physics import make_expected_table as maker
from troubleshoot.physics.knobs import Day
from troubleshoot.physics.sizing import Nameplate
from troubleshoot.quantities.expected import COLUMNS, Conditions, expected

FIRST = 16
"""Rows made again of each kind: all of them take half a minute."""


def test_making_the_table_again_gives_the_stored_one() -> None:
    stored = json.loads(maker.TABLE.read_text(encoding="ascii"))
    assert stored["made-from"] == maker.MADE_FROM
    assert str(maker.UNITS) in maker.MADE_FROM
    axes = (maker.OUTDOOR_F, maker.WET_BULB_F, maker.DRY_OVER_WET_F)
    assert [stored[name] for name in ("outdoor", "wet-bulb", "dry-over-wet")] == [*map(list, axes)]
    for kind in ("R-22 fixed-orifice", "R-454B txv"):
        name, _, device = kind.partition(" ")
        made = list(islice(maker.rows(name, device), FIRST))  # type: ignore[arg-type]
        for again, before in zip(made, stored["rows"][kind], strict=False):
            assert again == pytest.approx(before, abs=0.11)
    assert maker.text_of(stored) == maker.TABLE.read_text(encoding="ascii")


@pytest.mark.parametrize("size", [3.0, 25.0])
@pytest.mark.parametrize("device", maker.DEVICES)
@pytest.mark.parametrize("name", maker.REFRIGERANTS)
def test_a_unit_of_any_size_reads_what_is_expected_between_the_rows(
    name: str, device: str, size: float
) -> None:
    """One design of the trade's, in weather between the rows of the table."""
    (design,) = islice(maker.designs(name == "R-22", device), 3, 4)  # type: ignore[arg-type]
    plate = Nameplate(name, size, metering=device, design=design)  # type: ignore[arg-type]
    for outdoor, wet, over in ((70, 63, 7.5), (90, 67, 12.0), (110, 71, 7.5)):
        shown = dict(zip(COLUMNS, maker.shown(plate, Day(outdoor, wet + over, wet)), strict=True))
        found = expected(Conditions(name, device, outdoor, wet + over, wet), rla=100.0)
        for quantity in COLUMNS[1:5]:
            assert shown[quantity] in found[quantity], (quantity, outdoor)
        assert shown["rla-percent"] in found["compressor-amps"]
