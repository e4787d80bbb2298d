"""A look at which words are typed that answer nothing as they stand, and what comes of them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

from tests.building import base, test_of
from tests.safety.hearing.invented import job
from troubleshoot.dialogue import other_words
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.dialogue.other_words import OtherWords
from troubleshoot.knowledge.model import Hazard, Knowledge, Outcome, Test

BELT = replace(
    test_of("belt"),
    outcomes=(
        Outcome("normal", words=("snug",)),
        Outcome("torn"),
        Outcome("glazed", words=("shiny", "long")),
        Outcome("edge-cut"),
        Outcome("rib-cut"),
    ),
)
PAN = test_of("pan", "rotten")
SMOKE = job("smoke-now", "smoke")
STANDS = "whether all stands"
FINDINGS = ("belt is frayed",)
"""Words that tell what was found and nothing else."""


class Stub:
    """The book, the voice, the listener and what takes answers; keeps what it is told, in order."""

    own = ()

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self.state = SimpleNamespace(name="RTU-3", unit=None)
        self.telling = self
        self.log: list[object] = []

    def keep(self, kept: object, *_: object) -> None:
        self.log.append(kept)

    add = say = keep

    def speaks_of_danger(self, typed: str) -> bool:
        return "fire" in typed

    def hints(self, typed: str, own: object) -> bool:
        return "dizzy" in typed


class Told:
    """A prompt at the look, and what is told there; every question is answered by `answer`."""

    def __init__(
        self,
        monkeypatch: pytest.MonkeyPatch,
        *,
        test: Test | None = BELT,
        step: str | None = None,
        hazards: Iterable[Hazard] = (SMOKE,),
        seen: int = 0,
        answer: object = False,
    ) -> None:
        self.stub: Any = Stub(base(tests=[BELT, PAN], hazards=[*hazards]))
        self.log = self.stub.log
        self.asked: list[object] = []
        self.answer = answer
        self.seen = seen
        outcomes = tuple(outcome.id for outcome in BELT.outcomes)
        decision = SimpleNamespace(step=step, test=test)
        self.prompt: Any = SimpleNamespace(decision=decision, outcomes=outcomes)
        for name in ("pick", "agrees"):
            monkeypatch.setattr(other_words, name, self.talk)
        monkeypatch.setattr(other_words, "tells_a_finding", lambda typed: typed in FINDINGS)
        monkeypatch.setattr(other_words, "ask_if_all_stands", self.stands)
        monkeypatch.setattr(other_words, "taken_up", self.taken_up)
        monkeypatch.setattr(other_words, "may_name_a_state", lambda _, words: "lid" in words)
        self.words = OtherWords(self.stub, self.stub, self.stub)
        self.words.other_looks = SimpleNamespace(told=self.told, take=self.take)  # type: ignore[assignment]

    def talk(self, *given: object) -> Iterator[object]:
        self.asked.append(given[-2:])
        if isinstance(self.answer, Exception):
            raise self.answer
        return self.answer
        yield

    def stands(self, *given: object) -> Iterator[None]:
        self.log.append((STANDS, given[-1]))
        return
        yield

    def taken_up(self, book: object, listener: object, prompt: object, typed: str) -> str:
        if typed not in ("torn", "glazed", "normal", "edge-cut", "rib-cut", "torn, glazed"):
            raise NotAnAnswer("no")
        return f"<{typed}>"

    def told(self, decision: object, typed: str) -> tuple[object, ...]:
        return ("seen",) * self.seen

    def take(self, *given: object) -> Iterator[bool]:
        self.log.append(("elsewhere", given[-1]))
        return True
        yield

    def types(self, typed: str, *, stands: bool = False) -> bool:
        talk: Any = self.words.take(self.stub, self.prompt, typed, stands=stands)
        with pytest.raises(StopIteration) as end:
            next(talk)
        assert isinstance(end.value.value, bool)
        return bool(end.value.value)
