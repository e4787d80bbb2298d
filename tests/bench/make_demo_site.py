"""Make the demo site again: python tests/bench/make_demo_site.py [FOLDER]

An invented community college, 45 units on a lower and an upper roof, three years of visits. Its
units obey physics (`tests/bench/fleet.py`) and are sound but for the few that `DRIFTS` names. It
needs the extra `physics`; the same folder comes out at every run.
"""

from __future__ import annotations

import random
import sys
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Final

from tests.bench.fleet import Crew, Drift, plates, visits
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.outside.table import write_table
from troubleshoot.physics.plate import COMPRESSOR_MICROFARADS, FAN_MICROFARADS, plate_facts
from troubleshoot.physics.sizing import Nameplate
from troubleshoot.records.register.entry import Entry, cells_of, told
from troubleshoot.records.register.sheet import as_sheet

FOLDER: Final = Path(__file__).parents[2] / "scenarios" / "college"
SITE: Final = "Harrow Flat Community College"
SEED: Final = "college"
LOWER, UPPER = 25, 20
YEARS: Final = (2024, 2025, 2026)
ROOMS: Final = (
    "library, east reading room", "library, stacks", "lecture hall A", "lecture hall B",
    "welding shop office", "nursing skills laboratory", "registrar", "bookshop", "cafeteria",
    "kitchen make-up side", "computer laboratory 1", "computer laboratory 2", "server room",
    "child care centre", "gymnasium office", "weight room", "theatre lobby", "theatre, stage left",
    "music practice rooms", "art studio", "pottery studio", "chemistry laboratory",
    "biology laboratory", "faculty offices north", "faculty offices south",
)  # fmt: skip
CRITICAL: Final = frozenset({"server room", "child care centre", "nursing skills laboratory"})
LITTLE: Final = frozenset({"theatre lobby", "weight room", "gymnasium office"})


def _single(plate: Nameplate) -> bool:
    return not plate.three_phase


def _valve(plate: Nameplate) -> bool:
    return plate.metering == "txv"


def _any(_: Nameplate) -> bool:
    return True


DRIFTS: Final[tuple[tuple[str, Callable[[Nameplate], bool], Drift], ...]] = (
    ("Lower", _single, Drift("refrigerant", "compressor_capacitor",
                             (1.0, 0.9967, 0.98, 0.9767, 0.96, 0.9567))),
    ("Upper", _valve, Drift("refrigerant", "charge", (1.0, 1.0, 1.0, 0.95, 0.90, 0.85))),
    ("Lower", _any, Drift("gas", "rod", (1.0, 0.84, 0.69))),
    ("Upper", _any, Drift("refrigerant", "coil_blocked", (0.0, 0.06, 0.14, 0.20, 0.28, 0.34))),
)  # fmt: skip
"""On which roof, on what kind of unit, and what: a capacitor that loses 2 % a year, a leak that
shows over the last three visits, a rod that is coated, a condenser that nobody washes."""

CHARGES: Final[Mapping[str, tuple[str, ...]]] = {
    "Lower 8": ("8.9 lb", "8.9 lb"), "Lower 19": ("9.4 lb", "9.4 lb"),
}  # fmt: skip
"""The full charge by circuit, of the units whose plate was read for it."""
REFRIGERANT: Final = """\
unit,date,circuit,way,weight,cylinder,before,after,tare
Lower 8,2025-08-14,circuit 1,recovered,8.2 lb,R-1,17.6 lb,25.8 lb,16.4 lb
Lower 8,2025-08-14,circuit 1,added,8.9 lb,C-2,33.0 lb,24.1 lb,8.6 lb
Lower 12,2025-06-03,circuit 1,added,1 lb 2 oz,C-1,,,
Lower 19,2024-05-06,circuit 2,added,12 oz,C-1,,,
Lower 19,2025-05-05,circuit 2,added,1 lb,C-1,,,
Lower 19,2025-07-21,circuit 2,added,14 oz,C-3,28.4 lb,27.5 lb,8.4 lb
Lower 19,2026-04-27,circuit 2,added,1 lb 6 oz,C-3,27.5 lb,26.1 lb,8.4 lb
Lower 19,2026-07-13,circuit 2,added,1 lb 3 oz,C-3,26.1 lb,24.4 lb,8.4 lb
"""
"""A compressor that was changed, one charge that was topped up, and a circuit that leaks; the last
weights of its cylinder do not fit what was written down."""


def main(folder: Path) -> None:
    """Write the register, the readings and the refrigerant of the site."""
    folder.mkdir(parents=True, exist_ok=True)
    knowledge = load_shipped()
    entries = [
        told(knowledge, Entry(name), dict(_cells(name, number, plate)))
        for number, (name, plate) in enumerate(made().items())
    ]
    (folder / "units.csv").write_text(as_sheet(knowledge, entries), "utf-8", newline="")
    rows = list(_rows(made()))
    heading = dict.fromkeys(key for row in rows for key in row)
    (folder / "readings.csv").write_text(write_table([*heading], rows), "utf-8", newline="")
    (folder / "refrigerant.csv").write_text(REFRIGERANT, "utf-8", newline="")


def made() -> dict[str, Nameplate]:
    """The units of the site by name."""
    return dict(zip(_names(), plates(LOWER + UPPER, SEED), strict=True))


def _names() -> Iterator[str]:
    yield from (f"Lower {number}" for number in range(1, LOWER + 1))
    yield from (f"Upper {number}" for number in range(1, UPPER + 1))


def _cells(name: str, number: int, plate: Nameplate) -> Iterator[tuple[str, str]]:
    roof, _, own = name.partition(" ")
    rooms = ROOMS[number % len(ROOMS)]
    yield "site", SITE
    yield "roof", f"{roof.lower()} roof"
    yield "serves", rooms if number < len(ROOMS) else f"{rooms}, second unit"
    yield "matters", ("critical" if rooms in CRITICAL else "little" if rooms in LITTLE else "usual")
    yield "filters", f"{max(2, round(plate.tons / 2.5))} of 20x25x2"
    if plate.three_phase:
        yield "belts", f"1 of A{36 + int(own) % 8}"
        yield "capacitor-cans", f"{plate.circuits} of {FAN_MICROFARADS:g} uF"
    else:
        yield "capacitor-cans", f"1 of {COMPRESSOR_MICROFARADS:g}/{FAN_MICROFARADS:g} uF"
    yield "can-tolerance", "6 %"
    yield "can-volts", "440 V"
    yield "fuse-class", "RK5"
    unit = {**plate_facts(plate)}
    if plate.tons > 5:
        unit["duct-smoke-detector"] = "fitted"
    yield from cells_of(Entry(name, unit=unit)).items()
    for circuit, charge in enumerate(CHARGES.get(name, ()), start=1):
        yield f"charge at circuit {circuit}", charge


def _rows(units: Mapping[str, Nameplate]) -> Iterator[dict[str, str]]:
    drifts = drifting(units)
    crew = Crew(SEED)
    for name, plate in units.items():
        dice = random.Random(f"{SEED} {name}")
        for visit in visits(plate, YEARS, crew, dice, drifts.get(name)):
            yield {"unit": name, "date": visit.day.isoformat(), **visit.readings}


def drifting(units: Mapping[str, Nameplate]) -> dict[str, Drift]:
    """The units that are not sound: of each drift the first after the fifth that it fits."""
    found: dict[str, Drift] = {}
    for roof, fits, drift in DRIFTS:
        able = (n for n, plate in units.items() if n.startswith(roof) and fits(plate))
        name = next(n for n in able if int(n.split()[1]) > 5 and n not in found)
        found[name] = drift
    return found


if __name__ == "__main__":
    main(Path(sys.argv[1]) if len(sys.argv) > 1 else FOLDER)
