"""What of a unit's numbers drifts: the alarms of the rules, held against a line with its band.

An alarm is raised where the line has come as far as the alarm says within its band, where the band
leaves no room for no change, and where the meters cannot have made it: on a few readings the
scatter about a line may be small by chance alone.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date, timedelta
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import DriftAlarm, Knowledge
from troubleshoot.quantities.trend import Trend, fitted
from troubleshoot.records.history.series import DAYS_A_YEAR, Series

BEYOND_METERS: Final = 3.0
"""Standard uncertainties by the meters that a change has to exceed (JCGM 100, 6.3.1)."""
COUNTED: Final = "count"
"""The unit of a change that no line shows: how often something happened."""
IN_SHARES: Final[Mapping[str | None, Callable[[float], float]]] = MappingProxyType(
    {"percent": lambda share: 100.0 * share, "times": lambda share: 1.0 + share}
)
"""Units in which a change is a share of what it is a change of."""
LONGEST: Final = 30.0
"""Years ahead past which nobody wants to know when a limit is reached."""


@frozen
class Raised:
    """An alarm that is raised. `change`: what the line has come to, in the alarm's unit."""

    alarm: DriftAlarm
    series: Series
    trend: Trend
    change: float


@frozen
class Due:
    """When a number will have left its sound band: the day of the line, and those of its band.

    `latest`: None where that is further ahead than anybody wants to know.
    """

    limit: float
    day: date
    earliest: date
    latest: date | None


def trend_of(series: Series) -> Trend | None:
    """The line through what can be compared; None where that is too little."""
    return fitted(series.points)


def alarms_of(knowledge: Knowledge, series: Series) -> tuple[Raised, ...]:
    """Every alarm of the rules that a series raises."""
    trend = trend_of(series)
    if trend is None or not is_real(series, trend):
        return ()
    alarms = (a for a in knowledge.drift_alarms.values() if a.quantity == series.quantity)
    found = (_held(alarm, series, trend) for alarm in alarms)
    return tuple(raised for raised in found if raised is not None)


def is_real(series: Series, trend: Trend) -> bool:
    """Whether a line tells of the unit, and neither of chance nor of what its meters err."""
    return trend.is_sure and _is_beyond_meters(series, trend)


def _is_beyond_meters(series: Series, trend: Trend) -> bool:
    """Whether no error of the meters, however it fell, would make such a slope."""
    reads = series.comparable
    own = [series.levelled_error(read) for read in reads]
    u = math.sqrt(math.fsum(each**2 for each in own) / len(reads))
    return abs(trend.slope) * math.sqrt(trend.spread) > BEYOND_METERS * u


def _held(alarm: DriftAlarm, series: Series, trend: Trend) -> Raised | None:
    """One alarm, where the line comes as far as it says within its band."""
    if alarm.change is None or alarm.unit == COUNTED:
        return None
    changes = _changes(alarm, series, trend)
    if changes is None:
        return None
    reached = max(changes) >= alarm.change if alarm.change > 0 else min(changes) <= alarm.change
    same_way = (trend.slope > 0) == (alarm.change > 0)
    return Raised(alarm, series, trend, changes[0]) if reached and same_way else None


def _changes(alarm: DriftAlarm, series: Series, trend: Trend) -> tuple[float, ...] | None:
    """How far the line has come in an alarm's unit, then at the ends of its band; None: unknown."""
    first, last = series.points[0].time, series.points[-1].time
    own = trend.at(first)
    base = own if alarm.relative_to is None else series.comparable[-1].rated.get(alarm.relative_to)
    if base is None or (alarm.unit in IN_SHARES and base <= 0.0):
        return None
    years = 1.0 if alarm.a_year else last - first
    already = 0.0 if alarm.relative_to is None else own - base
    ends = [already + slope * years for slope in (trend.slope, *trend.band)]
    if alarm.unit in IN_SHARES:
        return tuple(IN_SHARES[alarm.unit](end / base) for end in ends)
    return tuple(ends)


def due(series: Series, trend: Trend) -> Due | None:
    """When the line leaves the sound band of the last reading; None where it does not.

    Not before the last visit, nor further ahead than anybody wants to know. Of what is bound to
    weather in the weather of that visit.
    """
    last = series.comparable[-1]
    limit = last.high if trend.slope > 0 else last.low
    if limit is None or not is_real(series, trend):
        return None
    crossing = trend.crosses(series.levelled(replace(last, value=limit)))
    now = series.points[-1].time
    if crossing is None or not now <= crossing.time <= now + LONGEST:
        return None
    is_far = crossing.latest > now + LONGEST
    return Due(
        limit,
        _day(series, crossing.time),
        _day(series, crossing.earliest),
        None if is_far else _day(series, crossing.latest),
    )


def _day(series: Series, years: float) -> date:
    """The day so many years after the first number that can be compared."""
    return series.comparable[0].day + timedelta(days=round(years * DAYS_A_YEAR))
