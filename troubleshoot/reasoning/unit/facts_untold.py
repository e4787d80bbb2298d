"""What names a fact and yet tells none of this unit: told in doubt, or of the unit beside it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

_ANOTHER_UNIT: Final = re.compile(
    r"\b(?:other|next|another|neighbou?r\w*(?:'s)?|adjacent|different)(?: \w+)? "
    r"(?:units?|rtus?|roof|building|machines?|one|ones)\b|\bnext door\b|\b(?:other|next) one\b",
    re.IGNORECASE,
)
_DOUBT: Final = (
    r"(?:(?:but )?(?:i ?a?'?m )?not (?:quite |too |so |really )?(?:sure|certain)|unsure|"
    r"(?:(?:so )?i |i'd )?(?:think|believe|guess|reckon)(?: so)?|maybe|probably|perhaps|likely|"
    r"(?:could|might|should) be|might be wrong)"
)
_IN_DOUBT: Final = re.compile(rf"\b{_DOUBT}\b|\?\s*$", re.IGNORECASE)
_ONLY_DOUBT: Final = re.compile(rf"\s*(?:{_DOUBT}|\s)+[\s.?!]*", re.IGNORECASE)


def is_of_another_unit(typed: str) -> bool:
    """Whether it names another unit: what is told beside it tells nothing of this one."""
    return _ANOTHER_UNIT.search(typed) is not None


def is_doubted(pieces: Sequence[str], number: int) -> bool:
    """Whether a piece of what was typed is told in doubt, by itself or by the piece behind it."""
    behind = pieces[number + 1] if number + 1 < len(pieces) else ""
    is_so = _IN_DOUBT.search(pieces[number]) is not None
    return is_so or bool(behind.strip() and _ONLY_DOUBT.fullmatch(behind))
