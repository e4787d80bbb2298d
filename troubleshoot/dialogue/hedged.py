"""An answer with words around it that only say how sure somebody is: spark i think."""

from __future__ import annotations

from typing import Final

HEDGES: Final = frozenset(
    {"think", "believe", "guess", "reckon", "mean", "meant", "maybe", "probably", "perhaps"}
    | {"looks", "like", "seems", "say", "said", "answer", "its", "it's", "it", "is", "i", "was"}
)


def without_hedges(typed: str) -> str:
    """What is left of an answer without them; empty where nothing is, or there were none."""
    words = typed.replace(",", " ").split()
    kept = [word for word in words if word.lower().strip(".!?") not in HEDGES]
    return " ".join(kept) if len(kept) < len(words) else ""
