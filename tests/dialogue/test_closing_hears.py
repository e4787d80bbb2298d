"""At the proofs of a repair and the question after them a danger is heard, and a reading is one."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from tests.dialogue.mended import at_the_open_unit, mended
from troubleshoot.dialogue.asides import keep_note
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import FactTold, Started

START = Started(complaint="no-heat", profiles=("technician",))


@pytest.mark.parametrize(
    "typed",
    [
        ("i smell gas",),
        ("72 F",) * 3 + ("mate collapsed",),
        ("lit, then wires caught fire",),
        ("72 F box is on fire",),
    ],
)
def test_a_danger_is_heard(typed: tuple[str, ...], shipped: Knowledge) -> None:
    book = at_the_open_unit(shipped, START, test="hot-surface-igniter-glow")
    fault = shipped.faults["hot-surface-igniter-cracked"]
    with pytest.raises(DangerCalled):
        held(shipped, Lines(*typed), lambda voice: mended(book, voice, fault))
    assert not any(said.still for said in book.state.repairs)


def test_a_proof_that_denies_a_danger_is_written_down(shipped: Knowledge) -> None:
    igniter = FactTold("igniter", "silicon-nitride")
    book = at_the_open_unit(shipped, START, igniter, test="hot-surface-igniter-glow")
    fault = shipped.faults["hot-surface-igniter-cracked"]
    proof = "burner lights smoothly, no gas smell"
    terminal = Lines(*[proof] * 2 * len(fault.proof), "n")
    held(shipped, terminal, lambda voice: mended(book, voice, fault))
    assert proof in str(book.events) and book.state.closing


@pytest.mark.parametrize("typed", ["swapped a fuse, box is on fire", "26 V but the box is on fire"])
def test_a_note_that_tells_a_danger_stops(typed: str, shipped: Knowledge) -> None:
    book = book_of(shipped, [START])
    with pytest.raises(DangerCalled):
        keep_note(book, Voice(), typed)
    assert book.state.notes == (typed,)


def test_a_note_of_what_was_mended_is_a_note(shipped: Knowledge) -> None:
    book = book_of(shipped, [START])
    keep_note(book, Voice(), "found the gas leak at the union and mended it")
    assert book.state.notes
