"""Numbers of earlier visits, taken over from a table: what is kept, and what is refused."""

from __future__ import annotations

from pathlib import Path

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.records.past_visits import keep_past_visits, read_past_visits
from troubleshoot.records.register.entry import Entry, told
from troubleshoot.records.register.files import Register
from troubleshoot.records.stands import Visited
from troubleshoot.visit.events import Answered
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.understanding import understood

HEADING = "unit,date,suction-pressure at circuit 2,flame-current,room-carbon-monoxide\n"


@pytest.fixture
def register(shipped: Knowledge) -> Register:
    cells = {"refrigerant": "R-410A", "circuits": "2", "heat": "gas"}
    return Register((told(shipped, Entry("RTU-7"), cells),), ())


def test_a_row_is_kept_as_a_closed_visit_of_its_day(
    shipped: Knowledge, register: Register, tmp_path: Path
) -> None:
    text = f"{HEADING}rtu 7,2024-05-12,128 psig,,\nRTU-7,2024-10-01,,4.1 uA,\n"
    past = read_past_visits(shipped, text, "t.csv", register)
    assert past.bad == ()
    keep_past_visits(tmp_path, past, {"program": "0", "rules": "x"})
    assert sorted(path.stem for path in tmp_path.iterdir()) == ["2024-05-12-1", "2024-10-01-1"]
    kept = read_visit(tmp_path / "2024-05-12-1.journal")
    events = understood(shipped, kept.events).events
    (answer,) = (event for event in events if isinstance(event, Answered))
    assert (answer.test, answer.at, answer.text) == (
        "suction-pressure", ("circuit 2",), "128 psig"
    )  # fmt: skip
    visited = Visited(shipped, tmp_path)
    assert visited.stands("RTU-7").last == "2024-10-01-1"
    assert visited.stands("RTU-7").stops == visited.stands("RTU-7").open_visits == ()


@pytest.mark.parametrize(
    ("row", "said"),
    [
        ("RTU-8,2024-05-12,,,", 'row 2, column unit: the register has no unit "RTU-8"'),
        ("RTU-7,12.5.24,,,", 'row 2, column date: "12.5.24" is no day'),
        ("RTU-7,2024-05-12,hot,,", "row 2, column suction-pressure at circuit 2: "),
        ("RTU-7,2024-05-12,,,,,", "row 2: 7 cells under 5 headings"),
        ("RTU-7,2024-05-12,,,300 ppm", "is a STOP, and no history"),
    ],
)
def test_a_bad_row_is_named_and_the_good_ones_are_told(
    shipped: Knowledge, register: Register, row: str, said: str
) -> None:
    text = f"{HEADING}{row}\nRTU-7,2024-10-01,,4.1 uA,\n"
    past = read_past_visits(shipped, text, "t.csv", register)
    assert len(past.visits) == 1
    (bad,) = past.bad
    assert said in str(bad)


def test_a_reading_says_where_it_was_taken(shipped: Knowledge, register: Register) -> None:
    text = "unit,date,suction-pressure\nRTU-7,2024-05-12,128 psig\n"
    (bad,) = read_past_visits(shipped, text, "t.csv", register).bad
    assert "circuit 1 or circuit 2" in str(bad)


@pytest.mark.parametrize(
    ("heading", "said"),
    [
        ("unit,suction-pressure", "it has no column date"),
        ("date,suction-pressure", "it has no column unit"),
        ("unit,date,suction-presure", "did you mean suction-pressure"),
        ("unit,date,walk-round", 'no reading is called "walk-round"'),
    ],
)
def test_a_heading_that_is_not_ours_is_refused(
    shipped: Knowledge, register: Register, heading: str, said: str
) -> None:
    with pytest.raises(NotUsable, match=said):
        read_past_visits(shipped, f"{heading}\n", "t.csv", register)
