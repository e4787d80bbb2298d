"""A file of the register: flat, a column a line, read strictly and written whole or not at all."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import Final

from troubleshoot.knowledge.yaml_scalars import write_scalar
from troubleshoot.outside.files import make_private, read_text
from troubleshoot.outside.plain_data import check_plain
from troubleshoot.outside.refusal import NotUsable, in_a_line

FORMAT: Final = 1
SUFFIX: Final = ".yaml"
_FORMAT_KEY: Final = "format"


class NotRead(Exception):
    """A file cannot be read, or not as today's rules would; the message says why."""


class NotWritten(Exception):
    """Something could not be kept; the message says why."""


def read_flat(path: Path) -> dict[str, str]:
    """The lines of a file, without that of its format. Raises NotRead."""
    from troubleshoot.knowledge.located import read_located  # YAML, where something is kept at all
    from troubleshoot.knowledge.nodes import plain
    from troubleshoot.knowledge.problems import RuleFileError

    where = in_a_line(str(path))
    try:
        data = plain(read_located(read_text(path), str(path)))
        check_plain(data, where)
    except RuleFileError as error:
        raise NotRead(str(error.problems[0])) from None
    except NotUsable as error:
        raise NotRead(str(error)) from None
    if not isinstance(data, dict):
        raise NotRead(f"{where}: it names nothing; write its name under name")
    found = data.get(_FORMAT_KEY)
    if found != FORMAT:
        raise NotRead(
            f"{where}: its format is {found}, and this version reads {FORMAT}; a newer version of "
            "the program wrote it"
        )
    return {str(key): str(value) for key, value in data.items() if key != _FORMAT_KEY}


def write_flat(path: Path, cells: Mapping[str, str]) -> None:
    """Keep these lines; they are on the disk when this returns. Raises NotWritten."""
    rows: Mapping[str, str | int] = {_FORMAT_KEY: FORMAT, **cells}
    text = "".join(f"{key}: {write_scalar(value)}\n" for key, value in rows.items())
    made = ""
    try:
        make_private(path.parent)
        descriptor, made = tempfile.mkstemp(dir=path.parent)
        with os.fdopen(descriptor, "w", encoding="utf-8") as stream:
            stream.write(text)
            stream.flush()
            os.fsync(stream.fileno())
        Path(made).replace(path)
    except OSError as error:
        with suppress(OSError):
            Path(made).unlink()
        raise NotWritten(
            f"{in_a_line(str(path))}: cannot be kept ({error.strerror or error}); make room or "
            "name another folder with --data"
        ) from None
