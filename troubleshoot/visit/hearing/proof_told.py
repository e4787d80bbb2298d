"""Whether an answer for a proof tells a reading of one's own that was taken after the repair."""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.knowledge.model import Proof
from troubleshoot.outside.text import as_said
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.visit.hearing.no_look import is_elsewhere, tells_no_look

NOT_READ: Final = "that does not say that it was read"
NOT_OF_NOW: Final = "that was not read here and after the repair"
NOT_SO_READ: Final = "that was not read with the load on, as it asks"

_NOTHING_READ: Final = re.compile(
    r"\b(?:can ?(?:no|')?t|couldn'?t|didn'?t|haven'?t|won'?t|dunno|idk|no (?:idea|clue|power)"
    r"|(?:do not|don'?t) know|not (?:sure|yet|now|read|taken|checked|measured|tested|done|able)"
    r"|unknown|later|tomorrow|tonight|tmrw?|tmw|n/a|forgot|skip|i (?:think|guess))\b"
)
_LYING_OFF: Final = re.compile(r"\b(?:locked ?out|panels? off|power off)\b")
_WANTS_IT_OFF: Final = re.compile(r"\bpower (?:goes|is (?:off|cut|lost))\b")
"""What a proof says that is to be seen with the power gone."""
_BEFORE: Final = re.compile(
    r"\b(?:before|prior to)\b[^.;,]{0,30}?\b(?:repair|fix|replac|chang|clean|wash|mend|swap|i |we )"
    r"|\bbefore(?:hand)?\W*$|\bearlier\b|\bwhen (?:i|we) (?:arrived|came|got (?:here|up))\b"
)
_AT_LOAD: Final = re.compile(
    r"\bat (?:full )?load\b|\bunder load\b|\bwith everything\b|\brunning\b"
)
_NO_LOAD: Final = re.compile(
    r"\b(?:with|while|when)\b[^.;,]{0,30}?\boff\b|\b(?:no|without) load\b|\bunloaded\b"
    r"|\bnot running\b"
)
_LATER_TRY: Final = re.compile(
    r"\b(?:second|third|fourth|fifth|last|2nd|3rd|[45]th) (?:try|trial|attempt|go|time|start)\b"
)
_OVER_DAYS: Final = frozenset({"day", "days", "month", "record", "schedule", "weeks"})
"""Words of a proof that takes longer than one visit."""
_HEARSAY: Final = re.compile(
    r"\b(?:says|said|tells|told|reckons?|swears?|according to|supposed(?:ly)?|heard)\b"
)
_SHOWS: Final = re.compile(
    r"\b(?:\w*meter|analy[sz]er|megger|gauges?|board|plate|display|screen|thermostat|diagram|sheet|probe|detector)\b"
)
"""What says something without anybody's word for it."""
_TOLD_BY_OTHERS: Final = frozenset({"agreed", "caller", "signed", "written"})
"""Words of a proof that is what somebody else said."""


def why_nothing_read(
    proof: Proof, typed: str, *, is_compared: bool = False, is_read_dead: bool = False
) -> str:
    """Why an answer tells no reading of now; empty where it may.

    `is_compared`: what it was before the repair is part of the answer. `is_read_dead`: so is that
    the unit is locked out.
    """
    said = as_said(typed)
    if not said.strip() or _NOTHING_READ.search(said):
        return NOT_READ
    if tells_no_look(typed) and not tells_no_look(proof.text):  # cleared by itself, as it asks
        return NOT_READ
    may_be_off = is_read_dead or _WANTS_IT_OFF.search(proof.text.lower())
    if _LYING_OFF.search(said) and not may_be_off:
        return NOT_READ
    asked = {*raw_words(proof.text)}
    if _HEARSAY.search(said) and not _SHOWS.search(said) and asked.isdisjoint(_TOLD_BY_OTHERS):
        return NOT_READ
    if _AT_LOAD.search(proof.text.lower()) and _NO_LOAD.search(said):
        return NOT_SO_READ
    if is_compared or not asked.isdisjoint(_OVER_DAYS):
        return ""
    is_old = is_elsewhere(said) or _BEFORE.search(said)
    return NOT_OF_NOW if is_old else ""


def is_later_try(proof: Proof, said: str) -> bool:
    """Whether what has to come at the first try is told to have come at a later one."""
    return "first" in raw_words(proof.text) and _LATER_TRY.search(said) is not None
