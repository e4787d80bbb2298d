"""The lock-out told in other words: a switch that will not open, or a lock hung somewhere else.

That it cannot be locked protects nobody and is taken as it is said. A lock at another place is
taken by its own word with that place, which only whoever hung it types.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.by_word import NearlyAnAnswer
from troubleshoot.safety.hearing.words import raw_words

NOT_THIS_SWITCH: Final = (
    "Not at this switch? Only your own lock and tag on the breaker or switch that feeds this unit "
    'count, opened, and tried: nothing starts. Type "locked at", and the place: locked at the main '
    "panel breaker, when it is so."
)
AT_ITS_STEP: Final = (
    'A lock elsewhere is taken at the lock-out: do takes that up again. There type "locked at", '
    "and the place."
)

_DEVICE: Final = frozenset({"blades", "disconnect", "handle", "hasp", "it", "lever", "switch"})
_JAMMED: Final = frozenset({
    "bent", "broke", "broken", "corroded", "froze", "frozen", "jammed", "rusted", "seized", "stuck",
})  # fmt: skip
_WILL_NOT: Final = frozenset({"cannot", "cant", "doesnt", "no", "not", "nowhere", "wont"})
_MOVES: Final = frozenset({
    "budge", "close", "fit", "go", "hasp", "hole", "lock", "move", "open", "place", "pull", "take",
    "takes", "throw", "turn",
})  # fmt: skip
_BESIDE: Final = frozenset({
    "a", "all", "and", "at", "but", "does", "even", "for", "fully", "get", "has", "have", "i", "in",
    "is", "its", "my", "of", "off", "on", "out", "pullout", "shut", "solid", "the", "there", "this",
    "to", "up", "way", "will", "with", "closed", "half",
})  # fmt: skip
_ABOUT_A_SWITCH: Final = _DEVICE | _JAMMED | _WILL_NOT | _MOVES | _BESIDE

_FEEDS: Final = r"(?:breaker|bucket|feeder|gear|mcc|panel|subpanel|switchgear|upstream)"
_PLACE: Final = (
    r"(?:(?:the|main|in|of|and|number|no|sub|fused|distribution|building|electrical|roof|room|wall"
    rf"|circuit|switch|board|{_FEEDS}|[a-z]{{0,3}}-?[0-9]{{1,4}}[a-z]?)\s*)+"
)
_LOCKED_AT: Final = re.compile(rf"locked (?:out )?at (?P<at>{_PLACE})", re.IGNORECASE)
_LOCKED: Final = r"\b(?:locked|loto|lock (?:it|out))\b"
_LOCKED_ELSEWHERE: Final = re.compile(
    rf"{_LOCKED}(?: \w+){{0,3}}? (?:at|from|in|on|up)\b[^,.;]*\b{_FEEDS}\b"
    rf"|\b(?:breaker|bucket|feeder|mcc)\b[^,.;]*{_LOCKED}",
    re.IGNORECASE,
)
_ELSEWHERE: Final = re.compile(rf"\b{_FEEDS}\b", re.IGNORECASE)
_NOT_OURS: Final = frozenset({
    "another", "else", "elses", "guy", "he", "her", "hers", "his", "other", "others", "she",
    "somebody", "somebodys", "someone", "someones", "their", "theirs", "them", "they",
})  # fmt: skip


def cannot_be_locked(typed: str) -> bool:
    """Whether nothing is told but that a switch does not open, or takes no lock."""
    words = {*raw_words(typed.replace("-", ""))}
    is_jammed = not _JAMMED.isdisjoint(words) and not _DEVICE.isdisjoint(words)
    will_not = not _WILL_NOT.isdisjoint(words) and not _MOVES.isdisjoint(words)
    return words <= _ABOUT_A_SWITCH and (is_jammed or will_not)


def locked_at(typed: str) -> str | None:
    """Where else the lock was hung, where its own word says so with the place; None of others."""
    found = _LOCKED_AT.fullmatch(typed.strip(" .!"))
    return None if found is None or not _ELSEWHERE.search(found["at"]) else found["at"].strip()


def not_another_lock(typed: str) -> None:
    """Raise NearlyAnAnswer for a lock that is told to hang somewhere else in other words."""
    if tells_another_lock(typed):
        raise NearlyAnAnswer(NOT_THIS_SWITCH)


def tells_another_lock(typed: str) -> bool:
    """Whether a lock of one's own is told to hang at what feeds the unit."""
    words = {*raw_words(typed)}
    return bool(_LOCKED_ELSEWHERE.search(typed)) and words.isdisjoint(_NOT_OURS | _WILL_NOT)
