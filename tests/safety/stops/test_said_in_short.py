"""What a hazard's own orders ask for may be said in one word: which word obeys which order."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.safety.stops.reopening import TooFewWords, in_words

NOTHING_ASKED = "Get everybody away from it."
OBEYED = (
    ("aired it", "Air the room."),
    ("aired it", "Ventilate the space."),
    ("bled it", "Bleed each capacitor."),
    ("bled it", "Discharge what is stored."),
    ("discharged it", "Discharge what is stored."),
    ("ventilated it", "Ventilate the space."),
    ("cleared it", "Clear the drain."),
    ("closed it", "Close the damper."),
    ("closed it", "Have the cock shut."),
    ("covered it", "Cover the hole."),
    ("dried it", "Dry the board."),
    ("gas off", "Turn the gas to nothing."),
    ("gas off", "Have the cock shut."),
    ("guarded it", "Guard the belt."),
    ("locked it", "Lock the handle."),
    ("locked off", "Lock the handle."),
    ("locked out", "Lock the handle."),
    ("power off", "Have the power cut."),
    ("power off", "Lock the handle."),
    ("shut it", "Have the cock shut."),
    ("shut it", "Close the damper."),
    ("shut off", "Have the cock shut."),
    ("switched off", "Open the switch."),
    ("switched off", "Lock the handle."),
    ("tied it", "Tie the ladder."),
    ("tied off", "Tie the ladder."),
)
"""What is said, and an order in which one word alone makes it a deed that was asked for."""


def ordering(what_to_do: str) -> Hazard:
    return Hazard("h", "DANGER", what_to_do)


@pytest.mark.parametrize(("typed", "order"), OBEYED)
def test_one_word_says_what_was_done_where_it_obeys_an_order(
    typed: str, order: str, shipped: Knowledge
) -> None:
    assert in_words(shipped, typed, ordering(order)) == typed
    assert in_words(shipped, f"yes, {typed}, done", ordering(order)) == f"yes, {typed}, done"


@pytest.mark.parametrize("typed", sorted({typed for typed, _ in OBEYED}))
def test_the_same_word_tells_nothing_where_no_order_asks_for_it(
    typed: str, shipped: Knowledge
) -> None:
    with pytest.raises(TooFewWords):
        in_words(shipped, typed, ordering(NOTHING_ASKED))


def test_a_word_obeys_its_own_order_and_no_other(shipped: Knowledge) -> None:
    obeyed = set()
    for typed in {typed for typed, _ in OBEYED}:
        for order in {order for _, order in OBEYED}:
            try:
                obeyed.add((in_words(shipped, typed, ordering(order)), order))
            except TooFewWords:
                continue
    assert obeyed == set(OBEYED)
