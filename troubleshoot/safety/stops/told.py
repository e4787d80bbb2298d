"""Who was told of a STOP: somebody who answered, by a role that is not the asker's own."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.outside.text import as_said, plain_words
from troubleshoot.safety.hearing.roles import names_a_role, names_oneself, roles_in
from troubleshoot.safety.stops.result import NotAResult

NOT_ONESELF: Final = (
    "Somebody else has to know of it before you leave. Give them alone, by role: the supervisor, "
    "2:44 pm."
)
NOBODY: Final = (
    "Say by role who was told, and when: the supervisor, 2:44 pm; the gas company, just now. "
    "Somebody has to know of it before you leave."
)
NOT_REACHED: Final = (
    "Who has not answered does not know of it. Give somebody who did, by role, and when: the "
    "supervisor, 2:44 pm. q keeps the STOP as it stands until you have reached them."
)

_OWN: Final[Mapping[str, tuple[str, ...]]] = MappingProxyType(
    {
        "apprentice": ("apprentice", "trainee", "helper", "learner"),
        "supervised": ("apprentice", "trainee", "helper", "learner"),
        "technician": ("technician", "tech", "mechanic", "journeyman", "installer", "service tech"),
    }
)
"""How those who are at the unit are spoken of, by who is asking."""

_NOT_REACHED: Final = re.compile(
    r"\b(?:left|leaving|sent|wrote|dropped|put)\b.*\b(?:notes?|messages?|msg|voice ?mails?|mails?|"
    r"e-?mails?|texts?|words?|letters?|memos?)\b|\b(?:voice ?mail|answering machine|e-?mailed|"
    r"texted|paged|tried|trying|attempted|rang out|busy|engaged|unanswered|awaiting)\b|"
    r"\bwait(?:ing)? (?:for|on)\b|\b(?:note|message|text|mail) (?:to|for|on)\b"
)
_REACHED: Final = re.compile(
    r"\b(?:answered|replied|confirmed|acknowledged|spoke|spoken|talked|picked up|called back|"
    r"rang back|wrote back|got (?:through|hold)|reached)\b"
)


def told(typed: str, profiles: Collection[str]) -> str:
    """Who was told, as it was typed: somebody whom others can find again, by role, who answered.

    `profiles`: of whoever is asking, who tells nobody by telling themselves. Raises NotAResult.
    """
    if names_oneself(typed) or _is_only_the_asker(typed, profiles):
        raise NotAResult(NOT_ONESELF)
    if not names_a_role(typed):
        raise NotAResult(NOBODY)
    said = as_said(typed)
    if _NOT_REACHED.search(said) and not _REACHED.search(said):
        raise NotAResult(NOT_REACHED)
    return typed


def _is_only_the_asker(typed: str, profiles: Collection[str]) -> bool:
    """Whether the only role that is named is one that whoever asks holds."""
    if not names_a_role(typed) or roles_in(typed):
        return False
    own = sorted({way for held in profiles for way in _OWN.get(held, ())}, key=len, reverse=True)
    if not own:
        return False
    others = re.sub(rf"\b(?:{'|'.join(own)})s?\b", " ", plain_words(typed))
    return not names_a_role(others)
