"""A unit's history in sentences: what drifts, its numbers, the line through them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import markdown
from troubleshoot.quantities.trend import LEAST, Trend
from troubleshoot.quantities.units import unit as unit_of
from troubleshoot.records.history.drift import Due, Raised, due, is_real, trend_of
from troubleshoot.records.history.series import Read, Series
from troubleshoot.records.refrigerant.account import CircuitAccount
from troubleshoot.records.refrigerant.told import refrigerant_section
from troubleshoot.visit.telling.wording import counted

HEIGHTS: Final = "▁▂▃▄▅▆▇█"
"""The steps of a sparkline, the lowest first."""
PLAIN_HEIGHTS: Final = "_.-~=+*#"
"""The same where a terminal cannot show those."""
DRAWN: Final = (
    "Dots: what was read. The line through them, with its 95 % band shaded. Dotted: the ends of "
    "the sound band."
)
PAST: Final = (
    "A line through numbers tells of the past; what the unit is like today is read on the unit."
)
NO_DRIFT: Final = "Nothing drifts that the rules watch."
LEAST_SPAN: Final = 4.0
"""Standard uncertainties of the meter that a sparkline's height is worth at least."""


def name_of(knowledge: Knowledge, series: Series) -> str:
    """What a series is of: its test, or for one that is computed what it is."""
    name = series.test.name
    if series.test.kind == "computed":
        said = knowledge.spoken(series.quantity)
        name = f"{said[:1].upper()}{said[1:]}"
    return f"{name}, {series.at}" if series.at else name


def sparkline(series: Series, heights: str = HEIGHTS) -> str:
    """A step for each number that can be compared; what the meter alone may make stays low."""
    values = [point.value for point in series.points]
    if not values:
        return ""
    middle = (min(values) + max(values)) / 2.0
    error = max(series.levelled_error(read) for read in series.comparable)
    span = max(max(values) - min(values), LEAST_SPAN * error)
    if span <= 0.0:
        return heights[len(heights) // 2] * len(values)
    top = len(heights) - 1
    return "".join(heights[round(((value - middle) / span + 0.5) * top)] for value in values)


def caption_of(knowledge: Knowledge, series: Series) -> str:
    """What a figure of a series shows, and from when to when."""
    over = " over what was to be expected" if series.is_bound_to_weather else ""
    first, last = series.comparable[0].day, series.comparable[-1].day
    return f"{name_of(knowledge, series)}{over}: {first} to {last}"


def number(value: float, series: Series) -> str:
    """A number with its unit, as the trade writes it."""
    return f"{value:.4g} {_unit(series)}"


def _readings(count: int) -> str:
    return counted(count, "reading", "readings")


def _unit(series: Series) -> str:
    return unit_of(series.unit.removesuffix("-diff")).spoken


def alarm_lines(knowledge: Knowledge, raised: Sequence[Raised]) -> tuple[str, ...]:
    """What is said of the alarms of one series: their words, the numbers, when its limit comes."""
    series, trend = raised[0].series, raised[0].trend
    first, last = series.comparable[0], series.comparable[-1]
    sources = dict.fromkeys(knowledge.published(each.alarm.source) for each in raised)
    return (
        f"{name_of(knowledge, series)}: {'; '.join(each.alarm.text for each in raised)}.",
        f"{number(first.value, series)} on {first.day}, {number(last.value, series)} on "
        f"{last.day}{_weather_too(series, first, last)}.",
        line_words(series, trend),
        *due_lines(series, due(series, trend)),
        f"Source: {'; '.join(sources)}",
    )


def _weather_too(series: Series, first: Read, last: Read) -> str:
    """Beside numbers that are bound to weather what was to be expected then."""
    if not series.is_bound_to_weather:
        return ""
    return f"; a sound unit would have shown {first.expected} and {last.expected}"


def line_words(series: Series, trend: Trend) -> str:
    """The slope a year with its band."""
    share = 100.0 if series.in_proportion else 1.0
    unit = "%" if series.in_proportion else _unit(series)
    low, high = (share * end for end in trend.band)
    over = " over what was to be expected" if series.is_bound_to_weather else ""
    return (
        f"The line{over}: {share * trend.slope:+.2g} {unit} a year, between {low:+.2g} and "
        f"{high:+.2g} (95 %, {counted(trend.points, 'reading', 'readings')})."
    )


def due_lines(series: Series, when: Due | None) -> Iterator[str]:
    """When a number will have left its sound band, where that is known."""
    if when is not None:
        latest = "no end that is known" if when.latest is None else f"{when.latest:%Y-%m}"
        yield (
            f"It reaches {number(when.limit, series)}, the end of its sound band, about "
            f"{when.day:%Y-%m}, between {when.earliest:%Y-%m} and {latest}."
        )


def trend_lines(series: Series) -> Iterator[str]:
    """The line through what can be compared, or why there is none."""
    before = sum(read.before_repair for read in series.reads)
    changed = sum(read.before_change and not read.before_repair for read in series.reads)
    left_out = len(series.reads) - len(series.comparable) - before - changed
    if series.is_weather:
        yield "It tells of the day: no line is made of it."
        return
    if before:
        yield f"Not compared, since it is from before a repair: {_readings(before)}."
    if changed:
        yield f"Not compared, since it is from before a part was changed: {_readings(changed)}."
    if left_out:
        yield (f"Not compared, since what was to be expected is not known: {_readings(left_out)}.")
    trend = trend_of(series)
    if trend is None:
        yield f"Too few that can be compared for a line: {len(series.comparable)} of {LEAST}."
        return
    yield line_words(series, trend)
    if not is_real(series, trend):
        yield "That is no more than chance, or its meters, may make."
    yield from due_lines(series, due(series, trend))


def history_report(
    knowledge: Knowledge,
    unit: str,
    every: Sequence[Series],
    raised: Sequence[Raised],
    refrigerant: Sequence[CircuitAccount] = (),
) -> str:
    """A unit's history in Markdown: what drifts, the numbers of each series, its refrigerant.

    Figures stand before its last paragraph.
    """
    told = refrigerant_section(knowledge, refrigerant)
    return "\n".join((*_report(knowledge, unit, every, raised), *told, *_drawn()))


def _report(
    knowledge: Knowledge, unit: str, every: Sequence[Series], raised: Sequence[Raised]
) -> Iterator[str]:
    yield f"# History: {markdown(unit)}"
    yield ""
    for series in every:
        own = [each for each in raised if each.series is series]
        if own:
            head, *more = alarm_lines(knowledge, own)
            yield f"**{markdown(head)}**  "
            yield ""
            yield from (f"- {markdown(line)}" for line in more)
            yield ""
    if not raised:
        yield NO_DRIFT
        yield ""
    yield "## Numbers"
    yield ""
    heads = ("what", "first", "first day", "last", "last day", "readings")
    yield f"| {' | '.join(heads)} |"
    yield f"| {' | '.join('---' for _ in heads)} |"
    for series in (each for each in every if not each.is_weather):
        first, last = series.reads[0], series.reads[-1]
        cells = (
            name_of(knowledge, series),
            number(first.value, series),
            f"{first.day}",
            number(last.value, series),
            f"{last.day}",
            f"{len(series.reads)}",
        )
        yield f"| {' | '.join(map(markdown, cells))} |"
    yield ""


def _drawn() -> Iterator[str]:
    yield "## Drawn"
    yield ""
    yield DRAWN
    yield ""
    yield PAST
