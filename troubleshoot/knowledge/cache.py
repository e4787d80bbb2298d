"""Keeping rule files that were read and found in order, so that the next start need not again.

What is kept is JSON, under a name made of the rule files' own hash: changed rules never meet old
data. A kept file that is damaged, or a folder that cannot be written, only costs time.
"""

from __future__ import annotations

import contextlib
import hashlib
import json
import os
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Final

FOLDER_VARIABLE: Final = "TROUBLESHOOT_CACHE"
"""Environment variable that names the folder; set to nothing it turns keeping off."""

MOST_KEPT: Final = 8

_MARK: Final = b"troubleshoot rules"

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
    if folder is None:
        return None
    try:
        kept = _path(folder, digest).read_bytes()
    except OSError:
        return None
    head, _, body = kept.partition(b"\n")
    if head != _head(digest, body):
        return None
    files: KeptFiles = json.loads(body)
    return files


def keep(folder: Path | None, digest: str, files: KeptFiles) -> None:
    """Keep files under a hash, whole or not at all; where that cannot be done, do nothing."""
    if folder is None:
        return
    body = json.dumps(files, ensure_ascii=False, separators=(",", ":")).encode()
    path = _path(folder, digest)
    unfinished = path.with_suffix(f".{os.getpid()}.part")
    with contextlib.suppress(OSError):
        folder.mkdir(parents=True, exist_ok=True)
        try:
            unfinished.write_bytes(_head(digest, body) + b"\n" + body)
            unfinished.replace(path)
        finally:
            unfinished.unlink(missing_ok=True)
        _drop_oldest(folder)


def _path(folder: Path, digest: str) -> Path:
    return folder / f"rules-{digest[:32]}.json"


def _head(digest: str, body: bytes) -> bytes:
    return b" ".join((_MARK, digest.encode(), hashlib.sha256(body).hexdigest().encode()))


def _drop_oldest(folder: Path) -> None:
    kept = sorted(folder.glob("rules-*.json"), key=lambda path: (path.stat().st_mtime, path.name))
    for path in kept[:-MOST_KEPT]:
        path.unlink(missing_ok=True)
