"""What the register tells a visit that names one of its units."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.register.entry import Entry
from troubleshoot.records.register.files import read_entry
from troubleshoot.records.register.flat import NotRead
from troubleshoot.visit.kept.on_record import Recorded, split_record

NOTHING_USED = "Nothing of the register is used on this visit: everything is asked."


def recorded(knowledge: Knowledge, folder: Path, unit: str) -> Recorded:
    """A unit on record, with where it stands and what hangs on it; nothing where it is not."""
    try:
        entry = read_entry(knowledge, folder, unit)
    except NotRead as error:
        return Recorded(says=(f"{error}.", NOTHING_USED))
    if entry is None:
        return Recorded()
    return Recorded(split_record(knowledge, entry.unit), (where_it_stands(entry),))


def where_it_stands(entry: Entry) -> str:
    """Where a unit is, what it serves and how much it matters, in a sentence."""
    own = entry.own
    places = [own[key] for key in ("site", "roof") if key in own]
    serves = f"serves {own['serves']}" if "serves" in own else ""
    matters = f"matters: {own['matters']}" if "matters" in own else ""
    about = "; ".join(filter(None, (", ".join(places), serves, matters)))
    return f"{entry.name} is in the register{f': {about}' if about else ''}."
