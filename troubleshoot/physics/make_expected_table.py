"""Makes the table of expected values: `python -m troubleshoot.physics.make_expected_table`.

Sound units of every refrigerant and device are solved in every weather of a grid; the program only
reads what they show on the mean and how far they lie apart. They differ in what their designs aim
at, evenly between ends, so that the spread is that of units of which no more is known than
refrigerant and device. Size is no part of it: parts are sized to the plate, so that pressures and
temperatures come out alike on large and small.
"""

from __future__ import annotations

import json
import math
import random
import statistics
from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import Any, Final

from troubleshoot.physics.knobs import Day, Faults
from troubleshoot.physics.refrigerant import refrigerant
from troubleshoot.physics.sizing import Design, Device, Nameplate
from troubleshoot.physics.unit import Cooling, cool
from troubleshoot.quantities.expected import COLUMNS, DEVICES, MADE_FROM, REFRIGERANTS, TABLE

UNITS: Final = 24
OUTDOOR_F: Final = (55, 65, 75, 85, 95, 105, 115)
WET_BULB_F: Final = (57, 61, 65, 69, 73)
DRY_OVER_WET_F: Final = (3, 12, 21)

Ends = tuple[float, float]
NEWER: Final[Mapping[str, Ends]] = MappingProxyType(
    {
        "evaporating": (7.5, 11.5),
        "over_outdoor": (8.0, 14.0),
        "superheat": (4.5, 8.0),
        "subcooling": (4.4, 6.7),
        "cfm_per_ton": (350.0, 430.0),
        "compressor_efficiency": (0.66, 0.72),
    }
)
"""What designs aim at: a maker's table of six packaged units (COA-002 of the reference values) and
room round it; airflow and subcooling as the trade sets them (common practice, no source)."""
OLDER: Final = MappingProxyType(
    {
        **NEWER,
        "evaporating": (6.5, 9.5),
        "over_outdoor": (11.0, 17.0),
        "compressor_efficiency": (0.58, 0.66),
    }
)
"""Units of R-22: up to the 30 F over outdoor air of a trade article (COA-001)."""
CHARGED_BY_SUPERHEAT: Final = (5.8, 7.8)
"""K of superheat at the rated point that makers' charging tables ask of a fixed orifice, 10 to 14 F
(rows 90 and 100 of TSH-OEM)."""

OWN_DOUBT: Final[Mapping[str, float]] = MappingProxyType(
    {
        "evaporating": 0.8,
        "condensing-over-ambient": 0.8,
        "superheat": 2.0,
        "subcooling": 0.8,
        "air-split": 1.5,
        "rla-percent": 5.0,
    }
)
"""What the model itself may be off by, as a standard uncertainty in F (amps: per cent of RLA).

Superheat: the mean square against makers' charging tables, 1.9 F on R-22. Split: it lies 2 to 3 F
over the table of the California Energy Commission. Amps: compressors draw 70 to 90 % of the plate's
at the rated point (common practice, no source). The rest: judgement."""
OTHER_THAN_THE_TABLES: Final = 4.0
"""F for an orifice with a newer refrigerant: there the mean square against the same tables, which
are of R-22, is 3.7 to 4.5 F."""


def designs(older: bool, device: Device) -> Iterator[Design]:
    """Designs that fill every range evenly: each is cut into as many parts as there are units."""
    dice = random.Random(UNITS)
    ranges = dict(OLDER if older else NEWER)
    if device == "fixed-orifice":
        ranges["superheat"] = CHARGED_BY_SUPERHEAT
    columns = []
    for low, high in ranges.values():
        shares = [(part + 0.5) / UNITS for part in range(UNITS)]
        dice.shuffle(shares)
        columns.append([low + share * (high - low) for share in shares])
    for numbers in zip(*columns, strict=True):
        yield Design(**dict(zip(ranges, numbers, strict=True)))


def shown(plate: Nameplate, day: Day) -> tuple[float, ...]:
    """What a sound unit shows, in the order of `COLUMNS`: F, and per cent of rated-load amps."""
    made = cool(plate, Faults(), day)
    now = made.circuits[0].running
    if now is None or not now.settled:
        raise ValueError(f"a sound unit with {plate.refrigerant} does not run on {day}")
    fluid = refrigerant(plate.refrigerant)
    condensing = fluid.bubble_temperature(now.head)
    return (
        _fahrenheit(now.evaporating),
        _fahrenheit(condensing) - day.outdoor,
        1.8 * (now.suction_temperature(fluid) - now.evaporating),
        1.8 * (condensing - now.liquid_temperature(fluid)),
        _split(made),
        100.0 * max(made.circuits[0].amps),
    )


def _split(made: Cooling) -> float:
    return 1.8 * (made.entering.dry_bulb - made.supply.dry_bulb)


def _fahrenheit(celsius: float) -> float:
    return celsius * 1.8 + 32.0


def rows(name: str, device: Device) -> Iterator[list[float]]:
    """Means, then standard uncertainties, by outdoor air, wet bulb and dry bulb over wet bulb."""
    plates = [Nameplate(name, metering=device, design=d) for d in designs(name == "R-22", device)]
    doubts = dict(OWN_DOUBT)
    if device == "fixed-orifice" and name != "R-22":
        doubts["superheat"] = OTHER_THAN_THE_TABLES
    for day in days():
        columns = list(zip(*(shown(plate, day) for plate in plates), strict=True))
        means = [round(statistics.fmean(column), 1) for column in columns]
        yield [*means, *(round(u, 1) for u in _uncertainties(columns, doubts))]


def days() -> Iterator[Day]:
    """The weather of the grid, in the order of the rows."""
    for outdoor in OUTDOOR_F:
        for wet in WET_BULB_F:
            for over in DRY_OVER_WET_F:
                yield Day(outdoor, wet + over, wet)


def _uncertainties(
    columns: Sequence[Sequence[float]], doubts: Mapping[str, float]
) -> Iterator[float]:
    for name, column in zip(COLUMNS, columns, strict=True):
        yield math.hypot(statistics.pstdev(column), doubts[name])


def table() -> dict[str, Any]:
    """The whole table, ready to be written."""
    low, high = NEWER["cfm_per_ton"]
    return {
        "made-from": MADE_FROM,
        "outdoor": OUTDOOR_F,
        "wet-bulb": WET_BULB_F,
        "dry-over-wet": DRY_OVER_WET_F,
        "cfm-per-ton": [low, high],
        "columns": COLUMNS,
        "rows": {
            f"{name} {device}": list(rows(name, device))
            for name in REFRIGERANTS
            for device in DEVICES
        },
    }


def text_of(made: Mapping[str, Any]) -> str:
    """A table as JSON with one row on a line, so that a change can be read in a diff."""
    head = [f"{json.dumps(key)}: {json.dumps(made[key])}" for key in made if key != "rows"]
    kinds = (
        f"{json.dumps(kind)}: [\n" + ",\n".join(map(_compact, lines)) + "\n]"
        for kind, lines in made["rows"].items()
    )
    body = ",\n".join(kinds)
    return "{" + ",\n".join(head) + f',\n"rows": {{\n{body}\n}}}}\n'


def _compact(row: Sequence[float]) -> str:
    return json.dumps(row, separators=(",", ":"))


def main() -> None:
    """Write the table beside the module that reads it."""
    TABLE.write_text(text_of(table()), encoding="ascii")


if __name__ == "__main__":
    main()
