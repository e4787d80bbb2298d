"""How a visit talks: it yields a prompt and goes on with the reply.

So every part of a visit is written in the order in which it happens, and stops wherever somebody
has to answer, without a thread, a clock or a terminal.
"""

from __future__ import annotations

from collections.abc import Callable, Generator
from typing import Final, TypeVar

from troubleshoot.dialogue.prompts import Prompt
from troubleshoot.dialogue.said import Voice
from troubleshoot.visit.events import Event

Reply = str | Event
"""What a person typed; or, from a door that has it as data, the event that answers the prompt."""

BACK: Final = ("u", "undo")
"""What takes the last answer back."""

T = TypeVar("T")
Talk = Generator[Prompt, Reply, T]
"""A part of a visit: yields prompts, is sent replies, and comes to a result."""


class Leave(Exception):
    """The person leaves; the visit is kept."""


class DangerCalled(Exception):
    """Somebody reports a danger, in the words that the message holds."""


class ToldGone(DangerCalled):
    """Somebody says that a state has gone: it breaks in as a danger does, and is reported as none.

    `steps`: the safety steps that had confirmed it.
    """

    def __init__(self, words: str, steps: tuple[str, ...]) -> None:
        super().__init__(words)
        self.steps = steps


class Back(Exception):
    """The person takes the last answer back, and wants to be asked for it again."""


def words(prompt: Prompt) -> Talk[str]:
    """The words that answer a prompt to which there is no event."""
    reply = yield prompt
    assert isinstance(reply, str), f"{type(prompt).__name__} is answered in words"
    return reply


def words_or_back(prompt: Prompt) -> Talk[str]:
    """The same, where the answer before may be taken back. Raises Back."""
    typed = yield from words(prompt)
    if typed.lower() in BACK:
        raise Back
    return typed


def unless_back(voice: Voice, why: str, ask: Callable[[], Talk[T]]) -> Talk[T]:
    """Ask where nothing before can be taken back: who wants that is told why, and asked again."""
    while True:
        try:
            return (yield from ask())
        except Back:
            voice.say(why)
