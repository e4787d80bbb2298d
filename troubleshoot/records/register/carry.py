"""What to take up for one unit or for several, by what the register knows of them."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import begun
from troubleshoot.reasoning.unit.equipment import Unit, read_unit
from troubleshoot.records.register.columns import OWN
from troubleshoot.records.register.entry import Entry
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.telling.wording import counted

BY_THE_REGISTER: Final = "By the register: the data plate and the part itself stand above it."
ALWAYS: Final = "lock, tag and key, a meter with its proving source, gloves and glasses"
FOR_GAS: Final = "combustible-gas detector, manometer, microammeter"
FOR_480: Final = "arc-rated clothing, and a meter and leads rated for 480 V"
FOR_FLAMMABLE: Final = (
    "a refrigerant detector and a recovery machine rated for flammable refrigerant; no open flame"
)
_CANS, _BELTS, _FILTERS = "capacitor-cans", "belts", "filters"
_COUNTED: Final = re.compile(r"([0-9]+) of (.+)")


def carry_lines(knowledge: Knowledge, entries: Sequence[Entry]) -> Iterator[str]:
    """What to take up for these units together, a sentence a line."""
    units = [read_unit(knowledge, entry.unit) for entry in entries]
    for key in (_CANS, _BELTS, _FILTERS):
        sizes = _together(entries, key)
        if sizes:
            said = ", ".join(f"{count} of {size}" for size, count in sizes.items())
            yield f"{begun(OWN[key].spoken)}: {said}{_volts(entries) if key == _CANS else ''}"
    yield from _fuses(entries)
    yield from _for_the_work(knowledge, units)
    yield begun(ALWAYS)
    for key in (_CANS, _FILTERS, "refrigerant"):  # belts are not wanted by every unit
        without = [each.name for each in entries if key not in {**each.own, **each.unit}]
        if without:
            named = OWN[key].spoken if key in OWN else knowledge.spoken(key)
            yield f"Not on record, {named}: {', '.join(without)}"


def _together(entries: Sequence[Entry], key: str) -> dict[str, int]:
    """How many of each size the units need together."""
    sizes: Counter[str] = Counter()
    for entry in entries:
        for piece in filter(None, entry.own.get(key, "").split(", ")):
            found = _COUNTED.fullmatch(piece)
            assert found is not None, "columns keep sizes with how many there are"
            sizes[found[2]] += int(found[1])
    return dict(sorted(sizes.items()))


def _volts(entries: Sequence[Entry]) -> str:
    """The volts of the cans, at least which the new one stands."""
    volts = {entry.own["can-volts"] for entry in entries if "can-volts" in entry.own}
    return f"; at least {max(volts)}" if volts else ""


def _fuses(entries: Sequence[Entry]) -> Iterator[str]:
    """The classes of the fuses; their amps are those that are in, never more than the plate's."""
    classes = Counter(entry.own["fuse-class"] for entry in entries if "fuse-class" in entry.own)
    if classes:
        said = ", ".join(
            f"class {name} ({counted(count, 'unit', 'units')})"
            for name, count in sorted(classes.items())
        )
        yield f"Fuses: {said}; the amps of the data plate are the most that goes in"


def _for_the_work(knowledge: Knowledge, units: Sequence[Unit]) -> Iterator[str]:
    refrigerants = sorted({unit.facts.get("refrigerant", "") for unit in units} - {""})
    if refrigerants:
        said = ", ".join(map(knowledge.spoken, refrigerants))
        yield f"Gauges, hoses and a recovery cylinder for: {said}"
    at_work = [unit_at_work(unit) for unit in units]  # what is not known counts as the worse
    if any(each.flammable for each in at_work):
        yield begun(FOR_FLAMMABLE)
    if any(each.burns_gas for each in at_work):
        yield begun(FOR_GAS)
    if any(each.volts_480 for each in at_work):
        yield begun(FOR_480)
