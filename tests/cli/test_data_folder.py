"""A data folder that is none is told of: it would hide every STOP that is kept."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

Call = Callable[..., tuple[int, str, str]]


@pytest.mark.parametrize(
    "args", [("visits",), ("report", "2026-11-25-1"), ("diagnose", "RTU-7", "--json")]
)
@pytest.mark.parametrize("device", [True, False])
def test_what_is_no_folder_is_no_data_folder(
    args: tuple[str, ...],
    device: bool,
    command: Call,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """Regression: "No visit is kept yet", with exit code 0."""
    path = tmp_path / "a-file"
    path.write_text("")
    monkeypatch.setenv("TROUBLESHOOT_DATA", os.devnull if device else str(path / "deeper"))
    code, out, err = command(*args)
    assert code == 2 and out == ""
    assert "no visits can be kept or read there" in err and "--data" in err


def test_a_folder_whose_visits_are_a_file_is_none(command: Call, tmp_path: Path) -> None:
    (tmp_path / "visits").write_text("")
    code, _, err = command("--data", str(tmp_path), "visits")
    assert code == 2 and "no visits can be kept or read there" in err


def test_a_folder_that_is_not_there_yet_holds_no_visit(command: Call, tmp_path: Path) -> None:
    code, out, _ = command("--data", str(tmp_path / "new"), "visits")
    assert code == 0 and "No visit is kept yet" in out
