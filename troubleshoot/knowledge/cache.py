"""Keeping rules that were read and found in order, so that the next start need not read them again.

What is kept are the objects themselves, under a name made of the rule files' own hash and the state
of the program's own files: neither changed rules nor a changed program meet old objects. A kept
file that is damaged, or a folder that cannot be written, only costs time.

Objects are pickled; on the way back nothing but classes of the model is looked up, so that a kept
file can make rules and run nothing.

The hash in a kept file tells damage, not tampering: anybody can compute it, and whoever writes into
the folder writes what the next technician reads before opening a panel. What protects it is whose
it is. So nothing is read or kept in a folder that others own or may write into, nor read from a
file that is not the user's own.
"""

from __future__ import annotations

import contextlib
import hashlib
import io
import os
import pickle
import stat
from collections.abc import Iterator
from pathlib import Path
from typing import Any, Final

from troubleshoot.knowledge import model
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.files import make_private, open_regular, read_open

FOLDER_VARIABLE: Final = "TROUBLESHOOT_CACHE"
"""Environment variable that names the folder; set to nothing it turns keeping off."""

MOST_KEPT: Final = 8
MOST_BYTES: Final = 50_000_000

_MARK: Final = b"troubleshoot rules"
_NEW: Final = os.O_WRONLY | os.O_CREAT | os.O_EXCL


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
    for name, size, time in sorted(_sources(Path(__file__).parent)):
        hashed.update(f"\0{name}\0{size}\0{time}".encode())
    return hashed.hexdigest()[:32]


def _sources(folder: Path | str) -> Iterator[tuple[str, int, int]]:
    """(name, size, time) of every source file that has a part in reading rules."""
    with os.scandir(folder) as found:
        for entry in found:
            if entry.name.endswith(".py"):
                state = entry.stat()
                yield entry.name, state.st_size, state.st_mtime_ns
            elif entry.is_dir() and entry.name != "__pycache__":
                yield from _sources(entry.path)


def read_kept(folder: Path | None, name: str) -> Knowledge | None:
    """Return what was kept under a name, or None where nothing whole is."""
    try:
        if folder is None or not _is_ours(folder.stat()):
            return None
        kept = _read_own(_path(folder, name))
        head, _, body = kept.partition(b"\n")
        if head != _head(name, body):
            return None
        found = _OnlyRules(io.BytesIO(body)).load()
    except Exception:  # unpickling raises whatever it likes on bytes that are no rules of ours
        return None
    return found if isinstance(found, Knowledge) else None


def keep(folder: Path | None, name: str, knowledge: Knowledge) -> None:
    """Keep rules under a name, whole or not at all; where that cannot be done, do nothing."""
    if folder is None:
        return
    body = pickle.dumps(knowledge, pickle.HIGHEST_PROTOCOL)
    path = _path(folder, name)
    unfinished = path.with_suffix(f".{os.getpid()}.part")
    with contextlib.suppress(OSError):
        make_private(folder)
        if not _is_ours(folder.stat()):
            return
        try:
            with os.fdopen(os.open(unfinished, _NEW, 0o600), "wb") as file:
                file.write(_head(name, body) + b"\n" + body)
            unfinished.replace(path)
        finally:
            unfinished.unlink(missing_ok=True)
        _drop_oldest(folder)


class _OnlyRules(pickle.Unpickler):
    """Looks up the classes of the model and nothing else."""

    def find_class(self, module: str, name: str) -> Any:
        if module.startswith(model.__name__) and name in model.__all__:
            return getattr(model, name)
        raise pickle.UnpicklingError(f"{module}.{name} is no class of the model")


def _is_ours(found: os.stat_result) -> bool:
    """Whether a folder or file is the user's own, and nobody else may write into it.

    Where the system knows no owners, it is left to the place that the system gives each user.
    """
    if not hasattr(os, "geteuid"):
        return True
    return found.st_uid == os.geteuid() and not found.st_mode & (stat.S_IWGRP | stat.S_IWOTH)


def _read_own(path: Path) -> bytes:
    """The bytes of a kept file of the user's own; none of another's. Raises NotUsable."""
    descriptor = open_regular(path)
    try:
        ours = _is_ours(os.fstat(descriptor))
        return read_open(descriptor, str(path), MOST_BYTES) if ours else b""
    finally:
        os.close(descriptor)


def _path(folder: Path, name: str) -> Path:
    return folder / f"rules-{name}.kept"


def _head(name: str, body: bytes) -> bytes:
    return b" ".join((_MARK, name.encode(), hashlib.sha256(body).hexdigest().encode()))


def _drop_oldest(folder: Path) -> None:
    kept = sorted(folder.glob("rules-*.kept"), key=lambda path: (path.stat().st_mtime, path.name))
    for path in kept[:-MOST_KEPT]:
        path.unlink(missing_ok=True)
