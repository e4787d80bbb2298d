"""Every kind of prompt takes every command, in any case, and none of them for an answer.

A new kind of prompt has no part here yet, and fails.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import fields
from typing import Any, get_args

import pytest

from tests.cli.lines import book_of
from tests.dialogue.mended import mended
from tests.dialogue.test_repaired_at_a_shortlist import ALONE, SHORTLIST, found
from troubleshoot.dialogue.asides import takes_notes
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.commands import Commands
from troubleshoot.dialogue.complaint import ask_complaint
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.intake import ask_profiles
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import (
    AskFact,
    AskPlate,
    AskProof,
    AskTest,
    AskWords,
    AtStop,
    Choose,
    DoStep,
    Ended,
    Prompt,
    Settled,
)
from troubleshoot.dialogue.said import Sentence, Voice
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk
from troubleshoot.dialogue.turns import Turns
from troubleshoot.dialogue.unit_facts import ask_fact, ask_plate
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import DangerReported, Event, Noted, Started

START = Started(complaint="no-heat", name="RTU-7")
Part = Callable[[VisitBook, Voice], Talk[Any]]


def at_an_ending(book: VisitBook, voice: Voice) -> Talk[None]:
    return Turns(book, voice, Decider(book.knowledge))._settled(SHORTLIST, found(book))


def proof(book: VisitBook, voice: Voice) -> Talk[None]:
    return mended(book, voice, book.knowledge.faults["hot-surface-igniter-cracked"])


PARTS: dict[str, tuple[type, Part]] = {
    "the caller's words": (AskWords, ask_complaint),
    "who is asking": (Choose, lambda book, voice: ask_profiles(book.knowledge, voice)),
    "yes or no": (
        Choose,
        lambda book, voice: yes_or_no(Listener(book.knowledge, voice), YesNo("Is it so?")),
    ),
    "a fact": (AskFact, lambda book, voice: ask_fact(book, voice, book.knowledge.facts["heat"])),
    "a plate value": (
        AskPlate,
        lambda book, voice: ask_plate(
            book, voice, book.knowledge.plate_values["nameplate-volts"], None
        ),
    ),
    "a proof": (AskProof, proof),
    "a step": (DoStep, turns),
    "a test": (AskTest, turns),
    "a STOP": (AtStop, turns),
    "an ending": (Settled, at_an_ending),
}
TYPED_FIRST = {"a step": "do wiring-burn-marks", "a test": "", "a STOP": "danger gas"}
"""What leads from the first question to such a prompt."""
REFUSALS = ("is no answer", "Give a number", "Type an answer", "Nothing known sounds like")


class Held:
    """One part at its prompt, and what came of typing there."""

    def __init__(self, knowledge: Knowledge, name: str) -> None:
        kind, part = PARTS[name]
        self.book = book_of(knowledge, [])
        for event in (START, *(ALONE[1:] if name == "an ending" else ())):
            self.book.add(event)
        self.end: BaseException | None = None
        self.dialogue = Dialogue(lambda voice: self._held(part, voice))
        if name in TYPED_FIRST:
            self.types(TYPED_FIRST[name])
        for _ in range(20):
            if isinstance(self.prompt, kind):
                break
            self.types("")
        assert isinstance(self.prompt, kind), self.prompt
        self.before = len(self.book.events)

    def _held(self, part: Part, voice: Voice) -> Talk[Ended]:
        takes_notes(self.book, voice)
        voice.commands = Commands(self.book, voice, Decider(self.book.knowledge)).serve_beside
        try:
            yield from part(self.book, voice)
        except (Back, DangerCalled, Leave) as raised:
            self.end = raised
        return Ended("kept")

    @property
    def prompt(self) -> Prompt:
        return self.dialogue.prompt

    @property
    def events(self) -> list[Event]:
        """What was kept since the prompt stood there."""
        return self.book.events[self.before :]

    def types(self, typed: str) -> str:
        """Type a line; returns what was said to it."""
        said = self.dialogue.answer(typed)
        return " ".join(
            each.text if isinstance(each, Sentence) else type(each).__name__ for each in said
        )


CASES: tuple[Callable[[str], str], ...] = (str.lower, str.upper, str.capitalize)
AT_EACH = pytest.mark.parametrize("name", PARTS)
EACH_CASE = pytest.mark.parametrize("case", CASES)


def test_every_kind_of_prompt_has_a_part() -> None:
    assert {kind for kind, _ in PARTS.values()} == {*get_args(Prompt)} - {Ended}


@AT_EACH
def test_help_and_why_are_given_and_the_prompt_stays(name: str, shipped: Knowledge) -> None:
    held = Held(shipped, name)
    kind = type(held.prompt)
    for command in ("?", "w", "why", "how", "help", "h"):
        for case in CASES:
            said = held.types(case(command))
            assert said and not any(words in said for words in REFUSALS), said
            assert isinstance(held.prompt, kind) and held.end is None and not held.events


@AT_EACH
def test_a_note_is_kept_and_the_prompt_stays(name: str, shipped: Knowledge) -> None:
    held = Held(shipped, name)
    kind = type(held.prompt)
    for case in CASES:
        assert held.types(f"{case('note')} the hatch sticks") == "Noted."
        assert isinstance(held.prompt, kind)
    notes = [event.text for event in held.events if isinstance(event, Noted)]
    assert notes == ["the hatch sticks"] * len(CASES) and len(held.events) == len(notes)


@EACH_CASE
@AT_EACH
def test_danger_and_leaving_are_heard(
    name: str, case: Callable[[str], str], shipped: Knowledge
) -> None:
    held = Held(shipped, name)
    held.types(f"{case('danger')} gas")
    reported = any(isinstance(event, DangerReported) for event in held.events)
    assert reported or isinstance(held.end, DangerCalled)
    held = Held(shipped, name)
    held.types(case("q"))
    assert isinstance(held.prompt, Ended) and not held.events


@EACH_CASE
@AT_EACH
@pytest.mark.parametrize("command", ["s", "u"])
def test_going_back_or_on_is_done_or_it_is_said_why_not(
    command: str, name: str, case: Callable[[str], str], shipped: Knowledge
) -> None:
    held = Held(shipped, name)
    asked = held.prompt
    said = held.types(case(command))
    assert not any(words in said for words in REFUSALS), said
    assert said or held.events or held.prompt is not asked
    for event in held.events:
        assert case(command) not in [getattr(event, each.name) for each in fields(event)]


@pytest.mark.parametrize(
    "command", ["tests", "CAUSES", "Done", "DO suction pressure", "REPAIRED 1", "Unit"]
)
@pytest.mark.parametrize("name", ["a fact", "a plate value", "a step", "a test", "an ending"])
def test_commands_are_served_wherever_the_unit_is_spoken_of(
    command: str, name: str, shipped: Knowledge
) -> None:
    """Regression: at a fact they were no answer, and in capitals nowhere."""
    held = Held(shipped, name)
    said = held.types(command)
    assert not any(words in said for words in REFUSALS), said
    assert said or held.events or isinstance(held.prompt, Choose)
