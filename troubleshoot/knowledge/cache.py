"""Keeping rule files that were read and found in order, so that the next start need not again.

What is kept is JSON, under a name made of the rule files' own hash: changed rules never meet old
data. A kept file that is damaged, or a folder that cannot be written, only costs time.

The hash in a kept file tells damage, not tampering: anybody can compute it, and whoever writes into
the folder writes what the next technician reads before opening a panel. What protects it is whose
it is. So nothing is read or kept in a folder that others own or may write into, nor read from a
file that is not the user's own.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
import stat
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Final, cast

from troubleshoot.outside.files import make_private, open_regular, read_open
from troubleshoot.outside.plain_data import parsed
from troubleshoot.outside.refusal import NotUsable

FOLDER_VARIABLE: Final = "TROUBLESHOOT_CACHE"
"""Environment variable that names the folder; set to nothing it turns keeping off."""

MOST_KEPT: Final = 8
MOST_BYTES: Final = 50_000_000

_MARK: Final = b"troubleshoot rules"
_NEW: Final = os.O_WRONLY | os.O_CREAT | os.O_EXCL

KeptFiles = Sequence[tuple[str, Any]]
"""(kind, plain data) of every rule file, in file order."""


def cache_folder(chosen: Path | str | None = None) -> Path | None:
    """The folder to keep read rules in: as chosen, by the environment, or the user's own."""
    if chosen is not None:
        return Path(chosen)
    named = os.environ.get(FOLDER_VARIABLE)
    if named is not None:
        return Path(named) if named else None
    from platformdirs import user_cache_dir

    return Path(user_cache_dir("troubleshoot", appauthor=False))


def read_kept(folder: Path | None, digest: str) -> KeptFiles | None:
    """Return what was kept under a hash, or None where nothing whole is."""
    try:
        if folder is None or not _is_ours(folder.stat()):
            return None
        kept = _read_own(_path(folder, digest))
        head, _, body = kept.partition(b"\n")
        if head != _head(digest, body):
            return None
        return cast(KeptFiles, parsed(body, "the kept rules"))
    except (OSError, NotUsable):
        return None


def keep(folder: Path | None, digest: str, files: KeptFiles) -> None:
    """Keep files under a hash, whole or not at all; where that cannot be done, do nothing."""
    if folder is None:
        return
    body = json.dumps(files, ensure_ascii=False, separators=(",", ":")).encode()
    path = _path(folder, digest)
    unfinished = path.with_suffix(f".{os.getpid()}.part")
    with contextlib.suppress(OSError):
        make_private(folder)
        if not _is_ours(folder.stat()):
            return
        try:
            with os.fdopen(os.open(unfinished, _NEW, 0o600), "wb") as file:
                file.write(_head(digest, body) + b"\n" + body)
            unfinished.replace(path)
        finally:
            unfinished.unlink(missing_ok=True)
        _drop_oldest(folder)


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


def _path(folder: Path, digest: str) -> Path:
    return folder / f"rules-{digest[:32]}.json"


def _head(digest: str, body: bytes) -> bytes:
    return b" ".join((_MARK, digest.encode(), hashlib.sha256(body).hexdigest().encode()))


def _drop_oldest(folder: Path) -> None:
    kept = sorted(folder.glob("rules-*.json"), key=lambda path: (path.stat().st_mtime, path.name))
    for path in kept[:-MOST_KEPT]:
        path.unlink(missing_ok=True)
