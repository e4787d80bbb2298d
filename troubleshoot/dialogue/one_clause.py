"""One clause of a line that answers a look in the rooms, beside others that tell of it.

At the unit the others may tell of what the work stands on: there nothing is taken so.
"""

from __future__ import annotations

import re
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import AskTest, DoStep
from troubleshoot.dialogue.taking_up import is_answer, protects
from troubleshoot.safety.needs import IN_THE_BUILDING

_PARTED: Final = re.compile("[,;]")


def part_that_answers(
    book: VisitBook, listener: Listener, prompt: AskTest | DoStep, typed: str
) -> str:
    """The one clause of several that is an answer: stat is calling, set 72, all correct.

    Empty where there is none, where what is asked protects somebody, or a danger is told of.
    """
    test = prompt.decision.test
    if test is None or test.area != IN_THE_BUILDING or protects(book.knowledge, test):
        return ""
    if listener.speaks_of_danger(typed):
        return ""
    parts = [part.strip() for part in _PARTED.split(typed) if part.strip()]
    answers = [part for part in parts if is_answer(book, prompt, part)]
    return answers[0] if len(answers) == 1 < len(parts) else ""
