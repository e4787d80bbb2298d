"""The lock-out told in other words: a switch that will not open, and a lock hung elsewhere."""

from __future__ import annotations

from datetime import datetime

import pytest

from troubleshoot.dialogue.answering import step_event_from
from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer
from troubleshoot.dialogue.which_lock import tells_another_lock
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.steps import LOCKOUT, Step
from troubleshoot.visit.events import StepDone, replay
from troubleshoot.visit.state import VisitState

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")


def told(shipped: Knowledge, typed: str) -> StepDone:
    return step_event_from(shipped, VisitState(), shipped.tests[LOCKOUT], Step(LOCKOUT), typed, NOW)


@pytest.mark.parametrize(
    "typed",
    [
        "disconnect wont open, handle froze", "cant get the disconnect to throw its froze solid",
        "handle is stuck", "no hasp for my lock", "switch won\u2019t take a lock", "it wont budge",
        "disconnect is seized up", "the handle does not move",
    ],
)  # fmt: skip
def test_a_switch_that_will_not_open_cannot_be_locked(shipped: Knowledge, typed: str) -> None:
    """Regression: it was no answer, and a frozen disconnect was asked after as any talk."""
    assert told(shipped, typed).outcomes == ("cannot-lock",)
    assert told(shipped, typed).text == typed


@pytest.mark.parametrize(
    "typed",
    [
        "disconnect opened easy", "handle froze, gas smell here", "no lock of mine, helper has it",
        "not stuck", "it is open", "handle froze last year",
    ],
)  # fmt: skip
def test_what_tells_more_or_something_else_is_left_to_be_heard(
    shipped: Knowledge, typed: str
) -> None:
    with pytest.raises(NotAnAnswer):
        told(shipped, typed)


def test_a_lock_elsewhere_is_asked_for_with_its_place(shipped: Knowledge) -> None:
    """Regression: nothing took a lock that hangs at the breaker."""
    with pytest.raises(NearlyAnAnswer, match="feeds this unit"):
        told(shipped, "locked it out at the main panel breaker instead")
    done = told(shipped, "locked at the main panel breaker")
    assert (done.outcomes, done.text) == (("locked",), "the main panel breaker")
    plain = told(shipped, "locked")
    assert replay(shipped, [done]).work == replay(shipped, [plain]).work


@pytest.mark.parametrize(
    "typed",
    [
        "not locked at the panel", "somebody locked it at the panel",
        "locked at the panel, not mine", "locked at the breaker tomorrow", "locked at lunch",
        "locked at the panel but something starts",
    ],
)  # fmt: skip
def test_a_lock_that_may_not_hold_confirms_nothing(shipped: Knowledge, typed: str) -> None:
    with pytest.raises(NotAnAnswer):
        told(shipped, typed)


def test_at_a_test_it_is_told_where_a_lock_elsewhere_is_taken() -> None:
    """Regression: it was answered with the outcomes of the setpoint."""
    assert tells_another_lock("locked it out at the main panel breaker instead")
    assert not tells_another_lock("somebody locked it at the panel")
    assert not tells_another_lock("panel is tight, disconnect locked")
