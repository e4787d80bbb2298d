"""Rows of logged readings: each judged by itself, its STOPs first, what is not understood named."""

from __future__ import annotations

import io
from collections.abc import Iterator

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.outside.table import begin_table
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.reasoning.unit.places import SPOKEN_KINDS
from troubleshoot.records.logged.heading import heading_of, logged_columns
from troubleshoot.records.logged.judging import Judge, Judged
from troubleshoot.records.logged.results import RESULT_COLUMNS, Tally, cells_of_result
from troubleshoot.records.register.entry import Entry, told
from troubleshoot.visit.kept.unit_names import in_plain

FACTS = {"refrigerant": "R-410A", "circuits": "2", "metering": "txv", "heat": "gas"}
STOP = "STOP over RTU-9, visit 2026-11-25-1: carbon monoxide."


def judge_of(
    knowledge: Knowledge, text: str, standing: dict[str, tuple[str, ...]] | None = None
) -> Iterator[Judged]:
    units = {in_plain(n): told(knowledge, Entry(n), FACTS) for n in ("RTU-7", "RTU-9")}
    columns, rows = begin_table(io.StringIO(text), "log.csv")
    judge = Judge(knowledge, heading_of(knowledge, columns, "log.csv"), units, standing or {})
    return map(judge.judged, rows)


def test_a_row_names_its_cause_by_the_words_of_tests(shipped: Knowledge) -> None:
    text = (
        "unit,date,time,complaint,contactor-contacts at contactor 2,heat\n"
        "rtu 7,2026-07-12,14:30,fails-hot-afternoons,pitted; pole-burnt-away,electric\n"
    )
    (found,) = judge_of(shipped, text)
    assert (found.row, found.unit) == (2, "RTU-7")
    assert found.moment == {"date": "2026-07-12", "time": "14:30"}
    assert found.causes[0]["id"] == "contactor-pole-burnt-away"
    assert found.causes[0]["at"] == "contactor 2"
    cells = cells_of_result(found)
    assert set(cells) <= set(RESULT_COLUMNS)
    assert cells["cause-1"].endswith(", contactor 2")


def test_a_stop_comes_before_any_cause(shipped: Knowledge) -> None:
    text = "unit,room-carbon-monoxide\nRTU-9,300 ppm\nRTU-7,\n"
    stopped, silent = judge_of(shipped, text, {in_plain("RTU-9"): (STOP,)})
    assert stopped.standing == (STOP,)
    assert stopped.ending == "stopped" and stopped.stops
    assert stopped.dangers[0].startswith("DANGER - STOP")
    order = RESULT_COLUMNS.index
    assert order("standing-stops") < order("stops") < order("dangers") < order("cause-1")
    assert silent.standing == silent.stops == ()
    assert silent.ending == "not-examined"


def test_nothing_is_called_sound_over_a_stop_that_stands(shipped: Knowledge) -> None:
    text = "unit,external-static,return-air-temperature\nRTU-9,0.4 in wc,72 F\nRTU-9,,\n"
    standing = {in_plain("RTU-9"): (STOP,)}
    assert [each.ending for each in judge_of(shipped, text)] == ["nothing-wrong", "not-examined"]
    assert [each.ending for each in judge_of(shipped, text, standing)] == ["stopped", "stopped"]


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("RTU-8,,,,", 'row 2, column unit: the register has no unit "RTU-8", and the row tells no'),
        (",1 psig,,,", "row 2, column unit: it names no unit"),
        ("RTU-7,hot,,,", "row 2, column suction-pressure at circuit 2: "),
        ("RTU-7,,no-such,,", 'row 2, column complaint: "no-such" is not a complaint'),
        ("RTU-7,,,R-99,", 'row 2, column refrigerant: "R-99" is no answer here'),
        ("RTU-7,,,,8 V", "row 2, column compressor-rla at compressor 2: "),
        ("RTU-7,,,,,,", "row 2: 7 cells under 5 headings"),
    ],
)
def test_a_bad_row_is_named_with_its_column_and_the_rest_is_done(
    shipped: Knowledge, row: str, said: str
) -> None:
    heading = (
        "unit,suction-pressure at circuit 2,complaint,refrigerant,compressor-rla at compressor 2"
    )
    bad, good = judge_of(shipped, f"{heading}\n{row}\nRTU-7,128 psig,,,\n")
    assert bad.ending == "not-taken" and bad.bad[0].startswith(said), bad.bad
    assert good.bad == () and good.causes
    tally = Tally()
    for each in (bad, good):
        tally.take(each)
    assert tally.not_taken == 1
    assert next(iter(tally.lines())).startswith("2 rows, 1 not-taken")


def test_a_danger_in_a_bad_row_is_told_all_the_same(shipped: Knowledge) -> None:
    text = "unit,room-carbon-monoxide,suction-pressure at circuit 1\nRTU-7,300 ppm,rubbish\n"
    (found,) = judge_of(shipped, text)
    assert found.bad and found.dangers[0].startswith("DANGER - STOP")


@pytest.mark.parametrize(
    ("heading", "said"),
    [
        ("date,heat", "it has no column unit"),
        ("unit,suction-presure", 'no column is called "suction-presure"; did you mean suction-pr'),
    ],
)
def test_a_table_of_other_columns_is_refused(shipped: Knowledge, heading: str, said: str) -> None:
    with pytest.raises(NotUsable, match=said):
        judge_of(shipped, f"{heading}\nRTU-7,1\n")


def test_every_column_that_is_documented_is_taken(shipped: Knowledge) -> None:
    keys = [column.key for column in logged_columns(shipped)]
    assert len(keys) == len(set(keys))
    heading_of(shipped, keys, "log.csv")
    shown = [column.meaning.partition("of one place: ")[2] for column in logged_columns(shipped)]
    unit = read_unit(shipped, {"circuits": 2})
    for place in {column.partition(" at ")[2] for column in shown} - {""}:
        assert place in {str(each) for kind in SPOKEN_KINDS for each in unit.layout.places(kind)}
    assert {"unit", "complaint", "compressor-rla", "suction-pressure", "heat"} <= {*keys}
