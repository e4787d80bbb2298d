"""Questions of yes or no: asked alike, answered alike, and asked again with the same sentence."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Final

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.talk import Talk, unless_back, words_or_back
from troubleshoot.frozen import frozen

YES: Final = frozenset({"y", "yes", "yeah", "yep"})
NO: Final = frozenset({"n", "no", "nope"})

ANSWERED_FIRST: Final = "Nothing is taken back before that is answered."

_ENDS: Final = re.compile(r"[,.;!]")


@frozen
class YesNo:
    """A question of yes or no. `enter`: what Enter means, where it means anything.

    `besides`: what else may be typed, in words.
    """

    question: str
    enter: bool | None = None
    besides: str = ""

    @property
    def prompt(self) -> Choose:
        means = {None: "y/n", True: "y/n, Enter is y", False: "y/n, Enter is n"}[self.enter]
        return Choose(f"{self.question} ({means})", repeated=True)

    @property
    def misfit(self) -> str:
        """What to say to an answer that is neither."""
        return f"y, n, or {self.besides}." if self.besides else "y or n."

    def meant(self, typed: str) -> bool | None:
        """What an answer means, whatever follows it ("no, it runs"); None where it is neither."""
        if not typed:
            return self.enter
        said = _ENDS.split(typed.lower(), maxsplit=1)[0]
        return True if said in YES else False if said in NO else None


def yes_or_no(listener: Listener, question: YesNo) -> Talk[bool]:
    """Ask until it is yes or no. Raises Back, Leave, DangerCalled."""
    meant, _ = yield from yes_or_no_in_words(listener, question)
    return meant


def answered_first(listener: Listener, question: YesNo) -> Talk[bool]:
    """The same, before anything is taken back. Raises Leave, DangerCalled."""
    return (
        yield from unless_back(
            listener.voice, ANSWERED_FIRST, lambda: yes_or_no(listener, question)
        )
    )


def yes_or_no_in_words(listener: Listener, question: YesNo) -> Talk[tuple[bool, str]]:
    """The same, with the words that said so."""
    said = yield from _asked(listener, question, lambda _: None)
    assert isinstance(said[0], bool)
    return said[0], said[1]


def yes_no_or(
    listener: Listener, question: YesNo, otherwise: Callable[[str], str | None]
) -> Talk[bool | str]:
    """The same; what is neither may be something else that is meant."""
    meant, _ = yield from _asked(listener, question, otherwise)
    return meant


def _asked(
    listener: Listener, question: YesNo, otherwise: Callable[[str], str | None]
) -> Talk[tuple[bool | str, str]]:
    while True:
        typed = yield from words_or_back(question.prompt)
        listener.hear(typed)
        meant = question.meant(typed)
        if meant is not None:
            return meant, typed
        other = otherwise(typed)
        if other is not None:
            return other, typed
        listener.not_understood(typed, question.misfit)
