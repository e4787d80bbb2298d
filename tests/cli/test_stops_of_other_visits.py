"""A STOP stands over the unit, not only over the visit in which it was met."""

from __future__ import annotations

from collections.abc import Callable
from datetime import timedelta

import pytest

from troubleshoot.cli import clock

Call = Callable[..., tuple[int, str, str]]

GAS_SMELL = ["gas-smell", *[""] * 12]
TOLD = "the gas utility by telephone, just now"
DONE, READ = "1", "0 % LEL"
RESULT = ["", "2", DONE, "y", READ, "y"]


def stopped_at_once(command: Call, typed: Callable[..., None], *lines: str) -> str:
    """A visit that a gas smell stopped, handed over; its name."""
    typed(*lines)
    code, out, _ = command()
    assert code == 0, out
    return " ".join(out.split()).rpartition("troubleshoot reopen ")[2].split()[0]


def test_a_visit_named_only_at_its_hand_over_meets_the_stop_of_the_unit(
    command: Call, typed: Callable[..., None], monkeypatch: pytest.MonkeyPatch
) -> None:
    first = stopped_at_once(command, typed, "RTU-7", *GAS_SMELL, "over", TOLD)
    other = stopped_at_once(command, typed, "", "n", *GAS_SMELL, "over", "rtu 7", TOLD)
    later = clock.now() + timedelta(minutes=2)
    monkeypatch.setattr(clock, "now", lambda: later)
    typed(*RESULT, "just now", "cleared", "15 ft safe", "open", "0 % LEL", "q")
    code, out, _ = command("reopen", other)
    after = out.partition("> 0 % LEL")[2]
    assert code == 4
    assert f"troubleshoot reopen {first}" in " ".join(after.split())
    assert "\nTest:" not in after and "\nStep:" not in after

    typed("y", "", "q")
    _, out, _ = command()
    assert f"troubleshoot reopen {first}" in " ".join(out.split())
    assert "Test:" not in out and "Step:" not in out
