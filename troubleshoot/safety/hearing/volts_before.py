"""What was read before the lock: had 478 on all three at the fan before, 208 V before i locked it.

Such volts show nothing of now, nor does the contactor that pulled in for them; they are asked about
at most. What else is told in the same breath is as it is told: my lock fell off.
"""

from __future__ import annotations

import re
from typing import Final

_SENTENCES: Final = re.compile(r"[.;:!?]+(?:\s|$)|\b(?:but|because|so|then|though)\b")
_SWITCH: Final = r"(?:the |its |that )?(?:breaker|disconnect|switch)"
_THING: Final = r"(?:it|the (?:unit|power|disconnect|breaker|switch))"
_BEFORE: Final = re.compile(
    r"\b(?:before|earlier)\W*$|\bbefore (?:the lock-?out\b|(?:i|we|he|she|they) (?:"
    rf"(?:locked|shut|switched|turned|killed) {_THING}\b|(?:locked|shut) (?:out|off|down)\b|"
    rf"(?:opened|pulled|threw|flipped) {_SWITCH}\b))"
)
_NOW: Final = re.compile(r"\b(?:after|again|as before|back|just|now|still|when|while)\b")
"""Beside one of these it may be told of now as well: before and after i locked it."""
_VOLTS: Final = re.compile(
    r"\b\d{2,} ?volts?\b|\bl[123]\b|\b(?:had|read|got|saw|measured) \d{2,}\b"
)
_PULLS_IN: Final = re.compile(r"\bcontactors? (?:\w+ )?pulls? in\b")
_MORE_LEGS: Final = re.compile(r"\W*(?:(?:and|or|to|[lt][123]|ground)\W+)*(?:before|earlier)\b")
"""What goes on with the same volts: between l1 | and l2 before."""


def read_before(said: str, part: str) -> bool:
    """Whether a part of what was said, both in small letters, tells what was read before.

    Volts in front are of now where something else is told behind them: 120 V there, dead before.
    """
    told = (each for each in _SENTENCES.split(said) if part in each)
    return any(
        _BEFORE.search(each) and not _NOW.search(each) and _is_of(each, part) for each in told
    )


def _is_of(sentence: str, part: str) -> bool:
    if _PULLS_IN.search(part):
        return True
    if _VOLTS.search(part) is None:
        return False
    rest = sentence.partition(part)[2]
    return _BEFORE.search(part) is not None or _MORE_LEGS.match(rest) is not None
