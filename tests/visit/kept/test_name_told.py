"""The name by which journals are sorted: that which was given last, whole or not."""

from __future__ import annotations

from pathlib import Path

from tests.visit.kept.samples import long_visit, write_journal
from troubleshoot.visit.kept.reading import name_told
from troubleshoot.visit.kept.unreadable import name_in


def test_a_whole_journal_is_sorted_by_the_name_that_its_sums_prove(tmp_path: Path) -> None:
    data = write_journal(tmp_path, "whole", long_visit()).read_bytes()
    assert name_told(data) == name_in(data) != ""


def test_the_name_that_was_given_last_counts(tmp_path: Path) -> None:
    events = [*long_visit(), {"event": "named", "name": "Upper 9"}]
    assert name_told(write_journal(tmp_path, "named", events).read_bytes()) == "Upper 9"


def test_what_is_no_line_of_a_journal_names_nothing() -> None:
    for data in (b"", b'{"event": {"event": "start"', b'"event": "start"\n', b"\xff\n",
                 b'{"event": {"event": "start", "name": 7}}\n'):  # fmt: skip
        assert name_told(data) == ""
