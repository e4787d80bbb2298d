"""A STOP from an earlier visit meets whoever names its unit, and nobody else."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.cli.lines import Lines, held
from tests.visit.kept.samples import write_journal
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.dialogue.said import Said, StopElsewhere, Voice
from troubleshoot.dialogue.standing import goes_on, meet_standing, met_by, told
from troubleshoot.dialogue.talk import Leave
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.kept import stopped as found_in
from troubleshoot.visit.kept.stopped import Standing, Stopped
from troubleshoot.visit.kept.unit_names import may_be_same, same_unit

TIME = "2026-11-26T09:00:00+00:00"
CRACK = {"event": "answer", "test": "heat-exchanger-look", "at": None, "outcomes": ["crack"],
         "time": TIME}  # fmt: skip
STOP = {"event": "stop", "hazard": "heat-exchanger-breach", "test": "heat-exchanger-look",
        "at": None, "time": TIME}  # fmt: skip
DANGER = {"event": "danger", "hazard": "danger-reported", "words": "x", "time": TIME}
OVER = {"event": "end", "ending": "stopped", "told": "the owner", "told_at": "2026-11-26 10:00",
        "time": TIME}  # fmt: skip
CLOSED = {"event": "end", "ending": "closed", "time": TIME}


def keep(folder: Path, name: str, unit: str, *events: Any) -> Path:
    start = {"event": "start", "name": unit, "complaint": "no-heat", "unit": {"heat": "gas"},
             "time": TIME}  # fmt: skip
    return write_journal(folder, name, [start, *events])


def names(shipped: Knowledge, folder: Path, but: str = "") -> list[tuple[str, str, bool]]:
    found = JournalShelf(shipped, folder).standing(but)
    return [(s.visit, s.unit, s.over) for s in found if isinstance(s, Stopped)]


def test_only_visits_over_which_a_stop_stands_are_told_of(
    shipped: Knowledge, tmp_path: Path
) -> None:
    keep(tmp_path, "2026-11-26-1", "RTU-1", CRACK, STOP)
    keep(tmp_path, "2026-11-26-2", "RTU-2", CRACK, STOP, OVER)
    keep(tmp_path, "2026-11-26-3", "RTU-3", DANGER)
    keep(tmp_path, "2026-11-26-4", "RTU-4")
    keep(tmp_path, "2026-11-26-5", "RTU-5", CRACK, STOP, CLOSED)
    keep(tmp_path, "2026-11-26-6", "RTU-6", {"event": "note", "text": "stop", "time": TIME})
    (sound,) = shipped.tests["main-limit"].healthy
    stuck = {"event": "answer", "test": "main-limit", "at": None, "time": TIME}
    halt = {"event": "stop", "hazard": "safety-does-not-open", "test": "main-limit", "at": None}
    keep(tmp_path, "2026-11-26-8", "RTU-8", {**stuck, "outcomes": ["stuck"]},
         {**halt, "time": TIME}, {**stuck, "outcomes": [sound]})  # fmt: skip
    (tmp_path / "2026-11-26-7.journal").write_bytes(b'"event": "stop"')
    found = names(shipped, tmp_path)
    assert sorted(found) == [
        ("2026-11-26-1", "RTU-1", False),
        ("2026-11-26-2", "RTU-2", True),
        ("2026-11-26-3", "RTU-3", False),
        ("2026-11-26-5", "RTU-5", False),  # no visit closes over a STOP: its end was forged
    ]
    but = names(shipped, tmp_path, "2026-11-26-2")
    assert [visit for visit, *_ in but] == [v for v, *_ in found if v != "2026-11-26-2"]


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("RTU-7", "rtu 7", True), ("RTU-7", "rtu07", True), ("RTU-70", "RTU-7", False),
        ("RTU-7", "RTU-107", False), ("RTU 7", "RTU-7.", True), ("RTU-7", "RTU-8", False),
        ("", "", False), ("-", "-", False), ("", "RTU-7", False),
    ],
)  # fmt: skip
def test_a_unit_is_the_same_however_its_name_was_typed(one: str, other: str, same: bool) -> None:
    assert same_unit(one, other) is same


BAKERY = "Marlow Row bakery, RTU 4"


@pytest.mark.parametrize(
    ("typed", "may"),
    [
        ("Marlow Row", True), ("Marlow Row bakery", True), ("Row bakery", True), ("MRB 4", True),
        ("\u041carlow Row bakery, RTU 4", True), ("Mar\u00adlow Row", True), ("RTU IV", True),
        ("Marlow Row bakery, RTU four", True), ("bakery \uff14", True), ("RTU", True),
        ("Marlow Row bakery, RTU 5", False), ("Kestrel Lane school", False), ("RTU-5", False),
        ("Kestrel Lane school, RTU 4", False), ("", False), ("-", False),
    ],
)  # fmt: skip
def test_a_name_cut_short_or_in_letters_that_look_alike_may_be_of_it(typed: str, may: bool) -> None:
    """Regression: a script went past a STOP with the number left off, or with one other letter."""
    assert may_be_same(BAKERY, typed) is may
    assert may_be_same(typed, BAKERY) is may


@pytest.fixture
def two(shipped: Knowledge, tmp_path: Path) -> Path:
    visits = tmp_path / "visits"
    keep(visits, "2026-11-26-1", "RTU-1", CRACK, STOP)
    keep(visits, "2026-11-26-2", "", CRACK, STOP, OVER)
    return visits


class Shelf(JournalShelf):
    """A shelf on which these visits stand, found once. `but`: what was left out each time."""

    def __init__(self, knowledge: Knowledge, kept: list[Stopped]) -> None:
        self.knowledge = knowledge
        self.kept = kept
        self.but: list[str] = []

    def standing(self, but: str = "") -> Iterator[Standing]:
        self.but.append(but)
        return iter(self.kept)


def met(shelf: JournalShelf, unit: str, *typed: str) -> tuple[Lines, str | None]:
    terminal = Lines(*typed)
    stopped = held(
        shelf.knowledge,
        terminal,
        lambda voice: meet_standing(shelf.knowledge, voice, shelf.standing(), unit),
    )
    return terminal, stopped and stopped.visit


def test_whoever_names_the_unit_is_told_without_a_question(shipped: Knowledge, two: Path) -> None:
    terminal, visit = met(JournalShelf(shipped, two), "rtu 1")
    assert visit == "2026-11-26-1" and terminal.asked == []
    assert "DANGER - STOP" in terminal.text and "Do not start RTU-1." in terminal.text
    assert "Going on with visit 2026-11-26-1, where it stands." in terminal.said
    assert "troubleshoot reopen" not in terminal.text


@pytest.fixture(scope="module")
def kept(shipped: Knowledge, tmp_path_factory: pytest.TempPathFactory) -> list[Stopped]:
    """Two visits over which a STOP stands, found once."""
    folder = tmp_path_factory.mktemp("visits")
    keep(folder, "2026-11-26-1", "RTU-1", CRACK, STOP)
    keep(folder, "2026-11-26-2", "", CRACK, STOP, OVER)
    return sorted(
        (s for s in JournalShelf(shipped, folder).standing() if isinstance(s, Stopped)),
        key=lambda stopped: stopped.visit,
    )


@pytest.fixture
def asked(shipped: Knowledge, kept: list[Stopped]) -> Any:
    """What somebody is asked who begins a visit, and which STOP they meet."""
    return lambda unit, *typed: met(Shelf(shipped, kept), unit, *typed)


@pytest.mark.parametrize(
    ("typed", "visit"),
    [
        (("1",), "2026-11-26-1"), (("2",), "2026-11-26-2"), (("RTU 1",), "2026-11-26-1"),
        (("0", "3", "what", "", "2"), "2026-11-26-2"), (("n",), None), (("NO",), None),
        (("0", "3", "no"), None),
    ],
)  # fmt: skip
def test_whoever_names_another_is_asked_which_of_them_it_is(
    typed: tuple[str, ...], visit: str | None, asked: Any
) -> None:
    terminal, found = asked("RTU-9", *typed)
    assert found == visit and len(terminal.asked) == len(typed)
    assert terminal.said[:3] == [
        "A STOP stands over:",
        "  1 RTU-1: heat exchanger breach",
        "  2 a unit without a name: heat exchanger breach",
    ]
    assert ("DANGER - STOP" in terminal.text) is (visit is not None)


def test_without_an_answer_nothing_is_begun(asked: Any) -> None:
    with pytest.raises(Leave):
        asked("RTU-9", "")


@pytest.mark.parametrize(
    ("unit", "visit"), [("rtu 1", "2026-11-26-1"), ("RTU-9", None), ("", None)]
)
def test_a_visit_meets_the_stop_of_another_to_its_unit(
    unit: str, visit: str | None, shipped: Knowledge, kept: list[Stopped]
) -> None:
    shelf, voice = Shelf(shipped, kept), Voice()
    found = met_by(shelf, voice, "2026-11-26-9", unit)
    assert (found and found.visit) == visit and shelf.but == ["2026-11-26-9"]
    assert bool(voice.heard()) is (visit is not None)


def test_a_finding_stops_its_unit_though_the_record_of_its_stop_is_missing(
    shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: only whoever went on with the visit met it."""
    keep(tmp_path, "2026-11-26-1", "RTU-1", CRACK)
    assert names(shipped, tmp_path) == [("2026-11-26-1", "RTU-1", False)]


def test_visits_that_were_closed_are_not_replayed(
    shipped: Knowledge, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Most starts need no reasoning: what was closed is not looked at."""
    visits = tmp_path / "visits"
    keep(visits, "2026-11-26-1", "RTU-1", CLOSED)
    (visits / "2026-11-26-2.journal").mkdir()
    monkeypatch.setattr(found_in, "_stopped", lambda *_: pytest.fail("replayed"))
    (folder,) = JournalShelf(shipped, visits).standing()
    assert (folder.visit, folder.unit) == ("2026-11-26-2", "")
    assert found_in.stops_unit(folder)


def test_a_visit_does_not_meet_itself_and_no_stop_asks_nothing(
    shipped: Knowledge, two: Path, tmp_path: Path
) -> None:
    assert met_by(JournalShelf(shipped, two), Voice(), "2026-11-26-1", "RTU-1") is None
    terminal, found = met(JournalShelf(shipped, tmp_path / "none" / "visits"), "RTU-1")
    assert found is None and not terminal.asked and not terminal.said


def texts(said: tuple[Said, ...]) -> str:
    return "\n".join(each.text for each in said if hasattr(each, "text"))


def test_one_that_was_handed_over_goes_on_by_a_reopening(shipped: Knowledge, two: Path) -> None:
    found = [s for s in JournalShelf(shipped, two).standing() if isinstance(s, Stopped)]
    over = next(s for s in found if s.over)
    assert [goes_on(s) for s in found] == [not s.over for s in found]
    voice = Voice()
    assert told(voice, over) is over
    said = voice.heard()
    assert said[0] == StopElsewhere(over) and "Told: the owner, 2026-11-26 10:00." in over.tag
    assert "Visit 2026-11-26-2 was handed over at this STOP." in texts(said)
    assert "troubleshoot reopen 2026-11-26-2" in texts(said)
    assert "Going on with visit" not in texts(said)
