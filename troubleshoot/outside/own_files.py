"""Files that the program keeps for its user in a folder of their own, read by nobody else's leave.

What is kept there is taken for the program's own word the next time. What protects it is whose it
is: nothing is read or kept in a folder that others own or may write into, nor read from a file
that is not the user's own. A file is written whole or not at all; a folder that cannot be written
only costs time.
"""

from __future__ import annotations

import contextlib
import os
import stat
from pathlib import Path
from typing import Final

from troubleshoot.outside.files import make_private, open_regular, read_open
from troubleshoot.outside.refusal import NotUsable

_NEW: Final = os.O_WRONLY | os.O_CREAT | os.O_EXCL


def read_own(path: Path, most: int) -> bytes:
    """The bytes of a file of the user's own in a folder of their own; none of any other."""
    try:
        if not _is_ours(path.parent.stat()):
            return b""
        descriptor = open_regular(path)
        try:
            ours = _is_ours(os.fstat(descriptor))
            return read_open(descriptor, str(path), most) if ours else b""
        finally:
            os.close(descriptor)
    except (OSError, ValueError, NotUsable):
        return b""


def write_own(path: Path, data: bytes) -> bool:
    """Write a file whole into a folder of the user's own; whether that could be done."""
    unfinished = path.with_suffix(f".{os.getpid()}.part")
    with contextlib.suppress(OSError):
        make_private(path.parent)
        if not _is_ours(path.parent.stat()):
            return False
        try:
            with os.fdopen(os.open(unfinished, _NEW, 0o600), "wb") as file:
                file.write(data)
            unfinished.replace(path)
            return True
        finally:
            unfinished.unlink(missing_ok=True)
    return False


def _is_ours(found: os.stat_result) -> bool:
    """Whether a folder or file is the user's own, and nobody else may write into it.

    Where the system knows no owners, it is left to the place that the system gives each user.
    """
    if not hasattr(os, "geteuid"):
        return True
    return found.st_uid == os.geteuid() and not found.st_mode & (stat.S_IWGRP | stat.S_IWOTH)
