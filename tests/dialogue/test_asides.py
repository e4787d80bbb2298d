"""At any prompt: q leaves with everything kept, ? helps, a note is kept, and nothing is skipped."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.mended import mended
from troubleshoot.dialogue.asides import NOT_SKIPPED, holds_notes, keep_note, takes_notes
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hand_over_result import ask_result
from troubleshoot.dialogue.hearing import Listener, hear
from troubleshoot.dialogue.intake import ask_profiles
from troubleshoot.dialogue.naming import ask_name
from troubleshoot.dialogue.picking import pick
from troubleshoot.dialogue.reporting_danger import report_danger
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.dialogue.unit_facts import ask_fact
from troubleshoot.dialogue.which_visit import WHICH_UNIT
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.visit.events import Started

Part = Callable[[VisitBook, Voice], Talk[Any]]
START = Started(complaint="no-heat", name="RTU-7", profiles=("technician",))
GAS = StopMet("gas-odour", 0)


def proof(book: VisitBook, voice: Voice) -> Talk[None]:
    return mended(book, voice, book.knowledge.faults["vent-blocked"])


def which_place(book: VisitBook, voice: Voice) -> Talk[Any]:
    test = book.knowledge.tests["suction-pressure"]
    return pick(book, voice, "Where?", [test.name, f"{test.name}, circuit 2"])


def held_in(book: VisitBook, terminal: Lines, part: Part) -> None:
    """Hold a part of a visit that takes notes."""

    def with_notes(voice: Voice) -> Talk[Any]:
        takes_notes(book, voice)
        return part(book, voice)

    held(book.knowledge, terminal, with_notes)


WITH_A_VISIT: dict[str, Part] = {
    "what is wrong": lambda book, voice: report_danger(book, voice, "", ""),
    "a proof": proof,
    "which place": which_place,
    "who made it safe": lambda book, voice: ask_result(book, voice, GAS),
}
BEFORE_ONE: dict[str, Part] = {
    "who is asking": lambda book, voice: ask_profiles(book.knowledge, voice),
    "which unit": lambda book, voice: ask_name(Listener(book.knowledge, voice), WHICH_UNIT),
}


@pytest.mark.parametrize("part", WITH_A_VISIT | BEFORE_ONE)
def test_no_prompt_traps_anybody_or_takes_a_command_for_an_answer(
    part: str, shipped: Knowledge
) -> None:
    """Regression: q was taken for the reading that proves a repair, or refused."""
    book = book_of(shipped, [START])
    terminal = Lines("?", "W", "skip", "note the hatch sticks", "Q")
    notes: list[str] = []

    def before(voice: Voice) -> Talk[Any]:
        nonlocal notes
        notes = holds_notes(shipped, voice)
        return BEFORE_ONE[part](book, voice)

    with pytest.raises(Leave):
        if part in WITH_A_VISIT:
            held_in(book, terminal, WITH_A_VISIT[part])
        held(shipped, terminal, before)
    assert len(terminal.asked) == 5
    assert terminal.text.count("q leaves with everything kept") == 1
    assert NOT_SKIPPED in terminal.text and "Noted." in terminal.said
    assert [*book.state.notes, *notes] == ["the hatch sticks"]
    assert not any(said.proofs for said in book.state.repairs)


def test_a_note_that_cries_danger_stops_at_any_prompt(shipped: Knowledge) -> None:
    book = book_of(shipped, [START])
    with pytest.raises(DangerCalled):
        held_in(book, Lines("note mate collapsed"), proof)
    assert book.state.notes == ("mate collapsed",)


@pytest.mark.parametrize(
    "typed",
    ["the CO alarm in the shop went off twice this morning", "tube 3 split, soot round it",
     "got a tingle off the panel just now"],
)  # fmt: skip
def test_a_danger_of_the_whole_job_is_heard_in_a_note_as_anywhere(
    typed: str, shipped: Knowledge
) -> None:
    """Regression: an alarm that went off was taken for one that is switched off."""
    with pytest.raises(DangerCalled):
        held_in(book_of(shipped, [START]), Lines(f"note {typed}"), proof)


@pytest.mark.parametrize(
    "typed",
    [
        "my lock is gone", "the roof is soft and sagging", "somebody pulled my lock",
        "someone just flipped the breaker back on while im in here", "my lock got cut off",
        "crane strap is slipping with the unit over us", "nitrogen regulator failed",
        "the roof deck is soft",
        "skylight is not guarded", "the capacitor is swollen", "panel is missing",
    ],
)  # fmt: skip
def test_any_danger_that_stops_at_a_prompt_stops_in_a_note(typed: str, shipped: Knowledge) -> None:
    """Regression: what stopped when it was typed plainly was only asked about in a note."""
    with pytest.raises(DangerCalled):
        hear(shipped, typed)
    with pytest.raises(DangerCalled):
        keep_note(book_of(shipped, [START]), Voice(), typed)


@pytest.mark.parametrize(
    "typed",
    [
        "the roof deck was soft here last fall", "my lock was gone yesterday",
        "the capacitor was swollen last visit", "the panel was missing last month",
        "when we came the skylight was not guarded", "two years ago the roof was sagging",
    ],
)  # fmt: skip
def test_a_danger_of_the_past_in_a_note_is_asked_about(typed: str, shipped: Knowledge) -> None:
    """Regression: a note of a standing danger was only noted."""
    voice = Voice()
    keep_note(book_of(shipped, [START]), voice, typed)
    assert voice.hinted is not None and voice.hinted.said == typed
    voice.hinted = None
    voice.take_as_safe(typed)
    keep_note(book_of(shipped, [START]), voice, typed)
    assert voice.hinted is None


def test_what_a_plate_says_may_be_left_open_and_a_note_kept_beside_it(shipped: Knowledge) -> None:
    book = book_of(shipped, [START])
    terminal = Lines("?", "note the plate is painted over", "s")
    held_in(book, terminal, lambda book, voice: ask_fact(book, voice, shipped.facts["heat"]))
    assert book.state.notes == ("the plate is painted over",)
    assert "heat" in book.state.not_known
