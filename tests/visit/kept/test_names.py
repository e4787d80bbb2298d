"""The names of visits: in the order of their numbers, free for a new one, and only names."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.outside.refusal import NotUsable
from troubleshoot.visit.kept.names import journal_path, kept_visits, natural, next_name


def with_visits(folder: Path, *names: str) -> Path:
    for name in names:
        (folder / f"{name}.journal").touch()
    return folder


def test_the_tenth_visit_of_a_day_comes_after_the_ninth(tmp_path: Path) -> None:
    """Regression: -9 sorted above -11, and the wrong visit was offered."""
    names = ["2026-11-25-2", "2026-11-26-1", "2026-11-26-9", "2026-11-26-10", "2026-11-26-11"]
    with_visits(tmp_path, *names)
    assert [path.stem for path in kept_visits(tmp_path)] == names[::-1]


def test_a_removed_visit_leaves_the_day_open(tmp_path: Path) -> None:
    """Regression: with the first of two removed, the second was in the way of a new one."""
    with_visits(tmp_path, "2026-11-26-2", "2026-11-26-10", "2026-11-26-x", "2026-11-25-77")
    assert next_name(tmp_path, "2026-11-26") == "2026-11-26-11"
    assert next_name(tmp_path, "2026-11-27") == "2026-11-27-1"
    assert next_name(tmp_path / "nowhere", "2026-11-26") == "2026-11-26-1"


@given(st.lists(st.integers(0, 10**20), unique=True), st.text(max_size=5))
def test_names_stand_in_the_order_of_their_numbers(numbers: list[int], other: str) -> None:
    names = [f"2026-11-26-{number}" for number in numbers]
    in_order = sorted([*names, other], key=natural)
    in_order.remove(other)
    assert in_order == [f"2026-11-26-{number}" for number in sorted(numbers)]


@pytest.mark.parametrize(
    "name",
    ["", ".", "..", "../2026", "../../x", "/etc/passwd", "a/b", "a\\b", "nul\0", "\x1b[2J",
     "x" * 5000, "half \ud800", ".hidden"],
)  # fmt: skip
def test_what_leads_elsewhere_is_no_name(tmp_path: Path, name: str) -> None:
    with pytest.raises(NotUsable, match="no name of a visit"):
        journal_path(tmp_path, name)


@given(st.text(max_size=90))
def test_a_name_leads_to_a_file_of_the_folder_or_nowhere(name: str) -> None:
    folder = Path("/data/visits")
    try:
        path = journal_path(folder, name)
    except NotUsable:
        return
    assert path.parent == folder and path.name == f"{name}.journal"
    assert Path(str(path)) == path and ".." not in path.parts
