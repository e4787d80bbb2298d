"""What the text of a proof asks to be told besides that it is right.

How often it was done, the number beside its limit, or beside what it was before the repair. What
is asked for and not told proves nothing; what is told and falls short is not right.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.model import Knowledge, Proof
from troubleshoot.outside.numbers import whole_number

_WORDS: Final[Mapping[str, int]] = MappingProxyType({
    "one": 1, "once": 1, "two": 2, "twice": 2, "both": 2, "three": 3, "thrice": 3, "four": 4,
    "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "twenty": 20,
})  # fmt: skip
_TIMES: Final = r"starts?|lights?|sweeps?|strokes?|times|tries|attempts|goes|trials|calls|cycles|x"
_ASKED: Final = re.compile(
    rf"\b(?P<n>{'|'.join(_WORDS)})(?: [a-z]+){{0,2}}? (?:starts|lights|sweeps|strokes|times)\b",
    re.IGNORECASE,
)
_COUNT: Final = rf"(?:[0-9]+|{'|'.join(_WORDS)})"
_OF: Final = re.compile(
    rf"(?<![\w.])(?P<n>{_COUNT}) ?(?:/|(?:out )?of|for) ?(?P<all>{_COUNT})(?![\w.])", re.IGNORECASE
)
_SO_OFTEN: Final = re.compile(
    rf"(?<![\w.,])(?:all )?(?P<n>{_COUNT})(?![\w.])(?=(?: [a-z-]+){{0,2}}? ?(?:{_TIMES})\b)"
    rf"|\b(?:all (?P<all>{_COUNT})|(?P<word>once|twice|thrice|both))\b",
    re.IGNORECASE,
)
_BARE: Final = re.compile(
    rf"(?<![\w.,])(?P<n>{_COUNT})(?![\w.])(?! ?(?:s|secs?|seconds?|m|mins?|minutes?|h|hrs?|hours?"
    r"|f|v|volts?|a|amps?|ppm|%|wc|in|days?)\b)",
    re.IGNORECASE,
)

_NUMBER: Final = r"(?:[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
_LEGS: Final = rf"{_NUMBER}(?:/{_NUMBER})*"
_LIMIT: Final = re.compile(
    r"\b(?:within|under) (?:its|the) (?:va|(?:data )?plate)\b", re.IGNORECASE
)
_BESIDE: Final = re.compile(
    rf"(?<![\w.])(?P<n>{_LEGS}) ?(?:[a-z]+)?,? ?"
    r"(?:(?:out )?of|under|within|against|vs\.?|on|over|plate|rated|rating|nameplate|limit)"
    rf"(?: (?:a|an|its|the|plate|rated|is|says|of|at|to))* ?(?P<all>{_NUMBER})",
    re.IGNORECASE,
)

_CHANGED: Final = re.compile(
    r"(?<!or )\b(?:(?P<lower>down|lower|less|fewer)|more|higher)\b(?! than)", re.IGNORECASE
)
_NOW: Final = rf"(?<![\w.])(?P<now>{_LEGS})(?: ?[a-z]+)??"
_WAS: Final = rf"(?<![\w.])(?P<was>{_LEGS})(?: ?[a-z]+)??"
_BOTH: Final = tuple(
    re.compile(text, re.IGNORECASE)
    for text in (
        rf"\b(?:was|were|from|before:?) {_WAS},? ?(?:before,? |and |is |it is )*"
        rf"(?:now|to|then|->|after|down to|up to):? {_NOW}\b",
        rf"{_NOW}(?: now| after)?,? (?:and )?{_WAS} before\b",
        rf"{_NOW},? (?:now,? )?(?:down |up )?(?:from|was|were|instead of|against) {_WAS}\b",
        rf"{_WAS},? (?:before,?|to|then|->|down to|up to)(?: and| now)* {_NOW}\b",
    )
)


def is_counted(knowledge: Knowledge, proof: Proof, typed: str) -> bool | None:
    """Whether it went right as often as its text asks; None where it is not told how often."""
    asked = _ASKED.search(proof.text)
    if asked is None:
        return True
    parts = [(_count(found["n"]), _count(found["all"])) for found in _OF.finditer(typed)]
    if any(right < tried for right, tried in parts):
        return False
    told = [tried for _, tried in parts] or [*_told(knowledge, proof, typed)]
    return True if max(told, default=0) >= _count(asked["n"]) else None


def tells_enough(proof: Proof, typed: str) -> bool:
    """Whether the very numbers are told that a text asks for: 5 of 5, or 38 of 40 VA."""
    asks = ((_ASKED, _OF), (_LIMIT, _BESIDE))
    return any(asked.search(proof.text) and told.search(typed) for asked, told in asks)


def _told(knowledge: Knowledge, proof: Proof, typed: str) -> Iterator[int]:
    """How often something was done; beside a reading a number has to say of what it is."""
    by_number = _SO_OFTEN if _is_read(knowledge, proof) else _BARE
    for found in by_number.finditer(typed):
        yield _count(next(filter(None, found.groups())))


def _is_read(knowledge: Knowledge, proof: Proof) -> bool:
    """Whether a test reads it in numbers."""
    test = knowledge.read_by(proof)
    return test is not None and bool(test.reads)


def _count(word: str) -> int:
    return _WORDS.get(word.lower()) or whole_number(word) or 0


def is_within(knowledge: Knowledge, proof: Proof, typed: str) -> bool | None:
    """Whether a number that no test judges is within its limit; None where not both are told."""
    if _is_read(knowledge, proof) or not _LIMIT.search(proof.text):
        return True
    told = [
        max(map(float, found["n"].split("/"))) <= float(found["all"])
        for found in _BESIDE.finditer(typed)
    ]
    return all(told) if told else None


def is_compared(knowledge: Knowledge, proof: Proof) -> bool:
    """Whether a number is right only beside what it was before the repair."""
    return _is_read(knowledge, proof) and _CHANGED.search(proof.text) is not None


def both_told(typed: str) -> tuple[str, str] | None:
    """What it is now and what it was before, where both are told."""
    found = next(filter(None, (both.search(typed) for both in _BOTH)), None)
    return None if found is None else (found["now"], found["was"])


def has_changed(proof: Proof, now: float, was: float) -> bool:
    """Whether it has gone the way that the proof says."""
    found = _CHANGED.search(proof.text)
    assert found is not None
    return now < was if found["lower"] else now > was
