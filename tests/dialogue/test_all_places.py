"""Both turning fine holds for each of two fans; what is wrong only for the one that was asked."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.lines import book_of
from tests.dialogue.read_out import typed_at
from tests.dialogue.test_repaired_at_a_shortlist import found
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Started

TEST = "condenser-fan-turning"
LOOK = f"{TEST} at condenser fan 1"


def places(shipped: Knowledge, folder: Path, typed: str, fans: int) -> list[str]:
    _, book = typed_at(shipped, folder, LOOK, typed, unit={"condenser-fans": fans})
    return [
        str(place)
        for answer in book.state.answers
        if answer.test == TEST
        for place in answer.places
    ]


@pytest.mark.parametrize("typed", ["both turning fine", "all fans turnin good"])
def test_what_is_sound_is_taken_for_each(shipped: Knowledge, tmp_path: Path, typed: str) -> None:
    """Regression: it was taken for the first, and asked again of the second."""
    assert places(shipped, tmp_path, typed, 2) == ["condenser fan 1", "condenser fan 2"]


@pytest.mark.parametrize(
    ("typed", "fans"),
    [("turning fine", 2), ("both turning fine", 3), ("stopped", 2), ("both not turning", 2)],
)
def test_else_it_is_of_the_one_that_was_asked(
    shipped: Knowledge, tmp_path: Path, typed: str, fans: int
) -> None:
    assert places(shipped, tmp_path, typed, fans) == ["condenser fan 1"]


def test_who_has_seen_all_is_not_asked_of_the_next(shipped: Knowledge) -> None:
    two = {"heat": "gas", "circuits": 1, "condenser-fans": 2}
    started = Started(complaint="weak-cooling", unit=two)
    fans = ("condenser fan 1", "condenser fan 2")
    for at, still in ((fans[:1], [fans[1]]), (fans, [])):
        book = book_of(shipped, [started, Answered(TEST, at, ("normal",))])
        offered = Decider(shipped).candidates(book.state, found(book))
        assert [str(each.at) for each in offered if each.test.id == TEST] == still
