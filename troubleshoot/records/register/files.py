"""The files of the register: one for each unit, written whole or not at all.

A file's name is its unit's, in plain letters and figures, so that a unit is found without looking
through the others, and so that RTU-7 and rtu 07 are one.
"""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.yaml_scalars import write_scalar
from troubleshoot.outside.files import make_private, read_text
from troubleshoot.outside.plain_data import check_plain
from troubleshoot.outside.refusal import NotUsable, in_a_line
from troubleshoot.reasoning.unit.equipment import InputRefused
from troubleshoot.records.register.columns import NAME
from troubleshoot.records.register.entry import Entry, cells_of, named, told
from troubleshoot.visit.kept.names import natural
from troubleshoot.visit.kept.unit_names import in_plain, same_unit

FORMAT: Final = 1
_SUFFIX: Final = ".yaml"
_FORMAT_KEY: Final = "format"


class NotRead(Exception):
    """A unit's file cannot be read, or not as today's rules would; the message says why."""


class NotWritten(Exception):
    """A unit could not be kept; the message says why."""


@frozen
class Register:
    """All units of a folder by name, and a sentence for each file that cannot be read."""

    entries: tuple[Entry, ...]
    problems: tuple[str, ...]

    def entry(self, name: str) -> Entry | None:
        """The unit of this name, however it was typed."""
        return next((each for each in self.entries if same_unit(each.name, name)), None)


def path_of(folder: Path, name: str) -> Path:
    """Where a unit of this name is kept."""
    return folder / f"{in_plain(name)}{_SUFFIX}"


def read_entry(knowledge: Knowledge, folder: Path, name: str) -> Entry | None:
    """The unit of this name, None where the register has none. Raises NotRead."""
    path = path_of(folder, name)
    return _read(knowledge, path) if in_plain(name) and os.path.lexists(path) else None


def read_register(knowledge: Knowledge, folder: Path) -> Register:
    """Every unit of a folder, in the order in which people count; one bad file hides no other."""
    entries, problems = [], []
    for path in _paths(folder):
        try:
            entries.append(_read(knowledge, path))
        except NotRead as error:
            problems.append(str(error))
    entries.sort(key=lambda entry: natural(entry.name))
    return Register(tuple(entries), tuple(problems))


def _paths(folder: Path) -> Iterator[Path]:
    try:
        yield from sorted(path for path in folder.iterdir() if path.suffix == _SUFFIX)
    except OSError:
        return


def _read(knowledge: Knowledge, path: Path) -> Entry:
    """Raises NotRead."""
    from troubleshoot.knowledge.located import read_located  # YAML, where a unit is kept at all
    from troubleshoot.knowledge.nodes import plain
    from troubleshoot.knowledge.problems import RuleFileError

    where = in_a_line(str(path))
    try:
        data = plain(read_located(read_text(path), str(path)))
        check_plain(data, where)
        return _entry(knowledge, data, path)
    except RuleFileError as error:
        raise NotRead(str(error.problems[0])) from None
    except NotUsable as error:
        raise NotRead(str(error)) from None
    except InputRefused as error:
        said = "; ".join(f"{r.key}: {r.problem}, {r.instead}" for r in error.refusals)
        raise NotRead(f"{where}: {said}") from None


def _entry(knowledge: Knowledge, data: object, path: Path) -> Entry:
    """Raises NotUsable, InputRefused."""
    where = in_a_line(str(path))
    if not isinstance(data, dict) or not isinstance(data.get(NAME), str):
        raise NotUsable(where, "it names no unit", "write its name under name")
    if data.get(_FORMAT_KEY) != FORMAT:
        what = f"its format is {data.get(_FORMAT_KEY)}, and this version reads {FORMAT}"
        raise NotUsable(where, what, "a newer version of the program wrote it")
    name = named(data[NAME], where)
    if not same_unit(name, path.stem):
        raise NotUsable(where, f'it is of "{name}"', f"call the file {path_of(Path(), name)}")
    cells = {str(k): str(v) for k, v in data.items() if k not in (_FORMAT_KEY, NAME)}
    return told(knowledge, Entry(name), cells)


def write_entry(folder: Path, entry: Entry) -> None:
    """Keep a unit; it is on the disk when this returns. Raises NotWritten."""
    path = path_of(folder, entry.name)
    rows: Mapping[str, str | int] = {_FORMAT_KEY: FORMAT, **cells_of(entry)}
    text = "".join(f"{key}: {write_scalar(value)}\n" for key, value in rows.items())
    made = ""
    try:
        make_private(folder)
        descriptor, made = tempfile.mkstemp(dir=folder)
        with os.fdopen(descriptor, "w", encoding="utf-8") as stream:
            stream.write(text)
            stream.flush()
            os.fsync(stream.fileno())
        os.replace(made, path)  # noqa: PTH105  (made is a name)
    except OSError as error:
        with suppress(OSError):
            os.unlink(made)  # noqa: PTH108
        raise NotWritten(
            f"{in_a_line(str(path))}: cannot be kept ({error.strerror or error}); make room or "
            "name another folder with --data"
        ) from None
