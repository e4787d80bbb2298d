"""A site's folder of rules in a line: by which rules people were led, and who answers for them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, Final

from troubleshoot.knowledge.model import Knowledge, Pack
from troubleshoot.knowledge.packs_in_use import LETTERS

PACKS: Final = "packs"
"""The key of a visit's journal that keeps the lines of the folders that it began with."""


def pack_line(pack: Pack) -> str:
    """Name, version and hash of a folder, and who has signed it."""
    named = f"{pack.name}, version {pack.version}" if pack.version else pack.name
    told = f"{named}, rules {pack.digest}"
    signed = pack.signed
    if signed is None:
        return f"{told}; not signed"
    since = "" if pack.is_as_signed else ", and changed since"
    return f"{told}; signed by {signed.by} on {signed.on}{since}"


def rules_of_the_day(knowledge: Knowledge, header: Mapping[str, Any]) -> Iterator[str]:
    """The rules that a visit began with, where they are not those of now. `header`: its journal's.

    A journal may have been written over by anybody: what is no text in it is left out.
    """
    then = header.get("rules")
    if not isinstance(then, str) or then == knowledge.digest:
        return
    program = header.get("program")
    yield f"program {program if isinstance(program, str) else 'unknown'}, rules {then[:LETTERS]}"
    packs = header.get(PACKS)
    yield from (each for each in packs if isinstance(each, str)) if isinstance(packs, list) else ()
    yield f"written here by those of now, rules {knowledge.digest[:LETTERS]}"
