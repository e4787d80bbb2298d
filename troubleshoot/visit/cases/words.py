"""Small words of a case file: lists, texts, and the places that readings name."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.unit.places import SPOKEN_KINDS, highest_number

COUNTED_WITH_CIRCUITS = frozenset({"circuit", "compressor", "contactor", "compressor-capacitor"})


def numbers_named(entries: Sequence[tuple[str, object]]) -> dict[str, int]:
    """The highest number by which readings name a circuit or a fan."""
    highest: dict[str, int] = {}
    for _, entry in entries:
        at = entry.get("at") if isinstance(entry, Mapping) else None
        for words in as_list(at):
            spoken = plain_words(str(words))
            number = highest_number(spoken)
            kind = next((k for k, s in SPOKEN_KINDS.items() if spoken.startswith(s)), None)
            if number is None or kind is None:
                continue
            counted = kind
            if kind in COUNTED_WITH_CIRCUITS:
                counted = "circuit"
            elif kind == "condenser-fan-capacitor":
                counted = "condenser-fan"
            highest[counted] = max(highest.get(counted, 1), min(number, 8))
    return highest


def as_list(value: object) -> list[object]:
    """A list as it is, nothing as an empty one, anything else as a list of itself."""
    if value is None:
        return []
    return list(value) if isinstance(value, list | tuple) else [value]


def as_text(value: object) -> str:
    """What people would type: a number with its unit where they stand apart."""
    if isinstance(value, Mapping):
        return f"{value.get('value')} {value.get('unit', '')}".strip()
    return str(value)
