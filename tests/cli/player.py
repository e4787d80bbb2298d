"""A person at the prompt, for tests: answers by the test that is being asked, not by its turn.

The rule base decides what is asked and when; a story says what the unit shows. What a story does
not mention is skipped, and safety steps are confirmed.
"""

from __future__ import annotations

from collections.abc import Iterable
from datetime import timedelta
from pathlib import Path
from typing import Any

from troubleshoot.cli import clock
from troubleshoot.cli.terminal import EndOfInput, Terminal
from troubleshoot.cli.visiting import hold
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.opening import turns
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import STEPS
from troubleshoot.visit.events.codec import event_of
from troubleshoot.visit.kept.journal import Journal

MOST_LINES = 3000
"""More than any story has: a prompt that is never satisfied fails, and does not hang."""


class Player(Terminal):
    """Writes the conversation down and answers from a story.

    `shows`: test id (or "id at place") -> what is typed; a list is typed one after the other.
    `says`: lines typed first, whatever is asked. `then`: test id -> a command typed at the prompt
    after its answer, or several with "; " between. `settled`: lines typed at an ending. After all
    that, the input has ended.
    """

    def __init__(
        self,
        knowledge: Knowledge,
        shows: dict[str, str | list[str]],
        says: Iterable[str] = (),
        settled: Iterable[str] = (),
        then: dict[str, list[str]] | None = None,
        width: int = 80,
    ) -> None:
        self.knowledge = knowledge
        self.shows = {k: [v] if isinstance(v, str) else list(v) for k, v in shows.items()}
        self.says = list(says)
        self.settled = list(settled)
        self.then = {test: list(commands) for test, commands in (then or {}).items()}
        self.width, self._height = width, 1_000
        self._held, self._lines_since = "", 0
        self.typed_by_hand = False
        self.waited = timedelta()
        self.bold = False
        self.lines: list[str] = []
        self._names = {t.name: t.id for t in knowledge.tests.values()}

    @property
    def text(self) -> str:
        return "\n".join(self.lines) + "\n"

    def _write(self, text: str) -> None:
        self.lines.append(text)

    def ask(self, prompt: str, most: int = 0) -> str:
        answer = self._answer()
        assert len(self.lines) < MOST_LINES, "no end in sight:\n" + "\n".join(self.lines[-30:])
        self.lines.append(f"{prompt} {answer}".rstrip())
        return answer

    def _answer(self) -> str:
        if self.says:
            return self.says.pop(0)
        if any(
            line.startswith(("From the nameplate", "Before the next")) for line in self.lines[-4:]
        ):
            return ""
        head = " ".join(self._task_lines())
        if head.startswith("Step:"):
            return self._shown(head) or self._confirming(head)
        if head.startswith("Test:"):
            return self._shown(head) or "s"
        if self.settled:
            return self.settled.pop(0)
        raise EndOfInput

    def _task_lines(self) -> list[str]:
        """The latest line that names a step or test, if it is newer than an ending."""
        for index in range(len(self.lines) - 1, -1, -1):
            line = self.lines[index]
            if line.startswith(("Step:", "Test:")):
                following = self.lines[index + 1 : index + 2]
                return [line, *(f.strip() for f in following if f.startswith("  ") and "min)" in f)]
            if line.startswith(("The cause is", "No test left", "Nothing wrong has", "The findings",
                                "From the nameplate", "Type repaired", "Proof:", "Is the comp",
                                "Who was told", "again, over")) or " - STOP" in line:  # fmt: skip
                return []
        return []

    def _confirming(self, head: str) -> str:
        """What confirms a step: its word once a wait is over, or the volts before it is."""
        body = head.partition(":")[2].strip()
        step = self._names[max((n for n in self._names if body.startswith(n)), key=len)]
        if STEPS[step].waits_from == "lock-on":
            return "4 V"
        if STEPS[step].waits_from is not None:
            self.waited += timedelta(minutes=self.knowledge.tests[step].wait_minutes)
        return STEPS[step].sound.replace("-", " ")

    def _shown(self, head: str) -> str | None:
        body = head.partition(":")[2].rpartition("(")[0].strip().removesuffix(", once more")
        named = [n for n in self._names if body == n or body.startswith(f"{n}, ")]
        if not named:
            return None
        name = max(named, key=len)
        test_id = self._names[name]
        place = body[len(name) :].removeprefix(", ")
        for wanted in (f"{test_id} at {place}", test_id):
            if self.shows.get(wanted):
                answer = self.shows[wanted].pop(0)
                for commands in self.then.get(test_id, [])[:1]:
                    self.says[:0] = commands.split("; ")
                self.then[test_id] = self.then.get(test_id, [])[1:]
                return answer
        return None


def play(
    knowledge: Knowledge, folder: Path, player: Player, start: dict[str, Any]
) -> tuple[int, VisitBook]:
    """Hold a visit that begins with `start`; returns the exit code and the visit's book."""
    journal = Journal.create(folder, "visit", {"program": "test"})
    book = VisitBook(knowledge, "visit", journal, lambda: clock.now() + player.waited)
    book.add(event_of({"event": "start", **start}))
    return hold(knowledge, player, lambda voice: turns(book, voice)), book
