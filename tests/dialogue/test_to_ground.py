"""Windings read out with what is said of the ground: the ohms are taken, the rest is a note."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.dialogue.read_out import kept, typed_at
from troubleshoot.dialogue.to_ground import ohms_and_ground
from troubleshoot.knowledge.model import Knowledge


@pytest.mark.parametrize(
    ("typed", "read", "said"),
    [
        ("22/38/60, nothing to ground", "22/38/60", "nothing to ground"),
        ("1.2 1.2 1.2 and nothing to ground", "1.2 1.2 1.2", "nothing to ground"),
        ("C-R 0.8, C-S 2.4, R-S 3.2, OL to case", "C-R 0.8, C-S 2.4, R-S 3.2", "OL to case"),
        ("22/38/60 no grounds", "22/38/60", "no grounds"),
    ],
)
def test_ohms_are_parted_from_what_is_said_of_the_ground(
    shipped: Knowledge, typed: str, read: str, said: str
) -> None:
    """Regression: this is how windings are said, and it held no unit that was known."""
    assert ohms_and_ground(shipped, shipped.tests["compressor-windings"], typed) == (read, said)


@pytest.mark.parametrize(
    "typed",
    ["22/38/60, shorted to ground", "22/38/60, 2 to ground", "nothing to ground", "22/38/60, hot"],
)
def test_a_path_to_ground_is_no_such_remark(shipped: Knowledge, typed: str) -> None:
    assert ohms_and_ground(shipped, shipped.tests["compressor-windings"], typed) is None
    assert ohms_and_ground(shipped, shipped.tests["line-volts-idle"], f"{typed}") is None


def test_the_ohms_count_and_the_ground_is_a_note(shipped: Knowledge, tmp_path: Path) -> None:
    text, book = typed_at(
        shipped, tmp_path, "compressor-windings", "22/38/60, nothing to ground",
        unit={"compressor-phase": "single", "supply-phase": "single"},
    )  # fmt: skip
    assert [(test, told) for test, _, told in kept(book)] == [("compressor-windings", "22/38/60")]
    assert any("nothing to ground" in note for note in book.state.notes)
    assert 'Kept as a note: "nothing to ground".' in text
    assert not any(answer.test == "compressor-insulation" for answer in book.state.answers)
