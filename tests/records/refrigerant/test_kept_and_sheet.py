"""Refrigerant told outside a visit: kept, struck, damaged, written as a table and taken over."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.cli.test_readme import README, left_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.records.refrigerant.kept import keep_weighings, strike, told_by_hand
from troubleshoot.records.refrigerant.moved import Moved, moved_on_visits
from troubleshoot.records.refrigerant.sheet import (
    COLUMNS,
    as_refrigerant_sheet,
    read_refrigerant_sheet,
)
from troubleshoot.records.register.entry import Entry
from troubleshoot.records.register.files import Register
from troubleshoot.safety.steps import RECOVER
from troubleshoot.visit.events import Started, StepDone, VisitEnded, Weighed
from troubleshoot.visit.events.codec import record_of
from troubleshoot.visit.kept.foreign import foreign_in, strayed
from troubleshoot.visit.kept.journal import Journal
from troubleshoot.visit.weighing import Weighing

Call = Callable[..., tuple[int, str, str]]
COLLEGE = README.parent / "scenarios" / "college"
DAY = date(2026, 5, 4)
ADDED = Weighing("added", "circuit 1", "1 lb 4 oz", "C-7")
UNITS = "name,refrigerant,circuits,charge at circuit 1\nRTU-3,R-410A,two-or-more,9.8 lb\n"
TWO = Entry("RTU-3", unit={"circuits": "two-or-more"})
REGISTER = Register((TWO,), ())


def test_what_is_kept_is_read_back_and_an_entry_can_be_struck(
    shipped: Knowledge, tmp_path: Path
) -> None:
    keep_weighings(tmp_path, "RTU-3", "1", [(DAY, ADDED)])
    keep_weighings(tmp_path, "rtu 03", "1", [(date(2026, 1, 2), ADDED), (DAY, ADDED)])
    found = told_by_hand(shipped, tmp_path, "RTU-3")
    assert [(each.day, each.number, each.pounds) for each in found.moved] == [
        (date(2026, 1, 2), 2, 1.25), (DAY, 1, 1.25), (DAY, 3, 1.25),
    ]  # fmt: skip
    strike(tmp_path, "RTU-3", "1", 1)
    assert [each.number for each in told_by_hand(shipped, tmp_path, "RTU-3").moved] == [2, 3]
    assert told_by_hand(shipped, tmp_path, "RTU-4").moved == ()


def test_it_is_no_visit_that_strayed_and_hides_none(tmp_path: Path) -> None:
    """Regression: every start named the folder as one in which visits may be kept."""
    folder = tmp_path / "refrigerant"
    keep_weighings(folder, "R" * 80, "1" * 9, [(DAY, ADDED)])
    assert foreign_in(tmp_path / "visits") == () == strayed(tmp_path / "visits")
    with Journal.create(folder, "2026-05-04-1", {"program": "1", "rules": "x"}):
        pass
    assert "refrigerant; if visits are kept in it" in foreign_in(tmp_path / "visits")[0]
    assert [path.stem for path in strayed(tmp_path / "visits")] == ["2026-05-04-1"]


def test_damage_is_named_and_hides_nothing_else(shipped: Knowledge, tmp_path: Path) -> None:
    keep_weighings(tmp_path, "RTU-3", "1", [(DAY, ADDED)])
    odd = Weighing("added", "circuit 1", "lots")
    with Journal.open(tmp_path / "rtu3.journal") as journal:
        journal.append(record_of(Weighed(odd, time="2026-05-05T12:00:00+00:00")), {"event": "sang"})
    found = told_by_hand(shipped, tmp_path, "RTU-3")
    assert [each.number for each in found.moved] == [1]
    assert '"lots" is no weight' in found.problems[0] and "sang" in found.problems[1]
    path = tmp_path / "rtu3.journal"
    path.write_bytes(path.read_bytes().replace(b"C-7", b"C-8"))
    found = told_by_hand(shipped, tmp_path, "RTU-3")
    assert found.moved == () and "record 2 is damaged" in found.problems[0]


def test_visits_are_read_and_one_that_cannot_be_hides_no_other(
    shipped: Knowledge, tmp_path: Path
) -> None:
    noon = "2026-05-04T12:00:00+00:00"
    for name in ("2026-05-04-1", "2026-05-04-2"):
        with Journal.create(tmp_path, name, {"program": "1", "rules": "x"}) as journal:
            events = (
                Started(name="RTU-3", unit={"circuits": "two-or-more"}, time=noon),
                StepDone(RECOVER, ("recovered",), "circuit 2", text="9.2 lb into R-3", time=noon),
                VisitEnded("closed", time=noon),
            )
            journal.append(*map(record_of, events))
    paths = sorted(tmp_path.iterdir())
    paths[0].write_bytes(paths[0].read_bytes().replace(b"R-3", b"R-4"))
    found = moved_on_visits(shipped, paths)
    weighing = Weighing("recovered", "circuit 2", "9.2 lb", "R-3")
    assert found.moved == (Moved(DAY, weighing, 9.2, "2026-05-04-2"),)
    assert len(found.problems) == 1 and "2026-05-04-1" in found.problems[0]


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("RTU-9,2026-05-04,1,added,1 lb", 'column unit: the register has no unit "RTU-9"'),
        ("RTU-3,4.5.26,1,added,1 lb", 'column date: "4.5.26" is no day'),
        ("RTU-3,2026-05-04,,added,1 lb", "column circuit: say which: circuit 1 or circuit 2"),
        ("RTU-3,2026-05-04,7,added,1 lb", 'column circuit: this unit has no "circuit 7"'),
        ("RTU-3,2026-05-04,1,leaked,1 lb", 'column way: "leaked" is no answer here'),
        ("RTU-3,2026-05-04,1,added,", "column weight: it tells no weight"),
        ("RTU-3,2026-05-04,1,added,lots", 'column weight: "lots"'),
        ("RTU-3,2026-05-04,1,added,1 lb,C-7,28 psi,27 lb", 'column before: "28 psi"'),
        ("RTU-3,2026-05-04,1,added,1 lb,C-7,,,,,,", "12 cells under 9 headings"),
        ("RTU-3,2026-05-04,1,added,1 lb,C-7", "it is on record already"),
        ("RTU-3,2026-06-02,1,added,1 lb", "column date: 2026-06-02 is still to come"),
    ],
)
def test_a_bad_row_is_named_with_its_column(row: str, said: str, shipped: Knowledge) -> None:
    sheet = f"{','.join(COLUMNS)}\nRTU-3,2026-05-03,2,recovered,2 kg\n{row}\n"
    known = [("RTU-3", DAY, Weighing("added", "circuit 1", "1 lb", "C-7"))]
    today = date(2026, 6, 1)
    found = read_refrigerant_sheet(shipped, sheet, "t.csv", REGISTER, known, today)
    (bad,) = found.bad
    assert bad.row == 3 and said in str(bad)
    assert len(found.told) == 1


@pytest.mark.parametrize("heading", ["unit,date,weight", "unit,date,way,colour", ""])
def test_a_heading_that_is_none_of_ours_is_refused(heading: str, shipped: Knowledge) -> None:
    with pytest.raises(NotUsable):
        read_refrigerant_sheet(shipped, f"{heading}\n", "t.csv", REGISTER, (), DAY)


NAMES = st.text(
    st.characters(codec="utf-8", categories=("L", "N", "P", "S")), min_size=1, max_size=12
)


@given(NAMES, st.sampled_from(["circuit 1", "circuit 2"]), st.integers(min_value=1, max_value=999))
def test_a_table_that_was_written_is_taken_over_as_it_was(
    shipped: Knowledge, cylinder: str, circuit: str, ounces: int
) -> None:
    weighing = Weighing("recovered", circuit, f"{ounces} oz", cylinder, "30 lb", "31 lb", "12 lb")
    moved = Moved(DAY, weighing, ounces / 16, number=1)
    of_visit = Moved(DAY, weighing, ounces / 16, "2026-05-04-1")
    text = as_refrigerant_sheet([("RTU-3", moved), ("RTU-3", of_visit)])
    found = read_refrigerant_sheet(shipped, text, "t.csv", REGISTER, (), DAY)
    assert (found.told, found.bad, found.of_visits) == ((("RTU-3", DAY, weighing),), (), 1)


@given(st.text(max_size=200))
def test_any_table_is_taken_or_refused_by_row_and_column(shipped: Knowledge, text: str) -> None:
    for sheet in (text, f"{','.join(COLUMNS)}\n{text}\n"):
        try:
            found = read_refrigerant_sheet(shipped, sheet, "t.csv", REGISTER, (), DAY)
        except NotUsable:
            continue
        assert all(bad.row > 1 and bad.problem for bad in found.bad)


@pytest.fixture
def units(command: Call, tmp_path: Path) -> Path:
    (tmp_path / "units.csv").write_text(UNITS, "utf-8")
    assert command("units", "import", str(tmp_path / "units.csv"))[0] == 0
    return tmp_path


def test_work_outside_a_visit_is_told_listed_struck_and_exported(
    command: Call, units: Path
) -> None:
    told = ("added", "1", "lb", "4", "oz", "to", "circuit", "1", "from", "=C-7")
    code, out, _ = command("units", "refrigerant", "rtu", "3", *told, "--on", "2026-05-04")
    assert code == 0 and "Kept: added 1.25 lb (1 lb 4 oz), circuit 1, from =C-7." in out
    assert "nothing that was added before is on record" in out and "rolling average: 13 %" in out
    code, out, _ = command("units", "refrigerant", "RTU-3", "--json")
    (circuit,) = json.loads(out)["units"][0]["circuits"]
    assert circuit["full_charge"] == 9.8 and circuit["added"] == 1.25
    assert "In all 1.25 lb added" in command("units", "show", "RTU-3")[1]
    file = units / "out.csv"
    assert command("units", "refrigerant", "--export", str(file))[0] == 0
    assert "'=C-7" in file.read_text("utf-8")
    assert "on record already" in command("units", "refrigerant", "--import", str(file))[2]
    assert command("units", "refrigerant", "RTU-3", "--strike", "1")[1].startswith("Struck: entry")
    assert command("units", "refrigerant", "--import", str(file))[1] == "Kept: 1 weighing.\n"
    assert "Judged by the owner's responsible person." in command("units", "refrigerant")[1]


@pytest.mark.parametrize(
    ("words", "code", "said"),
    [
        (("RTU-9",), 2, "the register has no unit RTU-9"),
        (("RTU-3", "added", "2 lb"), 3, "not kept: say which: circuit 1 or circuit 2"),
        (("RTU-3", "added", "2 lb circuit 1", "--on", "May"), 2, "May is no day"),
        (("RTU-3", "added", "2 lb circuit 1", "--on", "2099-01-01"), 2, "is still to come"),
        (("RTU-3", "--strike", "4"), 2, "RTU-3 has no entry 4"),
        (("--import", "nowhere.csv"), 2, "nowhere.csv: it cannot be opened"),
    ],
)
def test_what_cannot_be_done_is_said(
    words: tuple[str, ...], code: int, said: str, command: Call, units: Path
) -> None:
    found, out, err = command("units", "refrigerant", *words)
    assert (found, out) == (code, "") and said in err


def test_what_the_readme_shows_of_the_demo_site_is_said_today(
    command: Call, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    assert command("units", "import", str(COLLEGE / "units.csv"))[0] == 0
    assert command("units", "refrigerant", "--import", str(COLLEGE / "refrigerant.csv"))[0] == 0
    said = command("units", "refrigerant", "Lower 19")[1].splitlines()
    _, _, after = README.read_text("utf-8").partition('units refrigerant "Lower 19"\n')
    shown = after.partition("\n```")[0].splitlines()
    assert len(shown) > 8 and left_of(said, shown) == []
