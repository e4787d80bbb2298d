"""A time as people type it, alone and among words."""

from __future__ import annotations

from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.safety.hearing.moments import is_to_come, moment, moment_within, names_a_time

NOW = datetime(2026, 11, 26, 9, 45)
TWENTY_TO_NINE = datetime(2026, 11, 26, 8, 40)


@pytest.mark.parametrize(
    "typed",
    ["0840", "840", "8.40", "8h40", "08:40", "at 0840 hrs", "0840hrs", "0840h", "8:40 hrs",
     "840 am", "about 0840", "0840 hours"],
)  # fmt: skip
def test_a_time_is_read_with_or_without_a_mark(typed: str) -> None:
    """Regression: 0840 was no time."""
    assert moment(typed, NOW) == TWENTY_TO_NINE
    assert moment_within(f"the boss, {typed}", NOW) == TWENTY_TO_NINE


@given(st.integers(0, 23), st.integers(0, 59), st.sampled_from(["", ":", ".", "h"]))
def test_four_figures_are_the_hour_and_the_minute(hour: int, minute: int, mark: str) -> None:
    """10 and 11 may be of either half of the day: the latest past."""
    at = moment(f"{hour:02d}{mark}{minute:02d}", NOW.replace(hour=23, minute=59))
    assert at is not None and at.minute == minute and at.hour in (hour, hour + 12)


@pytest.mark.parametrize("typed", ["911", "112", "2460", "0860", "84", "12345", "9 hrs"])
def test_what_calls_help_and_what_no_clock_shows_is_no_time(typed: str) -> None:
    assert moment(typed, NOW) is None and moment_within(f"called {typed}", NOW) is None


@pytest.mark.parametrize("typed", ["boss, room 1200", "office ext 840", "owner of 1200 and 7"])
def test_figures_of_other_things_are_no_time(typed: str) -> None:
    assert moment_within(typed, NOW) is None


@pytest.mark.parametrize("name", ["RTU 840", "1200", "0840", "unit 1430"])
def test_figures_alone_are_no_time_in_a_units_name(name: str) -> None:
    assert not names_a_time(name)


@pytest.mark.parametrize("typed", ["boss 3:10", "0840hrs", "8h40"])
def test_a_marked_time_is_one_even_there(typed: str) -> None:
    assert names_a_time(typed)


@pytest.mark.parametrize(
    "typed",
    ["tomorrow", "tomorrow 8:00", "later", "I will tell the boss", "he'll be told",
     "in 10 min", "in half an hour", "going to ring at 8:00", "next monday", "next week"],
)  # fmt: skip
def test_what_has_still_to_come_is_known(typed: str) -> None:
    assert is_to_come(typed)


@pytest.mark.parametrize("typed", ["just now", "10 min ago", "8:40", "in the office at 8:40"])
def test_what_has_been_has_not_still_to_come(typed: str) -> None:
    assert not is_to_come(typed)


@pytest.mark.parametrize("typed", ["tomorrow 8:00", "monday 8:00", "last week 8:00"])
def test_a_time_of_a_day_that_is_not_known_is_none(typed: str) -> None:
    """Regression: it was taken for today's."""
    assert moment_within(f"the boss, {typed}", NOW) is None
