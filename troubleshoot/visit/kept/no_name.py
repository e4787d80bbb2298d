"""What is no name of a unit, whatever it is: a digit, a reading, a dash, data, a path."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.quantities.typed_units import is_unit

_OF_DATA: Final = re.compile(r"[{}\[\]<>|\\]|\.\.|^[./~]")
"""What no plate and no door has on it."""
_READING: Final = re.compile(r"[-+<>~]?\d+(?:[.,]\d+)? ?(?P<unit>[^\W\d_][^\d]*|%)")
_MANY_FIGURES: Final = re.compile(r"\d{3}|[.,]")
"""Of a reading in a unit of one letter: 4 A is a unit's name as well."""


def is_no_name(typed: str) -> bool:
    """Whether it names no unit: it has no letter, or is a reading, or was copied from a file."""
    said = typed.strip()
    if not any(map(str.isalpha, said)) or _OF_DATA.search(said):
        return True
    read = _READING.fullmatch(said)
    if read is None or not is_unit(read["unit"].strip()):
        return False
    return len(read["unit"].strip()) > 1 or _MANY_FIGURES.search(said) is not None
