"""Who was told of a STOP, and when: somebody whom it is for, after it, and not still to come."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest

from troubleshoot.knowledge.model import Hazard
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.safety.stops.reopening import (
    NotAResult,
    handed_over_at,
    is_not_told,
    is_told_when,
    not_told,
    role,
    when_called,
)

NOW = datetime(2026, 11, 26, 9, 45, 59)
FOUND = StopMet("h", 0, time="2026-11-26T09:30:20-05:00")
REPORTED = replace(FOUND, reported="i smell gas")
UNKNOWN = StopMet("h", 0)
WIRING = Hazard(
    "h", "DANGER", "keep off", defer_to="licensed electrician", cleared_by=("electric-utility",)
)


@pytest.mark.parametrize(
    ("met", "typed"),
    [
        (FOUND, "the supervisor, 9:30"), (FOUND, "the supervisor, just now"),
        (FOUND, "9:45"), (REPORTED, "the gas company, 9:15"), (REPORTED, "the boss, 9:31"),
        (UNKNOWN, "the supervisor, 1:00"), (replace(UNKNOWN, reported="smoke"), "911, 1:00"),
        (None, "the supervisor, 1:00"),
    ],
)  # fmt: skip
def test_who_was_told_since_the_stop_knows_of_it(met: StopMet | None, typed: str) -> None:
    """Whoever reports a danger may have called for help a quarter of an hour before they type."""
    assert is_told_when(met, typed, NOW)


@pytest.mark.parametrize(
    ("met", "typed", "why"),
    [
        (FOUND, "the supervisor, 9:29", "before the STOP of 2026-11-26 09:30"),
        (FOUND, "the supervisor, 9:16", "before the STOP of 2026-11-26 09:30"),
        (REPORTED, "the gas company, 9:14", "before the STOP of 2026-11-26 09:30"),
        (FOUND, "the supervisor, 9:46", "still to come. Give the time"),
        (None, "the supervisor, 10 am", "still to come. Give the time"),
        (FOUND, "I will tell the supervisor", "Somebody has to know of it before you leave"),
        (FOUND, "the supervisor, in 10 min", "Somebody has to know of it before you leave"),
        (None, "will tell the boss at 9:40", "Somebody has to know of it before you leave"),
    ],
)
def test_who_was_told_before_it_or_will_be_told_does_not(
    met: StopMet | None, typed: str, why: str
) -> None:
    with pytest.raises(NotAResult, match=why):
        is_told_when(met, typed, NOW)


@pytest.mark.parametrize("typed", ["the supervisor", "the supervisor, last night", ""])
def test_without_a_time_nobody_knows_when(typed: str) -> None:
    assert not is_told_when(FOUND, typed, NOW)


@pytest.mark.parametrize(
    ("told", "left"),
    [
        ("the electrician, 9:40", ""),
        ("power company, 9:40", ""),
        ("the boss, 9:31; the electrician, 9:40", ""),
        ("the supervisor, 9:40", "licensed electrician"),
        ("somebody, 9:40", "licensed electrician"),
    ],
)
def test_a_stop_is_told_to_whom_it_is_for_or_to_whoever_may_clear_it(told: str, left: str) -> None:
    assert not_told(WIRING, told) == left


@pytest.mark.parametrize("told", ["the supervisor, 9:40", "somebody, 9:40"])
def test_where_a_stop_is_for_nobody_by_role_nobody_is_left_untold(told: str) -> None:
    assert not_told(replace(WIRING, defer_to="whoever hung it", cleared_by=()), told) == ""


@pytest.mark.parametrize(
    ("told", "by", "untold"),
    [
        ("the boss, 9:10; not told yet: licensed electrician", "electrician", True),
        ("the boss, 9:10; not told yet: licensed electrician", "supervisor", False),
        ("the boss, 9:10; not told yet: licensed electrician", "fire-service", False),
        ("the electrician, 9:10", "electrician", False),
        ("", "electrician", False),
    ],
)
def test_of_those_on_record_as_untold_only_their_own_role_did_not_know(
    told: str, by: str, untold: bool
) -> None:
    assert is_not_told(replace(FOUND, told=told), by) is untold


@pytest.mark.parametrize(
    ("typed", "at"),
    [
        ("9:30", "2026-11-26 09:30"), ("just now", "2026-11-26 09:45"),
        ("he came at 9:40", "2026-11-26 09:40"),
    ],
)  # fmt: skip
def test_whoever_made_it_safe_knew_of_it_since_the_stop_and_by_now(typed: str, at: str) -> None:
    assert when_called(typed, "2026-11-26 09:30", NOW) == at


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("9:29", "before the STOP of 2026-11-26 09:30"), ("9:46", "has made nothing safe"),
        ("will come at 9:40", "has made nothing safe"), ("nobody told him", "has made nothing"),
    ],
)  # fmt: skip
def test_who_came_before_the_stop_or_has_still_to_come_made_nothing_safe(
    typed: str, why: str
) -> None:
    with pytest.raises(NotAResult, match=why):
        when_called(typed, "2026-11-26 09:30", NOW)


@pytest.mark.parametrize("typed", ["the building owner", "a fire alarm tech"])
def test_a_role_that_the_hazard_does_not_name_clears_nothing(typed: str) -> None:
    with pytest.raises(NotAResult, match="one of: fire-service, supervisor"):
        role(typed, ("fire-service", "supervisor"))


@pytest.mark.parametrize(
    ("told", "at"),
    [
        ("the boss, 9:10; the electrician, 9:40", "09:40"),
        ("the electrician, 9:40; the boss, 9:10", "09:40"),
        ("the boss, 9:10; the electrician, 9:45", "09:45"),
        ("the boss, 9:10; the electrician, 9:50", "09:10"),
        ("the boss, 9:10; not told yet: licensed electrician", "09:10"),
        ("the boss", "09:45"),
    ],
)
def test_a_stop_is_handed_over_when_the_last_was_told_by_the_time_it_was_put_on_record(
    told: str, at: str
) -> None:
    """A reading after the first call may be from before the last; one still to come is no call."""
    met = replace(FOUND, told=told, told_at="2026-11-26 09:45")
    assert handed_over_at(met) == f"2026-11-26 {at}"
    assert handed_over_at(replace(met, told_at="")) == ""
