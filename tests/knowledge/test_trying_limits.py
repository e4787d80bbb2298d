"""Which limits can meet on a kind of unit."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.trying_limits import lines_here


def test_a_limit_on_a_number_that_is_not_known_meets_none(shipped: Knowledge) -> None:
    """Regression: limits for a return air nobody read met those on the return air itself."""
    unread = dict.fromkeys(
        (
            "own-evaporating-temperature",
            "evaporating-least",
            "return-air-over-evaporating",
            "entering-air-over-evaporating",
        ),
        "not-known",
    )
    lines = lines_here(shipped.tests["suction-pressure"], unread)
    assert {"high", "low"} <= {line.outcome for line in lines}
    assert all(bound.quantity not in unread for line in lines for bound in line.bounds)
