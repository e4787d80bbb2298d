"""Writing one value of a rule file so that the strict loader reads the same value back."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Final

from troubleshoot.knowledge.plain_scalars import RefusedScalar, scalar_value

_NEEDS_QUOTES: Final = re.compile(r"""^[-?:,\[\]{}#&*!|>'"%@`]| #|[:?,\[\]{}]|\t|\n""")
_NEEDS_QUOTES_ALONE: Final = re.compile(r"""^[?:,\[\]{}#&*!|>'"%@`]|^-(?: |$)|: |:$| #|\t|\n""")


_TRUTHS_ELSEWHERE: Final = frozenset({"yes", "no", "on", "off", "y", "n"})
"""Text to our loader, but true or false to other readers of YAML; quoted for their sake."""


def write_scalar(value: str | int | float | bool | None, *, in_brackets: bool = False) -> str:
    """Return a value as YAML on one line: unquoted where that is safe, else in single quotes.

    In brackets commas and brackets would end a text, so that more must be quoted there.
    """
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        return format(Decimal(repr(value)), "f")
    pattern = _NEEDS_QUOTES if in_brackets else _NEEDS_QUOTES_ALONE
    if not pattern.search(value) and _stays_text(value):
        return value
    return "'" + value.replace("'", "''") + "'"


def _stays_text(text: str) -> bool:
    if text != text.strip() or text.startswith(("---", "...")):
        return False
    if text.lower() in _TRUTHS_ELSEWHERE:
        return False
    try:
        return scalar_value(text) == text and isinstance(scalar_value(text), str)
    except RefusedScalar:
        return False
