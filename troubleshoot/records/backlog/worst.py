"""The trend of a unit that wants looking at first: past its limit, or the next to reach it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.history.drift import Due, Raised, alarms_of, due, is_real, trend_of
from troubleshoot.records.history.series import Series

SOON: Final = timedelta(days=365)
"""A limit that is reached within this time is told though no alarm is raised: each round comes
round again before it (common practice, no source)."""


@frozen
class Worst:
    """A series that drifts, the alarms it raises, and when it reaches the end of its sound band.

    `is_past`: its last number lies past that end already.
    """

    series: Series
    alarms: tuple[Raised, ...]
    due: Due | None
    is_past: bool


def worst_of(knowledge: Knowledge, every: Sequence[Series], today: date) -> Worst | None:
    """The worst trend among a unit's series; None where none is worth a look."""
    found = [worst for series in every if (worst := _of(knowledge, series, today)) is not None]
    return min(found, key=_how_bad, default=None)


def _of(knowledge: Knowledge, series: Series, today: date) -> Worst | None:
    trend = trend_of(series)
    if trend is None or not is_real(series, trend):
        return None
    alarms, when = alarms_of(knowledge, series), due(series, trend)
    last, rises = series.comparable[-1], trend.slope > 0
    end = last.high if rises else last.low
    is_past = end is not None and (last.value > end if rises else last.value < end)
    is_soon = when is not None and when.day <= today + SOON
    return Worst(series, alarms, when, is_past) if alarms or is_past or is_soon else None


def _how_bad(worst: Worst) -> tuple[object, ...]:
    day = date.max if worst.due is None else worst.due.day
    at = str(worst.series.at or "")
    return not worst.is_past, day, not worst.alarms, worst.series.test.id, at
