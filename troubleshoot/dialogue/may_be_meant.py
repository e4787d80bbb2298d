"""What may be meant by an answer is asked, yes or no, where it protects nobody.

A word that protects somebody is typed by whoever saw it, and is never only agreed to.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.by_word import MayBeMeant, NearlyAnAnswer
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import AskTest, DoStep
from troubleshoot.dialogue.taking_up import taken_up
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Reply, Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_no_or
from troubleshoot.outside.text import plain_words
from troubleshoot.visit.events import Event, Noted

SAY_OTHERWISE: Final = "Not taken. Say it otherwise, or ? for what may be answered."


def taken_up_or_asked(
    book: VisitBook, listener: Listener, prompt: AskTest | DoStep, reply: Reply
) -> Talk[Event]:
    """The event that a reply is, asked about where need be.

    What is not confirmed before the person leaves is kept as a note. Raises NotAnAnswer, Leave,
    DangerCalled.
    """
    try:
        return taken_up(book, listener, prompt, reply)
    except MayBeMeant as may_be:
        asked, answer = str(may_be), may_be.answer
    try:
        is_meant = yield from agrees(listener, asked, answer)
    except (Leave, DangerCalled):
        book.add(Noted(f"typed, and not confirmed: {reply}"))
        raise
    if not is_meant:
        raise NearlyAnAnswer(SAY_OTHERWISE)
    return taken_up(book, listener, prompt, answer)


def agrees(listener: Listener, asked: str, answer: str) -> Talk[bool]:
    """Whether the answer is meant; itself it says so too, and undo that it is not."""
    question = YesNo(asked)
    typed_so = plain_words(answer)
    try:
        meant = yield from yes_no_or(
            listener, question, lambda typed: typed if plain_words(typed) == typed_so else None
        )
    except Back:
        return False
    return bool(meant)
