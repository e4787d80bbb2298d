"""Questions to an author, one after the other: each can be explained, taken back and left.

At every prompt ? tells what is wanted, u goes back to the question before, and q leaves, once it
has been asked whether what was told is to be lost.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from typing import Final, TypeVar

from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.outside.numbers import choice, whole_number

Chosen = TypeVar("Chosen")

KEYS: Final = "At any question: ? explains it, u goes back to the one before, q leaves."


class Left(Exception):
    """The author has gone, and nothing is to be written."""


class Back(Exception):
    """The question before is to be asked again."""


class AuthorTerminal(Terminal):
    """In pages, where somebody types; between them nothing is asked, and nothing that was told is
    lost to a stray q.
    """

    def __init__(self) -> None:
        super().__init__()
        self.pages = self.typed_by_hand and sys.stdout.isatty()

    def between_pages(self, typed: str) -> None:
        self.say("Nothing is asked yet: Enter shows the rest. q leaves at the question.")


class Asker:
    """Asks at a terminal; `terminal` says what stands between the questions."""

    def __init__(self, terminal: Terminal) -> None:
        self.terminal = terminal

    def line(self, prompt: str, about: str) -> str:
        """One line of answer, maybe empty. Raises Left, Back."""
        while True:
            try:
                typed = self.terminal.ask(prompt)
            except EndOfInput:
                raise Left from None
            said = typed.lower()
            if said in ("?", "help"):
                self.terminal.say(about)
                self.terminal.say(KEYS)
            elif said in ("u", "undo", "back"):
                raise Back
            elif said not in ("q", "quit"):
                return typed
            elif self._leaves():
                raise Left

    def _leaves(self) -> bool:
        self.terminal.say("What you told is lost then, and nothing is written.")
        try:
            return self.terminal.ask("Leave? y, or Enter to go on >").lower() in ("y", "yes", "q")
        except EndOfInput:
            return True

    def words(self, prompt: str, about: str, most: int, may_be_empty: bool = False) -> str:
        """Words of at most `most` letters. Raises Left, Back."""
        while True:
            typed = " ".join(self.line(prompt, about).split())
            if len(typed) > most:
                self.terminal.say(f"That is {len(typed)} letters; {most} at most.")
            elif any(letter.isalpha() for letter in typed) or (not typed and may_be_empty):
                return typed
            else:
                self.terminal.say(f"It is wanted in words. {about}")

    def number(self, prompt: str, about: str, most: int) -> int:
        """A whole number from 1 to `most`. Raises Left, Back."""
        while True:
            typed = self.line(prompt, about)
            number = whole_number(typed)
            if number is not None and 1 <= number <= most:
                return number
            self.terminal.say(f"A number from 1 to {most}.")

    def choose(
        self,
        prompt: str,
        about: str,
        choices: Sequence[tuple[Chosen, str]],
        usual: Chosen | None = None,
    ) -> Chosen:
        """One of several, by its number or its words; Enter takes the usual one, if there is one.

        Raises Left, Back.
        """
        self.show(choices)
        enter = next((label for value, label in choices if value == usual), None)
        if enter is not None:
            self.terminal.say(f"Enter takes: {enter}.")
        while True:
            typed = self.line(prompt, about)
            if not typed and enter is not None and usual is not None:
                return usual
            if (chosen := _chosen(typed, choices)) is not None:
                return chosen[0]
            self.terminal.say(f"A number from 1 to {len(choices)}; u where none of them is it.")

    def show(self, choices: Sequence[tuple[object, str]]) -> None:
        """Things to choose from, by number."""
        for number, (_, label) in enumerate(choices, start=1):
            self.terminal.say(f"{number} {label}", 2)


def _chosen(typed: str, choices: Sequence[tuple[Chosen, str]]) -> tuple[Chosen] | None:
    """What was chosen, by number, or by words that only one is called by, begins with or has."""
    if (number := choice(typed, len(choices))) is not None:
        return (choices[number - 1][0],)
    said = typed.strip().lower()
    names = [(value, label.lower().partition(":")[0]) for value, label in choices if said]
    for fits in (str.__eq__, str.startswith, str.__contains__):
        found = [value for value, name in names if fits(name, said)]
        if len(found) == 1:
            return (found[0],)
    return None


def several(
    asker: Asker,
    told: tuple[Chosen, ...],
    one: Callable[[tuple[Chosen, ...]], tuple[Chosen, ...] | None],
) -> tuple[Chosen, ...]:
    """Several answers to one question; `one` adds an answer, or returns None when that is all.

    u takes the answer in hand back, then the last one. Raises Left, and Back where none is left.
    """
    before = [told]
    while True:
        try:
            with_one_more = one(before[-1])
        except Back:
            if not before[-1]:
                raise
            if len(before) > 1:
                before.pop()
            else:
                before[-1] = before[-1][:-1]
            asker.terminal.say("The last one is taken back.")
            continue
        if with_one_more is None:
            return before[-1]
        if with_one_more != before[-1]:
            before.append(with_one_more)
