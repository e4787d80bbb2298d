"""Alarms of drift on sound fleets, and on fleets that drift: python tests/bench/false_alarms.py [N]

N fleets of 45 sound units, nine visits each (`tests/bench/fleet.py`); a visit raises an alarm where
the numbers up to it are the first to do so. Then the drifts of the demo site, on every third unit
of as many fleets that can have them.
"""

from __future__ import annotations

import random
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from functools import cache
from typing import Final

from tests.bench.fleet import Crew, Drift, plates, visits
from tests.bench.make_demo_site import DRIFTS
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.physics.plate import plate_facts
from troubleshoot.physics.sizing import Nameplate
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.records.history.collecting import numbers_of, series_of
from troubleshoot.records.history.drift import alarms_of
from troubleshoot.records.history.series import Read
from troubleshoot.records.register.columns import AT
from troubleshoot.records.register.entry import Entry, cells_of, told
from troubleshoot.visit.cases.file import ROUTINE
from troubleshoot.visit.events import Answered, Event, Started, replay

UNITS: Final = 45
YEARS: Final = (2024, 2025, 2026)
Numbers = dict[tuple[str, Place | None], Read]


@cache
def rules() -> Knowledge:
    return load_shipped()


def read_on(plate: Nameplate, seed: str, drift: Drift | None = None) -> list[Numbers]:
    """The numbers of each visit to one unit."""
    entry = told(rules(), Entry("unit"), cells_of(Entry("unit", unit=plate_facts(plate))))
    found = []
    crew, dice = Crew(seed.split()[0]), random.Random(seed)
    for number, visit in enumerate(visits(plate, YEARS, crew, dice, drift)):
        events: list[Event] = [Started("unit", ROUTINE, routine=True, unit=entry.unit)]
        for column, text in visit.readings.items():
            test, _, place = column.partition(AT)
            events.append(Answered(test, place or None, text=text))
        state = replay(rules(), events)
        found.append(numbers_of(rules(), f"{visit.day}-{number}", visit.day, state, {}))
    return found


def raised(numbers: Sequence[Numbers]) -> set[tuple[str, str]]:
    """The alarms that these visits raise: rule and place."""
    by_spot: dict[tuple[str, Place | None], list[Read]] = {}
    for each in numbers:
        for spot, read in each.items():
            by_spot.setdefault(spot, []).append(read)
    return {
        (each.alarm.id, str(spot[1]))
        for spot, reads in by_spot.items()
        for each in alarms_of(rules(), series_of(rules(), *spot, reads))
    }


def raised_anew(numbers: Sequence[Numbers]) -> Iterator[tuple[str, str]]:
    """Every alarm at the visit that is the first to raise it."""
    seen: set[tuple[str, str]] = set()
    for count in range(1, len(numbers) + 1):
        now = raised(numbers[:count])
        yield from sorted(now - seen)
        seen |= now


def main(fleets: int) -> None:
    """Print both tables."""
    visited, alarms = 0, Counter[str]()
    for fleet in range(fleets):
        for number, plate in enumerate(plates(UNITS, f"sound-{fleet}")):
            numbers = read_on(plate, f"sound-{fleet} {number}")
            visited += len(numbers)
            alarms.update(rule for rule, _ in raised_anew(numbers))
    total = sum(alarms.values())
    print(f"sound: {visited} unit-visits, {total} alarms, {200 * total / visited:.2f} in 200")
    for rule, count in alarms.most_common():
        print(f"  {rule}: {count}")
    for _, fits, drift in DRIFTS:
        units = caught = 0
        for fleet in range(fleets):
            for number, plate in enumerate(plates(UNITS, f"drift-{fleet}")):
                if number % 3 == 0 and fits(plate):
                    units += 1
                    caught += bool(raised(read_on(plate, f"drift-{fleet} {number}", drift)))
        print(f"{drift.knob}: {caught} of {units} caught")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 20)
