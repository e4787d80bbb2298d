"""A part that was changed begins a new line, though nobody called it a repair."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.records.history.test_collecting import START, read
from tests.visit.kept.samples import write_journal
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.records.history.collecting import history_of
from troubleshoot.records.history.parts import MOTOR_OF, is_another
from troubleshoot.records.history.series import Series
from troubleshoot.records.history.told import trend_lines

FAN = "capacitor condenser fan 1"
Rated = tuple[str, ...]


def series_of(
    knowledge: Knowledge, folder: Path, rated: Rated, on_record: str, **facts: str
) -> Series:
    """A capacitor read once a year, with its rating as each year's visit knew it."""
    for number, each in enumerate(rated):
        day = f"{2021 + number}-05-01"
        known = {**facts, **({"capacitor-rated": {FAN: each}} if each else {})}
        record = {"event": "on-record", "trusted": {}, "afresh": known}
        start = {**START, "time": f"{day}T09:00:00+00:00"}
        reading = {**read("capacitance-out-of-circuit", f"{5 - number / 10:g} uF"), "at": FAN}
        write_journal(folder, f"{day}-1", [record, start, reading])
    kept = {"capacitor-rated": {FAN: on_record}} if on_record else {}
    (series,) = history_of(knowledge, [*folder.iterdir()], kept).series
    return series


@pytest.mark.parametrize(
    ("rated", "on_record", "compared"),
    [
        (("5 uF",) * 4, "5 uF", 4),
        (("5 uF", "5 uF", "7.5 uF", "7.5 uF"), "7.5 uF", 2),
        (("5 uF", "7.5 uF", "5 uF", "5 uF"), "5 uF", 2),
        (("5 uF",) * 4, "7.5 uF", 0),
        (("5 uF", "", "", "5 uF"), "", 4),
        (("5 uF", "", "7.5 uF", ""), "", 2),
        (("5 uF", "5.05 uF", "5 uF", "5 uF"), "5 uF", 4),
    ],
)
def test_only_what_was_read_since_the_change_is_compared(
    rated: Rated, on_record: str, compared: int, shipped: Knowledge, tmp_path: Path
) -> None:
    series = series_of(shipped, tmp_path, rated, on_record)
    assert len(series.reads) == len(rated) and len(series.comparable) == compared
    said = " ".join(trend_lines(series))
    assert ("before a part was changed" in said) == (compared < len(rated))


def test_another_kind_of_motor_begins_a_new_line(shipped: Knowledge, tmp_path: Path) -> None:
    for year, motor in (("2024", "three-phase"), ("2025", "electronically-commutated")):
        start = {**START, "unit": {"blower-motor": motor}, "time": f"{year}-05-01T09:00:00+00:00"}
        write_journal(tmp_path, f"{year}-05-01-1", [start, read("blower-amps", "3.1 A")])
    every = history_of(shipped, [*tmp_path.iterdir()], {}).series
    (series,) = (each for each in every if each.test.id == "blower-amps")
    assert [each.before_change for each in series.reads] == [True, False]


PARTS = st.dictionaries(
    st.sampled_from(["a", "b", "c"]),
    st.one_of(st.sampled_from(["gas", "electric"]), st.floats(min_value=0.1, max_value=100.0)),
)


@given(PARTS, PARTS)
def test_what_only_one_knows_changes_nothing(
    one: dict[str, str | float], other: dict[str, str | float]
) -> None:
    assert is_another(one, other) == is_another(other, one)
    assert not is_another(one, one)
    apart = {f"other {name}": value for name, value in other.items()}
    assert not is_another(one, apart)


def test_the_motors_are_told_apart_by_what_the_rules_know(shipped: Knowledge) -> None:
    assert {*MOTOR_OF} <= {*shipped.quantities}
    assert {name for names in MOTOR_OF.values() for name in names} <= {
        *shipped.facts, *shipped.plate_values
    }  # fmt: skip
