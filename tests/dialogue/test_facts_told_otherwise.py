"""A step that settles a fact of the unit against what was told of it is asked about first."""

from __future__ import annotations

from datetime import datetime

import pytest

from tests.cli.lines import book_of
from troubleshoot.cli import clock
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import Choose, DoStep
from troubleshoot.dialogue.said import Sentence
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.visit.events import Aimed, Started

UNIT = {
    "refrigerant": "R-410A", "metering": "txv", "circuits": "1", "supply-phase": "three",
    "compressor-phase": "three", "line-volts-class": "208-to-240-volt", "refrigerant-class": "a1",
    "condenser-fans": "1", "blower-motor": "three-phase", "variable-speed-drive": "not-fitted",
    "heat": "none",
}  # fmt: skip
FACT = "duct-smoke-detector"


@pytest.fixture(autouse=True)
def _noon(monkeypatch: pytest.MonkeyPatch) -> None:
    noon = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
    monkeypatch.setattr(clock, "now", lambda: noon)


def step_of(dialogue: Dialogue) -> str | None:
    """The step that is open; none at a test or a question."""
    prompt = dialogue.prompt
    step = prompt.decision.step if isinstance(prompt, DoStep) else None
    return None if step is None else step.id


def at_the_panel(shipped: Knowledge, told: str) -> tuple[VisitBook, Dialogue]:
    """A visit that has come to the step of the fire panel."""
    start = Started(complaint="no-cooling", unit={**UNIT, FACT: told}, profiles=("electrical",))
    aimed = Aimed("capacitance-out-of-circuit", "capacitor condenser fan 1", chosen=True)
    book = book_of(shipped, [start, aimed])
    dialogue = Dialogue(lambda voice: turns(book, voice))
    for _ in range(25):
        step = step_of(dialogue)
        if step == "tell-fire-panel":
            return book, dialogue
        dialogue.answer("s" if step is None else CONFIRMED[step].replace("-", " "))
    raise AssertionError("no such step")


def test_every_fact_that_a_step_settles_has_an_outcome_to_type(shipped: Knowledge) -> None:
    settled = {(step, key) for step in STEPS for key in STEPS[step].settles}
    assert settled == {("tell-fire-panel", "no-detector")}
    assert all(key in {o.id for o in shipped.tests[step].outcomes} for step, key in settled)


def test_no_detector_against_a_detector_that_was_told_of_is_asked_about(shipped: Knowledge) -> None:
    """Regression: "none" was taken in silence, and the fire panel stayed in service."""
    book, dialogue = at_the_panel(shipped, "fitted")
    dialogue.answer("none")
    assert isinstance(dialogue.prompt, Choose)
    assert "duct smoke detector: fitted" in dialogue.prompt.question
    assert "duct smoke detector: not fitted" in dialogue.prompt.question
    said = dialogue.answer("n")
    assert any(isinstance(s, Sentence) and "as told before" in s.text for s in said)
    assert book.state.unit.facts[FACT] == "fitted"
    assert step_of(dialogue) == "tell-fire-panel"


def test_what_is_meant_replaces_it(shipped: Knowledge) -> None:
    book, dialogue = at_the_panel(shipped, "fitted")
    dialogue.answer("none")
    dialogue.answer("y")
    assert book.state.unit.facts[FACT] == "not-fitted"
