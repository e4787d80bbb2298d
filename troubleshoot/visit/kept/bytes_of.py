"""The bytes of a journal, up to the most that a visit writes, and why there are none."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

from troubleshoot.outside.files import open_regular, read_open, read_start
from troubleshoot.outside.refusal import NotUsable

MOST_BYTES: Final = 10_000_000
BEGINNING: Final = 1_000_000
"""Bytes of a journal that is too long, in which its unit and first STOPs stand."""
MOVE_IT: Final = (
    "nothing has been changed. Once its unit is released, move the file out of its folder and "
    "start a new visit"
)


def bytes_in(path: Path) -> bytes:
    """All that is in a journal. Raises NotUsable."""
    try:
        descriptor = open_regular(path)
    except NotUsable as error:
        raise _refused(error) from None
    try:
        return bytes_of(descriptor, path)
    finally:
        os.close(descriptor)


def bytes_of(descriptor: int, path: Path) -> bytes:
    """All that is in an open journal. Raises NotUsable."""
    try:
        return read_open(descriptor, str(path), MOST_BYTES)
    except NotUsable as error:
        raise _refused(error) from None


def beginning_of(path: Path) -> bytes:
    """What can be read of a journal that is too long; nothing where nothing can be."""
    try:
        return read_start(path, BEGINNING)
    except NotUsable:
        return b""


def _refused(error: NotUsable) -> NotUsable:
    """Nobody is told to divide a journal, or to name another: a STOP may stand in it."""
    return NotUsable(error.where, error.what, MOVE_IT)
