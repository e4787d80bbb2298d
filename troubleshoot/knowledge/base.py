"""The located rule base: every rule file as text, places and plain data, for build and checks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.layout import RuleText, kind_of, read_folders
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.nodes import Located, LocatedMapping
from troubleshoot.knowledge.problems import Problem, RuleFileError
from troubleshoot.knowledge.reading_forms import read_form
from troubleshoot.knowledge.upgrading import form_before, in_keys_of_today


@frozen
class RuleFile:
    """One file that could be read. `data` only serves where the file has no problem of form."""

    path: str
    name: str
    folder: int
    kind: str
    root: Located
    data: Any


@frozen
class ReadBase:
    """All files that could be read, and the problems met on the way."""

    files: tuple[RuleFile, ...]
    problems: tuple[Problem, ...]
    unread: tuple[str, ...] = ()
    """Paths of rule files that are no YAML of ours at all."""


def read_base(folders: Sequence[Path | str]) -> ReadBase:
    """Read all rule files of the folders; the first folder is the shipped one, others are packs.

    Raises RulesInvalid only where a folder itself cannot be read.
    """
    return read_texts(read_folders(folders))


def read_texts(texts: Sequence[RuleText]) -> ReadBase:
    """Read rule files from their bytes."""
    files: list[RuleFile] = []
    problems: list[Problem] = []
    unread: list[str] = []
    for text in texts:
        kind = kind_of(text.name)
        if kind is None:
            problems.append(_out_of_place(text))
            continue
        try:
            root = read_located(text.data, text.path)
        except RuleFileError as error:
            problems.extend(error.problems)
            unread.append(text.path)
            continue
        data, found = read_form(form_before(kind), root, text.path)
        problems.extend(found)
        if not found:
            data = in_keys_of_today(kind, data)
        files.append(RuleFile(text.path, text.name, text.folder, kind, root, data))
    return ReadBase(tuple(files), tuple(problems), tuple(unread))


def entries(root: Located, key: str) -> Iterator[LocatedMapping]:
    """Yield the mappings listed under `key` of a file, whatever else is wrong with it."""
    if not isinstance(root, LocatedMapping) or key not in root.entries:
        return
    for item in getattr(root.entries[key].value, "items", ()):
        if isinstance(item, LocatedMapping):
            yield item


def _out_of_place(text: RuleText) -> Problem:
    if text.name.endswith(".yml"):
        instead = f"name it {text.name.removesuffix('.yml')}.yaml"
    else:
        instead = (
            "rules live in tests/AREA.yaml, faults/SUBSYSTEM/FAULT.yaml, procedures/NAME.yaml, "
            "hazards/KIND.yaml, units/UNIT.yaml and files such as complaints.yaml"
        )
    return Problem(text.path, 1, 1, "no kind of rule file has this name", instead, "layout")
