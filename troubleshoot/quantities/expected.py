"""What a sound unit should read now, by its refrigerant, its device and the air on both coils.

Read from a table that `troubleshoot.physics.make_expected_table` made of sound units whose designs
differ as those of the trade do; between its rows numbers run straight. A range is the mean and two
standard uncertainties either way (JCGM 100, 6.3.3): the spread of the designs, and what the model
itself may be off by. It holds at sea level after 15 minutes of steady running, on rated volts, with
clean coils and filters, every fan on and the outdoor damper shut.

The unit's own charging chart, its record and its data plate stand above it.
"""

from __future__ import annotations

import json
from bisect import bisect_right
from collections.abc import Iterator, Mapping
from functools import cache
from itertools import product
from math import prod
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.quantities.ranges import OutOfRange, require
from troubleshoot.quantities.refrigerant import has_target_superheat
from troubleshoot.quantities.saturation import bubble_pressure, dew_pressure, refrigerant_named
from troubleshoot.quantities.span import Span
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA

TABLE: Final = Path(__file__).parent / "expected_table.json"
COLUMNS: Final = (
    "evaporating",
    "condensing-over-ambient",
    "superheat",
    "subcooling",
    "air-split",
    "rla-percent",
)
"""What a row holds, the means and then their standard uncertainties: F, per cent of RLA."""

MADE_FROM: Final = (
    "24 designs of sound units of each kind, solved in every weather by the balance of compressor, "
    "metering, coils and charge"
)
REFRIGERANTS: Final = ("R-22", "R-32", "R-410A", "R-454B")
BY_SUPERHEAT: Final = "fixed-orifice"
"""The device whose charge is judged by its superheat."""
DEVICES: Final = (BY_SUPERHEAT, "txv")
COVERAGE: Final = 2.0
"""Standard uncertainties from the mean to either end."""
ROOM_DRY_OVER_WET_F: Final = (9.0, 16.0)
"""Dry bulb over wet bulb in rooms at 60 and at 40 percent humidity, for a wet bulb not read."""

IN_PROPORTION: Final = frozenset({"compressor-amps", "airflow", "airflow-per-ton"})
"""Of what is expected, that which another design has more or less of, in all weather alike."""
BOUND_TO_WEATHER: Final = IN_PROPORTION | {
    "suction-pressure", "head-pressure", "condensing-over-ambient", "superheat", "subcooling",
    "air-split",
}  # fmt: skip
"""The quantities of which `expected` tells a range."""

_WHOLE: Final = 1.0
_TENTH: Final = 0.1
_TEN: Final = 10.0


@frozen
class Conditions:
    """Refrigerant, device, and the air in F on the condenser and on the indoor coil.

    `wet_bulb` is None where it was not read.
    """

    refrigerant: str
    metering: str
    outdoor: float
    dry_bulb: float
    wet_bulb: float | None = None


@frozen
class _Table:
    """The table as read: F of its three axes, cfm/ton, and for each kind a row at each corner."""

    axes: tuple[tuple[float, ...], ...]
    cfm_per_ton: tuple[float, float]
    rows: Mapping[str, list[list[float]]]


def expected(
    conditions: Conditions, rla: float | None = None, tons: float | None = None
) -> Mapping[str, Span]:
    """Return by quantity the range that a sound unit shows in these conditions.

    suction-pressure and head-pressure in psig; condensing-over-ambient, superheat, subcooling and
    air-split in F; airflow-per-ton in cfm/ton; with `rla`, the A of the data plate,
    compressor-amps in A, none past it; with `tons` airflow in cfm. Where the wet bulb was not read
    the range covers rooms at 40 to 60 percent humidity. Raises OutOfRange outside the table.
    """
    evaporating, over, *differences, share = expected_ends(conditions).values()
    refrigerant, outdoor = refrigerant_named(conditions.refrigerant), conditions.outdoor
    suction = [dew_pressure(refrigerant, f) - STANDARD_ATMOSPHERE_PSIA for f in evaporating]
    head = [bubble_pressure(refrigerant, outdoor + f) - STANDARD_ATMOSPHERE_PSIA for f in over]
    found = {
        "suction-pressure": _span(suction[0], suction[1], _WHOLE),
        "head-pressure": _span(head[0], head[1], _WHOLE),
        "condensing-over-ambient": _span(*over, _WHOLE),
        "airflow-per-ton": _span(*_table().cfm_per_ton, _TEN),
    }
    for name, (low, high) in zip(COLUMNS[2:], differences, strict=False):
        found[name] = _span(low, high, _WHOLE)
    if rla is not None:
        require("rla", rla, "A", above=0)
        low, high = (min(end, 100.0) * rla / 100.0 for end in share)
        found["compressor-amps"] = _span(low, high, _TENTH)
    if tons is not None:
        require("tons", tons, "tons", above=0)
        low, high = (end * tons for end in _table().cfm_per_ton)
        found["airflow"] = _span(low, high, _TEN)
    return found


def tells_superheat(conditions: Conditions) -> bool:
    """Say whether a sound unit's superheat is a figure to hold a reading to.

    A fixed orifice may flood the compressor where makers' charging tables have no target: nobody
    is told that 0 F is sound. A wet bulb that was not read is taken as that of a moist room.
    """
    if conditions.metering != BY_SUPERHEAT:
        return True
    wet_bulb = conditions.wet_bulb
    if wet_bulb is None:
        wet_bulb = conditions.dry_bulb - ROOM_DRY_OVER_WET_F[0]
    return has_target_superheat(wet_bulb, conditions.outdoor)


def expected_ends(conditions: Conditions) -> Mapping[str, tuple[float, float]]:
    """Return both ends of what a sound unit shows, not rounded, by the names of `COLUMNS`.

    In F, rla-percent in per cent of the plate's amps. Raises OutOfRange outside the table.
    """
    table, kind = _table(), _kind(conditions)
    ends = [_ends(_row(table, kind, place)) for place in _places(table, conditions)]
    return dict(zip(COLUMNS, (_hull(each) for each in zip(*ends, strict=True)), strict=True))


def _kind(conditions: Conditions) -> str:
    """The name of the rows for this refrigerant and device; raises OutOfRange where none are."""
    refrigerant = refrigerant_named(conditions.refrigerant)
    if refrigerant not in REFRIGERANTS or conditions.metering not in DEVICES:
        raise OutOfRange(
            "refrigerant",
            f"there are no expected values for {refrigerant} with {conditions.metering}",
            f"there are for {', '.join(REFRIGERANTS)} with {' or '.join(DEVICES)}",
        )
    return f"{refrigerant} {conditions.metering}"


def _places(table: _Table, conditions: Conditions) -> Iterator[tuple[float, ...]]:
    """Where in the table to read: at the wet bulb, or at both ends of what it may be."""
    outdoor, wet, over = table.axes
    require("outdoor-dry-bulb", conditions.outdoor, "F", at_least=outdoor[0], at_most=outdoor[-1])
    dry = conditions.dry_bulb
    if conditions.wet_bulb is not None:
        require("return-wet-bulb", conditions.wet_bulb, "F", at_least=wet[0], at_most=wet[-1])
        low, high = (conditions.wet_bulb + end for end in (over[0], over[-1]))
        require("return-dry-bulb", dry, "F", at_least=low, at_most=high)
        yield conditions.outdoor, conditions.wet_bulb, dry - conditions.wet_bulb
        return
    least, most = ROOM_DRY_OVER_WET_F
    require("return-dry-bulb", dry, "F", at_least=wet[0] + least, at_most=wet[-1] + least)
    for wet_bulb in (dry - least, max(dry - most, wet[0])):
        yield conditions.outdoor, wet_bulb, dry - wet_bulb


def _row(table: _Table, kind: str, place: tuple[float, ...]) -> list[float]:
    """A row at a place within the axes, straight between the rows at its eight corners."""
    sides = [_side(axis, value) for axis, value in zip(table.axes, place, strict=True)]
    _, wets, overs = map(len, table.axes)
    found = [0.0] * (2 * len(COLUMNS))
    for (i, one), (j, other), (k, third) in product(*sides):
        row = table.rows[kind][(i * wets + j) * overs + k]
        share = prod((one, other, third))
        found = [so_far + share * number for so_far, number in zip(found, row, strict=True)]
    return found


def _side(axis: tuple[float, ...], value: float) -> tuple[tuple[int, float], tuple[int, float]]:
    """The two numbers of an axis beside a value, with the share of each."""
    above = min(max(bisect_right(axis, value), 1), len(axis) - 1)
    share = (value - axis[above - 1]) / (axis[above] - axis[above - 1])
    return (above - 1, 1.0 - share), (above, share)


def _ends(row: list[float]) -> list[tuple[float, float]]:
    """Both ends of every column, none below nought."""
    means, doubts = row[: len(COLUMNS)], row[len(COLUMNS) :]
    pairs = zip(means, doubts, strict=True)
    return [(max(mean - COVERAGE * u, 0.0), mean + COVERAGE * u) for mean, u in pairs]


def _hull(ends: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    return min(low for low, _ in ends), max(high for _, high in ends)


def _span(low: float, high: float, step: float) -> Span:
    """Both ends rounded to a step of the meter."""
    return Span(*(round(round(end / step) * step, 1) for end in (low, high)))


@cache
def _table() -> _Table:
    stored = json.loads(TABLE.read_text(encoding="ascii"))
    axes = tuple(tuple(stored[name]) for name in ("outdoor", "wet-bulb", "dry-over-wet"))
    return _Table(axes, tuple(stored["cfm-per-ton"]), stored["rows"])
