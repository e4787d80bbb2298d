"""A time as people type it, alone and among words."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.safety.hearing.moments import (
    is_to_come,
    moment,
    moment_within,
    names_a_time,
    with_day,
)

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


@pytest.mark.parametrize(
    ("typed", "minutes"),
    [
        ("a minute ago", 1), ("an hour ago", 60), ("half an hour ago", 30), ("one min ago", 1),
        ("two min ago", 2), ("three min ago", 3), ("five min ago", 5), ("ten min ago", 10),
        ("fifteen min ago", 15), ("twenty min ago", 20), ("thirty min ago", 30),
        ("90 mins ago", 90), ("2 hrs ago", 120), ("just now", 0), ("right now", 0),
    ],
)  # fmt: skip
def test_a_time_is_told_by_how_long_it_is_ago(typed: str, minutes: int) -> None:
    late = NOW.replace(second=30, microsecond=5)
    assert moment(typed, late) == NOW - timedelta(minutes=minutes)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("12:00 pm", "26 12:00"), ("12:05 am", "26 00:05"), ("12 pm", "26 12:00"),
        ("11:59 pm", "26 23:59"), ("1 am", "26 01:00"), ("1 pm", "26 13:00"), ("11 pm", "26 23:00"),
        ("3:10 p.m.", "26 15:10"), ("3:10 p m", "26 15:10"), ("23:59", "26 23:59"),
        ("00:05", "26 00:05"), ("9:45", "26 09:45"), ("9:46", "26 09:46"), ("1:10", "26 01:10"),
        ("11:30", "26 11:30"), ("12:30", "26 12:30"),
        ("noon", "26 12:00"), ("midnight", "26 00:00"),
        ("today 8:40", "26 08:40"), ("yesterday 8:40", "25 20:40"), ("yesterday 08:40", "25 08:40"),
        ("yesterday at 1:00", "25 13:00"), ("yesterday at 11:00", "25 23:00"),
        ("yesterday 12:30", "25 12:30"), ("2026-11-24 at 08:40", "24 08:40"),
    ],
)  # fmt: skip
def test_a_time_is_of_its_day_and_its_half(typed: str, meant: str) -> None:
    """Without am or pm the latest that is past, and where both are to come the earlier."""
    assert moment(typed, NOW) == datetime.strptime(f"2026-11-{meant}", "%Y-%m-%d %H:%M")


def test_the_minute_that_it_is_has_come() -> None:
    evening = NOW.replace(hour=21)
    assert moment("9:45", evening) == evening


def test_a_day_of_another_year_is_of_that_year() -> None:
    assert moment("2025-12-31, 08:40", NOW) == datetime(2025, 12, 31, 8, 40)


@pytest.mark.parametrize(
    "typed",
    ["13 pm", "0 am", "24:00", "9", "000", "2026-13-45 8:40", "2026-11-24", "yesterday", "8:40 x"],
)
def test_what_no_clock_or_calendar_shows_is_no_time(typed: str) -> None:
    assert moment(typed, NOW) is None


def test_the_half_of_the_day_may_be_parted_from_the_time_and_in_itself() -> None:
    """Regression: of "8:40 a m" in the evening 8:40 pm was taken, after a STOP and not before."""
    evening = NOW.replace(hour=21)
    assert moment_within("the boss, 8:40 a m", evening) == TWENTY_TO_NINE
    yesterday = datetime(2026, 11, 25, 3, 10)
    assert moment_within("the boss, yesterday at 3:10 a m", evening) == yesterday


@pytest.mark.parametrize(
    "word",
    ["apt", "badge", "call", "called", "code", "dial", "dialed", "dialled", "ext", "extension",
     "floor", "line", "no", "number", "rm", "room", "rtu", "store", "suite", "truck", "unit"],
)  # fmt: skip
def test_figures_behind_what_they_are_the_number_of_are_no_time(word: str) -> None:
    assert moment_within(f"the boss, {word} 0840", NOW) is None
    assert moment_within("the boss, 0840", NOW) == TWENTY_TO_NINE


def test_bare_figures_are_a_time_at_either_end_alone() -> None:
    assert moment_within("0840 the boss", NOW) == moment_within("boss 0840", NOW) == TWENTY_TO_NINE
    assert moment_within("0840 the room", NOW) == TWENTY_TO_NINE
    assert moment_within("the 0840 boss", NOW) is None


def test_the_first_of_two_times_is_meant_wherever_it_stands() -> None:
    assert moment_within("8:40 boss 9:00", NOW) == TWENTY_TO_NINE
    assert moment_within("boss 8:40 there", NOW) == TWENTY_TO_NINE


@pytest.mark.parametrize(
    ("at", "said"),
    [
        ("26 15:10", "3:10 pm today"), ("26 00:05", "12:05 am today"),
        ("25 12:00", "12:00 pm yesterday"),
        ("25 11:59", "11:59 am yesterday"), ("24 23:01", "11:01 pm on 2026-11-24"),
    ],
)  # fmt: skip
def test_a_moment_is_said_with_its_day(at: str, said: str) -> None:
    assert with_day(datetime.strptime(f"2026-11-{at}", "%Y-%m-%d %H:%M"), NOW) == said
