"""At the proofs of a repair commands are served, and what was not read is said not to be proved."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, book_of, held
from troubleshoot.dialogue.asides import takes_notes
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.closing import A_READING_FIRST, NOT_REPAIRED, repaired
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.knowledge.model import Knowledge
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
    """A reading for each proof."""
    return [f"{number}.5 uF" for number, _ in enumerate(shipped.faults[FAULT].proof, start=1)]


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
    book, said = say_repaired(shipped, "unit runs, 1.5 uF", *reads[1:], "n")
    assert book.state.repairs[-1].proofs[0][1] == "unit runs, 1.5 uF"
    assert A_READING_FIRST not in said


def test_what_was_not_read_is_said_not_to_be_proved(reads: list[str], shipped: Knowledge) -> None:
    first, *more = shipped.faults[FAULT].proof
    _, said = say_repaired(shipped, "", *reads[1:], "n")
    assert f"Not proved, for want of a reading: {first.text}." in said
    assert "Not proved" not in say_repaired(shipped, *reads, "n")[1]
    _, said = say_repaired(shipped, *[""] * len(reads), "n")
    assert "; ".join(proof.text for proof in (first, *more)) in said
