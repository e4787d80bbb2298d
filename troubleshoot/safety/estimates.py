"""Words by which a number is only about so much: no proof at what protects."""

from __future__ import annotations

import re
from typing import Final

ESTIMATE: Final = (
    r"(?:~|\b(?:about|(?<!all )around|approx(?:imately)?|roughly|ca|circa|maybe|perhaps|probably|"
    r"possibly|nearly|almost|more or less|close to|i (?:think|guess))\b\.?)"
)
_ESTIMATE: Final = re.compile(ESTIMATE, re.IGNORECASE)


def is_estimate(said: str) -> bool:
    """Whether anything is told as about so much."""
    return _ESTIMATE.search(said) is not None


def without_estimate(said: str) -> str:
    """What was said without the words by which it is only about so much."""
    return " ".join(_ESTIMATE.sub(" ", said).split())
