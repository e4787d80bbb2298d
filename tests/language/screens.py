"""A visit held at a terminal of a test, answered by what is asked and not by how it is worded."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Literal

from troubleshoot.cli.door import heard
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.cli.parts import wrapped
from troubleshoot.cli.screens.prompts import show_prompt, show_said, sign_of
from troubleshoot.cli.terminal import Terminal
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import Visitor, visit
from troubleshoot.dialogue.prompts import (
    AskTest,
    AskWords,
    AtStop,
    Choose,
    DoStep,
    Ended,
    Prompt,
    Settled,
)
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED, STEPS

Mode = Literal["first", "last", "sound"]
EXTRAS = (
    "?", "w", "because 1", "why not filters", "tests", "help", "what if normal", "note", "again",
    "invalid", "u", "causes", "do 1", "nonsense", "s",
)  # fmt: skip
"""What is typed at the first tests, beside answers."""

MOST_PROMPTS = 400
_LOWER = re.compile(r"(?<![\w/.<+-])[a-z]+(?:'?[a-z]+)(?![\w/.=>-])")


class Screen(Terminal):
    """Keeps what is written on it; wide, so that nothing is broken into lines."""

    def __init__(self) -> None:
        self.width, self._height = 4_000, 1_000
        self._held, self._lines_since = "", 0
        self.typed_by_hand = self.bold = False
        self.lines: list[str] = []

    def _write(self, text: str) -> None:
        self.lines.append(text)

    def sign(self, text: str) -> None:
        """What stands before an answer."""
        self._write("\n".join(wrapped(text, self.width - 1)))


def held(
    knowledge: Knowledge,
    folder: Path,
    call: str,
    mode: Mode,
    say: Callable[[str], str],
    extras: Iterable[str] = EXTRAS,
) -> list[str]:
    """The screens of a whole visit; `say`: a shown English word as the language has it."""
    screen, more = Screen(), list(extras)
    with JournalShelf(knowledge, folder / "visits") as shelf:
        dialogue = Dialogue(lambda voice: visit(shelf, voice, Visitor("", ())))
        show_said(screen, knowledge, dialogue.said)
        for _ in range(MOST_PROMPTS):
            prompt = dialogue.prompt
            if isinstance(prompt, Ended):
                return screen.lines
            show_prompt(screen, knowledge, prompt)
            screen.sign(sign_of(prompt))
            typed = more.pop(0) if isinstance(prompt, AskTest) and more else None
            typed = _answer(prompt, call, mode, say) if typed is None else typed
            show_said(screen, knowledge, dialogue.answer(heard(typed)))
    raise AssertionError("the visit never ends")


def _answer(prompt: Prompt, call: str, mode: Mode, say: Callable[[str], str]) -> str:
    if isinstance(prompt, DoStep):
        step, test = prompt.decision.step, prompt.decision.test
        assert step is not None and test is not None
        return (
            "4 V"
            if STEPS[step.id].waits_from == "lock-on"
            else say(test.spoken(CONFIRMED[step.id]))
        )
    if isinstance(prompt, AskTest):
        test = prompt.decision.test
        assert test is not None
        sound = [outcome for outcome in prompt.outcomes if outcome in test.healthy]
        chosen = {"first": prompt.outcomes[:1], "last": prompt.outcomes[-1:], "sound": sound[:1]}
        return say(test.spoken(chosen[mode][0])) if chosen[mode] else say("s")
    if isinstance(prompt, Choose):
        return ("4,5,6" if prompt.several else "1") if prompt.options else say("y")
    if isinstance(prompt, AskWords):
        unit = "Which unit" in prompt.question
        return call if "caller" in prompt.question else "" if unit else "the gas company, just now"
    if isinstance(prompt, Settled):
        return say("done")
    return say("over") if isinstance(prompt, AtStop) else ""


def left_in_english(lines: Iterable[str], allowed: frozenset[str] = frozenset()) -> set[str]:
    """The lines on which a word in small letters stands that is not allowed."""
    return {line for line in lines if set(_LOWER.findall(line)) - allowed}
