"""How a unit's history looks in plain lines, and as JSON."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Sequence

from troubleshoot.cli.json_output import say_json
from troubleshoot.cli.terminal import Terminal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.history.drift import Raised, due, trend_of
from troubleshoot.records.history.series import Read, Series
from troubleshoot.records.history.told import (
    HEIGHTS,
    NO_DRIFT,
    PLAIN_HEIGHTS,
    alarm_lines,
    name_of,
    number,
    sparkline,
    trend_lines,
)


def show_history(knowledge: Knowledge, every: Sequence[Series], raised: Sequence[Raised]) -> None:
    """What drifts, then each series in a line: its shape, its first and last number."""
    terminal = Terminal()
    for series in every:
        own = [each for each in raised if each.series is series]
        if not own:
            continue
        head, *more = alarm_lines(knowledge, own)
        terminal.say(head, strong=True)
        terminal.say_all(more, 2)
    if not raised:
        terminal.say(NO_DRIFT)
    terminal.say("")
    for series in every:
        if series.is_weather:
            continue
        first, last = series.reads[0], series.reads[-1]
        numbers = number(last.value, series)
        if len(series.reads) > 1:
            numbers = f"{first.value:.4g} to {numbers} in {len(series.reads)} readings"
        shape = sparkline(series, _heights())
        terminal.say(f"{shape or '-'}  {name_of(knowledge, series)}: {numbers}")


def show_series(knowledge: Knowledge, series: Series) -> None:
    """One series whole: every number with its day, its weather and what was made of it."""
    terminal = Terminal()
    terminal.say(name_of(knowledge, series), strong=True)
    if shape := sparkline(series, _heights()):
        terminal.say(shape, 2)
    for read in series.reads:
        terminal.say(f"{read.day}  {number(read.value, series)}{_about(read)}", 2)
    terminal.say_all(trend_lines(series), 2)


def _about(read: Read) -> str:
    """What was known beside a number."""
    expected = f"expected {read.expected}" if read.expected else ""
    outdoor = f"{read.outdoor:.0f} F outdoors" if read.outdoor is not None else ""
    said = ", ".join(filter(None, (read.outcome, expected, outdoor)))
    return f": {said}" if said else ""


def _heights() -> str:
    """The steps of a sparkline that this terminal can show."""
    try:
        HEIGHTS.encode(sys.stdout.encoding or "utf-8")
    except UnicodeEncodeError:
        return PLAIN_HEIGHTS
    return HEIGHTS


def history_as_json(unit: str, every: Iterable[Series], raised: Sequence[Raised]) -> None:
    """The same as one JSON object, for scripts."""
    say_json({"unit": unit, "series": [_plain(series, raised) for series in every]})


def _plain(series: Series, raised: Sequence[Raised]) -> dict[str, object]:
    trend = trend_of(series)
    when = None if trend is None else due(series, trend)
    return {
        "test": series.test.id,
        "at": None if series.at is None else str(series.at),
        "quantity": series.quantity,
        "unit": series.unit,
        "readings": [_plain_read(read) for read in series.reads],
        "trend": None
        if trend is None
        else {
            "points": trend.points,
            "a_year": _tidy(trend.slope),
            "low": _tidy(trend.band[0]),
            "high": _tidy(trend.band[1]),
            "over_expected": series.is_bound_to_weather,
            "share": series.in_proportion,
        },
        "alarms": [
            {"id": each.alarm.id, "change": _tidy(each.change), "unit": each.alarm.unit}
            for each in raised
            if each.series is series
        ],
        "due": None
        if when is None
        else {
            "limit": _tidy(when.limit),
            "day": when.day.isoformat(),
            "earliest": when.earliest.isoformat(),
            "latest": None if when.latest is None else when.latest.isoformat(),
        },
    }


def _plain_read(read: Read) -> dict[str, object]:
    span = read.expected
    return {
        "visit": read.visit,
        "day": read.day.isoformat(),
        "value": _tidy(read.value),
        "u": _tidy(read.u),
        "expected": None if span is None else {"low": span.low, "high": span.high},
        "outdoor": None if read.outdoor is None else _tidy(read.outdoor),
        "outcome": read.outcome or None,
    }


def _tidy(value: float) -> float:
    """A number without the dust of binary arithmetic."""
    return float(f"{value:.6g}")
