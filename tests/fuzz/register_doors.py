"""The doors of the register: a unit's file, and the tables of units, visits and instruments."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date
from pathlib import Path
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import read_text
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.records.past_visits import keep_past_visits, read_past_visits
from troubleshoot.records.refrigerant.kept import keep_weighings, told_by_hand
from troubleshoot.records.refrigerant.sheet import read_refrigerant_sheet
from troubleshoot.records.register.entry import Entry, told
from troubleshoot.records.register.files import Register, path_of, read_entry, write_entry
from troubleshoot.records.register.flat import NotRead
from troubleshoot.records.register.instruments import read_instrument_sheet, write_instrument
from troubleshoot.records.register.sheet import as_sheet, read_sheet

CELLS: Final[Mapping[str, str]] = {
    "site": "college", "matters": "usual", "refrigerant": "R-410A", "circuits": "2",
    "compressor-rla at compressor 2": "9.1 A", "nameplate-volts": "208/230",
    "filters": "2 of 20x25x2", "belts": "1 of A38", "capacitor-cans": "1 of 45/5 uF",
}  # fmt: skip
UNITS: Final = b"name,site,refrigerant,circuits,filters\nRTU-1,=x,R-22,2,2 of 20x25x2\nRTU-2,,,,\n"
VISITS: Final = (
    b"unit,date,suction-pressure at circuit 2,flame-current\n"
    b"RTU-7,2024-05-12,128 psig,\nRTU-7,2024-10-01,,4.1 uA\n"
)
INSTRUMENTS: Final = (
    b"name,kind,accuracy,proved,notes\nclamp,clamp-ammeter,2 % + 5 counts,2026-03-02,blue\n"
)
REFRIGERANT: Final = (
    b"unit,date,circuit,way,weight,cylinder,before,after,tare\n"
    b"RTU-7,2026-05-04,2,added,1 lb 4 oz,=C-7,28.4 lb,27.2 lb,11 lb\n"
)
Enter = Callable[[bytes], bool]


def register_doors(knowledge: Knowledge, folder: Path) -> Mapping[str, tuple[bytes, Enter]]:
    """Each door by its name: a sample of what comes in, and what takes a changed one."""
    unit = told(knowledge, Entry("RTU-7"), CELLS)
    register = Register((unit,), ())
    write_entry(folder / "register", unit)
    path = path_of(folder / "register", unit.name)

    def unit_file(data: bytes) -> bool:
        path.write_bytes(data)
        try:
            entry = read_entry(knowledge, path.parent, unit.name)
        except NotRead:
            return False
        assert entry is not None
        write_entry(folder / "again", entry)
        assert read_entry(knowledge, folder / "again", unit.name) == entry
        return True

    def units(text: str) -> bool:
        found = read_sheet(knowledge, text, "t.csv", register)
        again = read_sheet(knowledge, as_sheet(knowledge, found.entries), "t.csv", register)
        assert len(again.entries) == len(found.entries) and not again.bad
        return not found.bad

    def visits(text: str) -> bool:
        past = read_past_visits(knowledge, text, "t.csv", register)
        keep_past_visits(folder / "past", past, {"program": "0", "rules": "x"})
        return not past.bad

    def instruments(text: str) -> bool:
        found = read_instrument_sheet(text, "t.csv")
        for each in found.kept:
            write_instrument(folder / "instruments", each)
        return not found.bad

    def refrigerant(text: str) -> bool:
        found = read_refrigerant_sheet(knowledge, text, "t.csv", register, (), date.max)
        keep_weighings(folder / "weights", "RTU-7", "0", [each[1:] for each in found.told])
        told_by_hand(knowledge, folder / "weights", "RTU-7")
        (folder / "weights" / "rtu7.journal").unlink()
        return not found.bad

    return {
        "unit of the register": (path.read_bytes(), unit_file),
        "table of units": (UNITS, _table(folder / "units.csv", units)),
        "table of visits": (VISITS, _table(folder / "visits.csv", visits)),
        "table of instruments": (INSTRUMENTS, _table(folder / "instruments.csv", instruments)),
        "table of refrigerant": (REFRIGERANT, _table(folder / "weights.csv", refrigerant)),
    }


def _table(path: Path, take: Callable[[str], bool]) -> Enter:
    def enter(data: bytes) -> bool:
        path.write_bytes(data)
        try:
            return take(read_text(path))
        except NotUsable:
            return False

    return enter
