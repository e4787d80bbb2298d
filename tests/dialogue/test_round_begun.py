"""How a routine round begins, what may be typed on it, and what its report holds."""

from __future__ import annotations

import json
from datetime import UTC, datetime

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.intake import begin
from troubleshoot.dialogue.opening import Visitor, turns, visit
from troubleshoot.dialogue.prompts import AskFact, AskTest, Choose, DoStep, Ended, Settled
from troubleshoot.dialogue.said import Sentence, Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.report import markdown_report
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import RoundBegun, Started, StepDone
from troubleshoot.visit.events.codec import record_of
from troubleshoot.visit.kept.on_record import Recorded
from troubleshoot.visit.kept.understanding import understood
from troubleshoot.visit.telling.kept_visit import kept_account

UNIT = {
    "heat": "electric",
    "circuits": 1,
    "condenser-fans": 1,
    "supply-phase": "single",
    "line-volts-class": "208-to-240-volt",
    "refrigerant": "R-410A",
    "blower-drive": "direct",
    "blower-motor": "single-phase-capacitor",
    "variable-speed-drive": "not-fitted",
    "economizer": "not-fitted",
    "duct-smoke-detector": "not-fitted",
    "building-control": "not-fitted",
    "heat-pump": "not-fitted",
    "hot-gas-reheat": "not-fitted",
}


def book_in(knowledge: Knowledge, month: int, events: tuple[object, ...] = ()) -> VisitBook:
    now = datetime(2026, month, 12, 9, 0, tzinfo=UTC)
    records = [record_of(event) for event in events]  # type: ignore[arg-type]
    return VisitBook(knowledge, "2026-1", Forgotten(), lambda: now, records)


def beginning(book: VisitBook) -> Dialogue:
    def part(voice: Voice) -> Talk[Ended]:
        yield from begin(book, voice, "RTU-7", (), routine=False)
        return Ended("kept")

    return Dialogue(part)


def on_round(knowledge: Knowledge, *profiles: str) -> tuple[VisitBook, Dialogue]:
    start = Started(
        "RTU-7", "routine-inspection", routine=True, unit=UNIT, profiles=profiles or ("technician",)
    )
    book = book_in(knowledge, 10, (start, RoundBegun("fall")))
    decider = Decider(knowledge, reasoner_of(knowledge))
    return book, Dialogue(lambda voice: turns(book, voice, decider=decider))


def says(dialogue: Dialogue, typed: str) -> str:
    return " ".join(s.text for s in dialogue.answer(typed) if isinstance(s, Sentence))


@pytest.mark.parametrize(("month", "due"), [(3, "spring"), (10, "fall")])
def test_enter_takes_the_season_from_the_date(month: int, due: str, shipped: Knowledge) -> None:
    book = book_in(shipped, month)
    dialogue = beginning(book)
    dialogue.answer("")
    dialogue.answer("")
    assert isinstance(dialogue.prompt, Choose) and due in dialogue.prompt.question
    dialogue.answer("")
    assert book.state.round is not None and book.state.round.season == due
    assert isinstance(dialogue.prompt, AskFact)


@pytest.mark.parametrize(
    ("words", "season"), [("spring check", "spring"), ("fall pm", "fall"), ("PM", None)]
)
def test_the_season_is_asked_only_where_the_words_name_none(
    words: str, season: str | None, shipped: Knowledge
) -> None:
    book = book_in(shipped, 10)
    dialogue = beginning(book)
    dialogue.answer(words)
    dialogue.answer("")
    if season is None:
        assert isinstance(dialogue.prompt, Choose)
        dialogue.answer("1")
    assert book.state.round is not None and book.state.round.season == (season or "spring")


def test_the_season_and_a_fact_are_taken_back(shipped: Knowledge) -> None:
    book = book_in(shipped, 10)
    dialogue = beginning(book)
    dialogue.answer("routine round")
    dialogue.answer("")
    dialogue.answer("1")
    assert isinstance(dialogue.prompt, AskFact)
    dialogue.answer("u")
    assert isinstance(dialogue.prompt, Choose) and "season" in dialogue.prompt.question
    dialogue.answer("2")
    assert book.state.round is not None and book.state.round.season == "fall"


def test_who_breaks_off_at_the_season_is_asked_it_again(shipped: Knowledge) -> None:
    """What is still open of a round's beginning is asked, also in a journal of before."""
    start = Started("RTU-7", "routine-inspection", routine=True, unit=UNIT)

    class Shelf:
        knowledge = shipped

        def standing(self, but: str = "") -> tuple[object, ...]:
            return ()

        def elsewhere(self, unit: str, but: str = "") -> tuple[str, ...]:
            return ()

        def met_meanwhile(self, unit: str, but: str) -> tuple[object, ...]:
            return ()

        def left_before(self, unit: str, but: str = "") -> tuple[object, ...]:
            return ()

        def on_record(self, unit: str) -> Recorded:
            return Recorded()

        def read_before(self, unit: str, test: str, at: str | None, but: str) -> str:
            return ""

        def waiting(self) -> tuple[object, ...]:
            return ()

        def not_read(self) -> tuple[str, ...]:
            return ()

        def new(self) -> VisitBook:
            return book_in(shipped, 10, (start,))

    dialogue = Dialogue(
        lambda voice: visit(Shelf(), voice, Visitor("RTU-7", ("technician",)))  # type: ignore[arg-type]
    )
    assert isinstance(dialogue.prompt, Choose) and "season" in dialogue.prompt.question
    dialogue.answer("spring")
    assert isinstance(dialogue.prompt, AskFact | AskTest)


def test_a_test_shows_its_point_and_how_far_the_round_has_come(shipped: Knowledge) -> None:
    _, dialogue = on_round(shipped)
    first = dialogue.prompt
    assert isinstance(first, AskTest) and first.progress is not None
    assert (first.progress.number, first.progress.done) == (1, 0)
    assert first.progress.point and first.progress.limit
    assert "round" in says(dialogue, "w")
    dialogue.answer("steady")
    second = dialogue.prompt
    assert isinstance(second, AskTest) and second.progress is not None
    assert second.progress.number == 1
    assert not second.progress.point and not second.progress.limit, "told just before"


def test_what_is_not_sound_is_offered_and_undo_takes_it_back(shipped: Knowledge) -> None:
    book, dialogue = on_round(shipped)
    dialogue.answer("s")
    dialogue.answer("proved")
    asked = dialogue.prompt
    assert isinstance(asked, AskTest) and asked.decision.test is not None
    bad = next(o for o in asked.outcomes if o not in asked.decision.test.healthy)
    dialogue.answer(asked.decision.test.spoken(bad))
    assert isinstance(dialogue.prompt, Choose) and "Not sound" in dialogue.prompt.question
    dialogue.answer("keep")
    assert isinstance(dialogue.prompt, AskTest)
    assert "for the end" in says(dialogue, "u")
    assert isinstance(dialogue.prompt, Choose) and "Not sound" in dialogue.prompt.question
    dialogue.answer("u")
    assert isinstance(dialogue.prompt, AskTest)
    assert dialogue.prompt.decision.test == asked.decision.test
    dialogue.answer(asked.decision.test.spoken(bad))
    dialogue.answer("2")
    on = book.state.round
    assert on is not None and [test for test, _ in on.search] == [asked.decision.test.id]
    assert isinstance(dialogue.prompt, AskTest) and dialogue.prompt.progress is None
    dialogue.answer("round")
    assert isinstance(dialogue.prompt, AskTest) and dialogue.prompt.progress is not None


def test_what_was_not_taken_is_told_with_its_reason_in_the_report(shipped: Knowledge) -> None:
    """A technician without licence is handed nothing live, and skips the rest."""
    book, dialogue = on_round(shipped)
    for _ in range(200):
        prompt = dialogue.prompt
        if isinstance(prompt, Settled | Ended):
            break
        step = prompt.decision.step if isinstance(prompt, DoStep) else None
        dialogue.answer("s" if step is None else StepDone.of(step, (CONFIRMED[step.id],)))
    assert isinstance(dialogue.prompt, Settled) and dialogue.prompt.points
    understanding = understood(shipped, [*map(record_of, book.events)])
    plain, extras = kept_account(shipped, "2026-1", book.state, understanding)
    points = json.loads(json.dumps(plain))["round"]["points"]
    whys = {each["why"] for point in points for each in point["not_taken"]}
    assert "skipped" in whys and "" not in whys and len(whys) > 1
    assert not any(point["result"] == "sound" and point["not_taken"] for point in points)
    report = markdown_report(shipped, plain, extras)
    assert "## Round, fall" in report and "Nothing wrong" not in report.partition("##")[0]
    for point in points:
        assert point["point"].partition(":")[0].replace("'", "") in report.replace("'", "")


def test_once_a_year_stands_in_one_season_and_twice_in_both(shipped: Knowledge) -> None:
    for point in shipped.round_points.values():
        if point.how_often.startswith("twice a year"):
            assert len(point.season) == 2, point.id
        elif "once a year" in point.how_often:
            assert len(point.season) == 1, point.id
        assert point.source and point.tests, point.id
