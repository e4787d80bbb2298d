"""A visit that lost its name is named as what was not read, wherever STOPs are looked up."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.visit.kept.samples import stopped_visit, write_journal
from troubleshoot.cli.journal_shelf import JournalShelf
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]
NAME = "2026-11-26-1"


def renamed(data: Path, to: str) -> None:
    """A visit over which a STOP stands, moved or renamed within the data folder."""
    kept = write_journal(data / "visits", NAME, stopped_visit())
    target = data / to
    target.parent.mkdir(exist_ok=True)
    kept.rename(target)


@pytest.mark.parametrize(
    ("to", "told"),
    [
        (f"visits/{NAME}.journal.bak", f"{NAME}.journal.bak; if it is a visit"),
        (f"visits/{NAME}.txt", f"{NAME}.txt; if it is a visit"),
        (f"visits/{NAME}.JOURNAL", f"{NAME}.JOURNAL; if it is a visit"),
        (f"visits/archive/{NAME}.journal", "archive; if visits are kept in it"),
        (f"visits.old/{NAME}.journal", "visits.old; if visits are kept in it"),
        (f"{NAME}.journal", f"{NAME}.journal; if it is a visit"),
        ("visits/.old", ".old; if it is a visit"),
        (f"visits/.{NAME}.journal", f".{NAME}.journal; if it is a visit"),
        ("visits/.trash/first", ".trash; if visits are kept in it"),
        (".old", ".old; if it is a visit"),
    ],
)
def test_it_is_named_where_visits_are_listed_and_stops_are_looked_up(
    command: Call, shipped: Knowledge, tmp_path: Path, to: str, told: str
) -> None:
    """Regression: "No visit is kept yet", and nothing else."""
    data = tmp_path / "data"
    renamed(data, to)
    code, out, _ = command("--data", str(data), "visits")
    assert code == 0 and "Not read: " in out and told in out
    _, _, err = command("--data", str(data), "diagnose", "RTU-3", "--no-input")
    assert told in err
    _, out, _ = command("--data", str(data), "inspect", "RTU-3", "--sheet")
    assert "Not read: " in " ".join(out.split())
    assert told in "".join(JournalShelf(shipped, data / "visits").not_read())


def test_a_stop_in_a_hidden_file_meets_its_unit(
    command: Call, shipped: Knowledge, tmp_path: Path
) -> None:
    """Regression: moved to .old it was a unit that nobody had ever stopped."""
    renamed(tmp_path, "visits/.old")
    (stands,) = JournalShelf(shipped, tmp_path / "visits").standing()
    assert stands.unit
    script = ("--data", str(tmp_path), "diagnose", stands.unit, "--no-input", "--json")
    assert command(*script)[0] == 2


def test_what_a_system_or_the_program_keeps_there_is_not_named(
    command: Call, tmp_path: Path
) -> None:
    write_journal(tmp_path / "visits", NAME, stopped_visit())
    (tmp_path / "visits" / ".DS_Store").write_text("")
    (tmp_path / "practice.json").write_text("{}")
    (tmp_path / "units").mkdir()
    assert "Not read" not in command("--data", str(tmp_path), "visits")[1]


def test_of_many_only_some_are_named_and_the_rest_counted(command: Call, tmp_path: Path) -> None:
    (tmp_path / "visits").mkdir()
    for number in range(9):
        (tmp_path / "visits" / f"photo-{number}.jpg").write_text("")
    out = command("--data", str(tmp_path), "visits")[1]
    assert out.count("photo-") == 5 and "4 more files or folders" in out


@pytest.mark.parametrize("where", ["visits", "."])
def test_a_link_that_cannot_be_followed_takes_no_visit_with_it(
    command: Call, shipped: Knowledge, tmp_path: Path, where: str
) -> None:
    """Regression: listing, beginning and looking up a STOP all ended in a traceback."""
    kept = write_journal(tmp_path / "visits", NAME, stopped_visit())
    (tmp_path / where / "old").symlink_to("x" * 300)
    code, out, _ = command("--data", str(tmp_path), "visits")
    assert code == 0 and kept.stem in out
    assert ("Not read: " in out) is (where == "visits")
    assert JournalShelf(shipped, tmp_path / "visits").standing()
