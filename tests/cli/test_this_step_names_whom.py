"""A STOP for a single step says in text too who takes the step over; the module runs as well."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from typing import Any

import pytest

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]


@pytest.mark.parametrize("how", [["assess"], ["diagnose", "--answers"]])
def test_a_stop_for_one_step_names_who_takes_it_over(
    how: list[str], command: Call, case_file: Write
) -> None:
    """Regression: only a STOP wider than one step named anybody in the text."""
    readings = [{"test": "line-volts-idle", "outcome": "one-leg-dead"}]
    path = case_file({"complaint": "no-cooling", "readings": readings})
    account = json.loads(command(*how, path, "--json")[1])
    assert account["stop"] is None
    one_step = [s for s in account["standing_stops"] if s["scope"] == "this-step"]
    assert one_step
    said = " ".join(command(*how, path)[1].split())
    for stop in one_step:
        assert f"Hand over to: {stop['defer_to']}" in said


def test_the_program_runs_as_a_module() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "troubleshoot", "--help"], capture_output=True, text=True, check=True
    )
    assert "diagnose" in done.stdout
