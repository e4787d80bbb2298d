"""What sounds like a danger and is none: surprise, prices, praise, a nest that is empty."""

from __future__ import annotations

import pytest

from tests.safety.hearing.test_spoken_dangers import KNOWLEDGE, heard, lines, meant
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.manner_of_speaking import is_manner_of_speaking
from troubleshoot.safety.hearing.vocabulary import stem
from troubleshoot.safety.hearing.words import raw_words


@pytest.mark.parametrize("typed", lines("near_own_words.txt"))
def test_what_only_sounds_like_one_stops_nothing(typed: str) -> None:
    assert heard(typed) == []
    assert told_among(KNOWLEDGE, typed) == ()


@pytest.mark.parametrize(
    ("typed", "hazard"),
    [
        ("got shocked at the panel, the price is no matter", "somebody-hurt"),
        ("he was talking price and fell through the roof", "somebody-fell"),
        ("while talking price he fell", "somebody-fell"),
        ("the load shifted and the nitrogen bottle fell", "cylinder-escaping"),
        ("under load the ladder fell", "ladder-and-hatch"),
        ("reading the amps i nearly fell", "wind-or-slick-roof"),
        ("lifting the load the foot went through", "deck-gives-way"),
        ("the wasp nest is not empty", "wildlife-and-droppings"),
        ("the old motor smokes", "smoke-or-heat-now"),
        ("everybody is sick and tired", "carbon-monoxide-evacuate"),
        ("the rollout tripped and somebody jumpered it", "rollout-tripped"),
    ],
)
def test_what_is_no_manner_of_speaking_is_heard_as_what_it_is(typed: str, hazard: str) -> None:
    assert meant(typed)[0] == hazard


@pytest.mark.parametrize(
    ("typed", "phrase", "is_so"),
    [
        ("shocked to see it", "shocked", True), ("shocked to fall", "shocked", False),
        ("shocked to go see a doctor", "shocked", False), ("shocked", "shocked", False),
        ("shocked how dirty", "shocked", True), ("shocked by how dirty", "shocked", True),
        ("shocked at price", "shocked", True), ("shocked at the panel", "shocked", False),
        ("shocked then at the price", "shocked", False), ("shocked price", "shocked", False),
        ("shocked while how", "shocked", False), ("shocked and how dirty", "shocked", False),
        ("sick and tired of it", "sick", True), ("sick and tired", "sick", False),
        ("smokes the old one", "smokes", True), ("smokes old", "smokes", False),
        ("got shocked to see it", "got shocked", True), ("smokes in old wiring", "smokes", False),
        ("smokes the new one", "smokes", False), ("smokes the wire last", "smokes", False),
        ("price fell through roof", "fell through roof", True),
        ("amps went through roof", "went through roof", True),
        ("price and i fell through roof", "fell through roof", False),
        ("it fell through roof", "fell through roof", False),
        ("pressure in the nitrogen cylinder fell", "cylinder fell", True),
        ("price of bottle fell", "bottle fell", True),
        ("pressure of the old oxygen tank fell", "tank fell", False),
        ("load and the oxygen tank fell", "tank fell", False), ("tank fell", "tank fell", False),
        ("pressure in the bottle rack fell", "bottle rack fell", False),
        ("cat in the tank fell", "tank fell", False), ("amps at the cat fell", "cat fell", False),
        ("price of the burn", "burn", False), ("price he fell", "he fell", False),
    ],
)  # fmt: skip
def test_it_is_known_by_what_stands_straight_behind_or_of_what_it_is_said(
    typed: str, phrase: str, is_so: bool
) -> None:
    said, words = (tuple(map(stem, raw_words(text))) for text in (typed, phrase))
    start = next(i for i in range(len(said)) if said[i : i + len(words)] == words)
    assert is_manner_of_speaking(said, words, (start, start + len(words))) is is_so
