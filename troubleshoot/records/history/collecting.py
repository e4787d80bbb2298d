"""The numbers of a unit's past visits, gathered from its journals.

Each visit is read as its own report reads it, with what it knew of the unit; what it did not tell
is filled in from the register, for nothing is done by it any more.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import in_a_line
from troubleshoot.reasoning.readings.expected_now import of_its_like
from troubleshoot.reasoning.readings.readings import Reading, take_readings
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import InputRefused, Unit, read_unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.records.history.parts import is_another, known_then, parts_of
from troubleshoot.records.history.series import Read, Series
from troubleshoot.records.round_sheet import quantities_of
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.events import replay
from troubleshoot.visit.kept.journal import JournalError
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.understanding import understood
from troubleshoot.visit.state import VisitState

NO_DAY: Final = "nothing tells on which day it was, so its numbers stand in no history"


@frozen
class History:
    """All series of a unit, by test and place; `problems`: visits that cannot be read, and why."""

    series: tuple[Series, ...]
    problems: tuple[str, ...]


def history_of(
    knowledge: Knowledge, journals: Sequence[Path], on_record: Mapping[str, object]
) -> History:
    """The history of a unit from its journals, in whatever order they come."""
    visits, problems = [], []
    for path in journals:
        try:
            visits.append(_past(knowledge, path, on_record))
        except JournalError as error:
            problems.append(str(error))
        except _NoDay as error:
            problems.append(f"{in_a_line(str(path))}: {error}")
    visits.sort(key=lambda past: (past.day, past.visit))
    found: dict[Spot, list[Read]] = {}
    for past in visits:
        for spot, reads in found.items():
            if spot[0] in past.mended:
                reads[:] = [replace(read, before_repair=True) for read in reads]
        for spot, read in past.numbers.items():
            is_before = spot[0] in past.mended and not read.after_repair
            found.setdefault(spot, []).append(replace(read, before_repair=is_before))
    _tell_changes(knowledge, visits, found, on_record)
    order = {name: number for number, name in enumerate(knowledge.tests)}
    keys = sorted(found, key=lambda key: (order[key[0]], str(key[1] or "")))
    every = tuple(series_of(knowledge, *key, found[key]) for key in keys)
    return History(tuple(_told_once(every)), tuple(problems))


@frozen
class _Past:
    """One visit: its numbers, the tests that show what was put right on it, the unit as it was."""

    visit: str
    day: date
    numbers: Mapping[Spot, Read]
    mended: frozenset[str]
    unit: Unit


def _tell_changes(
    knowledge: Knowledge,
    visits: Sequence[_Past],
    found: Mapping[Spot, list[Read]],
    on_record: Mapping[str, object],
) -> None:
    """Mark the numbers from before a part was changed, by what each visit knew of the unit.

    The register as it is today comes last: it may have been put right since the last visit.
    """
    units = [(past.visit, past.unit) for past in visits]
    with suppress(InputRefused):
        units.append(("", read_unit(knowledge, on_record)))
    for (test, at), reads in found.items():
        known: dict[str, str | float] = {}
        gone: set[str] = set()
        for number, (_, unit) in enumerate(units):
            now = parts_of(knowledge, unit, knowledge.tests[test], at)
            if is_another(known, now):
                gone.update(visit for visit, _ in units[:number])
            known |= now
        reads[:] = [replace(read, before_change=read.visit in gone) for read in reads]


class _NoDay(ValueError):
    """Nothing tells on which day a visit was."""


def _past(knowledge: Knowledge, path: Path, on_record: Mapping[str, object]) -> _Past:
    """One visit by its journal. Raises JournalError, _NoDay."""
    events = understood(knowledge, read_visit(path).events).events
    day = day_of(path.stem, (event.time for event in events))
    if day is None:
        raise _NoDay(NO_DAY)
    state = replay(knowledge, events)
    numbers = numbers_of(knowledge, path.stem, day, state, on_record)
    unit = known_then(knowledge, state)
    return _Past(path.stem, day, numbers, frozenset(_mended(knowledge, state)), unit)


def _mended(knowledge: Knowledge, state: VisitState) -> Iterator[str]:
    """The tests in which what was put right on a visit shows, and those that prove it."""
    for said in state.repairs:
        fault = knowledge.faults[said.fault]
        yield from (finding.test for item in fault.evidence for finding in item.findings)
        yield from (proof.finding.test for proof in fault.proof if proof.finding is not None)


def _told_once(every: Sequence[Series]) -> Iterator[Series]:
    """Every series but those computed of a quantity that is read there itself."""
    read = {(each.quantity, each.at) for each in every if each.test.kind != "computed"}
    for each in every:
        if each.test.kind != "computed" or (each.quantity, each.at) not in read:
            yield each


def series_of(knowledge: Knowledge, name: str, at: Place | None, reads: list[Read]) -> Series:
    test = knowledge.tests[name]
    quantity = quantities_of(test)[0]
    ordered = tuple(sorted(reads, key=lambda read: (read.day, read.visit)))
    return Series(test, at, quantity, knowledge.quantities[quantity].unit, ordered)


def day_of(visit: str, times: Iterable[str]) -> date | None:
    """The day of a visit by its events, or by its name where they have no time; None for none."""
    for time in (*times, visit[:10]):
        try:
            return datetime.fromisoformat(time).date()
        except ValueError:
            continue
    return None


def numbers_of(
    knowledge: Knowledge, visit: str, day: date, state: VisitState, on_record: Mapping[str, object]
) -> dict[Spot, Read]:
    """Every number of one visit that counts, by test and place: the last one where there are two.

    Between repairs each stretch is read by itself, as nothing is computed across one.
    """
    case = replace(state.case, unit=_unit(knowledge, state, on_record))
    found: dict[Spot, Read] = {}
    for repairs in sorted({answer.repairs for answer in case.answers}):
        until = tuple(answer for answer in case.answers if answer.repairs <= repairs)
        readings, values = take_readings(knowledge, replace(case, answers=until))
        for reading in readings:
            read = _number(knowledge, Read(visit, day, 0.0, 0.0), reading, values)
            if read is not None:
                found[reading.test, reading.at] = read
    return found


def _number(knowledge: Knowledge, blank: Read, reading: Reading, values: Values) -> Read | None:
    """The number of one reading on a visit; None where it has none, or does not count."""
    test, at = knowledge.tests[reading.test], reading.at
    quantity = next(iter(quantities_of(test)), "")
    value = values.get(quantity, at) if quantity else None
    if value is None or not reading.valid:
        return None
    outdoor = values.get("outdoor-temperature", None)
    read = replace(
        blank,
        value=value.number,
        u=value.whole_u,
        expected=of_its_like(quantity, at, values),
        outdoor=None if outdoor is None else outdoor.number,
        outcome=test.spoken_all(", ".join(reading.seen)) if reading.seen else "",
        after_repair=reading.after_repair,
        rated=dict(_rated(knowledge, quantity, at, values)),
    )
    return _judged(read, reading, quantity)


def _rated(
    knowledge: Knowledge, quantity: str, at: Place | None, values: Values
) -> Iterator[tuple[str, float]]:
    """The plate values that an alarm compares a number with, where they are known."""
    for alarm in knowledge.drift_alarms.values():
        if alarm.quantity == quantity and alarm.relative_to is not None:
            value = values.plate_value(alarm.relative_to, at)
            if value is not None:
                yield alarm.relative_to, value


def _judged(read: Read, reading: Reading, quantity: str) -> Read:
    """A number with the sound band that it was held to, where that is of its own quantity."""
    judged = reading.classified
    if judged is None or judged.quantity != quantity:
        return read
    return replace(read, low=judged.low, high=judged.high)


def _unit(knowledge: Knowledge, state: VisitState, on_record: Mapping[str, object]) -> Unit:
    """The unit as the visit knew it, with the register's for what it was not told."""
    try:
        return read_unit(knowledge, {**on_record, **state.unit_data}, state.own_record)
    except InputRefused:  # they speak of places that the other has not: the visit stands
        return state.unit
