"""A long text from outside, line by line: what has been read is not kept, however long the file.

What is behind the name is looked at first, as everywhere (`outside.files`); a line has an end
within bounds, or the text is turned away where it has none.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from types import TracebackType
from typing import Final, Self

from troubleshoot.outside.files import open_regular
from troubleshoot.outside.refusal import NotUsable

MOST_LINE: Final = 1_000_000
"""Bytes of one line: a row of a table with all its columns has some thousand."""
_MARK: Final = b"\xef\xbb\xbf"


class Lines:
    """The lines of a regular file in UTF-8, read as they are asked for. Raises NotUsable.

    `size`: bytes of the file; `read`: how many of them have been handed out.
    """

    def __init__(self, path: str) -> None:
        self._where = path
        self._file = os.fdopen(open_regular(path), "rb")
        self.size = os.fstat(self._file.fileno()).st_size
        self.read = 0

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._file.close()

    def __iter__(self) -> Iterator[str]:
        """Each line with its end, without a byte order mark."""
        number = 0
        while line := self._next():
            number += 1
            self.read += len(line)
            if len(line) > MOST_LINE:
                said = f"line {number} is over {MOST_LINE} bytes"
                raise NotUsable(self._where, said, "save it as CSV")
            try:
                yield (line.removeprefix(_MARK) if number == 1 else line).decode("utf-8")
            except UnicodeDecodeError:
                said = f"line {number} is not UTF-8 text"
                raise NotUsable(self._where, said, "save it as UTF-8") from None

    def _next(self) -> bytes:
        try:
            return self._file.readline(MOST_LINE + 1)
        except OSError as error:
            said = f"it cannot be read ({error.strerror or error})"
            raise NotUsable(self._where, said, "name another file") from None
