"""Which files a folder of rules holds, and what kind each is. Only names and bytes here.

No symbolic link is followed: a pack from somebody else must not reach outside its own folder. How
much is read is bounded before it is read.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.problems import Problem, RulesInvalid
from troubleshoot.outside.files import read_bytes
from troubleshoot.outside.refusal import NotUsable

MOST_FILES: Final = 5_000
MOST_FOLDERS_DEEP: Final = 8
MOST_BYTES_IN_ALL: Final = 50_000_000

PACK_MANIFEST: Final = "pack.yaml"
_FILES: Final = {
    "hazards.yaml": "hazards",
    "order-of-cautions.yaml": "order-of-cautions",
    "complaints.yaml": "complaints",
    "equipment.yaml": "equipment",
    "quantities.yaml": "quantities",
    "limits.yaml": "limits",
    "round.yaml": "round",
    "sound-unit.yaml": "sound-unit",
    "relations.yaml": "relations",
    "sources.yaml": "sources",
    "subsystems.yaml": "subsystems",
    "retired.yaml": "retired",
    "words.yaml": "words",
    "synonyms.yaml": "synonyms",
    PACK_MANIFEST: "pack",
}
_FOLDERS: Final = {
    ("tests", 2): "tests",
    ("procedures", 2): "procedures",
    ("hazards", 2): "hazards",
    ("units", 2): "unit",
    ("faults", 3): "fault",
}


@frozen
class RuleText:
    """The bytes of one rule file. `folder` counts the folders read: 0 is the shipped one."""

    path: str
    name: str
    folder: int
    data: bytes


def read_folders(
    folders: Sequence[Path | str], copy_of: Callable[[Path, int], Sequence[RuleText]] | None = None
) -> list[RuleText]:
    """Read every rule file of the folders, in a fixed order.

    `copy_of`: what stands in for a site's folder, by its number, that cannot be read or is empty.
    Raises RulesInvalid for a missing folder, an empty one of a site, a symbolic link, a file that
    cannot be read or is too large, or more files than anybody writes by hand.
    """
    texts: list[RuleText] = []
    problems: list[Problem] = []
    read = 0
    for number, folder in enumerate(folders):
        before = len(texts), len(problems)
        if number and copy_of is not None and not _has_files(folder):
            texts += copy_of(Path(folder), number)
            if len(texts) > before[0]:
                continue
        try:
            for text in _read_folder(Path(folder), number, problems):
                texts.append(text)
                read += len(text.data)
                if len(texts) > MOST_FILES or read > MOST_BYTES_IN_ALL:
                    what = "more rule files than anybody writes by hand"
                    instead = f"keep to {MOST_FILES} files and {MOST_BYTES_IN_ALL} bytes"
                    raise RulesInvalid([_problem(str(folder), what, instead)])
        except OSError as error:
            what = f"the folder of rules cannot be read ({error.strerror})"
            problems.append(_problem(str(folder), what, "name a folder that holds rule files"))
        if number and before == (len(texts), len(problems)):
            what = "the folder holds no rule file"
            problems.append(_problem(str(folder), what, f"put {PACK_MANIFEST} and rules in it"))
    if problems:
        raise RulesInvalid(problems)
    return texts


def _has_files(folder: Path | str) -> bool:
    """Whether anything of a folder can be seen: not where a share is away, or not mounted."""
    try:
        with os.scandir(folder) as found:
            return any(True for _ in found)
    except OSError:
        return False


def kind_of(name: str) -> str | None:
    """Return the kind of the rule file `name` (a path inside its folder), or None."""
    if not name.endswith(".yaml"):
        return None
    parts = name.split("/")
    if len(parts) == 1:
        return _FILES.get(name)
    return _FOLDERS.get((parts[0], len(parts)))


def _read_folder(folder: Path, number: int, problems: list[Problem]) -> Iterator[RuleText]:
    for name, entry in yaml_files(folder):
        path = str(folder / name)
        if entry.is_symlink():
            problems.append(_problem(path, "a symbolic link", "put the file itself here"))
        elif entry.is_dir():
            problems.append(_problem(path, "too many folders inside each other", "flatten them"))
        else:
            try:
                yield RuleText(path, name, number, read_bytes(entry.path))
            except NotUsable as error:
                problems.append(_problem(path, error.what, error.instead))


def yaml_files(folder: Path | str, inside: str = "") -> Iterator[tuple[str, os.DirEntry[str]]]:
    """Yield YAML files, links and folders too deep, as (name inside the folder, entry), sorted.

    `inside`: where in the folder that was named first this one lies, empty for that one itself.
    """
    with os.scandir(folder) as found:
        entries = sorted(found, key=lambda entry: entry.name)
    for entry in entries:
        if entry.name.startswith("."):
            continue
        name = inside + entry.name
        is_folder = entry.is_dir(follow_symlinks=False)
        if is_folder and inside.count("/") < MOST_FOLDERS_DEEP:
            yield from yaml_files(entry.path, name + "/")
        elif is_folder or entry.is_symlink() or name.endswith((".yaml", ".yml")):
            yield name, entry


def _problem(path: str, what: str, instead: str) -> Problem:
    return Problem(path, 1, 1, what, instead, "layout")
