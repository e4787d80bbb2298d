"""What is said beside the word of a step, and only tells how it was done: locked, my own tag.

Each clause is left out only where the whole of it is known to take nothing away from the word;
all else stays, and is judged with it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.safety.steps import COCK_LOOK, GAS_OPEN, GAS_SWEEP, LOCKOUT, ROOF, ROOM_AIR

_WHEN: Final = r"(?: (?:today|this morning|this afternoon|just now|first))?"
_DETECTOR: Final = (
    rf"(?:detector |meter )?(?:bumped|bump[- ]tested){_WHEN}",
    rf"(?:detector |meter )?zeroed(?: outside| outdoors| upwind| in clean air)?{_WHEN}",
)
_JOINTS: Final = (r"no joints? (?:was |were )?touched", "touched no joints?")
_HOW: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(
    {
        ROOF: (r"ladder (?:is )?tied(?: off)?", "dry", "calm", "guarded"),
        LOCKOUT: (
            r"(?:with )?(?:my own|own|my) (?:lock|tag|lock and (?:my own |own |my )?tag)(?: on)?",
            "tagged",
            r"tried(?: it)?",
        ),
        GAS_SWEEP: _DETECTOR,
        ROOM_AIR: _DETECTOR,
        COCK_LOOK: _JOINTS,
        GAS_OPEN: _JOINTS,
    }
)
"""Step -> the clauses that only say how it was done."""


def without_how(step: str, typed: str) -> str:
    """What was typed at a step without the clauses that only say how it was done.

    As it stands where there are none, or nothing else.
    """
    if step not in _HOW:
        return typed
    one = f"(?:{'|'.join(_HOW[step])})"
    only_how = re.compile(rf"(?:and )?{one}(?: and {one})*", re.IGNORECASE)
    clauses = [" ".join(clause.split()) for clause in re.split("[,;]", typed)]
    kept = [clause for clause in clauses if only_how.fullmatch(clause) is None]
    return ", ".join(kept) if any(kept) and len(kept) < len(clauses) else typed
