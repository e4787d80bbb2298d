"""The words by which a line is a command, and neither an answer nor a reading."""

from __future__ import annotations

from typing import Final

from troubleshoot.outside.text import as_said

_ALONE: Final = frozenset(
    {"again", "because", "causes", "done", "repair", "repaired", "tests", "unit"}
)
_WITH_WORDS: Final = (
    "because ",
    "do ",
    "invalid ",
    "refrigerant added ",
    "refrigerant recovered ",
    "repaired ",
    "unit ",
    "what if ",
    "why not ",
)

_NOT: Final = ("not ", "n't ", "nothing", "no more")


def is_command(typed: str) -> bool:
    """Whether a line is a command that is served at a test or an ending, in any case."""
    said = typed.lower()
    if said.startswith("do ") and forbids(said.removeprefix("do ")):
        return False
    return said in _ALONE or said.startswith(_WITH_WORDS)


def forbids(rest: str) -> bool:
    """Whether what stands behind do says not to: do not turn it on, and no test by its name."""
    return as_said(rest).startswith(_NOT)
