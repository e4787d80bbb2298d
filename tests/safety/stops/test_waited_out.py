"""A danger that is waited out, by the clock of its STOP; and how old a reading may be."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.safety.stops.reopening import (
    NotAResult,
    minute,
    read_after,
    still_waiting,
    when_read,
)

STOPPED = datetime(2026, 11, 26, 9, 0, 20)
STORM = StopMet("lightning", 0, time=STOPPED.isoformat())
"""Its all-clear is a wait of half an hour after the last thunder."""
NOT_WAITED_OUT = ("gas-odour", "flue-carbon-monoxide-high", "live-work", "roof-edge-under-6-ft")
"""By a number, by one that has to settle first, by a word, by what was put up: by no waiting."""


@pytest.mark.parametrize(("minutes", "waits"), [(-60, True), (0, True), (29, True), (30, False)])
def test_the_wait_is_over_when_the_clock_has_shown_it(
    minutes: int, waits: bool, shipped: Knowledge
) -> None:
    why = still_waiting(shipped, STORM, STOPPED + timedelta(minutes=minutes))
    assert bool(why) is waits
    assert not waits or ("30 minutes have to pass" in why and "before 2026-11-26 09:30" in why)


@pytest.mark.parametrize("hazard", [*NOT_WAITED_OUT, "gone-by-now", "low-voltage-complacency"])
def test_what_is_not_waited_out_waits_for_no_clock(hazard: str, shipped: Knowledge) -> None:
    """Not even for one that was set back, nor where the rules know the hazard no more."""
    met = replace(STORM, hazard=hazard)
    for now in (STOPPED - timedelta(hours=1), STOPPED, STOPPED + timedelta(hours=1)):
        assert still_waiting(shipped, met, now) == ""
    assert read_after(shipped, met) == "2026-11-26 09:00"


def test_a_stop_of_which_no_minute_is_known_waits_for_none(shipped: Knowledge) -> None:
    assert still_waiting(shipped, replace(STORM, time=""), STOPPED) == ""
    assert read_after(shipped, replace(STORM, time="")) == ""


def test_a_stop_met_again_is_waited_out_from_the_first_time_it_was_met(
    shipped: Knowledge,
) -> None:
    """Told again of the same storm the wait is not begun anew; what is read is read after that."""
    again = StopMet("lightning", 0, time="2026-11-26T09:10:20", first_time=STOPPED.isoformat())
    assert read_after(shipped, again) == read_after(shipped, STORM)
    late = replace(again, time="2026-11-26T09:45:20")
    assert read_after(shipped, late) == "2026-11-26 09:45"
    why = still_waiting(shipped, again, STOPPED + timedelta(minutes=12))
    assert "after the STOP of 2026-11-26 09:00" in why and "before 2026-11-26 09:30" in why


def test_what_is_read_counts_from_the_minute_in_which_the_wait_is_over(shipped: Knowledge) -> None:
    since, noon = read_after(shipped, STORM), STOPPED.replace(hour=12)
    assert when_read("9:30", since, noon) == "2026-11-26 09:30"
    with pytest.raises(NotAResult, match="only what was read after it counts"):
        when_read("9:29", since, noon)


def test_a_reading_of_the_day_before_shows_nothing_of_today() -> None:
    """A day is 24 hours, to the second: a time that is typed is the beginning of its minute."""
    assert when_read("yesterday 9:01 am", "", STOPPED) == "2026-11-25 09:01"
    for typed in ("yesterday 9:00 am", "2026-11-25 8:30 am", "2026-11-24 23:00"):
        with pytest.raises(NotAResult, match="more than a day ago"):
            when_read(typed, "", STOPPED)
    sharp = STOPPED.replace(second=0)
    assert when_read("yesterday 9:00 am", "", sharp) == minute(sharp - timedelta(days=1))


@pytest.mark.parametrize("typed", ["in 10 min", "later", "in an hour", "he will at 8:50"])
def test_a_reading_that_somebody_will_take_is_said_to_be_still_to_come(typed: str) -> None:
    with pytest.raises(NotAResult, match="still to come"):
        when_read(typed, "", STOPPED)
