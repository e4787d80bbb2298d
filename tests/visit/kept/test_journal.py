"""The journal: nothing acknowledged is ever lost, and damage is never passed over in silence."""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from troubleshoot.visit.kept.journal import (
    Journal,
    JournalBusy,
    JournalDamaged,
    JournalError,
    JournalFailed,
    JournalNewer,
    open_visits,
)
from troubleshoot.visit.kept.lines import FORMAT, line_of
from troubleshoot.visit.kept.reading import read_visit

HEADER = {"program": "0", "rules": "abc", "date": "2026-01-05"}
EVENTS = [{"event": "note", "text": f"note {n} µF \U0001f600"} for n in range(6)]


def written(folder: Path) -> Path:
    with Journal.create(folder, "visit", HEADER) as journal:
        for event in EVENTS:
            journal.append(event)
    return folder / "visit.journal"


def test_what_was_appended_is_read_back(tmp_path: Path) -> None:
    with Journal.open(written(tmp_path)) as journal:
        assert list(journal.events) == EVENTS
        assert journal.header["rules"] == "abc"
        assert journal.notice == ""


def test_cut_off_at_any_byte_only_the_last_record_is_dropped(tmp_path: Path) -> None:
    data = written(tmp_path).read_bytes()
    ends = [i + 1 for i, byte in enumerate(data) if byte == ord("\n")]
    for length in range(ends[0], len(data)):
        cut = tmp_path / "cut.journal"
        cut.write_bytes(data[:length])
        with Journal.open(cut) as journal:
            whole = sum(end <= length for end in ends) - 1
            assert list(journal.events) == EVENTS[:whole]
            assert bool(journal.notice) == (length not in ends)
            journal.append({"event": "note", "text": "after"})
        with Journal.open(cut) as journal:
            assert list(journal.events) == [*EVENTS[:whole], {"event": "note", "text": "after"}]


def test_a_changed_byte_before_the_last_record_is_reported_with_its_number(tmp_path: Path) -> None:
    path = written(tmp_path)
    data = bytearray(path.read_bytes())
    second = data.index(b"\n") + 20
    data[second] ^= 1
    path.write_bytes(data)
    with pytest.raises(JournalDamaged, match="record 2 is damaged"):
        Journal.open(path)


@settings(max_examples=200, deadline=None)
@given(st.data())
def test_no_changed_byte_goes_unnoticed_and_no_whole_record_is_dropped(data: st.DataObject) -> None:
    """Regression: a bit flipped in the last record made it a torn one, and it was cut away."""
    with tempfile.TemporaryDirectory() as folder:
        path = written(Path(folder))
        content = bytearray(path.read_bytes())
        index = data.draw(st.integers(0, len(content) - 1) | st.just(len(content) - 1))
        content[index] ^= data.draw(st.integers(1, 255))
        path.write_bytes(content)
        for read in (Journal.open, read_visit):
            with pytest.raises((JournalDamaged, JournalNewer)):
                read(path)
        assert path.read_bytes() == content


@settings(max_examples=100, deadline=None)
@given(st.integers(1, 4000), st.binary(max_size=40))
def test_any_cut_and_any_tail_are_torn_or_damage_and_reading_changes_nothing(
    length: int, tail: bytes
) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = written(Path(folder))
        content = path.read_bytes()[:length] + tail
        path.write_bytes(content)
        os.utime(path, (1, 1))
        try:
            kept = read_visit(path)
        except JournalDamaged:
            kept = None
        assert path.read_bytes() == content and path.stat().st_mtime == 1
        if kept is not None:
            assert list(kept.events) == EVENTS[: len(kept.events)]
            with Journal.open(path) as journal:
                assert journal.events == kept.events
                assert bool(journal.notice) == bool(kept.notice) == (content[-1:] != b"\n")


def test_a_newer_journal_is_neither_read_nor_written(tmp_path: Path) -> None:
    """Regression: a journal of format 2 was read by a program that knew format 1, and added to."""
    path = tmp_path / "visit.journal"
    first, _ = line_of(0, 0, {"event": "journal", "format": FORMAT + 1, "program": "9.9"})
    content = first + b"lines of another form, without an end"
    path.write_bytes(content)
    for read in (Journal.open, read_visit):
        with pytest.raises(JournalNewer, match=r"version 9\.9 of the program wrote it"):
            read(path)
    assert path.read_bytes() == content


def test_a_journal_of_the_first_format_is_gone_on_with(tmp_path: Path) -> None:
    path = tmp_path / "visit.journal"
    first, checksum = line_of(0, 0, {"event": "journal", "format": 1, **HEADER})
    path.write_bytes(first + line_of(1, checksum, EVENTS[0])[0])
    with Journal.open(path) as journal:
        journal.append(EVENTS[1])
    assert list(read_visit(path).events) == EVENTS[:2]


def test_a_visit_open_elsewhere_is_read_and_said_to_be(tmp_path: Path) -> None:
    path = written(tmp_path)
    with Journal.open(path) as journal:
        journal.append({"event": "note", "text": "just now"})
        kept = read_visit(path)
        assert kept.elsewhere and "another window" in kept.notice
        assert kept.events == journal.events
    assert not read_visit(path).elsewhere


def test_what_stands_where_a_journal_should_is_refused_at_once(tmp_path: Path) -> None:
    pipe, device, folder = (tmp_path / f"{name}.journal" for name in ("pipe", "device", "folder"))
    os.mkfifo(pipe)
    device.symlink_to("/dev/zero")
    folder.mkdir()
    for path in (pipe, device, folder):
        for read in (Journal.open, read_visit):
            with pytest.raises(JournalError, match=r"no regular file|cannot be opened"):
                read(path)
    assert set(open_visits(tmp_path)) == {pipe, device, folder}


def test_a_journal_of_great_depth_is_damage(tmp_path: Path) -> None:
    path = written(tmp_path)
    path.write_bytes(path.read_bytes() + b'{"event":' + b"[" * 100_000 + b"\n")
    with pytest.raises(JournalDamaged, match=f"record {len(EVENTS) + 2} is damaged"):
        Journal.open(path)


def test_no_journal_grows_longer_than_can_be_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("troubleshoot.visit.kept.journal.MOST_EVENTS", len(EVENTS) + 1)
    path = written(tmp_path)
    with Journal.open(path) as journal:
        journal.append(EVENTS[0])
        with pytest.raises(JournalFailed, match="full"):
            journal.append(EVENTS[0])
    assert len(read_visit(path).events) == len(EVENTS) + 1


def test_the_folder_and_the_journal_are_their_owners_alone(tmp_path: Path) -> None:
    path = written(tmp_path / "data" / "visits")
    folders = (path.parent.parent, path.parent)
    assert [folder.stat().st_mode & 0o777 for folder in folders] == [0o700, 0o700]
    assert path.stat().st_mode & 0o777 == 0o600


def test_two_programs_cannot_hold_one_visit(tmp_path: Path) -> None:
    path = written(tmp_path)
    with Journal.open(path), pytest.raises(JournalBusy, match="another window"):
        Journal.open(path)


def test_after_a_failed_sync_nothing_more_is_taken(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with Journal.create(tmp_path, "visit", HEADER) as journal:

        def fail(_: int) -> None:
            raise OSError(28, "No space left on device")

        monkeypatch.setattr(os, "fdatasync", fail)
        with pytest.raises(JournalFailed, match="No space left"):
            journal.append({"event": "note", "text": "lost"})
        monkeypatch.undo()
        with pytest.raises(JournalFailed, match="earlier record"):
            journal.append({"event": "note", "text": "refused"})


def test_a_killed_program_loses_nothing_it_acknowledged(tmp_path: Path) -> None:
    program = (
        "import sys\nfrom pathlib import Path\n"
        "from troubleshoot.visit.kept.journal import Journal\n"
        "j = Journal.create(Path(sys.argv[1]), 'v', {})\n"
        "n = 0\n"
        "while True:\n"
        "    j.append({'event': 'note', 'text': str(n)}); print(n, flush=True); n += 1\n"
    )
    for attempt in range(3):
        folder = tmp_path / str(attempt)
        with subprocess.Popen(
            [sys.executable, "-c", program, str(folder)], stdout=subprocess.PIPE, text=True
        ) as child:
            assert child.stdout is not None
            seen = [child.stdout.readline() for _ in range(5 + 7 * attempt)]
            child.kill()
            seen += child.stdout.readlines()
        acknowledged = [line.strip() for line in seen if line.endswith("\n")]
        with Journal.open(folder / "v.journal") as journal:
            kept = [event["text"] for event in journal.events]
        assert kept[: len(acknowledged)] == acknowledged


def test_only_visits_without_an_end_are_open(tmp_path: Path) -> None:
    for name, ended in (("a", True), ("b", False)):
        with Journal.create(tmp_path, name, HEADER) as journal:
            journal.append({"event": "note", "text": 'says "event": "end" in words'})
            if ended:
                journal.append({"event": "end", "ending": "closed"})
    assert [path.stem for path in open_visits(tmp_path)] == ["b"]


def test_a_visit_whose_first_record_was_torn_is_reported_and_not_changed(tmp_path: Path) -> None:
    first = written(tmp_path).read_bytes().partition(b"\n")[0]
    torn = tmp_path / "torn.journal"
    for length in (1, len(first) // 2, len(first)):
        torn.write_bytes(first[:length])
        with pytest.raises(JournalDamaged, match=r"record 1 is gone, .* move the file out"):
            Journal.open(torn)
        assert torn.read_bytes() == first[:length]


def test_a_visit_that_cannot_begin_leaves_no_file_behind(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fdatasync", fail)
    with pytest.raises(JournalFailed, match="No space left"):
        Journal.create(tmp_path, "visit", HEADER)
    monkeypatch.undo()
    assert list(tmp_path.iterdir()) == []
    with Journal.create(tmp_path, "visit", HEADER) as journal:
        assert journal.header["rules"] == "abc"


def test_without_fdatasync_the_slower_sync_serves(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    synced = []
    monkeypatch.delattr(os, "fdatasync")
    monkeypatch.setattr(os, "fsync", synced.append)
    with Journal.create(tmp_path, "visit", HEADER) as journal:
        journal.append({"event": "note", "text": "kept"})
    assert len(synced) == 3  # header, folder, note


def test_a_record_that_the_disk_took_in_part_is_refused_and_dropped_on_opening(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = written(tmp_path)
    write = os.write
    with Journal.open(path) as journal:
        monkeypatch.setattr(os, "write", lambda where, line: write(where, line[:9]))
        with pytest.raises(JournalFailed, match="only part of the record"):
            journal.append({"event": "note", "text": "lost"})
        monkeypatch.undo()
    with Journal.open(path) as journal:
        assert list(journal.events) == EVENTS
        assert journal.notice


def test_a_damaged_journal_can_be_tried_again_by_the_same_program(tmp_path: Path) -> None:
    path = written(tmp_path)
    data = path.read_bytes()
    path.write_bytes(data.replace(b"note 1", b"note 9"))
    for _ in range(2):
        with pytest.raises(JournalDamaged, match="record 3 is damaged"):
            Journal.open(path)


@pytest.mark.parametrize("kind", ["[]", "{}", "7", "null", '"note"'])
def test_a_record_of_no_known_kind_neither_ends_a_visit_nor_breaks_the_start(
    kind: str, tmp_path: Path
) -> None:
    path = tmp_path / "a.journal"
    path.write_text(f'{{"event": {{"event": {kind}}}}}\n', "utf-8")
    assert open_visits(tmp_path) == (path,)
    end = '{"event": {"ending": "closed", "event": "end"}}'
    path.write_text(f"{end}\n{path.read_text('utf-8')}", "utf-8")
    assert open_visits(tmp_path) == ()


@pytest.mark.parametrize("ending", ['"zzz"', '""', "7", "[]", "null"])
def test_an_end_that_is_none_ends_no_visit(ending: str, tmp_path: Path) -> None:
    path = tmp_path / "a.journal"
    path.write_text(f'{{"event": {{"event": "end", "ending": {ending}}}}}\n', "utf-8")
    assert open_visits(tmp_path) == (path,)
