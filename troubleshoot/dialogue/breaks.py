"""Telling of a break: what it has voided and the first order, before anything else is said."""

from __future__ import annotations

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.said import Voice


def tell_break(book: VisitBook, voice: Voice) -> None:
    """Tell of the break that has just been noticed, if any: cautions of before it are new again."""
    for line in book.lapsed():
        voice.told_whole.clear()
        voice.say(line, strong=True)
