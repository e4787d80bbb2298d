"""What lies where visits are kept and is none by its name: it may be one that was renamed.

It is named, so that a STOP does not go in silence with a name. What begins as a journal does, or is
called one, is looked up for a STOP; nobody goes on in it.
"""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

from troubleshoot.outside.files import is_file, is_folder, read_start
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.outside.text import shown
from troubleshoot.visit.kept.lines import OF_WEIGHTS, OPENING
from troubleshoot.visit.kept.names import SUFFIX, kept_visits

MOST_NAMED: Final = 5
MOST_OF_HEADER: Final = 160
"""Bytes in which the header of a unit's weights says that it is one."""
MOST_LOOKED_AT: Final = 200
"""Entries of a folder that are looked at, so that a wrong folder takes no time."""


def foreign_in(visits: Path) -> tuple[str, ...]:
    """A sentence for each file and folder that is not read as a visit; `visits` need not exist.

    Of the folder around it only what holds journals is named, as one renamed does.
    """
    found = _found(visits)
    more = len(found) - MOST_NAMED
    rest = (f"Not read: {more} more files or folders beside these.",) if more > 0 else ()
    return (*(why_not_read(path) for path in found[:MOST_NAMED]), *rest)


def strayed(visits: Path) -> tuple[Path, ...]:
    """The files that may be journals, and are not read as visits."""
    found = _found(visits)
    inside = [each for path in found if is_folder(path) for each in _entries(path)]
    files = [path for path in (*found, *inside) if is_file(path)]
    return tuple(filter(_may_be_journal, files[:MOST_LOOKED_AT]))


def _found(visits: Path) -> list[Path]:
    """What lies among the visits and is none by its name, and journals around them."""
    kept = {path.name for path in kept_visits(visits)}
    others = (path for path in _entries(visits) if path.name not in kept)
    inside = [path for path in others if not _hidden(path) or _may_hold_visits(path)]
    around = (path for path in _entries(visits.parent) if path.name != visits.name)
    return [*inside, *filter(_may_hold_visits, around)]


def _may_hold_visits(path: Path) -> bool:
    """Whether it may be a journal, or a folder with some in it, as one that was renamed is."""
    if is_folder(path):
        return any(_may_be_journal(each) for each in _entries(path) if is_file(each))
    return is_file(path) and _may_be_journal(path)


def _may_be_journal(path: Path) -> bool:
    """Whether a file begins as a journal does, or is called one, as one that was packed is."""
    is_called_one = SUFFIX in path.name.casefold()
    try:
        start = read_start(path, MOST_OF_HEADER)
    except NotUsable:
        return is_called_one
    return (is_called_one or start.startswith(OPENING)) and OF_WEIGHTS not in start


def why_not_read(path: Path) -> str:
    """The sentence for one of them."""
    name = shown(in_a_line(str(path)))
    if is_folder(path):
        return f"Not read: {name}; if visits are kept in it, put them back, each by its own name."
    return f"Not read: {name}; if it is a visit, give it its name back, as 2026-11-26-1{SUFFIX}."


def _entries(folder: Path) -> list[Path]:
    """What lies in a folder, by name; nothing where it cannot be looked into."""
    try:
        with os.scandir(folder) as entries:
            names = [entry.name for entry, _ in zip(entries, range(MOST_LOOKED_AT), strict=False)]
    except OSError:
        return []
    return [folder / name for name in sorted(names)]


def _hidden(path: Path) -> bool:
    """Whether its name hides it: a system keeps such for itself, and a journal may lie so."""
    return path.name.startswith(".")
