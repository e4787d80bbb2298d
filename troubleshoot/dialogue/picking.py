"""Asking which of several things is meant: a question of its own, no answer to a test."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.hedged import is_in_doubt
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Back, Talk, words_or_back
from troubleshoot.outside.numbers import choice
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.matching.lexicon import lexicon_of
from troubleshoot.reasoning.matching.matcher import Matcher

A_NUMBER: Final = "Its number, or Enter for none"
NONE: Final = ("", "n", "no", "none", "none of these", "none of them", "neither")
NONE_IS_TAKEN: Final = "None is taken."


def pick(
    book: VisitBook,
    voice: Voice,
    question: str,
    names: Sequence[str],
    otherwise: Callable[[str], int | None] = lambda typed: None,
) -> Talk[int | None]:
    """The index of the name that a number or words of its own mean; None where none is wanted.

    `otherwise`: the index that is meant by words of another kind. `u` goes back to before it was
    asked for. Raises Leave, DangerCalled.
    """
    prompt = Choose(f"{question} {A_NUMBER}", tuple(names), repeated=True)
    listener = Listener(book.knowledge, voice, own=names)
    named = Matcher(lexicon_of(book.knowledge), {str(at): (n,) for at, n in enumerate(names)})
    while True:
        try:
            said = yield from words_or_back(prompt)
        except Back:
            said = ""
        typed = plain_words(said).removeprefix("do ")
        if typed in NONE:
            voice.say(NONE_IS_TAKEN)
            return None
        number = choice(typed, len(names))
        if number is not None:
            return number - 1
        meant, taken = otherwise(typed), named.heard(typed).taken
        index = meant if taken is None else int(taken)
        if index is not None and is_in_doubt(said):
            voice.say(f'Is "{names[index]}" meant? {A_NUMBER}.')
            continue
        if index is not None:
            return index
        listener.not_understood(typed, f"{A_NUMBER}.")
