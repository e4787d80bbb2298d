"""The same ways round safety where they are told as done: jumpered it, the limit was bypassed.

Each word for a deed is put into its plain form, one at a time, and the clause is read as if it gave
that as advice.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.advice import devices
from troubleshoot.knowledge.advice.defeats import DEFEATED, DEFEATS, WAY_ROUND
from troubleshoot.knowledge.advice.mood import is_forbidden
from troubleshoot.knowledge.advice.practices import PRACTICES
from troubleshoot.knowledge.advice.short_cuts import SHORT_CUTS
from troubleshoot.knowledge.advice.wording import clauses, compiled, gap
from troubleshoot.knowledge.checks.safe_advice import meant

_PAST: Final = {
    "held": "hold", "left": "leave", "took": "take", "taken": "take", "ran": "run",
    "stuck": "stick", "wound": "wind", "bent": "bend", "hung": "hang", "got": "get",
    "went": "go", "made": "make", "lit": "light", "broke": "break", "swung": "swing",
    "kept": "keep", "blew": "blow", "bled": "bleed", "threw": "throw", "ground": "grind",
}  # fmt: skip
_ALIKE: Final = "cut|put|set|shut|run|let"
"""Verbs that tell of the past as they command."""
_DEED: Final = re.compile(rf"\b(?:\w{{2,}}ed|\w+ing|{_ALIKE}|{'|'.join(_PAST)})\b")
_STANDS: Final = (
    compiled(rf"(?:{devices.WHERE_WIRED}){gap(3)}{DEFEATED}\b"),
    compiled(
        rf"(?:{devices.SWITCHES}){gap(4)}(?:stays?|stayed|keeps?|kept|held){gap(2)}"
        r"(?:made|closed|shut|in)\b"
    ),
    compiled(rf"{DEFEATED}{gap(3)}(?:{devices.WHERE_WIRED})\b"),
)
"""A device that is told to be out of use, by whomever."""


def defeat_in(text: str) -> str:
    """What is told as done that defeats a safety device or a proof; empty where nothing is."""
    said = ""
    for clause in clauses(text):
        for start, plain in _as_advice(clause):
            for way in (*DEFEATS, *PRACTICES, *SHORT_CUTS):
                for match in way.pattern.finditer(plain):
                    if match.start() <= start < match.end() and meant(match, plain, said):
                        return way.what
        if any(_stands(pattern, clause) for pattern in _STANDS):
            return WAY_ROUND[0]
        said = f"{said} {clause}".strip()
    return ""


def _stands(pattern: re.Pattern[str], clause: str) -> bool:
    return any(not is_forbidden(clause, m.start()) for m in pattern.finditer(clause))


def _as_advice(clause: str) -> Iterator[tuple[int, str]]:
    """The clause with each deed in its plain form, and where the deed stands; none denied."""
    for word in _DEED.finditer(clause):
        if not is_forbidden(clause, word.start()):
            for plain in _plain_forms(word.group()):
                yield word.start(), f"{clause[: word.start()]}{plain}{clause[word.end() :]}"


def _plain_forms(word: str) -> Iterator[str]:
    """The verb of a word that tells of the past: taped, plugged, jumpered, held."""
    if not word.endswith("ed") or word in _PAST:
        yield _PAST.get(word, word)
        return
    stem = word.removesuffix("ed")
    yield from (stem, f"{stem}e")
    if len(stem) > 2 and stem[-1] == stem[-2]:
        yield stem[:-1]
