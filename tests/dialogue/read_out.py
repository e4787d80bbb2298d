"""A visit at one test, at which lines are typed one after the other."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from tests.cli.player import Player, play
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.knowledge.model import Knowledge

UNIT = {
    "heat": "gas", "circuits": 1, "line-volts-class": "208-to-240-volt", "supply-phase": "three",
    "compressor-phase": "three", "refrigerant": "R-410A", "metering": "txv", "condenser-fans": 1,
}  # fmt: skip


def typed_at(
    shipped: Knowledge,
    folder: Path,
    test: str,
    *lines: str,
    unit: dict[str, Any] | None = None,
    conditions: dict[str, str] | None = None,
) -> tuple[str, VisitBook]:
    """What is said from the first of these lines on, and the book of the visit.

    The first is typed at the test, which may have its place with it; the rest whatever is asked.
    """
    name = test.partition(" at ")[0]
    rest = {name: ["; ".join((*lines[1:], "q"))]}
    player = Player(shipped, {name: [lines[0]]}, [f"do {test}"], ["q"], rest, width=200)
    start = {
        "complaint": "weak-cooling",
        "unit": {**UNIT, **(unit or {})},
        "conditions": conditions or {},
    }
    _, book = play(shipped, folder, player, start)
    return player.text.partition(f"> {lines[0]}")[2], book


def kept(book: VisitBook) -> list[tuple[str, str | None, str | None]]:
    """The readings that were kept and count: test, place, text."""
    return [
        (answer.test, None if answer.places[0] is None else str(answer.places[0]), answer.text)
        for answer in book.state.answers
        if answer.text
        and answer.valid is not False
        and book.knowledge.tests[answer.test].kind != "step"
    ]
