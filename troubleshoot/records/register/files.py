"""The files of the register: one for each unit.

A file's name is its unit's, in plain letters and figures, so that a unit is found without looking
through the others, and so that RTU-7 and rtu 07 are one.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.records.register.columns import NAME
from troubleshoot.records.register.entry import Entry, cells_of, named, told
from troubleshoot.records.register.flat import SUFFIX, NotRead, read_flat, write_flat
from troubleshoot.visit.kept.names import natural
from troubleshoot.visit.kept.unit_names import in_plain, same_unit


@frozen
class Register:
    """All units of a folder by name, and a sentence for each file that cannot be read."""

    entries: tuple[Entry, ...]
    problems: tuple[str, ...]

    def entry(self, name: str) -> Entry | None:
        """The unit of this name, however it was typed."""
        return next((each for each in self.entries if same_unit(each.name, name)), None)


def path_of(folder: Path, name: str) -> Path:
    """Where what has this name is kept."""
    return folder / f"{in_plain(name)}{SUFFIX}"


def read_entry(knowledge: Knowledge, folder: Path, name: str) -> Entry | None:
    """The unit of this name, None where the register has none. Raises NotRead."""
    path = path_of(folder, name)
    return _read(knowledge, path) if in_plain(name) and os.path.lexists(path) else None


def read_register(knowledge: Knowledge, folder: Path) -> Register:
    """Every unit of a folder, in the order in which people count; one bad file hides no other."""
    entries, problems = [], []
    for path in paths_in(folder):
        try:
            entries.append(_read(knowledge, path))
        except NotRead as error:
            problems.append(str(error))
    entries.sort(key=lambda entry: natural(entry.name))
    return Register(tuple(entries), tuple(problems))


def paths_in(folder: Path) -> Iterator[Path]:
    """The files of a folder of the register, in order; none where there is no such folder."""
    try:
        yield from sorted(path for path in folder.iterdir() if path.suffix == SUFFIX)
    except OSError:
        return


def name_and_cells(path: Path) -> tuple[str, dict[str, str]]:
    """The name that a file has, and what it tells of it. Raises NotRead."""
    where, cells = in_a_line(str(path)), read_flat(path)
    try:
        name = named(cells.pop(NAME, ""), where)
    except NotUsable as error:
        raise NotRead(str(error)) from None
    if not same_unit(name, path.stem):
        raise NotRead(f'{where}: it is of "{name}"; call the file {path_of(Path(), name)}')
    return name, cells


def _read(knowledge: Knowledge, path: Path) -> Entry:
    """Raises NotRead."""
    name, cells = name_and_cells(path)
    try:
        return told(knowledge, Entry(name), cells)
    except InputRefused as error:
        said = "; ".join(f"{r.key}: {r.problem}, {r.instead}" for r in error.refusals)
        raise NotRead(f"{in_a_line(str(path))}: {said}") from None


def write_entry(folder: Path, entry: Entry) -> None:
    """Keep a unit; it is on the disk when this returns. Raises NotWritten."""
    write_flat(path_of(folder, entry.name), cells_of(entry))
