"""What denies the word of a step says that it was not done, and no other danger."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.cli.player import Player, play
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import ANY_DANGER, spoken_of


@pytest.mark.parametrize("denied", ["not {}", "isn't {}", "is not {}", "not {} yet", "never {}"])
def test_a_denied_word_of_a_step_names_no_danger(denied: str, shipped: Knowledge) -> None:
    """Regression: "not locked" was somebody else's lock. "Not safe" is a danger unnamed."""
    for step, confirmed in CONFIRMED.items():
        typed = denied.format(shipped.tests[step].spoken(confirmed))
        heard = {h.id for h in (*spoken_of(shipped, typed), *told_among(shipped, typed))}
        assert heard <= {ANY_DANGER}, typed


@pytest.mark.parametrize("typed", ["not my lock", "thats not my lock", "that lock is not mine"])
def test_a_lock_of_somebody_else_is_still_heard(typed: str, shipped: Knowledge) -> None:
    heard = {h.id for h in (*spoken_of(shipped, typed), *told_among(shipped, typed))}
    assert heard == {"lock-of-somebody-else"}


def test_not_locked_is_asked_again(shipped: Knowledge, tmp_path: Path) -> None:
    unit = {"heat": "gas", "circuits": 1, "line-volts-class": "208-to-240-volt"}
    shows: dict[str, str | list[str]] = {"lockout": ["not locked", "cannot lock"]}
    player = Player(shipped, shows, ["do contactor-contacts"])
    _, book = play(shipped, tmp_path, player, {"complaint": "no-cooling", "unit": unit})
    assert "Say in words what came of it: locked, cannot lock" in player.text
    assert not any(stop.hazard == "lock-of-somebody-else" for stop in book.state.stops)
    assert ("lockout", "cannot-lock") in [(a.test, a.outcome) for a in book.state.asked]
