"""After a question in between, the prompt that stands is said again, and no bare sign is left."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines
from tests.dialogue.at_work import AtWork
from troubleshoot.cli.visiting import hold
from troubleshoot.dialogue.asides import takes_notes
from troubleshoot.dialogue.opening import turns
from troubleshoot.dialogue.prompts import Ended
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge


@pytest.mark.parametrize(
    ("place", "said", "again"),
    [
        ("manometer", "the fitter waves at us", "Type what came of it: on, cannot"),
        ("live", "another crew works on the burner side", "Test: Coil volts while called"),
    ],
)
def test_after_a_no_it_is_said_what_is_asked(
    place: str, said: str, again: str, shipped: Knowledge
) -> None:
    """Regression: behind n stood the sign alone."""
    visit = AtWork(shipped, place)

    def talk(voice: Voice) -> Talk[Ended]:
        takes_notes(visit.book, voice)
        return (yield from turns(visit.book, voice))

    terminal = Lines(said, "n")
    hold(shipped, terminal, talk)
    assert any("in danger now?" in each for each in terminal.asked)
    assert terminal.text.count(again) == 2
