"""The last good copy of a site's folder, for the day on which the folder cannot be read.

A share that is away or a mount point that is empty leaves a site without its own dangers. So the
files of a folder are kept in the user's cache whenever rules that have it among them could be used,
and stand in for it until it can be read again. They are checked as the folder's own would be. A
folder that can be read and is wrong has no copy standing in: its author is told what is wrong.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Sequence
from contextlib import suppress
from datetime import datetime
from pathlib import Path
from typing import Final

from troubleshoot.knowledge.layout import RuleText
from troubleshoot.outside.own_files import read_own, write_own

MOST_BYTES: Final = 60_000_000


def copy_of(cache: Path | None, folder: Path, number: int) -> Sequence[RuleText]:
    """The files of a folder as they were kept; none where nothing whole is."""
    if cache is None:
        return ()
    with suppress(ValueError, AttributeError):
        files = json.loads(read_own(_path(cache, folder), MOST_BYTES) or b"{}")
        return [
            RuleText(str(folder / name), name, number, text.encode("utf-8", "surrogateescape"))
            for name, text in sorted(files.items())
        ]
    return ()


def keep_copy(cache: Path | None, folder: Path, texts: Iterable[RuleText]) -> None:
    """Keep the files of a folder, unless they are kept as they are."""
    if cache is None:
        return
    files = {text.name: text.data.decode("utf-8", "surrogateescape") for text in texts}
    data = json.dumps(files, sort_keys=True).encode()
    path = _path(cache, folder)
    if read_own(path, MOST_BYTES) != data:
        write_own(path, data)


def day_of_copy(cache: Path, folder: Path) -> str:
    """The day on which a folder last changed, as far as it was seen: 2026-11-29."""
    return f"{datetime.fromtimestamp(_path(cache, folder).stat().st_mtime):%Y-%m-%d}"


def _path(cache: Path, folder: Path) -> Path:
    name = hashlib.sha256(str(folder.absolute()).encode("utf-8", "surrogateescape")).hexdigest()
    return cache / f"site-{name[:32]}.kept"
