"""`rules texts FILE`: the catalogue of another language, written, brought up to date or checked."""

from __future__ import annotations

from pathlib import Path

from troubleshoot.cli.door import tell
from troubleshoot.cli.failures import USAGE, Failure
from troubleshoot.cli.practice.files import unwritable
from troubleshoot.cli.rule_base import site_folders
from troubleshoot.knowledge.load import shipped_folder
from troubleshoot.language.catalogue_file import (
    MOST_BYTES,
    Entry,
    catalogue_text,
    read_catalogue,
)
from troubleshoot.language.upkeep import brought_up, still_to_do, texts_of_today
from troubleshoot.outside.files import is_file, read_text
from troubleshoot.outside.refusal import NotUsable


def write_catalogue(path: Path) -> None:
    """Write a catalogue, or bring one up to date: what was told of a text stays."""
    before = _entries(path) if is_file(path) else ()
    try:
        path.open("a", encoding="utf-8").close()  # before the texts are gathered: that takes long
        today = _texts_of_today()
        entries = brought_up(before, today)
        path.write_text(catalogue_text(entries), "utf-8")
    except OSError as error:
        raise unwritable(str(path), error) from None
    untold = sum(not entry.told for entry in entries)
    tell(f"{path}: {len(today)} texts, {untold} without a translation")


def check_catalogue(path: Path) -> int:
    """Say what is still to do in a catalogue; returns how much."""
    lines = list(still_to_do(_entries(path), _texts_of_today()))
    for line in lines:
        tell(line)
    tell(f"{len(lines)} to do")
    return len(lines)


def _entries(path: Path) -> tuple[Entry, ...]:
    try:
        return read_catalogue(read_text(path, MOST_BYTES), str(path))
    except NotUsable as error:
        raise Failure([str(error)], USAGE) from None


def _texts_of_today() -> tuple[Entry, ...]:
    return texts_of_today([shipped_folder(), *site_folders()])
