"""The heading of a table of logged readings: what each of its columns holds.

Beside the unit, its moment and the call a column is an equipment fact or plate value, a condition,
or the reading of a test, each under the name that rules and register have for it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.reasoning.unit.equipment import suggest
from troubleshoot.records.register.columns import (
    AT,
    NAME,
    OWN,
    WORDS,
    Column,
    columns_of,
    of_one_place,
)

UNIT: Final = "unit"
MOMENT: Final = ("date", "time")
CALL: Final = "complaint"
SEVERAL: Final = ";"
"""Between several outcomes in one cell: pitted; pole-burnt-away."""


@frozen
class Heading:
    """The columns of a table by what they hold; `of_unit`, `conditions` and `readings` by name."""

    moment: tuple[str, ...]
    has_call: bool
    of_unit: tuple[str, ...]
    conditions: tuple[str, ...]
    readings: tuple[str, ...]


def heading_of(knowledge: Knowledge, columns: Sequence[str], where: str) -> Heading:
    """What the columns of a table hold. Raises NotUsable with the first that is none of ours."""
    if UNIT not in columns:
        raise NotUsable(where, f"it has no column {UNIT}", "a row is one unit at one moment")
    named = {UNIT, *MOMENT, CALL}
    of_unit, conditions, readings = [], [], []
    for column in columns:
        key, _, place = column.partition(AT)
        if column in named:
            continue
        if key in knowledge.tests:
            readings.append(column)
        elif key in knowledge.plate_values or (key in knowledge.facts and not place):
            of_unit.append(column)
        elif key in knowledge.quantities and not place:
            conditions.append(column)
        else:
            names = (*named, *knowledge.tests, *knowledge.facts, *knowledge.plate_values)
            raise NotUsable(where, f'no column is called "{column}"', suggest(key, names))
    moment = tuple(name for name in MOMENT if name in columns)
    return Heading(moment, CALL in columns, tuple(of_unit), tuple(conditions), tuple(readings))


def logged_columns(knowledge: Knowledge) -> Iterator[Column]:
    """Every column that a table of logged readings may have."""
    about = "the row"
    yield Column(UNIT, UNIT, "the unit's name in the register", WORDS, about)
    yield Column("date", "date", "its day; it is handed on as it stands", "2026-07-12", about)
    yield Column("time", "time", "its hour; it is handed on as it stands", "14:30", about)
    calls = "the name of a complaint, as fails-hot-afternoons; empty for a PM"
    yield Column(CALL, CALL, "what the caller complains of", calls, about)
    for column in columns_of(knowledge):
        if column.key not in (NAME, *OWN, *knowledge.tests):
            yield column
    for test in knowledge.tests.values():
        meaning = f"{test.name}{of_one_place(test.id, test.per)}"
        yield Column(test.id, test.name, meaning, _takes(test), "readings")


def _takes(test: Test) -> str:
    """What may stand in a cell of a test: a number, a word, or either."""
    words = " or ".join(outcome.id for outcome in test.outcomes)
    several = f", several with {SEVERAL} between" if test.choose == "several" else ""
    if not test.reads:
        return words + several
    return f"the reading as typed{f'; or {words}' if words else ''}{several}"
