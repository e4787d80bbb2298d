"""What is plain good news at a step, and what only sounds like it; what says that all stands.

The sentences are made up: common practice, no source.
"""

from __future__ import annotations

import pytest

from troubleshoot.safety.hearing.good_answers import tells_good_news, tells_it_stands

OWN = ("Combustible gas sweep", "leak at a union", "clear", "no gas")
"""The step's words and its answers'."""


@pytest.mark.parametrize(
    "said",
    [
        "good", "told em, they're good with it", "all gas is clear", "sniffer stayed quiet",
        "meter reads 121 at the outlet, good", "nothing on the sniffer", "none at all at the union",
        "swept it, nothin' on my detector",
    ],
)  # fmt: skip
def test_what_is_good_and_nothing_else_is_good_news(said: str) -> None:
    assert tells_good_news(said, OWN)


@pytest.mark.parametrize(
    "said",
    [
        "", "121", "told the manager", "nothing at all", "swept the gas", "clear but for a leak",
        "clear, leak at the union", "still good", "good, it is back", "good, it hisses",
        "no good", "nothing on the sniffer, a leak on the meter", "panel got my leg, good",
        "sniffer reads 40 ppm, clear",
    ],
)  # fmt: skip
def test_what_is_not_said_to_be_good_or_says_more_is_none(said: str) -> None:
    assert not tells_good_news(said, OWN)


def test_the_words_of_another_step_are_not_known_here() -> None:
    assert tells_good_news("all gas is clear", OWN) and not tells_good_news("all gas is clear", ())


@pytest.mark.parametrize(
    "said",
    [
        "the lock is still on", "my locks are on", "Power is off.", "breaker is still locked out",
        "the disconnect is locked", "panels are still off", "the cover is off",
    ],
)  # fmt: skip
def test_a_lock_or_a_panel_that_stands_is_told_to_stand(said: str) -> None:
    assert tells_it_stands(said)


@pytest.mark.parametrize(
    "said",
    [
        "", "the lock is off", "my lock is on rtu 3", "power is on", "the cover is still on",
        "is the lock on", "the power is off but the fan turns",
    ],
)  # fmt: skip
def test_what_has_gone_or_says_more_is_not_told_to_stand(said: str) -> None:
    assert not tells_it_stands(said)
