"""Asking which of several things is meant: a question of its own, no answer to a test."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, Talk, words_or_back
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import plain_words

A_NUMBER: Final = "Its number, or Enter for none"
NONE: Final = ("", "n", "no", "none", "none of these", "none of them", "neither")
NONE_IS_TAKEN: Final = "None is taken."


def pick(book: VisitBook, voice: Voice, question: str, names: Sequence[str]) -> Talk[int | None]:
    """The index of the name that a number or words of its own mean; None where none is wanted.

    `u` goes back to before it was asked for. Raises Leave, DangerCalled.
    """
    prompt = Choose(f"{question} {A_NUMBER}", tuple(names), repeated=True)
    listener = Listener(book.knowledge, voice)
    while True:
        try:
            typed = plain_words((yield from words_or_back(prompt))).removeprefix("do ")
        except Back:
            typed = ""
        if typed in NONE:
            voice.say(NONE_IS_TAKEN)
            return None
        number = choice(typed, len(names))
        meant = [number] if number is not None else _named(names, typed)
        if len(meant) == 1:
            return meant[0] - 1
        listener.not_understood(typed, f"{A_NUMBER}.")


def _named(names: Sequence[str], typed: str) -> list[int]:
    """The numbers of those that have every word of what was typed in their name."""
    said = {*plain_words(typed.replace(",", " ")).removeprefix("at ").split()}
    named = ({*plain_words(name.replace(",", " ")).split()} for name in names)
    return [number for number, own in enumerate(named, start=1) if said and said <= own]
