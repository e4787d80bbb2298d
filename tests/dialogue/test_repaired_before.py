"""A repair told as made before the visit: asked about once, kept, and no proof of anything."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path

import pytest

from tests.cli.lines import book_of
from tests.dialogue.test_repaired_at_a_shortlist import found
from tests.practice.playing import reasoner_of
from tests.visit.kept.samples import write_journal
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.dialogue import Dialogue
from troubleshoot.dialogue.intake import WHO_IS_ASKING, begin
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import AskFact, AskProof, AskTest, Choose, DoStep, Ended, Prompt
from troubleshoot.dialogue.said import Sentence, Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.report import markdown_report
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Event,
    Noted,
    RepairedBefore,
    Started,
    StepDone,
)
from troubleshoot.visit.events.codec import record_of
from troubleshoot.visit.kept.understanding import understood
from troubleshoot.visit.telling.kept_visit import kept_account

FAULT = "condenser-fan-capacitor-weak"
WORDS = "already changed the fan capacitor"
START = Started("RTU-7", "no-cooling")
TOLD = RepairedBefore(FAULT, WORDS)


def at_a_prompt(book: VisitBook) -> Dialogue:
    return Dialogue(lambda voice: turns(book, voice))


def said_to(dialogue: Dialogue, typed: str) -> str:
    return " ".join(s.text for s in dialogue.answer(typed) if isinstance(s, Sentence))


def beginning(book: VisitBook) -> Dialogue:
    def part(voice: Voice) -> Talk[Ended]:
        yield from begin(book, voice, "RTU-7", (), routine=False)
        return Ended("kept")

    return Dialogue(part)


def options(prompt: Prompt) -> list[str]:
    assert isinstance(prompt, Choose), prompt
    return list(prompt.options)


def chosen(shipped: Knowledge, dialogue: Dialogue) -> str:
    """The number of the weak capacitor among those that are asked about, or yes to it alone."""
    listed = options(dialogue.prompt)
    return str(listed.index(shipped.faults[FAULT].name) + 1) if listed else "y"


def test_at_a_question_it_is_asked_which_echoed_and_kept_and_taken_back(
    shipped: Knowledge,
) -> None:
    book = book_of(shipped, [START])
    dialogue = at_a_prompt(book)
    asked = dialogue.prompt
    assert isinstance(asked, AskTest)
    said_to(dialogue, "changed the condenser fan capacitor")
    said = said_to(dialogue, chosen(shipped, dialogue))
    assert "Kept: repaired before this visit" in said and shipped.faults[FAULT].name in said
    assert [said.fault for said in book.state.repairs_before] == [FAULT]
    assert not book.state.repairs and not book.state.repaired
    assert "Taken back: repaired before" in said_to(dialogue, "U")
    assert not book.state.repairs_before


def test_one_that_fits_alone_is_asked_yes_or_no(shipped: Knowledge) -> None:
    name = "the blower belt broken"
    for answer, kept in (("y", 1), ("n", 0)):
        book = book_of(shipped, [START])
        dialogue = at_a_prompt(book)
        assert "Put right before this visit, as told" in said_to(dialogue, f"replaced {name}")
        assert not options(dialogue.prompt)
        said_to(dialogue, answer)
        assert len(book.state.repairs_before) == kept


def test_a_part_that_no_cause_names_is_kept_as_a_note(shipped: Knowledge) -> None:
    book = book_of(shipped, [START])
    assert "Kept as a note" in said_to(at_a_prompt(book), "replaced the gizmo")
    assert any(isinstance(event, Noted) and "gizmo" in event.text for event in book.events)


def test_at_the_call_it_is_heard_alone_and_beside_the_complaint(shipped: Knowledge) -> None:
    """Regression: it sounded like nothing."""
    book = book_of(shipped, [])
    dialogue = beginning(book)
    said_to(dialogue, "I already replaced the fan capacitor")
    said = said_to(dialogue, chosen(shipped, dialogue))
    assert "What the caller says is still asked." in said
    assert book.state.repairs_before and not book.begun
    said_to(dialogue, "u")
    assert not book.state.repairs_before
    said_to(dialogue, "no-cooling")
    assert "Who is asking" in getattr(dialogue.prompt, "question", "")
    book = book_of(shipped, [])
    dialogue = beginning(book)
    said_to(dialogue, "it does not cool at all, already changed the fan capacitor")
    if "nearest" in getattr(dialogue.prompt, "question", ""):
        said_to(dialogue, str(options(dialogue.prompt).index("It does not cool at all") + 1))
    said_to(dialogue, chosen(shipped, dialogue))
    assert "Who is asking" in getattr(dialogue.prompt, "question", "")
    said_to(dialogue, "3")
    assert book.state.complaint == "no-cooling"
    assert [said.fault for said in book.state.repairs_before] == [FAULT]


def test_it_clears_no_cause_and_makes_what_lies_behind_likelier(shipped: Knowledge) -> None:
    def chances(*events: Event) -> dict[str, float]:
        causes = found(book_of(shipped, events)).causes
        return {cause.fault.id: cause.probability for cause in causes}

    without, told = chances(START), chances(START, TOLD)
    assert told[FAULT] > 0
    assert all(told[name] > without[name] for name in shipped.faults[FAULT].behind)


def test_it_lifts_no_stop(shipped: Knowledge) -> None:
    hazard = shipped.hazards["gas-odour"]
    stopped = (START, DangerReported.of(hazard, "gas"))
    dialogue = at_a_prompt(book_of(shipped, stopped))
    before = dialogue.prompt
    said_to(dialogue, "repaired gas leak")
    said_to(dialogue, "already replaced the gas valve")
    assert type(dialogue.prompt) is type(before)
    reasoner = reasoner_of(shipped)
    for events in (stopped, (*stopped, RepairedBefore("gas-leak-at-unit", "fixed the leak"))):
        stops = conclude_visit(reasoner, book_of(shipped, events).state).standing_stops
        assert [fired.hazard.id for fired in stops] == ["gas-odour"]


def led_out(book: VisitBook, reads: str) -> list[str]:
    """Say done, confirm each step, and type `reads` at each proof; the proofs that were asked."""
    dialogue, asked = at_a_prompt(book), []
    dialogue.answer("done")
    for _ in range(60):
        prompt = dialogue.prompt
        if isinstance(prompt, Ended):
            return asked
        if isinstance(prompt, AskProof):
            assert prompt.is_of_before
            asked.append(prompt.text)
            dialogue.answer(reads)
        elif isinstance(prompt, DoStep):
            step = prompt.decision.step
            assert step is not None
            dialogue.answer(StepDone.of(step, (CONFIRMED[step.id],)))
        else:
            dialogue.answer("" if not isinstance(prompt, Choose) else "n")
    raise AssertionError(dialogue.prompt)


@pytest.mark.parametrize("reads", ["", "3 starts, full speed"])
def test_its_proofs_are_asked_on_the_way_out_and_stand_in_the_report(
    reads: str, shipped: Knowledge, tmp_path: Path
) -> None:
    book = book_of(shipped, [START, TOLD])
    asked = led_out(book, reads)
    assert asked
    (said,) = book.state.repairs_before
    assert dict(said.proofs) == dict.fromkeys(asked, reads)
    write_journal(tmp_path, "visit", [*map(record_of, book.events)])
    kept = understood(shipped, [*map(record_of, book.events)])
    account, extras = kept_account(shipped, "visit", book.state, kept)
    (row,) = json.loads(json.dumps(account["repairs"]))
    assert (row["fault"], row["before_visit"], row["words"]) == (FAULT, True, WORDS)
    report = markdown_report(shipped, account, extras)
    assert "made before the visit" in report and WORDS in report
    assert "Repaired before this visit" in report.partition("## Open items")[2]
    assert "Ending: Repaired" not in report


def test_a_question_about_a_fact_hears_it_too(shipped: Knowledge) -> None:
    dialogue = beginning(book_of(shipped, []))
    for typed in ("no-air", "3"):
        said_to(dialogue, typed)
    asked = dialogue.prompt
    assert isinstance(asked, AskFact)
    said_to(dialogue, WORDS)
    said_to(dialogue, chosen(shipped, dialogue))
    assert dialogue.prompt == asked


def test_done_is_what_undo_takes_back_after_done(shipped: Knowledge) -> None:
    """Regression: the reading before it was taken back, and the way out went on."""
    read = Answered("condenser-fan-turning", outcomes=("stopped",))
    book = book_of(shipped, [START, read])
    dialogue = at_a_prompt(book)
    said_to(dialogue, "DONE")
    while not book.state.closing:
        said_to(dialogue, "done")
    assert "Taken back: done" in said_to(dialogue, "u")
    assert not book.state.closing and book.state.answers


def test_undo_reaches_the_call_once_nothing_else_is_left(shipped: Knowledge) -> None:
    """Regression: a wrong complaint could not be taken back once the first test was asked."""
    book = book_of(shipped, [START])
    dialogue = at_a_prompt(book)
    assert "asked again who is asking" in said_to(dialogue, "u")
    assert "the call is asked anew" in said_to(dialogue, "u")
    said_to(dialogue, "no-heat")
    said_to(dialogue, "1")
    assert book.state.complaint == "no-heat"


def test_undo_asks_first_who_is_asking(shipped: Knowledge) -> None:
    """Regression: Enter there made a technician without a license for the whole visit."""
    book = book_of(shipped, [replace(START, profiles=("technician",))])
    dialogue = at_a_prompt(book)
    said_to(dialogue, "u")
    assert dialogue.prompt == WHO_IS_ASKING
    said_to(dialogue, "1 3")
    assert len(book.state.profiles) == 2 and book.state.complaint == START.complaint
    assert isinstance(dialogue.prompt, AskTest | DoStep | AskFact)


def test_nobody_climbs_a_roof_to_close_a_visit_in_which_nothing_was_done(
    shipped: Knowledge,
) -> None:
    """Regression: done at the first question asked for the look at the roof."""
    book = book_of(shipped, [START])
    dialogue = at_a_prompt(book)
    dialogue.answer("done")
    assert isinstance(dialogue.prompt, Ended) and dialogue.prompt.how == "closed"


LOOKED_AT = Answered("air-filters", outcomes=("loaded",))


@pytest.mark.parametrize(
    ("read", "typed", "now"),
    [
        ((), "changed the filters", False),
        ((LOOKED_AT,), "changed the filters", True),
        ((LOOKED_AT,), "somebody changed the filters last week", False),
        ((), "changed the filters just now", True),
    ],
    ids=["unread", "looked at here", "told as of before", "told as of now"],
)
def test_a_part_that_was_looked_at_here_was_put_right_here(
    read: tuple[Event, ...], typed: str, now: bool, shipped: Knowledge
) -> None:
    """Regression: filters found loaded and changed stood as changed before the visit."""
    book = book_of(shipped, [START, *read])
    dialogue = at_a_prompt(book)
    said = said_to(dialogue, typed)
    assert ("in this visit" in said) is now and ("before this visit" in said) is not now
