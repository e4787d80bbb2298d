"""The names of visits: the day, and which of that day's it is (2026-11-26-3).

A name is only a name: it leads to a file in the folder of visits, and nowhere else.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import MOST_NAME, first_refused

SUFFIX: Final = ".journal"

Natural = tuple[tuple[bool, int, str], ...]


def natural(name: str) -> Natural:
    """A key to sort names by as people do: 2026-11-26-9 before 2026-11-26-10."""
    parts = re.findall(r"([0-9]+)|([^0-9]+)", name)
    return tuple(
        (digits != "", len(digits.lstrip("0")), digits or other) for digits, other in parts
    )


def kept_visits(folder: Path) -> tuple[Path, ...]:
    """The journals in a folder that have the name of a visit, the latest first."""
    try:
        found = [p for p in folder.iterdir() if p.suffix == SUFFIX and _is_name(p.stem)]
    except OSError:
        return ()
    return tuple(sorted(found, key=lambda path: (natural(path.stem), path.name), reverse=True))


def next_name(folder: Path, day: str) -> str:
    """The name of a new visit: the number after the highest that the day has so far."""
    taken = [path.stem.removeprefix(f"{day}-") for path in kept_visits(folder)]
    numbers = [int(rest) for rest in taken if re.fullmatch(r"[0-9]{1,9}", rest)]
    return f"{day}-{max(numbers, default=0) + 1}"


def journal_path(folder: Path, name: str) -> Path:
    """The file of the visit so named. Raises NotUsable for what is no name."""
    path = folder / f"{name}{SUFFIX}"
    if not _is_name(name) or path.parent != folder:
        raise NotUsable(name[:MOST_NAME], "this is no name of a visit", "see: troubleshoot visits")
    return path


def _is_name(name: str) -> bool:
    """Whether a visit may be called so: no path, nothing hidden, nothing that a screen refuses."""
    is_plain = not name.startswith(".") and "\\" not in name and "/" not in name
    return 0 < len(name) <= MOST_NAME and is_plain and first_refused(name) is None
