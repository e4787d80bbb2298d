"""What sounds like a danger and is none: surprise, prices, praise, a nest that is empty."""

from __future__ import annotations

import pytest

from tests.safety.hearing.test_spoken_dangers import KNOWLEDGE, heard, lines, meant
from troubleshoot.safety.hearing.among_words import told_among


@pytest.mark.parametrize("typed", lines("near_own_words.txt"))
def test_what_only_sounds_like_one_stops_nothing(typed: str) -> None:
    assert heard(typed) == []
    assert told_among(KNOWLEDGE, typed) == ()


@pytest.mark.parametrize(
    ("typed", "hazard"),
    [
        ("got shocked at the panel, the price is no matter", "somebody-hurt"),
        ("he was talking price and fell through the roof", "somebody-fell"),
        ("the wasp nest is not empty", "wildlife-and-droppings"),
        ("the old motor smokes", "smoke-or-heat-now"),
        ("everybody is sick and tired", "carbon-monoxide-evacuate"),
        ("the rollout tripped and somebody jumpered it", "rollout-tripped"),
    ],
)
def test_what_is_no_manner_of_speaking_is_heard_as_what_it_is(typed: str, hazard: str) -> None:
    assert meant(typed)[0] == hazard
