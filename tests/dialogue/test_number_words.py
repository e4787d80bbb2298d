"""A number word in a sentence is no reading: what the sentence tells is asked about first.

Common practice, no source: how English is spoken.
"""

from __future__ import annotations

import pytest

from tests.dialogue.at_work import AtWork
from tests.dialogue.test_told_at_side_questions import asks_if_it_stands, is_void
from troubleshoot.knowledge.model import Knowledge


@pytest.mark.parametrize(
    ("place", "said"),
    [
        ("in", "didnt bleed the cap on the second one"),
        ("live", "one test lead is broken inside"),
        ("in", "two of the wires came off"),
    ],
)
def test_a_number_word_in_a_sentence_is_no_reading(
    place: str, said: str, shipped: Knowledge
) -> None:
    """Regression: "Understood: 1. Take what was understood?", and the state was never asked of."""
    visit = AtWork(shipped, place)
    visit.types(said)
    assert is_void(visit) or asks_if_it_stands(visit), visit.prompt
