"""On a round what says only why a look tells nothing is no finding: no cause is asked about."""

from __future__ import annotations

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.events import Answered, RoundBegun, Started, replay
from troubleshoot.visit.round.found import _NOTHING_TOLD, unsound

START = Started(complaint="routine-inspection", unit={"heat": "electric", "circuits": 1})


@pytest.mark.parametrize(
    ("test", "outcome", "is_found"),
    [
        ("compare-with-last-visits", "nothing-to-compare", False),
        ("compare-with-last-visits", "drift", True),
        ("instrument-proof", "no-reference", False),
        ("instrument-proof", "off", True),
    ],
)
def test_no_numbers_on_file_are_no_finding(
    test: str, outcome: str, is_found: bool, shipped: Knowledge
) -> None:
    """Regression: a first round was asked for the cause of having no numbers of before."""
    events = (START, RoundBegun("spring"), Answered(test, outcomes=(outcome,)))
    state = replay(shipped, [*events])
    found = unsound(shipped, state, conclude_visit(reasoner_of(shipped), state))
    assert ((test, None) in found) is is_found


def test_each_of_them_is_an_outcome_of_some_test(shipped: Knowledge) -> None:
    known = {outcome.id for test in shipped.tests.values() for outcome in test.outcomes}
    assert known >= _NOTHING_TOLD
