"""Asking which of several tests or places is meant: a question of its own, no answer to a test."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk, words
from troubleshoot.knowledge.model import Test
from troubleshoot.outside.numbers import choice
from troubleshoot.reasoning.unit.places import Place, spoken, with_place

A_NUMBER: Final = "Its number, or Enter for none"
NONE: Final = ("", "n", "no", "none")


def pick(
    book: VisitBook, voice: Voice, question: str, spots: Sequence[tuple[Test, Place | None]]
) -> Talk[tuple[str, str | None] | None]:
    """The test and place that a number, or the place's name, means; None where none is wanted.

    Raises Leave, DangerCalled.
    """
    layout = book.state.unit.layout
    names = tuple(with_place(test.name, layout.shown(test.per, at)) for test, at in spots)
    prompt = Choose(f"{question} {A_NUMBER}", names, repeated=True)
    listener = Listener(book.knowledge, voice)
    while True:
        typed = (yield from words(prompt)).lower().removeprefix("do ")
        if typed in NONE:
            voice.say("None is taken.")
            return None
        number = choice(typed, len(spots))
        place = typed.removeprefix("at ")
        meant = [n for n, (_, at) in enumerate(spots, start=1) if number == n or place == str(at)]
        if len(meant) == 1:
            test, at = spots[meant[0] - 1]
            return test.id, spoken(at)
        listener.not_understood(typed, f"{A_NUMBER}.")
