"""The last numbers of a unit beside the blank for the next: on a round, and on its sheet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.history.collecting import history_of
from troubleshoot.records.history.drift import alarms_of
from troubleshoot.records.history.series import Series
from troubleshoot.records.history.told import NO_DRIFT, name_of, number

COMPARED: Final = "compare-with-last-visits"
"""The point of a round at which the numbers of before are looked at together."""
MOST_VISITS: Final = 20
"""Visits that are read for it, so that the first test of a round is not waited for."""
MOST: Final = 3
"""Numbers that stand beside a blank."""


class NumbersBefore:
    """What the last visits to a unit have read, of its journals with the latest first.

    `on_record`: the register's facts and values.
    """

    def __init__(
        self, knowledge: Knowledge, journals: Sequence[Path], on_record: Mapping[str, object]
    ) -> None:
        self._knowledge = knowledge
        latest = journals[:MOST_VISITS]
        self._series = history_of(knowledge, latest, on_record).series if latest else ()

    def of(self, test: str, at: str | None) -> str:
        """The last numbers of a test at a place, the latest first; empty for none.

        Where they are looked at together, what of them drifts.
        """
        if test == COMPARED:
            return self._drifts()
        for series in self._series:
            if series.test.id == test and _place(series) in (at, ""):
                return _last(series)
        return ""

    def _drifts(self) -> str:
        """Every alarm that the numbers raise, with what it is of; empty without any numbers."""
        if not self._series:
            return ""
        raised = [each for series in self._series for each in alarms_of(self._knowledge, series)]
        said = (f"{each.alarm.text} ({name_of(self._knowledge, each.series)})" for each in raised)
        return "; ".join(said) or NO_DRIFT.removesuffix(".")

    def lines(self, test: str) -> Iterator[str]:
        """The same for each place of a test that was read, a line each."""
        for series in self._series:
            if series.test.id == test:
                place = f", {series.at}" if series.at else ""
                yield f"Before{place}: {_last(series)}"


def _place(series: Series) -> str:
    return str(series.at) if series.at else ""


def _last(series: Series) -> str:
    reads = series.reads[: -MOST - 1 : -1]
    return ", ".join(f"{number(read.value, series)} in {read.day:%Y-%m}" for read in reads)
