"""What lifts a STOP names the repair of its own trade; "seen wrongly" does not lift a bad deck.

Bright copper, torque, nitrogen and a swept area are common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.remedies import OF_ANY, remedies_of


@pytest.mark.parametrize(
    ("hazard", "of_the_trade"),
    [
        ("scorched-or-hot-wiring", ("bright copper", "torqued", "cause")),
        ("refrigerant-escaping", ("nitrogen", "weighed in", "swept")),
        ("deck-gives-way", ("structural person", "shored", "roofer", "closed off")),
        ("unsupported-panels", ("screws", "weighted", "nobody passes below")),
    ],
)
def test_a_stop_is_lifted_by_what_its_trade_does(
    hazard: str, of_the_trade: tuple[str, ...], shipped: Knowledge
) -> None:
    listed = remedies_of(shipped.hazards[hazard])
    assert not set(OF_ANY) & set(listed)
    assert all(words in " ".join(listed).lower() for words in of_the_trade)


def test_nobody_says_that_a_soft_deck_was_seen_wrongly(shipped: Knowledge) -> None:
    assert not any("wrong" in each for each in remedies_of(shipped.hazards["deck-gives-way"]))
