"""In a practice the tap of the gas train that is opened or plugged is named, as in a visit."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Command = Callable[..., tuple[int, str, str]]
Typed = Callable[..., None]
TO_THE_TAPS = (
    "step roof", "step tell the people", "step second person", "step combustible",
    "step prove the", "step controls", "step switch off", "step arc", "step take the panels",
    "step test for dead", "step prove the", "step discharge and meter", "step test for dead",
    "step prove the",
    "step shut the gas", "step combustible",
)  # fmt: skip
TO_RUN = (
    "step open the gas", "step combustible", "step room", "step second person", "step arc",
    "step shut every door", "step tools", "step lock off", "step call for",
)  # fmt: skip
ON = "Put the manometer on a tap of the gas valve"


@pytest.fixture
def said(command: Command, typed: Typed) -> Callable[..., str]:
    """What is said while these lines are typed, in one line."""

    def play(*lines: str) -> str:
        typed(*TO_THE_TAPS, *lines, "q")
        code, out, err = command("practise", "ferry-green")
        assert (code, err) == (0, "")
        return " ".join(out.split())

    return play


@pytest.mark.parametrize(
    "named",
    [
        ("step manometer on at outlet tap",),
        ("step manometer on at outlet",),
        ("step manometer on", "2"),
        ("step manometer on", "outlet tap"),
        ("step manometer on", "over there", "outlet"),
    ],
)
def test_the_tap_is_named_or_asked_for(named: tuple[str, ...], said: Callable[..., str]) -> None:
    """Regression: the step had no place, so that no reading at a tap could ever be taken."""
    out = said(*named, "state", *TO_RUN, "do gas-manifold-pressure", "")
    assert f"{ON}, outlet tap: on." in out and f"{ON}, inlet tap" not in out
    assert "plug out and manometer on: outlet tap" in out
    assert "STOPPED: this" not in out and "Manifold pressure at high fire: " in out


def test_no_tap_is_opened_where_none_is_named(said: Callable[..., str]) -> None:
    out = said("step manometer on", "", "state")
    assert "1 inlet tap 2 outlet tap" in out and "plug out" not in out


def test_only_an_open_tap_is_plugged(said: Callable[..., str]) -> None:
    out = said("step manometer on at inlet tap", "step manometer off", "state")
    assert "plug the tap, inlet tap: plugged." in out and "plug out" not in out


def test_the_plug_is_tested_at_the_tap_that_was_opened_behind_the_valve(
    said: Callable[..., str],
) -> None:
    out = said(
        "step manometer on at outlet tap", "step manometer off", "state", *TO_RUN,
        "step test the plug", "state",
    )  # fmt: skip
    assert "at high fire, outlet tap: tight." in out
    assert out.count("the plug of the outlet tap has not been tested under gas") == 1


def test_a_meter_is_hooked_up_dead_for_the_flame_current(said: Callable[..., str]) -> None:
    out = said("step hook up", "flame", "state", *TO_RUN, "do flame-current", "")
    assert "Hook up for a reading, dead, flame rod lead: hooked up." in out
    assert "hooked up for a reading: flame rod lead" in out
    assert "STOPPED: this" not in out and "Flame current: " in out
