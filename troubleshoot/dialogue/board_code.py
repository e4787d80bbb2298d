"""Which code a board shows: kept as a note beside the answer that there is one.

A code tells what tripped, not why, and boards differ: nothing is weighed by it. Whoever goes on
with the unit, and the legend on its door, need it all the same.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.not_known import is_not_known
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.talk import Back, Talk, words_or_back
from troubleshoot.knowledge.model import Test
from troubleshoot.visit.events import Noted

CODE_SHOWN: Final = "code-shown"
WHICH_CODE: Final = AskWords(
    "Which code, or how many flashes? Enter if it is not known", repeated=True
)
_CODE: Final = re.compile(
    r"\b(?:\d+|one|two|three|four|five|six|seven|eight|nine|ten)[ -]*(?:flash|blink)\w*"
    r"|\b(?:code|fault|error|err|e)[ -]*\d+",
    re.IGNORECASE,
)


def tells_a_code(test: Test, typed: str) -> bool:
    """Whether an answer names a code or counts flashes, at a test that asks for one."""
    return any(o.id == CODE_SHOWN for o in test.outcomes) and _CODE.search(typed) is not None


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
