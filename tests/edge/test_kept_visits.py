"""The visits that are kept, as somebody meets them: listed, reported, gone on with, left whole."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.started import started
from tests.visit.kept.samples import Events, long_visit, stopped_visit, write_journal
from troubleshoot.visit.kept.journal import Journal

TYPED = "q # <script>alert(1)</script> | `x` \x1b[2J\x07\u202e [a](http://b)"


def one(folder: Path, number: int, events: Events, day: str = "2026-11-26") -> Path:
    return write_journal(folder / "visits", f"{day}-{number}", events)


def test_one_bad_journal_does_not_hide_the_others(tmp_path: Path) -> None:
    """Regression: the list ended with exit code 6 at the first that could not be opened."""
    good = [one(tmp_path, number, long_visit()) for number in (1, 2, 10)]
    damaged, empty, busy, newer = (one(tmp_path, n, long_visit()) for n in (3, 4, 5, 6))
    damaged.write_bytes(damaged.read_bytes().replace(b"ice", b"ide"))
    empty.write_bytes(b"")
    write_journal(tmp_path / "visits", newer.stem, [], format=99, program="9.9")
    with Journal.open(busy):
        done = started(tmp_path, "visits")
    first, second, *lines = done.stdout.decode().splitlines()
    assert done.returncode == 0
    assert f"Visit {newer.stem} cannot be read" in first
    assert f"Visit {empty.stem} cannot be read" in second
    assert [line.split()[0] for line in lines] == [
        f"2026-11-26-{n}" for n in (10, *range(6, 0, -1))
    ]
    stands = {line.split()[0]: line.partition("  ")[2] for line in lines}
    assert stands[damaged.stem].startswith("damaged") and "record 6" in stands[damaged.stem]
    assert stands[empty.stem].startswith("damaged")
    assert stands[busy.stem].startswith("open elsewhere")
    assert stands[newer.stem].startswith("newer") and "version 9.9" in stands[newer.stem]
    assert all(stands[path.stem].startswith("closed") for path in good)


def test_listing_and_reporting_leave_every_byte_and_date(tmp_path: Path) -> None:
    """Regression: listing the visits cut a torn tail off, and renewed the date it was left at."""
    whole, torn = one(tmp_path, 1, long_visit()), one(tmp_path, 2, long_visit())
    torn.write_bytes(torn.read_bytes()[:-20])
    before = {}
    for path in (whole, torn):
        os.utime(path, (1000, 1000))
        before[path] = path.read_bytes()
    assert started(tmp_path, "visits").returncode == 0
    for path in before:
        done = started(tmp_path, "report", path.stem)
        assert done.returncode == 0
        assert (b"cut off" in done.stderr) == (path == torn)
    for path, data in before.items():
        assert path.read_bytes() == data and path.stat().st_mtime == 1000


@pytest.mark.parametrize("name", ["../../x", "../x", "/etc/x", "a/b", ".", "x\x1b[2J"])
def test_a_name_is_only_a_name(tmp_path: Path, name: str) -> None:
    """Regression: `report ../../x` opened a torn journal outside the folder, and cut it."""
    outside = tmp_path / "x.journal"
    outside.write_bytes(b"torn")
    (tmp_path / "data" / "visits").mkdir(parents=True)
    (tmp_path / "data" / "x.journal").write_bytes(b"torn")
    for command in ("report", "reopen"):
        done = started(tmp_path / "data", command, name)
        assert done.returncode == 2 and b"no name of a visit" in done.stderr
        assert done.stderr.count(b"\n") == 1
    assert outside.read_bytes() == (tmp_path / "data" / "x.journal").read_bytes() == b"torn"


def test_a_report_writes_what_people_typed_as_text(tmp_path: Path) -> None:
    events = long_visit()
    events[0]["name"] = events[0]["words"] = events[4]["text"] = TYPED
    one(tmp_path, 1, events)
    report = started(tmp_path, "report", "2026-11-26-1").stdout.decode()
    for line in (line for line in report.splitlines() if "script" in line):
        assert r"\<script\>" in line and r"\#" in line and r"\|" in line and r"\[a\](http" in line
        assert r"\<U+001B\>" in line and r"\<U+202E\>" in line
    for words in (["report", "2026-11-26-1"], ["report", "2026-11-26-1", "--json"], ["visits"]):
        assert not {"\x1b", "\x07", "\u202e"} & set(started(tmp_path, *words).stdout.decode())


def test_a_visit_under_other_rules_is_reported_and_gone_on_with(tmp_path: Path) -> None:
    """Regression: after an update of the rules an open visit was a traceback to its owner."""
    events = [*long_visit()[:5], {"event": "answer", "test": "gone-by-now", "at": "the attic"}]
    one(tmp_path / "data", 1, events)
    done = started(tmp_path / "data", "report", "2026-11-26-1")
    assert done.returncode == 0
    assert b"## Not understood, counting for nothing" in done.stdout
    assert b"the test gone-by-now is not in today" in done.stdout
    with Person(tmp_path / "data", clock=Clock(tmp_path)) as person:
        said = " ".join(person.types("y").split())
        assert "record 7 (answer): the test gone-by-now is not in today's rules" in said
        person.types_until("Step:", [("Test: ", "s"), ("", "")], most=20)


def test_a_stop_whose_finding_is_gone_stops_whoever_goes_on(tmp_path: Path) -> None:
    events = stopped_visit()
    events[-2]["test"] = "gone-by-now"
    del events[-1]["test"]  # as journals of the first format have it
    one(tmp_path / "data", 1, events)
    with Person(tmp_path / "data", clock=Clock(tmp_path)) as person:
        person.types("y")
        person.types_until("No further test", [("Who is asking", "3"), ("", "")], most=3)
        said = " ".join(person.said.split())
        assert "the STOP heat-exchanger-breach stands" in said
        assert "No further test is offered" in said
        person.types_until(
            "reopen", [("Who was told", "the owner on the phone, just now"), ("", "over")]
        )
    done = started(tmp_path / "data", "reopen", "2026-11-26-1")
    assert done.returncode == 2 and b"it stays closed" in done.stderr


def test_a_new_visit_gets_a_free_name_and_the_latest_is_offered(tmp_path: Path) -> None:
    clock = Clock(tmp_path)
    for number in (2, 9, 11):
        one(tmp_path / "data", number, long_visit()[:2])
    with Person(tmp_path / "data", clock=clock) as person:
        assert "2026-11-26-11" in person.last
        person.types("n", "RTU-3", "no cooling", "")
    assert (tmp_path / "data" / "visits" / "2026-11-26-12.journal").is_file()


def test_the_data_folder_is_its_owners_alone(tmp_path: Path) -> None:
    started(tmp_path / "new" / "data", typed=b"RTU-3\nno cooling\n1\n\n")
    folders = [tmp_path / "new" / "data", tmp_path / "new" / "data" / "visits"]
    assert [folder.stat().st_mode & 0o777 for folder in folders] == [0o700, 0o700]


def test_the_list_names_the_unit_and_calls_no_stop_a_round(tmp_path: Path) -> None:
    """Regression: neither stood there, and a STOP told before the call was listed as a PM."""
    data, clock = tmp_path / "data", Clock(tmp_path)
    for unit, words in (("RTU-7", "no cooling"), ("Gate 2", "the ladder is gone")):
        with Person(data, clock=clock) as person:
            person.types(*(["n"] if "is open" in person.last else []), unit, words)
    with Person(data, "visits", clock=clock) as listed:
        assert "RTU-7: no cooling" in listed.said and "Gate 2: the ladder is gone" in listed.said
