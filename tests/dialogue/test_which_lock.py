"""The lock-out told in other words: a switch that will not open, and a lock hung elsewhere."""

from __future__ import annotations

from datetime import datetime

import pytest

from tests.dialogue import at_work
from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.answering import step_event_from
from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer
from troubleshoot.dialogue.which_lock import cannot_be_locked, locked_at, tells_another_lock
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
    with pytest.raises(NotAnAnswer) as refused:
        told(shipped, typed)
    assert "feeds this unit" not in str(refused.value)


def test_a_lock_elsewhere_is_asked_for_with_its_place(shipped: Knowledge) -> None:
    """Regression: nothing took a lock that hangs at the breaker."""
    with pytest.raises(NearlyAnAnswer, match="feeds this unit"):
        told(shipped, "locked it out at the main panel breaker instead")
    done = told(shipped, "locked at the main panel breaker")
    assert (done.outcomes, done.text) == (("locked",), "the main panel breaker")
    plain = told(shipped, "locked")
    elsewhere, here = replay(shipped, [done]), replay(shipped, [plain])
    assert (elsewhere.work, elsewhere.answers) == (here.work, here.answers), "no reading of a step"


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


def test_at_a_test_it_is_told_where_a_lock_elsewhere_is_taken(
    shipped: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Regression: it was answered with the outcomes of the setpoint."""
    monkeypatch.setitem(at_work.PLACES, LOCKOUT, ("no-heat", "do burner-orifices", LOCKOUT))
    visit = AtWork(shipped, LOCKOUT)
    visit.types("handle is stuck")
    assert visit.at not in ("", LOCKOUT)
    said = visit.types("locked it out at the main panel breaker instead")
    assert any('There type "locked at", and the place.' in each for each in said)
    assert tells_another_lock("locked it out at the main panel breaker instead")
    assert not tells_another_lock("somebody locked it at the panel")
    assert not tells_another_lock("panel is tight, disconnect locked")


DEVICES = "blades disconnect handle hasp it lever switch"
JAMMED = "bent broke broken corroded froze frozen jammed rusted seized stuck"
WILL_NOT = "cannot cant doesnt no not nowhere wont"
MOVES = "budge close fit go hasp hole lock move open place pull take takes throw turn"
BESIDE = (
    "a all and at but does even for fully get has have i in is its my of off on out pullout shut "
    "solid the there this to up way will with closed half"
)
NOT_OURS = (
    "another else elses guy he her hers his other others she somebody somebodys someone someones "
    "their theirs them they"
)


@pytest.mark.parametrize(
    "typed",
    [
        *(f"{device} stuck" for device in DEVICES.split()),
        *(f"handle {jammed}" for jammed in JAMMED.split()),
        *(f"{will_not} move" for will_not in WILL_NOT.split()),
        *(f"wont {move}" for move in MOVES.split()),
        *(f"handle stuck {beside}" for beside in BESIDE.split()),
        "Handle STUCK", "won't open", "won-t open",
    ],
)  # fmt: skip
def test_each_word_of_a_switch_that_does_not_move_is_known(typed: str) -> None:
    assert cannot_be_locked(typed)


@pytest.mark.parametrize(
    "typed", ["stuck", "handle", "handle move", "wont", "blower wont move", "handle stuck, smoke"]
)
def test_one_that_may_move_or_of_which_more_is_told_may_be_locked(typed: str) -> None:
    """Nor is stuck alone said of the switch."""
    assert not cannot_be_locked(typed)


@pytest.mark.parametrize(
    ("typed", "at"),
    [
        ("locked at the main panel", "the main panel"), (" Locked out at MCC 3.", "MCC 3"),
        ("locked at breaker 12!", "breaker 12"), ("locked at the main", None),
        ("locked at the panel by Joe", None), ("it is locked at the panel", None),
    ],
)  # fmt: skip
def test_a_lock_elsewhere_is_at_what_feeds_the_unit(typed: str, at: str | None) -> None:
    assert locked_at(typed) == at


@pytest.mark.parametrize("word", [*NOT_OURS.split(), *WILL_NOT.split(), "someone's"])
def test_a_lock_of_somebody_elses_or_none_is_not_ones_own(word: str) -> None:
    """Regression: someone's lock, and hers, were taken for one's own."""
    assert tells_another_lock("I hung it, it is locked at the panel")
    assert tells_another_lock("BREAKER is LOCKED")
    assert not tells_another_lock(f"{word} hung it, it is locked at the panel")
