"""A series drawn as SVG: its numbers, the line through them with its band, the sound limits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from html import escape
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.quantities.trend import Point, Trend
from troubleshoot.records.history.drift import trend_of
from troubleshoot.records.history.series import Series

WIDE, TALL, EDGE = 360, 110, 12
MARGIN: Final = 0.08
"""Share of the height that stays free above and below."""
STEPS: Final = 24
"""Pieces in which the curve of a band is drawn."""


@frozen
class _Frame:
    """From time and value to where they are drawn."""

    first: float
    last: float
    low: float
    high: float

    def x(self, time: float) -> float:
        return EDGE + (time - self.first) / (self.last - self.first) * (WIDE - 2 * EDGE)

    def y(self, value: float) -> float:
        return TALL - EDGE - (value - self.low) / (self.high - self.low) * (TALL - 2 * EDGE)

    def at(self, point: Point) -> str:
        return f"{self.x(point.time):.1f},{self.y(point.value):.1f}"


def drawn(series: Series, caption: str) -> str:
    """A figure of a series, as HTML; empty where fewer than two numbers can be compared.

    What is bound to weather is drawn as it stands over what was to be expected.
    """
    points = series.points
    if len(points) < 2 or points[0].time == points[-1].time:
        return ""
    trend, limits = trend_of(series), _limits(series)
    frame = _frame(points, limits)
    parts = "\n".join(
        (
            *(_limit(frame, limit) for limit in limits),
            *(_line(frame, trend) if trend is not None else ()),
            *(_dot(frame, point) for point in points),
        )
    )
    said = escape(caption)
    return (
        f"<figure>\n<figcaption>{said}</figcaption>\n"
        f'<svg viewBox="0 0 {WIDE} {TALL}" role="img" aria-label="{said}" fill="none" '
        f'stroke="currentColor">\n{parts}\n</svg>\n</figure>'
    )


def _limits(series: Series) -> tuple[float, ...]:
    """The ends of the sound band of the last number, as they compare with the others."""
    last = series.comparable[-1]
    ends = (end for end in (last.low, last.high) if end is not None)
    return tuple(series.levelled(replace(last, value=end)) for end in ends)


def _frame(points: tuple[Point, ...], limits: tuple[float, ...]) -> _Frame:
    """All numbers and, where it does not flatten them, the limits."""
    values = [point.value for point in points]
    low, high = min(values), max(values)
    span = high - low or abs(high) or 1.0
    near = [limit for limit in limits if low - 3 * span <= limit <= high + 3 * span]
    low, high = min([low, *near]), max([high, *near])
    room = MARGIN * (high - low or span)
    return _Frame(points[0].time, points[-1].time, low - room, high + room)


def _limit(frame: _Frame, limit: float) -> str:
    if not frame.low <= limit <= frame.high:
        return ""
    y = f"{frame.y(limit):.1f}"
    return f'<path d="M{EDGE} {y}H{WIDE - EDGE}" stroke-width="1" stroke-dasharray="2 4"/>'


def _line(frame: _Frame, trend: Trend) -> Iterator[str]:
    """The line, and its band as a shade of it, within the frame."""
    times = [frame.first + (frame.last - frame.first) * step / STEPS for step in range(STEPS + 1)]
    ends = [(trend.at(t) - trend.half_width(t), trend.at(t) + trend.half_width(t)) for t in times]
    held = [(max(low, frame.low), min(high, frame.high)) for low, high in ends]
    there = [frame.at(Point(t, high)) for t, (_, high) in zip(times, held, strict=True)]
    back = [frame.at(Point(t, low)) for t, (low, _) in zip(times, held, strict=True)]
    around = " ".join((*there, *reversed(back)))
    yield f'<polygon points="{around}" fill="currentColor" fill-opacity=".1" stroke="none"/>'
    whole = " ".join(frame.at(Point(t, trend.at(t))) for t in (frame.first, frame.last))
    yield f'<polyline points="{whole}" stroke-width="1.5"/>'


def _dot(frame: _Frame, point: Point) -> str:
    x, _, y = frame.at(point).partition(",")
    return f'<circle cx="{x}" cy="{y}" r="3" fill="currentColor" stroke="none"/>'
