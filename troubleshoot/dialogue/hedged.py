"""An answer with words around it that only say how sure somebody is: spark i think."""

from __future__ import annotations

import re
from typing import Final

HEDGES: Final = frozenset(
    {"think", "believe", "guess", "reckon", "mean", "meant", "maybe", "probably", "perhaps"}
    | {"looks", "like", "seems", "say", "said", "answer", "its", "it's", "it", "is", "i", "was"}
)


_DOUBT: Final = frozenset(
    {"think", "believe", "guess", "reckon", "maybe", "probably", "perhaps", "likely", "unsure"}
)
"""Of these words the speaker himself is not sure."""


_NOT_SURE: Final = re.compile(
    r",?\s*\b(?:but )?(?:i ?a?'?m )?not (?:quite |too )?sure\b", re.IGNORECASE
)


def is_in_doubt(typed: str) -> bool:
    """Whether an answer is told as a guess, or asked: maybe gas, txv i think, the cap?"""
    said = {word.strip(".,;!?") for word in typed.lower().split()}
    is_guess = not _DOUBT.isdisjoint(said) or _NOT_SURE.search(typed) is not None
    return is_guess or typed.rstrip().endswith("?")


def without_doubt(typed: str) -> str:
    """What is left of an answer without what says that it is a guess."""
    sure = _NOT_SURE.sub("", typed).strip(" ?,")
    return without_hedges(sure) or sure


def without_hedges(typed: str) -> str:
    """What is left of an answer without them; empty where nothing is, or there were none."""
    words = typed.replace(",", " ").split()
    kept = [word for word in words if word.lower().strip(".!?") not in HEDGES]
    return " ".join(kept) if len(kept) < len(words) else ""
