"""What a circuit was given and lost: its running total, and how fast it leaks.

The leak rate is that of 40 CFR 82.152 (ozone-depleting refrigerants) and 84.102 (HFCs), by both of
its methods, of the circuit: where circuits are apart each counts as an appliance of its own. What
was recovered and goes back is no loss; the rest of what is added made a loss up (common practice,
no source). The numbers are computed here; what the rule asks for is judged by people.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date, timedelta
from itertools import groupby
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.quantities.refrigerant import leak_rate, rolling_leak_rate
from troubleshoot.records.refrigerant.moved import Moved
from troubleshoot.visit.weighing import ADDED, RECOVERED

SOURCE: Final = "40 CFR 82.152 and 84.102, annualizing and rolling average methods"
DAYS: Final = 365
NO_CHARGE: Final = "its full charge is not on record"
NO_WEIGHT: Final = "a weight was not told"
NONE_BEFORE: Final = "nothing that was added before is on record"
TWICE: Final = 2


@frozen
class MadeUp:
    """What a day's additions made up beyond what had been recovered. `pounds`: None: not known.

    `put_back`: pounds of it that had been recovered before.
    """

    day: date
    pounds: float | None
    put_back: float = 0.0


@frozen
class Rate:
    """A leak rate in percent of the full charge a year; None where it is not known, and why."""

    percent: float | None
    why_not: str = ""


@frozen
class CircuitAccount:
    """One circuit. `full_charge`: pounds, None where not on record; `made_up`: by day.

    `added`, `recovered`: totals of what was weighed; `not_told`: how many weights were not.
    """

    circuit: str
    moved: tuple[Moved, ...]
    full_charge: float | None
    added: float
    recovered: float
    not_told: int
    made_up: tuple[MadeUp, ...]

    @property
    def last(self) -> MadeUp | None:
        """The last day on which refrigerant was added."""
        return self.made_up[-1] if self.made_up else None

    @property
    def annualized(self) -> Rate:
        """By the last addition, over the days since the one before it; at most a year of them."""
        if len(self.made_up) < TWICE:
            return Rate(None, NONE_BEFORE)
        before, last = self.made_up[-2:]
        why_not = self._why_not((last,))
        if why_not or last.pounds is None or self.full_charge is None:
            return Rate(None, why_not)
        days = (last.day - before.day).days
        return Rate(leak_rate(last.pounds, self.full_charge, days))

    @property
    def rolling(self) -> Rate:
        """By all that was made up in the 365 days to the last addition."""
        within = self.last_year
        why_not = self._why_not(within)
        if why_not or self.full_charge is None:
            return Rate(None, why_not)
        pounds = sum(each.pounds or 0.0 for each in within)
        return Rate(rolling_leak_rate(pounds, self.full_charge))

    @property
    def last_year(self) -> tuple[MadeUp, ...]:
        """The days of additions in the 365 days to the last of them."""
        if self.last is None:
            return ()
        since = self.last.day - timedelta(days=DAYS)
        return tuple(each for each in self.made_up if each.day > since)

    def _why_not(self, within: Sequence[MadeUp]) -> str:
        if any(each.pounds is None for each in within):
            return NO_WEIGHT
        return NO_CHARGE if self.full_charge is None else ""


def account_of(circuit: str, moved: Sequence[Moved], full_charge: float | None) -> CircuitAccount:
    """The account of a circuit by what was moved there, the earliest first."""
    own = tuple(each for each in moved if each.weighing.circuit == circuit)
    return CircuitAccount(
        circuit,
        own,
        full_charge,
        _total(own, ADDED),
        _total(own, RECOVERED),
        sum(each.pounds is None for each in own),
        tuple(_made_up(own)),
    )


def _total(moved: Sequence[Moved], way: str) -> float:
    return sum(each.pounds or 0.0 for each in moved if each.weighing.way == way)


def _made_up(moved: Sequence[Moved]) -> Iterator[MadeUp]:
    """What was added on each day beyond what was out; on one day it is recovered first."""
    out: float | None = 0.0
    for day, group in groupby(moved, key=lambda each: each.day):
        of_day = tuple(group)
        out = _sum((out, *_pounds(of_day, RECOVERED)))
        added = _pounds(of_day, ADDED)
        if not added:
            continue
        total = _sum(added)
        if total is None or out is None:
            yield MadeUp(day, None)
            out = 0.0
        else:
            back = min(out, total)
            yield MadeUp(day, total - back, back)
            out -= back


def _pounds(moved: Sequence[Moved], way: str) -> tuple[float | None, ...]:
    return tuple(each.pounds for each in moved if each.weighing.way == way)


def _sum(pounds: Sequence[float | None]) -> float | None:
    """A sum; None where a part of it is not known."""
    known = [each for each in pounds if each is not None]
    return sum(known) if len(known) == len(pounds) else None
