"""A lock, cock or proof that is told to be another unit's is none of this one.

29 CFR 1910.147(d)(3) and (5): the energy of this machine is isolated and locked; from memory.
"""

from __future__ import annotations

import pytest

from tests.dialogue.another_unit_sentences import OF_ANOTHER, OF_THIS_OR_NONE
from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.prompts import Choose
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.gone import told_gone
from troubleshoot.visit.events import StateGone


@pytest.mark.parametrize(
    ("place", "sentence"), [(place, each) for place in OF_ANOTHER for each in OF_ANOTHER[place]]
)
def test_it_is_heard_or_asked_about(place: str, sentence: str, shipped: Knowledge) -> None:
    """Regression: a lock on rtu 6 was no word that voids, and 6 was read as microfarads."""
    visit = AtWork(shipped, place)
    visit.types(sentence)
    is_asked = isinstance(visit.prompt, Choose) and "still stand" in visit.prompt.question
    assert is_asked or any(isinstance(event, StateGone) for event in visit.events)


@pytest.mark.parametrize("place", OF_THIS_OR_NONE)
def test_what_is_told_of_this_unit_or_others_hands_voids_nothing(
    place: str, shipped: Knowledge
) -> None:
    visit = AtWork(shipped, place)
    told = [each for each in OF_THIS_OR_NONE[place] if visit.dialogue.told_gone(each) is not None]
    assert not told


def test_this_unit_is_known_by_its_number(shipped: Knowledge) -> None:
    """Regression: power told to be back at this very unit was taken for another's."""
    said = "power is back on at rtu 7"
    assert told_gone(shipped, said, "School, RTU-7") == ("lockout",)
    assert told_gone(shipped, said, "School, RTU-6") == ()
