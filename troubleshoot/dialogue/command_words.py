"""The words by which a line is a command, and neither an answer nor a reading."""

from __future__ import annotations

from typing import Final

_ALONE: Final = frozenset({"again", "because", "causes", "done", "repaired", "tests", "unit"})
_WITH_WORDS: Final = (
    "because ",
    "do ",
    "invalid ",
    "repaired ",
    "unit ",
    "what if ",
    "why not ",
)


def is_command(typed: str) -> bool:
    """Whether a line is a command that is served at a test or an ending, in any case."""
    said = typed.lower()
    return said in _ALONE or said.startswith(_WITH_WORDS)
