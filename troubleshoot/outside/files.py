"""Reading files from outside, all by the same few functions.

A name proves nothing: behind it may be a pipe that never ends, a device, a link to one, or more
bytes than the machine holds. So a file is opened without waiting, looked at, and read up to a
limit. Everything turned away is one NotUsable.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Final, TextIO

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.text import first_refused

MOST_BYTES: Final = 1_000_000
"""Enough for whatever people write by hand."""

_AT_ONCE: Final = getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0)
_AS_IT_IS: Final = getattr(os, "O_BINARY", 0)
_PIECE: Final = 1 << 20


def open_regular(path: Path | str, flags: int = os.O_RDONLY, mode: int = 0o600) -> int:
    """A descriptor of a regular file; `flags` and `mode` as for os.open. Raises NotUsable."""
    with _told(str(path), "be opened"):
        descriptor = os.open(path, flags | _AT_ONCE | _AS_IT_IS, mode)
        if stat.S_ISREG(os.fstat(descriptor).st_mode):
            return descriptor
        os.close(descriptor)
    raise NotUsable(str(path), "this is no regular file", "name a file")


def read_bytes(path: Path | str, most: int = MOST_BYTES) -> bytes:
    """The bytes of a regular file of at most `most` bytes. Raises NotUsable."""
    descriptor = open_regular(path)
    try:
        return read_open(descriptor, str(path), most)
    finally:
        os.close(descriptor)


def read_start(path: Path | str, most: int) -> bytes:
    """The first bytes of a regular file, however long it is. Raises NotUsable."""
    descriptor = open_regular(path)
    try:
        return _read(descriptor, str(path), most)
    finally:
        os.close(descriptor)


def read_open(descriptor: int, where: str, most: int) -> bytes:
    """What is left to read of an open file, at most `most` bytes. Raises NotUsable."""
    data = _read(descriptor, where, most + 1)
    if len(data) > most:
        raise NotUsable(where, f"the file is over {most} bytes", "divide it into smaller files")
    return data


def _read(descriptor: int, where: str, most: int) -> bytes:
    """What is left to read of an open file, but no more than `most` bytes. Raises NotUsable."""
    pieces, left = [], most
    with _told(where, "be read"):
        while left > 0 and (piece := os.read(descriptor, min(left, _PIECE))):
            pieces.append(piece)
            left -= len(piece)
    return b"".join(pieces)


def read_text(path: Path | str, most: int = MOST_BYTES) -> str:
    """The text of a file in UTF-8, with or without a byte order mark. Raises NotUsable."""
    return as_text(read_bytes(path, most), str(path))


def as_text(data: bytes, where: str) -> str:
    """Bytes in UTF-8 as text. Raises NotUsable with the line that is none."""
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        raise NotUsable(where, f"line {line} is not UTF-8 text", "save it as UTF-8") from None


def is_folder(path: Path | str) -> bool:
    """Whether a folder is there that may be looked at; a link that may not be followed is none."""
    try:
        return Path(path).is_dir()
    except OSError:
        return False


def is_file(path: Path | str) -> bool:
    """Whether a file is there that may be looked at; a name too long for any is none."""
    try:
        return Path(path).is_file()
    except OSError:
        return False


def read_stream(stream: TextIO, where: str, most: int = MOST_BYTES) -> str:
    """What is piped in, at most `most` letters. Raises NotUsable."""
    try:
        text = stream.read(most + 1)
    except UnicodeDecodeError:
        raise NotUsable(where, "this is not UTF-8 text", "save it as UTF-8") from None
    if len(text) > most:
        raise NotUsable(where, f"the text is over {most} letters", "divide it into smaller files")
    found = first_refused(text)
    if found is not None and found.undecoded:
        raise NotUsable(where, "this is not UTF-8 text", "save it as UTF-8")
    return text


def make_private(folder: Path) -> None:
    """Make a folder, and whatever is missing above it, for its owner alone. Raises OSError.

    A folder that is there already stays as its owner made it.
    """
    if not folder.is_dir():
        make_private(folder.parent)
        folder.mkdir(mode=0o700, exist_ok=True)


@contextmanager
def _told(where: str, done: str) -> Iterator[None]:
    """Turn the machine's refusal into ours. A name with a NUL in it is a ValueError to Python."""
    try:
        yield
    except OSError as error:
        reason = error.strerror or str(error)
        raise NotUsable(where, f"it cannot {done} ({reason})", "name another file") from None
    except ValueError:
        raise NotUsable(where, "this is no name of a file", "name a file") from None
