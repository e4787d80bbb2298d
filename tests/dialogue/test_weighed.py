"""Refrigerant told on a visit: at any prompt, and with the word of a step."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from tests.cli.lines import book_of
from tests.dialogue.test_every_prompt import AT_EACH, CASES, Held
from troubleshoot.dialogue.answering import step_event_from
from troubleshoot.dialogue.asides import keep_weighing
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer
from troubleshoot.dialogue.said import Sentence, Voice
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.report import markdown_report
from troubleshoot.safety.steps import RECHARGE, RECOVER, Step
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Event,
    FromRegister,
    Started,
    StepDone,
    Undone,
    Weighed,
    replay,
)
from troubleshoot.visit.kept.understanding import Understanding
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.kept_visit import kept_account
from troubleshoot.visit.telling.weighings import weighings_of
from troubleshoot.visit.weighing import Weighing

NOW = datetime(2026, 5, 4, 9, tzinfo=UTC)
TWO = Started(complaint="no-cooling", name="RTU-7", unit={"circuits": "two-or-more"})


def told(knowledge: Knowledge, step: str, typed: str) -> StepDone:
    state = replay(knowledge, [TWO])
    return step_event_from(
        knowledge, state, knowledge.tests[step], Step(step, "circuit 2"), typed, NOW
    )


@AT_EACH
def test_a_weight_is_kept_at_every_prompt_and_the_prompt_stays(
    name: str, shipped: Knowledge
) -> None:
    held = Held(shipped, name)
    kind = type(held.prompt)
    for case in CASES:
        said = held.types(f"{case('refrigerant added')} 1 lb 4 oz to circuit 1 from C-7")
        assert said.startswith("Kept: added 1.25 lb (1 lb 4 oz), circuit 1, from C-7."), said
        assert isinstance(held.prompt, kind)
    assert {type(event) for event in held.events} == {Weighed}
    assert held.types("refrigerant added lots").startswith("Not kept: ")


@AT_EACH
def test_a_danger_in_its_words_is_heard_first(name: str, shipped: Knowledge) -> None:
    held = Held(shipped, name)
    held.types("refrigerant added 2 lb and the hose blew off, liquid in my eye")
    reported = any(isinstance(event, DangerReported) for event in held.events)
    assert reported or held.end is not None or name == "a STOP"


def test_before_there_is_a_visit_it_is_said_that_it_is_not_kept() -> None:
    assert not Voice().weigh("added 2 lb")


@pytest.mark.parametrize(
    ("step", "typed", "outcomes", "text"),
    [
        (RECOVER, "recovered", ("recovered",), None),
        (RECOVER, "recovered, 9.2 lb into R-3", ("recovered",), "9.2 lb into R-3"),
        (RECOVER, "recovered 9 lb 3 oz", ("recovered",), "9 lb 3 oz"),
        (RECHARGE, "charge in, 4.2 kg from C-7", ("charged",), "4.2 kg from C-7"),
        (RECOVER, "recovered 9.2 lb into yellow 2", ("recovered",), "9.2 lb into yellow 2"),
        (RECHARGE, "not charged", ("not-charged",), None),
    ],
)
def test_a_step_takes_its_weight_with_its_word(
    step: str, typed: str, outcomes: tuple[str, ...], text: str | None, shipped: Knowledge
) -> None:
    done = told(shipped, step, typed)
    assert (done.outcomes, done.text) == (outcomes, text)


@pytest.mark.parametrize(
    ("step", "typed", "error"),
    [
        (RECOVER, "9.2 lb", NotAnAnswer),
        (RECOVER, "recovered 9.2 lb from R-3", NearlyAnAnswer),
        (RECOVER, "recovered 9.2 lb circuit 1", NearlyAnAnswer),
        (RECOVER, "recover 9.2 lb", NotAnAnswer),
        (RECHARGE, "almost charged 9.2 lb", NotAnAnswer),
        (RECOVER, "recovered, 9.2 lb into the cylinder that is hissing", NotAnAnswer),
        (RECOVER, "recovered 9.2 lb into R-3 it is on fire", NotAnAnswer),
        (RECOVER, "recovered, 9.2 lb into fire", NotAnAnswer),
        (RECHARGE, "charged 9.2 lb from C-7 and it leaks", NotAnAnswer),
    ],
)
def test_no_weight_confirms_a_step(
    step: str, typed: str, error: type[Exception], shipped: Knowledge
) -> None:
    with pytest.raises(error):
        told(shipped, step, typed)


def moved(knowledge: Knowledge, *events: Event) -> tuple[Weighing, ...]:
    return weighings_of(knowledge, replay(knowledge, [TWO, *events]))


def test_a_visit_tells_what_its_steps_moved(shipped: Knowledge) -> None:
    out = StepDone(RECOVER, ("recovered",), "circuit 2", text="9.2 lb into R-3")
    back = StepDone(RECHARGE, ("charged",), "circuit 2")
    by_scale = Answered("charge-by-weight", ("circuit 1",), text="8.8 lb")
    told_beside = Weighed(Weighing("added", "circuit 2", "10.1 lb", "C-7"))
    recovered = Weighing("recovered", "circuit 2", "9.2 lb", "R-3")
    assert moved(shipped, out, back) == (recovered, Weighing("added", "circuit 2"))
    assert moved(shipped, out, back, told_beside) == (recovered, told_beside.weighing)
    assert moved(shipped, by_scale) == (Weighing("recovered", "circuit 1", "8.8 lb"),)
    assert moved(shipped, StepDone(RECOVER, ("holds-pressure",), "circuit 2")) == ()
    assert moved(shipped, StepDone(RECOVER, ("recovered",), "circuit 2", nobody=True)) == ()
    assert moved(shipped, told_beside, Undone()) == ()


def test_it_changes_nothing_of_the_work(shipped: Knowledge) -> None:
    before = replay(shipped, [TWO])
    after = Weighed(Weighing("recovered", "circuit 2", "9.2 lb")).apply(shipped, before)
    assert after.work == before.work == VisitState().work


def test_the_report_tells_what_was_moved_and_what_was_not_told(shipped: Knowledge) -> None:
    out = StepDone(
        RECOVER, ("recovered",), "circuit 2", text="9.2 lb into R-3, before 20, after 24"
    )
    state = replay(shipped, [TWO, out, StepDone(RECHARGE, ("charged",), "circuit 2")])
    report = markdown_report(shipped, *kept_account(shipped, "x", state, Understanding()))
    assert "## Refrigerant added and recovered" in report
    assert "- Recovered 9.20 lb, circuit 2, into R-3" in report
    assert "- The cylinder's weights do not fit: 9.20 lb recovered" in report
    assert "- Added, weight not told, circuit 2, cylinder not told" in report


def test_the_circuits_of_the_register_are_known_before_they_are_told(shipped: Knowledge) -> None:
    """Regression: circuits are looked at afresh, and until then circuit 2 was "no such place"."""

    def said(book: VisitBook, words: str) -> str:
        voice = Voice()
        keep_weighing(book, voice, words)
        return " ".join(each.text for each in voice.heard() if isinstance(each, Sentence))

    record = FromRegister(afresh={"circuits": "two-or-more"})
    book = book_of(shipped, [record, Started(complaint="no-cooling", name="RTU-7")])
    assert said(book, "added 1 lb").startswith("Not kept: say which: circuit 1 or circuit 2")
    assert said(book, "added 1 lb c2").startswith("Kept: added 1.00 lb, circuit 2")
    assert book.undo().endswith("cylinder not told.")
    bare = book_of(shipped, [Started(complaint="no-cooling", name="RTU-7")])
    assert said(bare, "added 1 lb").startswith("Not kept: say which circuit")
