"""Long texts line by line: what is read is not kept, and what is no text is named by its line."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from troubleshoot.outside.lines import MOST_LINE, Lines
from troubleshoot.outside.refusal import NotUsable


def test_lines_come_as_they_are_and_are_counted_in_bytes(tmp_path: Path) -> None:
    path = tmp_path / "log.csv"
    path.write_bytes("\ufeffunit,note\r\nRTU-1,über\nRTU-2,x".encode())
    with Lines(str(path)) as lines:
        each = iter(lines)
        assert next(each) == "unit,note\r\n"
        assert 0 < lines.read < lines.size
        assert list(each) == ["RTU-1,über\n", "RTU-2,x"]
        assert lines.read == lines.size == path.stat().st_size


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"unit\nRTU-\xff\n", "line 2 is not UTF-8 text"),
        (b"unit\n" + b"x" * (MOST_LINE + 1), f"line 2 is over {MOST_LINE} bytes"),
    ],
)
def test_what_is_no_text_is_named_by_its_line(tmp_path: Path, content: bytes, said: str) -> None:
    path = tmp_path / "log.csv"
    path.write_bytes(content)
    with Lines(str(path)) as lines, pytest.raises(NotUsable, match=said):
        list(lines)


def test_what_is_no_file_is_turned_away_at_once(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    for name in ("pipe", "nowhere"):
        with pytest.raises(NotUsable):
            Lines(str(tmp_path / name))
