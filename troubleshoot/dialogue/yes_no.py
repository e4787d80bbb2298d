"""Questions of yes or no: asked alike, answered alike, and asked again with the same sentence."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final, TypeVar

from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.dialogue.talk import Talk, words_or_back

YES: Final = frozenset({"y", "yes", "yeah", "yep"})
NO: Final = frozenset({"n", "no", "nope"})

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
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
        """What an answer means; None where it is neither."""
        said = typed.lower().rstrip(".!")
        if said in YES:
            return True
        return self.enter if not said else False if said in NO else None


def yes_or_no(listener: Listener, question: YesNo) -> Talk[bool]:
    """Ask until it is yes or no. Raises Back, Leave, DangerCalled."""
    return (yield from yes_no_or(listener, question, lambda _: None))


def yes_no_or(
    listener: Listener, question: YesNo, otherwise: Callable[[str], T | None]
) -> Talk[bool | T]:
    """The same; what is neither may be something else that is meant."""
    while True:
        typed = yield from words_or_back(question.prompt)
        meant = question.meant(typed)
        if meant is not None:
            return meant
        listener.hear(typed)
        other = otherwise(typed)
        if other is not None:
            return other
        listener.not_understood(typed, question.misfit)
