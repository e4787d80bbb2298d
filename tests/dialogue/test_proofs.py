"""At the proofs of a repair commands are served, and what was not read is said not to be proved."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.dialogue.asides import takes_notes
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.closing import (
    A_READING_FIRST,
    AS_IT_WAS,
    NOT_REPAIRED,
    close,
    prove_at_last,
    repaired,
    still_to_prove,
)
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Started

START = Started(complaint="no-cooling", profiles=("technician",))
FAULT = "condenser-fan-capacitor-weak"


def say_repaired(shipped: Knowledge, *typed: str) -> tuple[VisitBook, str]:
    book, terminal = book_of(shipped, [START]), Lines(*typed)

    def part(voice: Voice) -> Talk[None]:
        takes_notes(book, voice)
        return (yield from repaired(book, voice, shipped.faults[FAULT]))

    held(shipped, terminal, part)
    return book, terminal.text


@pytest.fixture
def reads(shipped: Knowledge) -> list[str]:
    """A sound reading for each proof."""
    read = ["5.1 uF", "starts three times, full speed", "1.8 A"]
    assert len(read) == len(shipped.faults[FAULT].proof)
    return read


@pytest.mark.parametrize(
    "typed",
    ["?", "w", "how", "help", "s", "note capacitor was hot", "because", "because 2", "tests",
     "done", "again", "unit", "invalid wrong jack", "what if low", "causes", "repaired"],
)  # fmt: skip
def test_no_command_is_kept_as_a_reading(typed: str, reads: list[str], shipped: Knowledge) -> None:
    book, said = say_repaired(shipped, typed, *reads, "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == reads
    assert "Enter where it was not" in said or book.state.notes == ("capacitor was hot",)


def test_a_danger_and_q_are_heard_there(reads: list[str], shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        say_repaired(shipped, reads[0], "danger fire")
    with pytest.raises(Leave):
        say_repaired(shipped, reads[0], "q")


def test_u_takes_the_reading_before_back(reads: list[str], shipped: Knowledge) -> None:
    book, _ = say_repaired(shipped, "9 uF", "u", *reads, "n")
    assert [text for _, text in book.state.repairs[-1].proofs] == reads


def test_u_at_the_first_proof_takes_the_repair_back(shipped: Knowledge) -> None:
    book, said = say_repaired(shipped, "u")
    assert book.state.repairs == () and not book.state.closing
    assert NOT_REPAIRED in said


def test_a_sentence_that_begins_like_a_command_is_a_reading(
    reads: list[str], shipped: Knowledge
) -> None:
    book, said = say_repaired(shipped, "unit runs, 5.2 uF", *reads[1:], "n")
    assert book.state.repairs[-1].proofs[0][1] == "unit runs, 5.2 uF"
    assert A_READING_FIRST not in said


def test_what_was_not_read_is_said_not_to_be_proved(reads: list[str], shipped: Knowledge) -> None:
    first, *more = shipped.faults[FAULT].proof
    _, said = say_repaired(shipped, "", *reads[1:], "n")
    assert f"Not proved, for want of a sound reading: {first.text}." in said
    assert "Not proved" not in say_repaired(shipped, *reads, "n")[1]
    _, said = say_repaired(shipped, *[""] * len(reads), "n")
    assert "; ".join(proof.text for proof in (first, *more)) in said


@pytest.mark.parametrize(
    "typed", ["cant yet its locked out", "n", "dunno", "tomorrow", "locked out", "28 ppm", "yes"]
)
@pytest.mark.parametrize("number", [0, 1, 2])
def test_what_says_nothing_of_it_proves_nothing(
    typed: str, number: int, reads: list[str], shipped: Knowledge
) -> None:
    """Regression: whatever had a number or two words in it counted as proved."""
    given = [*reads[:number], typed, *reads[number + 1 :]]
    book, said = say_repaired(shipped, *given, "n")
    asked = shipped.faults[FAULT].proof[number].text
    assert "Not proved: that " in said
    assert f"Not proved, for want of a sound reading: {asked}." in said
    assert book.state.repairs[-1].proofs[number][1] == typed


def locked_out(book: VisitBook) -> VisitBook:
    book.state = replace(book.state, work=replace(book.state.work, power="locked-out"))
    return book


def test_what_needs_the_unit_running_waits_for_the_way_back(
    reads: list[str], shipped: Knowledge
) -> None:
    """Regression: proofs under load were asked for while the record said locked out."""
    book, terminal = locked_out(book_of(shipped, [START])), Lines(reads[0])
    held(shipped, terminal, lambda voice: repaired(book, voice, shipped.faults[FAULT]))
    assert len(book.state.repairs[-1].proofs) == 1 and book.state.closing
    assert "Still to come" in terminal.text
    assert still_to_prove(book) is shipped.faults[FAULT]
    last = Lines(*reads[1:], "n")
    held(shipped, last, lambda voice: prove_at_last(book, voice, shipped.faults[FAULT]))
    (said,) = book.state.repairs
    assert [text for _, text in said.proofs] == reads and said.still == "n"
    assert book.state.cured and still_to_prove(book) is None
    assert "Not proved" not in last.text


def test_a_visit_is_not_closed_over_a_repair_that_is_not_proved(
    reads: list[str], shipped: Knowledge
) -> None:
    for given, is_proved in ((reads, True), ([*reads[:2], "dunno"], False)):
        book, _ = say_repaired(shipped, *given, "n")
        decider = Decider(shipped)
        voice, found = Voice(), conclude_visit(decider.reasoner, book.state)
        close(book, voice, decider.decide(book.state, found), found)
        said = str(voice.heard())
        assert (AS_IT_WAS in said) == is_proved
        assert ("The repair is not proved: Fan amps" in said) != is_proved
