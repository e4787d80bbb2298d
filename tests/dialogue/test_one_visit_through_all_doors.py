"""The same visit through every door: the terminal, a file of answers, and bare prompts.

None of them keeps anything of the visit, so that all come to the same events.
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.cli.lines import Lines
from troubleshoot.cli.visiting import hold
from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.driven import at_once
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import AskTest, AtStop, DoStep, Ended, Prompt, Settled
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.events.codec import record_of

DATA: dict[str, Any] = {
    "unit": {"refrigerant": "R-410A", "metering": "txv", "circuits": 1, "heat": "gas"},
    "complaint": "weak-cooling",
    "readings": [
        {"test": "walk-round", "outcome": "clean"},
        {"test": "condenser-fan-turning", "outcome": "normal"},
        {"test": "thermostat-settings", "outcome": "correct"},
    ],
}


def case_of(knowledge: Knowledge) -> Any:
    outcomes = {
        r["test"]: [o.id for o in knowledge.tests[r["test"]].outcomes] for r in DATA["readings"]
    }
    assert all(r["outcome"] in outcomes[r["test"]] for r in DATA["readings"]), outcomes
    return read_case(knowledge, DATA), DATA


def says(prompt: Prompt, outcomes: dict[str, list[str]]) -> str | None:
    """What a person types who knows what the file holds."""
    if isinstance(prompt, DoStep):
        assert prompt.decision.step is not None
        step = prompt.decision.step.id
        return "4 V" if step == "drive-discharge" else CONFIRMED[step].replace("-", " ")
    if isinstance(prompt, AskTest):
        assert prompt.decision.test is not None
        waiting = outcomes.get(prompt.decision.test.id, [])
        return waiting.pop(0).replace("-", " ") if waiting else "s"
    return None if isinstance(prompt, Settled | AtStop | Ended) else ""


@pytest.fixture(scope="module")
def scripted(shipped: Knowledge) -> ScriptedVisit:
    case, data = case_of(shipped)
    visit = ScriptedVisit(Reasoner(shipped), case, start_event(case, data))
    visit.run()
    return visit


def plain(book: VisitBook) -> list[dict[str, Any]]:
    """What the events say, without what only one door knows of them."""
    wanted = ("event", "test", "step", "place", "outcomes", "fault")
    kept = [{k: v for k, v in record_of(e).items() if k in wanted} for e in book.events]
    return [e for e in kept if e["event"] in ("step", "answer", "skip")]


def held_by_prompts(shipped: Knowledge) -> tuple[VisitBook, list[str]]:
    """The visit, and what was typed in it."""
    case, data = case_of(shipped)
    book = VisitBook(shipped, "", Forgotten(), at_once)
    book.add(start_event(case, data))
    outcomes = {r["test"]: [r["outcome"]] for r in data["readings"]}
    dialogue = Dialogue(lambda voice: turns(book, voice))
    typed: list[str] = []
    while (line := says(dialogue.prompt, outcomes)) is not None:
        typed.append(line)
        dialogue.answer(line)
    return book, typed


def test_bare_prompts_come_to_the_same_visit_as_a_file(
    shipped: Knowledge, scripted: ScriptedVisit
) -> None:
    steps_and_answers = plain(held_by_prompts(shipped)[0])
    assert len(steps_and_answers) > 10
    assert steps_and_answers == plain(scripted.book)[: len(steps_and_answers)]


def test_the_terminal_comes_to_the_same_visit_as_bare_prompts(shipped: Knowledge) -> None:
    case, data = case_of(shipped)
    book, typed = held_by_prompts(shipped)
    other = VisitBook(shipped, "", Forgotten(), at_once)
    other.add(start_event(case, data))
    terminal = Lines(*typed)
    hold(shipped, terminal, lambda voice: turns(other, voice))
    assert other.events == book.events
    assert terminal.asked == [">"] * (len(typed) + 1)
