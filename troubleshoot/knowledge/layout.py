"""Which files a folder of rules holds, and what kind each is. Only names and bytes here.

No symbolic link is followed: a pack from somebody else must not reach outside its own folder.
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from troubleshoot.knowledge.problems import Problem, RulesInvalid

MOST_FILES: Final = 5_000
MOST_FILE_BYTES: Final = 1_000_000

PACK_MANIFEST: Final = "pack.yaml"
_FILES: Final = {
    "hazards.yaml": "hazards",
    "complaints.yaml": "complaints",
    "equipment.yaml": "equipment",
    "quantities.yaml": "quantities",
    "limits.yaml": "limits",
    "round.yaml": "round",
    "sources.yaml": "sources",
    "retired.yaml": "retired",
    PACK_MANIFEST: "pack",
}
_FOLDERS: Final = {("tests", 2): "tests", ("procedures", 2): "procedures", ("faults", 3): "fault"}


@dataclass(frozen=True, slots=True)
class RuleText:
    """The bytes of one rule file. `folder` counts the folders read: 0 is the shipped one."""

    path: str
    name: str
    folder: int
    data: bytes


def read_folders(folders: Sequence[Path | str]) -> list[RuleText]:
    """Read every rule file of the folders, in a fixed order.

    Raises RulesInvalid for a missing folder, a symbolic link, a file that is too large, or more
    files than anybody writes by hand.
    """
    texts: list[RuleText] = []
    problems: list[Problem] = []
    for number, folder in enumerate(folders):
        try:
            texts.extend(_read_folder(Path(folder), number, problems))
        except OSError as error:
            what = f"the folder of rules cannot be read ({error.strerror})"
            problems.append(_problem(str(folder), what, "name a folder that holds rule files"))
    if len(texts) > MOST_FILES:
        what = f"{len(texts)} rule files"
        problems.append(_problem(str(folders[-1]), what, f"keep to {MOST_FILES}"))
    if problems:
        raise RulesInvalid(problems)
    return texts


def kind_of(name: str) -> str | None:
    """Return the kind of the rule file `name` (a path inside its folder), or None."""
    if not name.endswith(".yaml"):
        return None
    parts = name.split("/")
    if len(parts) == 1:
        return _FILES.get(name)
    return _FOLDERS.get((parts[0], len(parts)))


def _read_folder(folder: Path, number: int, problems: list[Problem]) -> Iterator[RuleText]:
    for name, entry in _walk(folder, ""):
        path = str(folder / name)
        if entry.is_symlink():
            problems.append(_problem(path, "a symbolic link", "put the file itself here"))
        elif entry.stat().st_size > MOST_FILE_BYTES:
            what = f"the file is over {MOST_FILE_BYTES} bytes"
            problems.append(_problem(path, what, "divide it into smaller files"))
        else:
            with open(entry.path, "rb") as file:  # noqa: PTH123 - twice as fast as Path here
                yield RuleText(path, name, number, file.read())


def _walk(folder: Path | str, inside: str) -> Iterator[tuple[str, os.DirEntry[str]]]:
    """Yield YAML files, and links of any kind, as (name inside the folder, entry), sorted."""
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        if entry.name.startswith("."):
            continue
        name = inside + entry.name
        if entry.is_symlink() or entry.name.endswith((".yaml", ".yml")):
            yield name, entry
        elif entry.is_dir(follow_symlinks=False):
            yield from _walk(entry.path, name + "/")


def _problem(path: str, what: str, instead: str) -> Problem:
    return Problem(path, 1, 1, what, instead, "layout")
