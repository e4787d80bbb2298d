"""One visit as whoever holds it sees it: a prompt, and what was said before it.

A terminal, a file of answers, a page or an apprentice's unit drive this object; they keep nothing
of the visit themselves. Time and storage are handed in with the book.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from troubleshoot.dialogue.asides import leaves, served
from troubleshoot.dialogue.hearing import called_danger
from troubleshoot.dialogue.in_danger import whether_in_danger
from troubleshoot.dialogue.prompts import Ended, Prompt
from troubleshoot.dialogue.said import Said, Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Reply, Talk, ToldGone


class Dialogue:
    """A visit that goes on with every answer. `said`: what was said before the first prompt."""

    def __init__(self, talk: Callable[[Voice], Talk[Ended]]) -> None:
        self._voice = Voice()
        self._talk: Talk[Ended | None] = talk(self._voice)
        self._held: tuple[Talk[Ended | None], Prompt] | None = None
        self.prompt: Prompt
        self.said = self._go_on(lambda: next(self._talk))

    @property
    def asks_aside(self) -> bool:
        """Whether the prompt is a question in between: what stood before it stands after it."""
        return self._held is not None

    def answer(self, reply: Reply) -> tuple[Said, ...]:
        """Take a reply to the prompt; returns what is said before the next one.

        A person who calls danger, or who leaves, is heard at every prompt. Raises whatever the
        storage raises.
        """
        if not isinstance(reply, str):
            return self._go_on(lambda: self._talk.send(reply))
        self._voice.typed = (reply, self.prompt)
        danger = called_danger(reply)
        if danger is not None:
            return self.break_off(DangerCalled(danger))
        if leaves(reply):
            return self.leave()
        if (gone := self.told_gone(reply)) is not None:
            return self.break_off(gone)
        try:
            if served(self.prompt, reply, self._voice):
                return self._heard()
        except DangerCalled as called:
            return self.break_off(called)
        return self._go_on(lambda: self._talk.send(reply))

    def told_gone(self, typed: str) -> ToldGone | None:
        """What breaks in where somebody says that a state has gone on which the work stands."""
        return self._voice.told_gone(self.prompt, typed)

    def break_off(self, by: DangerCalled | Leave) -> tuple[Said, ...]:
        """A danger is called or somebody leaves before all was read; returns what is said of it."""
        return self._go_on(lambda: self._talk.throw(by))

    def unheard(self) -> tuple[Said, ...]:
        """What had been said before the storage failed in the midst of an answer."""
        return self._voice.heard()

    def leave(self) -> tuple[Said, ...]:
        """Whoever answered has gone; the visit is kept. Returns what is said of that."""
        return self.break_off(Leave())

    def _go_on(self, going_on: Callable[[], Prompt]) -> tuple[Said, ...]:
        try:
            self.prompt = going_on()
        except StopIteration as end:
            if self._held is None:
                assert isinstance(end.value, Ended)
                self.prompt = end.value
            else:
                self._talk, self.prompt = self._held
                self._held = None
        except (DangerCalled, Leave) as raised:
            if self._held is None:
                raise
            self._talk, _ = self._held
            self._held = None
            return self._go_on(partial(self._talk.throw, raised))
        return self._heard()

    def _heard(self) -> tuple[Said, ...]:
        """What was said. What hints at a danger, or that a state has gone, is asked about first.

        Then the prompt comes again.
        """
        if self._held is None and not isinstance(self.prompt, Ended):
            aside = self._in_between()
            if aside is not None:
                self._held = (self._talk, self.prompt)
                self._talk = aside
                self.prompt = next(self._talk)
        return self._voice.heard()

    def _in_between(self) -> Talk[None] | None:
        """The question that is asked before the prompt, the gravest first."""
        hinted, self._voice.hinted = self._voice.hinted, None
        if hinted is not None:
            return whether_in_danger(self._voice, hinted)
        return self._voice.doubts()
