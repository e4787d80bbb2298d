"""Keeping rules that were read and found in order, so that the next start need not read them again.

What is kept are the objects themselves, under a name made of the rule files' own hash and the state
of the program's own files: neither changed rules nor a changed program meet old objects. A kept
file that is damaged, or a folder that cannot be written, only costs time.

Objects are pickled; on the way back nothing but classes of the model is looked up, so that a kept
file can make rules and run nothing.

The hash in a kept file tells damage, not tampering: anybody can compute it, and whoever writes into
the folder writes what the next technician reads before opening a panel. What protects it is whose
it is (`outside.own_files`).
"""

from __future__ import annotations

import contextlib
import hashlib
import io
import os
import pickle
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

from troubleshoot.knowledge import model
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.own_files import read_own, write_own

FOLDER_VARIABLE: Final = "TROUBLESHOOT_CACHE"
"""Environment variable that names the folder; set to nothing it turns keeping off."""

MOST_KEPT: Final = 8
MOST_BYTES: Final = 50_000_000

_MARK: Final = b"troubleshoot rules"


def cache_folder(chosen: Path | str | None = None) -> Path | None:
    """The folder to keep read rules in: as chosen, by the environment, or the user's own."""
    if chosen is not None:
        return Path(chosen)
    named = os.environ.get(FOLDER_VARIABLE)
    if named is not None:
        return Path(named) if named else None
    from platformdirs import user_cache_dir

    return Path(user_cache_dir("troubleshoot", appauthor=False))


def kept_name(digest: str) -> str:
    """The name under which rules of a digest are kept by the program as it is now.

    Python tells an old compiled file by the size and time of its source; so do we.
    """
    hashed = hashlib.sha256(digest.encode())
    for name, size, time in sorted(sources(Path(__file__).parent)):
        hashed.update(f"\0{name}\0{size}\0{time}".encode())
    return hashed.hexdigest()[:32]


def sources(folder: Path | str) -> Iterator[tuple[str, int, int]]:
    """(name, size, time) of every source file in a folder of the program."""
    with os.scandir(folder) as found:
        for entry in found:
            if entry.name.endswith(".py"):
                state = entry.stat()
                yield entry.name, state.st_size, state.st_mtime_ns
            elif entry.is_dir() and entry.name != "__pycache__":
                yield from sources(entry.path)


def read_kept(folder: Path | None, name: str) -> Knowledge | None:
    """Return what was kept under a name, or None where nothing whole is."""
    if folder is None:
        return None
    head, _, body = read_own(_path(folder, name), MOST_BYTES).partition(b"\n")
    if head != _head(name, body):
        return None
    try:
        found = _OnlyRules(io.BytesIO(body)).load()
    except Exception:  # unpickling raises whatever it likes on bytes that are no rules of ours
        return None
    return found if isinstance(found, Knowledge) else None


def keep(folder: Path | None, name: str, knowledge: Knowledge) -> None:
    """Keep rules under a name, whole or not at all; where that cannot be done, do nothing."""
    if folder is None:
        return
    body = pickle.dumps(knowledge, pickle.HIGHEST_PROTOCOL)
    if write_own(_path(folder, name), _head(name, body) + b"\n" + body):
        with contextlib.suppress(OSError):
            _drop_oldest(folder)


class _OnlyRules(pickle.Unpickler):
    """Looks up the classes of the model and nothing else."""

    def find_class(self, module: str, name: str) -> Any:
        if module.startswith(model.__name__) and name in model.__all__:
            return getattr(model, name)
        raise pickle.UnpicklingError(f"{module}.{name} is no class of the model")


def _path(folder: Path, name: str) -> Path:
    return folder / f"rules-{name}.kept"


def _head(name: str, body: bytes) -> bytes:
    return b" ".join((_MARK, name.encode(), hashlib.sha256(body).hexdigest().encode()))


def _drop_oldest(folder: Path) -> None:
    kept = sorted(folder.glob("rules-*.kept"), key=lambda path: (path.stat().st_mtime, path.name))
    for path in kept[:-MOST_KEPT]:
        path.unlink(missing_ok=True)
