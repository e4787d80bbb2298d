"""Of a unit's trends the worst: past its limit, else the next to reach it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from tests.records.history.test_drift import series
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.backlog.worst import worst_of
from troubleshoot.records.history.series import Series

TODAY = date(2026, 11, 30)


def falling(knowledge: Knowledge, low: float, a_year: float = 0.5) -> Series:
    """A flame that loses so much every year, its sound band ending at `low`."""
    years = (0.0, 1 / 6, 1.0, 7 / 6, 2.0)
    return series(
        knowledge, "flame-current", [4.0 - a_year * year for year in years], low=low, high=None
    )


def test_what_is_past_its_limit_is_worse_than_what_will_be(shipped: Knowledge) -> None:
    past, soon, later = (falling(shipped, low) for low in (3.5, 2.8, 1.0))
    found = [worst_of(shipped, every, TODAY) for every in ([later, soon], [later, soon, past])]
    assert [each is not None and each.series for each in found] == [soon, past]
    worst = worst_of(shipped, [past], TODAY)
    assert worst is not None and worst.is_past
    worst = worst_of(shipped, [soon], TODAY)
    assert worst is not None and worst.due is not None and not worst.is_past
    assert date(2026, 5, 1) < worst.due.day < date(2026, 12, 31)


@pytest.mark.parametrize("values", [[4.0, 4.0, 4.0, 4.0, 4.0], [4.0, 3.0]])
def test_what_does_not_drift_is_none(shipped: Knowledge, values: list[float]) -> None:
    assert worst_of(shipped, [series(shipped, "flame-current", values)], TODAY) is None


def test_a_limit_far_ahead_is_told_by_its_alarm_alone(shipped: Knowledge) -> None:
    slow = falling(shipped, low=1.0, a_year=0.2)
    assert worst_of(shipped, [slow], TODAY) is None
    soon = replace(slow, reads=tuple(replace(read, low=3.5) for read in slow.reads))
    assert worst_of(shipped, [soon], TODAY) is not None
