"""A data plate's two voltages are taken where they are asked for, and said back as the range."""

from __future__ import annotations

import pytest

from tests.cli.lines import book_of
from troubleshoot.dialogue.said import Sentence, Voice
from troubleshoot.dialogue.unit_facts import ask_plate
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Started

RANGE = "Taken as the range 208 to 230 V."


@pytest.mark.parametrize(
    ("typed", "told"), [("208/230", [RANGE]), ("208-230/3/60", [RANGE]), ("460", []), ("230 V", [])]
)
def test_two_volts_of_a_plate_are_said_back(
    typed: str, told: list[str], shipped: Knowledge
) -> None:
    """Regression: both were refused, where they were asked for."""
    book = book_of(shipped, [Started(complaint="no-cooling", unit={"circuits": "1"})])
    voice = Voice()
    asking = ask_plate(book, voice, shipped.plate_values["nameplate-volts"], None)
    next(asking)
    with pytest.raises(StopIteration) as answered:
        asking.send(typed)
    assert answered.value.value is True
    assert [said.text for said in voice.heard() if isinstance(said, Sentence)] == told
    assert book.state.unit.plate_value("nameplate-volts", None) is not None
