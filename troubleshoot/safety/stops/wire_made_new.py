"""What was wrong with a wire that has been made new, told in its repair: no danger of now.

Whoever says what they found names what a danger is called by: burnt wire, ground wire broken.
"""

from __future__ import annotations

import re
from typing import Final

_WIRE: Final = (
    r"(?:wires?|leads?|conductors?|lugs?|terminals?|splices?|harness|insulation|connectors?|crimps?|"
    r"strap|bond|ground|neutral)"
)
_BAD: Final = (
    r"(?:burn(?:t|ed)|scorched|charred|melted|overheated|singed|broken|chafed|nicked|loose|frayed|"
    r"cut|corroded|missing|off)"
)
_MADE_NEW: Final = (
    r"(?:replac(?:ed|ing)|renewed|remade|re-?landed|landed|re-?terminated|re-?bonded|bonded|crimped|"
    r"(?:put|ran|run|pulled|fitted|installed)(?: (?:on|in))?(?: an?| the)? new|new)"
)
_TAKEN_OUT: Final = re.compile(
    rf"\b(?:cut (?:back|out|off|away)|stripped back|trimmed(?: back)?|replac\w+|renewed|removed|"
    rf"changed|swapped|took out) (?:(?:the|a|an|all|that|both|its) )*{_BAD}(?= (?:\w+ )?{_WIRE}\b)"
)
_FOUND: Final = re.compile(
    rf"(?:\bfound (?:the |a )?)?(?:\b\w+ )?\b{_WIRE}(?: {_WIRE})* (?:(?:was|were|had|been|found) )*"
    rf"{_BAD}(?: {_BAD})?\b(?=[^.]*\b{_MADE_NEW}\b)"
)
_NOW: Final = re.compile(
    r"\b(?:still|again|smok\w+|arc(?:s|ing)|spark\w*|glow\w*|hot|fire|burning|tingl\w*|shock\w*|not|"
    r"never|no|is|are|but|if|will|should|going|tomorrow|later|ordered)\b|n't\b|\?"
)
"""Beside these it may be so still."""


def without_what_was_made_new(typed: str) -> str:
    """The words without what was wrong with a wire; as they are where it may be so still."""
    if _NOW.search(typed.lower()):
        return typed
    out = re.sub(_TAKEN_OUT.pattern, "replaced", typed, flags=re.IGNORECASE)
    return re.sub(_FOUND.pattern, "", out, flags=re.IGNORECASE)
