"""The backlog in sentences, as a report for a page, and as a table for a spreadsheet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.table import table_lines
from troubleshoot.outside.text import markdown
from troubleshoot.records.backlog.collecting import Backlog, Waiting
from troubleshoot.records.backlog.repeats import Repeat
from troubleshoot.records.backlog.worst import Worst
from troubleshoot.records.history.told import PAST, due_lines, name_of, number
from troubleshoot.records.stands import open_lines
from troubleshoot.visit.telling.wording import counted

WHERE: Final = ("site", "roof", "serves", "matters")
NO_VISIT: Final = "no visit yet"
NOTHING_WAITS: Final = "Nothing waits on these:"
CAME_BACK: Final = "Came back"
COLUMNS: Final = (
    "unit", *WHERE, "stops", "open", "came-back", "trend", "reaches-limit", "earliest", "latest",
    "last-visit", "round-due",
)  # fmt: skip


def site_of_all(backlog: Backlog) -> str:
    """The site where all units are; empty where there are several, or none is told."""
    sites = {each.entry.own.get("site", "") for each in backlog.units}
    return sites.pop() if len(sites) == 1 else ""


def about(waiting: Waiting, backlog: Backlog) -> str:
    """Where a unit is, what it serves, how much it matters, its last visit; a site of all once."""
    own, known = waiting.entry.own, site_of_all(backlog)
    told = (own[key] for key in WHERE if key in own and own[key] != known)
    return "; ".join((*told, last_visit(waiting)))


def last_visit(waiting: Waiting) -> str:
    """Its last visit, and whether the round of the season is due."""
    last = waiting.stands.last
    said = f"last visit {last}" if last else NO_VISIT
    return f"{said}; its round is due" if waiting.is_due else said


def stop_lines(waiting: Waiting) -> tuple[str, ...]:
    """What stops a unit, a sentence each."""
    return tuple(stop.lines[0] for stop in waiting.stands.stops)


def waiting_lines(knowledge: Knowledge, waiting: Waiting) -> Iterator[str]:
    """What waits on a unit beside its STOPs, a sentence each."""
    yield from open_lines(waiting.stands)
    yield from (f"{CAME_BACK}: {_repeat(each)}." for each in waiting.repeats)
    if waiting.worst is not None:
        yield from _worst_lines(knowledge, waiting.worst)


def _repeat(repeat: Repeat) -> str:
    *first, last = (day.isoformat() for day in repeat.days)
    return f"{repeat.fault.name}, put right on {', '.join(first)} and {last}"


def _worst_lines(knowledge: Knowledge, worst: Worst) -> Iterator[str]:
    """What drifts worst, and when it reaches its limit."""
    yield f"Drifts: {_trend(knowledge, worst)}."
    if not worst.is_past:
        yield from due_lines(worst.series, worst.due)


def _trend(knowledge: Knowledge, worst: Worst) -> str:
    """A series with its alarms; with its last number where that is past its limit."""
    said = "; ".join(each.alarm.text for each in worst.alarms)
    name = name_of(knowledge, worst.series)
    if worst.is_past:
        last = worst.series.comparable[-1]
        past = f"{number(last.value, worst.series)} on {last.day}, past its sound band"
        said = f"{said}; {past}" if said else past
    return f"{name}: {said}" if said else name


def summary(backlog: Backlog) -> str:
    """How many units there are, and on how many of them what waits."""
    units = backlog.units
    stopped = sum(bool(each.stands.stops) for each in units)
    left, back = sum(each.is_open for each in units), sum(bool(each.repeats) for each in units)
    drifting, due = sum(each.worst is not None for each in units), sum(e.is_due for e in units)
    site, number = site_of_all(backlog), counted(len(units), "unit", "units")
    return (
        f"{site}{': ' if site else ''}{number}; {stopped} under a STOP, {left} with something "
        f"open, {back} with a fault that came back, {drifting} drifting, {due} due for a round."
    )


def backlog_table(knowledge: Knowledge, backlog: Backlog) -> str:
    """Every unit as CSV, what matters most first."""
    return "".join(table_lines(COLUMNS, (_cells(knowledge, each) for each in backlog.units)))


def _cells(knowledge: Knowledge, waiting: Waiting) -> Mapping[str, str]:
    worst, own = waiting.worst, waiting.entry.own
    due = None if worst is None else worst.due
    days = (None, None, None) if due is None else (due.day, due.earliest, due.latest)
    reached, earliest, latest = ("" if day is None else day.isoformat() for day in days)
    return {
        "unit": waiting.entry.name,
        **{key: own[key] for key in WHERE if key in own},
        "stops": " ".join(stop_lines(waiting)),
        "open": " ".join(open_lines(waiting.stands)),
        "came-back": "; ".join(map(_repeat, waiting.repeats)),
        "trend": "" if worst is None else _trend(knowledge, worst),
        "reaches-limit": reached,
        "earliest": earliest,
        "latest": latest,
        "last-visit": waiting.stands.last,
        "round-due": "yes" if waiting.is_due else "no",
    }


def backlog_report(
    knowledge: Knowledge, backlog: Backlog, over_others: Sequence[str], today: date
) -> str:
    """The backlog in Markdown. `over_others`: STOPs over units that the register has not."""
    return "\n".join(_report(knowledge, backlog, over_others, today))


def _report(
    knowledge: Knowledge, backlog: Backlog, over_others: Sequence[str], today: date
) -> Iterator[str]:
    yield f"# Backlog: {today}"
    yield ""
    stops = (line for each in backlog.units for line in stop_lines(each))
    for line in (*over_others, *stops):
        yield f"**{markdown(line)}**  "
        yield ""
    yield markdown(summary(backlog))
    yield ""
    yield from (f"- {markdown(problem)}" for problem in backlog.problems)
    for each in (each for each in backlog.units if each.waits):
        yield f"## {markdown(each.entry.name)}"
        yield ""
        yield markdown(about(each, backlog))
        yield ""
        lines = (*stop_lines(each), *waiting_lines(knowledge, each))
        yield from (f"- {markdown(line)}" for line in lines)
        yield ""
    where = tuple(key for key in WHERE if key != "site" or not site_of_all(backlog))
    yield from _others([each for each in backlog.units if not each.waits], where)
    yield PAST


def _others(units: Sequence[Waiting], where: Sequence[str]) -> Iterator[str]:
    """The units on which nothing waits, as a table. `where`: what is told of where each is."""
    if not units:
        return
    yield f"## {NOTHING_WAITS.removesuffix(':')}"
    yield ""
    heads = ("unit", *where, "last visit", "round due")
    yield f"| {' | '.join(heads)} |"
    yield f"| {' | '.join('---' for _ in heads)} |"
    for each in units:
        own = (each.entry.own.get(key, "") for key in where)
        due = "yes" if each.is_due else ""
        cells = (each.entry.name, *own, each.stands.last or NO_VISIT, due)
        yield f"| {' | '.join(map(markdown, cells))} |"
    yield ""
