"""Words that say that somebody else has the work from here on: new shift, I am taking over.

29 CFR 1910.147(f)(4): what was locked out is handed on at a change of shift, and each has an own
lock; from memory. How people say it is common practice, no source.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.outside.text import without_apostrophes

_WHO: Final = r"(?:tech\w*|mechanic|guy|man|woman|person|one|shift|crew|fella|dude)"
_ANOTHER: Final = r"(?:different|new|other|another|next|second|relief|night|day|evening)"
_TAKES_OVER: Final = re.compile(
    rf"\b(?:new|next|night|day|evening|second) shift\b(?! (?:starts|comes|begins|is due))"
    r"|\bshift change\b|\bchange of shift\b"
    rf"|\b(?:i am|im|this is) (?:a |an |the )?{_ANOTHER} {_WHO}\b"
    r"|\b(?:taking|takes|took|taken|take) (?:it |this |the job |the unit )?over\b"
    r"(?! (?:the|an?|that|by the) (?:fan|heat|load|relay|economizer|generator))"
    r"|\b(?:relieving|relieved|filling in for|covering for|came up for|here for|up here for) "
    r"(?!the\b|a\b|an\b|this\b|that\b|some\b|lunch\b|help\b|now\b)\w+"
    r"|\bmy name is\b"
    r"|\bhanded (?:it|the job|the phone|this) (?:over|off|on) to (?:me|him|her|my)\b"
)
_TO_COME: Final = re.compile(r"\b(?:will|tomorrow|later|tonight|going to|gonna|if|when|should)\b")


def tells_of_a_new_person(said: str) -> bool:
    """Whether somebody says that another has the work now; not that one is to come."""
    plain = without_apostrophes(said.lower())
    is_now = not (said.rstrip().endswith("?") or _TO_COME.search(plain))
    return is_now and _TAKES_OVER.search(plain) is not None
