"""Which code a board shows: what it stands for by the legend, and the code itself as a note.

A code tells what tripped, not why. Boards count differently, so the number weighs nothing and is
kept for whoever goes on with the unit; what the legend on its door says of it is an outcome.
"""

from __future__ import annotations

import re
from collections.abc import Collection
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.not_known import is_not_known
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.talk import Back, Talk, words_or_back
from troubleshoot.knowledge.model import Test
from troubleshoot.outside.text import plain_words
from troubleshoot.visit.events import Noted

CODE_SHOWN: Final = "code-shown"
WHICH_CODE: Final = AskWords(
    "Which code, or how many flashes? Enter if it is not known", repeated=True
)
_STANDS_FOR: Final = "code-"
_DENIED: Final = (" no", " not", " never", " isnt", " without")
_SHORT: Final = {
    **dict.fromkeys(("press", "prs", "pres"), "pressure"),
    **dict.fromkeys(("sw", "swt"), "switch"),
    "psw": "pressure switch",
    "hps": "high pressure switch",
    "lps": "low pressure switch",
    "hi": "high",
    "lo": "low",
}
"""How people shorten what a code stands for: press sw code."""
_APART: Final = re.compile(r"[^\w]+")
_CODE: Final = re.compile(
    r"\b(?:\d+|one|two|three|four|five|six|seven|eight|nine|ten)[ -]*(?:flash|blink)\w*"
    r"|\b(?:code|fault|error|err|e)[ -]*\d+",
    re.IGNORECASE,
)


def tells_a_code(test: Test, typed: str) -> bool:
    """Whether an answer names a code or counts flashes, at a test that asks for one."""
    return any(o.id == CODE_SHOWN for o in test.outcomes) and _CODE.search(typed) is not None


def code_meant(test: Test, typed: str, outcomes: Collection[str]) -> str | None:
    """The outcome that a code stands for, by its words, else that there is one; None for no code.

    `outcomes`: those that this unit can show. A word of denial before a phrase denies it.
    """
    words = plain_words(_APART.sub(" ", typed)).split()
    said = f" {' '.join(_SHORT.get(word, word) for word in words)} "
    found = [
        (len(phrase), outcome.id)
        for outcome in test.outcomes
        if outcome.id.startswith(_STANDS_FOR) and outcome.id in outcomes
        for phrase in (f" {plain_words(each)} " for each in outcome.words)
        if phrase in said and not said.partition(phrase)[0].endswith(_DENIED)
    ]
    if found:
        return max(found)[1]
    return CODE_SHOWN if tells_a_code(test, typed) else None


def keep_code(book: VisitBook, listener: Listener, test: Test, typed: str) -> Talk[None]:
    """Keep which code is shown, asked for where the answer does not say it.

    Raises Leave, DangerCalled.
    """
    if not tells_a_code(test, typed):
        try:
            typed = yield from words_or_back(WHICH_CODE)
        except Back:
            return
        if not typed or is_not_known(typed):
            return
    book.add(Noted(f"{test.name}: {typed}"))
    listener.hear_among(typed)
    listener.voice.say(f"Noted with it: {typed}")
