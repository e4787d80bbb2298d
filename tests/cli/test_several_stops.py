"""Several STOPs on one unit: one is told whole, all others are named wherever it is told."""

from __future__ import annotations

from collections.abc import Callable

Call = Callable[..., tuple[int, str, str]]
START = ("RTU-7", "weak-cooling", *[""] * 12)


def flat(text: str) -> str:
    return " ".join(text.split())


def names_both(text: str) -> bool:
    return "Also stands: DANGER - STOP, gas odor." in text


def test_all_that_stand_are_named_at_the_stop_at_closing_and_at_the_next_start(
    command: Call, typed: Callable[..., None]
) -> None:
    """Regression: of a shock and a gas smell only the one met last was named."""
    dangers = ("danger smell gas", "danger mate got a shock")
    typed(*START, *dangers, "over", "dispatch, just now", "q", "q")
    _, out, _ = command()
    at_stop, _, closed = flat(out).rpartition("The visit is closed as stopped.")
    assert names_both(at_stop), at_stop[-1500:]
    assert names_both(closed), closed
    assert "Stopped for this too: gas odor." in at_stop
    typed("RTU-7", "q")
    _, out, _ = command()
    assert names_both(flat(out)), out
    typed("RTU-8", "n", "q")
    _, out, _ = command()
    assert "gas odor" in flat(out), out


def test_one_stop_is_not_told_twice(command: Call, typed: Callable[..., None]) -> None:
    typed(*START, "danger smell gas", "over", "dispatch, just now", "q", "q")
    _, out, _ = command()
    assert "Also stands" not in out and "Stopped for this too" not in out
