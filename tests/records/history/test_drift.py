"""Which numbers can be compared, which drift, and what is left alone."""

from __future__ import annotations

from datetime import date

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.span import Span
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.records.history.drift import alarms_of, due, trend_of
from troubleshoot.records.history.series import Read, Series
from troubleshoot.records.history.told import sparkline, trend_lines

DAYS = (date(2024, 5, 1), date(2024, 7, 1), date(2025, 5, 1), date(2025, 7, 1), date(2026, 5, 1))


def series(
    knowledge: Knowledge, test: str, values: list[float], u: float = 0.01, **more: object
) -> Series:
    quantity = knowledge.tests[test].reads[0].quantity
    reads = tuple(
        Read(f"{day}-1", day, value, u, **more)  # type: ignore[arg-type]
        for day, value in zip(DAYS, values, strict=False)
    )
    return Series(knowledge.tests[test], None, quantity, knowledge.quantities[quantity].unit, reads)


def raised(knowledge: Knowledge, of: Series) -> list[str]:
    return [each.alarm.id for each in alarms_of(knowledge, of)]


def test_a_flame_that_loses_a_third_is_caught_and_a_steady_one_is_not(shipped: Knowledge) -> None:
    assert raised(shipped, series(shipped, "flame-current", [4.0, 3.8, 2.7])) == [
        "flame-signal-down"
    ]
    assert raised(shipped, series(shipped, "flame-current", [4.0, 4.1, 3.95, 4.05, 4.0])) == []
    assert raised(shipped, series(shipped, "flame-current", [2.7, 3.6, 4.0])) == []


def test_two_readings_are_silent(shipped: Knowledge) -> None:
    two = series(shipped, "flame-current", [4.0, 1.0])
    assert raised(shipped, two) == [] and trend_of(two) is None
    assert [*trend_lines(two)] == ["Too few that can be compared for a line: 2 of 3."]


def test_what_the_meters_may_make_is_silent(shipped: Knowledge) -> None:
    """Readings that lie on a line by chance, within what the meter errs, are no drift."""
    values = [4.0, 3.9, 3.4, 3.3, 2.8]
    assert raised(shipped, series(shipped, "flame-current", values, u=0.05)) != []
    assert raised(shipped, series(shipped, "flame-current", values, u=0.8)) == []


def test_a_change_for_sure_that_is_smaller_than_the_rule_says_is_silent(
    shipped: Knowledge,
) -> None:
    small = series(shipped, "flame-current", [4.0, 3.97, 3.9, 3.87, 3.8], u=0.001)
    trend = trend_of(small)
    assert trend is not None and trend.is_sure
    assert raised(shipped, small) == []


def test_a_capacitor_is_held_to_its_rating_and_to_each_year(shipped: Knowledge) -> None:
    falling = series(
        shipped, "capacitance-out-of-circuit", [45.0, 44.8, 44.1, 43.9, 43.2], u=0.2,
        rated={"capacitor-rated": 45.0},
    )  # fmt: skip
    assert raised(shipped, falling) == ["capacitor-falling", "capacitor-falling-fast"]
    strong = series(
        shipped, "capacitance-out-of-circuit", [47.0, 46.8, 46.1, 45.9, 45.2], u=0.2,
        rated={"capacitor-rated": 45.0},
    )  # fmt: skip
    assert raised(shipped, strong) == ["capacitor-falling-fast"]


def at_weather(knowledge: Knowledge, over: list[float | None]) -> Series:
    """Subcooling with so much over the middle of what was expected; None where that is not known.

    The weather goes its own way: what was expected falls by 1 F from visit to visit.
    """
    reads = tuple(
        Read(
            f"{day}-1", day, 10.0 - number + (off or 0.0), 0.8,
            None if off is None else Span(8.0 - number, 12.0 - number),
        )
        for number, (day, off) in enumerate(zip(DAYS, over, strict=True))
    )  # fmt: skip
    return Series(knowledge.tests["subcooling"], Place("circuit"), "subcooling", "F-diff", reads)


def test_weather_is_taken_out_before_anything_is_compared(shipped: Knowledge) -> None:
    assert raised(shipped, at_weather(shipped, [0.0, 0.2, -0.1, 0.1, 0.0])) == []
    assert raised(shipped, at_weather(shipped, [0.0, -0.5, -3.0, -3.6, -6.2])) == [
        "subcooling-down"
    ]


def test_what_has_no_like_weather_is_left_out_and_told(shipped: Knowledge) -> None:
    some = at_weather(shipped, [0.0, None, -3.0, None, None])
    assert len(some.points) == 2
    assert [*trend_lines(some)] == [
        "Not compared, since what was to be expected is not known: 3 readings.",
        "Too few that can be compared for a line: 2 of 3.",
    ]


def test_of_a_temperature_itself_no_line_is_made(shipped: Knowledge) -> None:
    outdoor = series(shipped, "outdoor-temperature", [60.0, 70.0, 80.0, 90.0, 100.0])
    assert raised(shipped, outdoor) == [] and outdoor.points == ()
    assert [*trend_lines(outdoor)] == ["It tells of the day: no line is made of it."]
    assert sparkline(outdoor) == ""


def test_the_day_is_told_on_which_a_limit_is_reached(shipped: Knowledge) -> None:
    falling = series(shipped, "flame-current", [4.0, 3.8, 3.45, 3.2, 2.85], low=1.8)
    trend = trend_of(falling)
    assert trend is not None
    when = due(falling, trend)
    assert when is not None and when.limit == 1.8 and when.latest is not None
    assert DAYS[-1] < when.earliest < when.day < when.latest
    assert 2027 <= when.day.year <= 2028


def test_a_band_that_reaches_the_limit_in_no_lifetime_has_no_latest_day(
    shipped: Knowledge,
) -> None:
    falling = series(shipped, "flame-current", [4.0, 4.04, 3.9, 3.92, 3.88], 0.002, low=3.0)
    trend = trend_of(falling)
    assert trend is not None and trend.is_sure
    when = due(falling, trend)
    assert when is not None and when.latest is None


@pytest.mark.parametrize(
    ("values", "low"),
    [([4.0, 3.9, 3.4, 3.3, 2.8], None), ([4.0, 3.9, 3.4, 3.3, 2.8], 3.0), ([4.0] * 5, 1.8)],
)
def test_no_day_is_told_without_a_limit_behind_it_or_where_nothing_changes(
    shipped: Knowledge, values: list[float], low: float | None
) -> None:
    of = series(shipped, "flame-current", values, low=low)
    trend = trend_of(of)
    assert trend is not None and due(of, trend) is None


def test_a_sparkline_shows_a_change_and_keeps_what_the_meter_makes_low(
    shipped: Knowledge,
) -> None:
    assert sparkline(series(shipped, "flame-current", [1.0, 2.0, 3.0])) == "▁▄█"[:1] + "▅█"
    assert set(sparkline(series(shipped, "flame-current", [4.0, 4.1, 4.0], u=0.1))) <= set("▄▅▆")
    assert sparkline(series(shipped, "flame-current", [1.0, 3.0]), "abcdefgh") == "ah"
