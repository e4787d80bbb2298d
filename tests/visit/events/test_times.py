"""Which times an event settles: by them a silence, an hour on the roof and a wait are judged."""

from __future__ import annotations

from dataclasses import replace

import pytest

from troubleshoot.safety.work_state import Roof, WorkState
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Event,
    HourPassed,
    Noted,
    Resumed,
    StateGone,
    StepDone,
    Undone,
)
from troubleshoot.visit.events.replaying import timed
from troubleshoot.visit.state import VisitState

NINE, TEN = "2026-11-26T09:00:00+00:00", "2026-11-26T10:00:00+00:00"
BEFORE = VisitState(
    last_time=NINE, latest_time=NINE, roof_time=NINE, power_off_time=NINE, gas_shut_time=NINE
)
ROOF, RAIL = StepDone("roof-conditions", ("safe",)), StepDone("edge-protection", ("on",))
TOLD = StepDone("tell-occupants", ("told",))


def settled(event: Event, before: WorkState, now: WorkState) -> set[str]:
    """The times that are those of an event, an hour after all others."""
    state = replace(BEFORE, work=before)
    found = timed(state, replace(state, work=now), replace(event, time=TEN))
    names = ("last_time", "latest_time", "roof_time", "power_off_time", "gas_shut_time")
    assert all(getattr(found, name) in (NINE, TEN) for name in names)
    return {name.removesuffix("_time") for name in names if getattr(found, name) == TEN}


@pytest.mark.parametrize(
    ("event", "reports"),
    [
        (Answered("weather-pattern", outcomes=("always",)), True), (TOLD, True),
        (Noted("hot roof"), False), (Aimed("weather-pattern"), False), (HourPassed(), False),
        (Resumed(5.0, True), False), (Resumed(45.0, True), True), (Resumed(None, True), True),
        (StateGone(("lockout",), "my lock is off"), True),
    ],
)  # fmt: skip
def test_what_is_kept_has_a_time_and_what_comes_from_the_unit_ends_a_silence(
    event: Event, reports: bool
) -> None:
    work = WorkState()
    assert settled(event, work, work) == ({"latest", "last"} if reports else {"latest"})


def test_an_event_of_no_known_time_ends_a_silence_and_sets_no_clock_back() -> None:
    found = timed(BEFORE, BEFORE, TOLD)
    assert (found.last_time, found.latest_time) == ("", NINE)
    assert timed(BEFORE, BEFORE, Noted("x")) == BEFORE


@pytest.mark.parametrize(
    ("event", "before", "now", "begins"),
    [
        (ROOF, "go", "go", True),
        (RAIL, "go", "go", True),
        (Answered("roof-conditions", outcomes=("safe",)), "go", "go", True),
        (Answered("edge-protection", outcomes=("on",)), "go", "go", True),
        (Answered("weather-pattern", outcomes=("always",)), "go", "go", False),
        (TOLD, "go", "go", False),
        (TOLD, "not-checked", "go", True),
        (ROOF, "go", "no-go", False),
        (ROOF, "not-checked", "edge-near", False),
    ],
)
def test_the_hour_on_the_roof_begins_where_it_was_looked_at_and_found_good(
    event: Event, before: Roof, now: Roof, begins: bool
) -> None:
    """An answer to anything else is no look at the sky."""
    times = settled(event, WorkState(roof=before), WorkState(roof=now))
    assert ("roof" in times) is begins


@pytest.mark.parametrize("what", ["power_off", "gas_shut"])
def test_a_wait_begins_when_it_was_shut_off_and_not_anew_while_it_is(what: str) -> None:
    off = WorkState(power="locked-out") if what == "power_off" else WorkState(gas="shut")
    assert what in settled(TOLD, WorkState(), off)
    assert what not in settled(TOLD, off, off)
    assert what not in settled(TOLD, off, WorkState())


@pytest.mark.parametrize("event", [Noted("hot roof"), Aimed("weather-pattern"), Undone(), TOLD])
def test_what_is_told_on_a_clock_set_back_does_not_hide_it(event: Event) -> None:
    """Found by the long walk: behind an undo a test was shown on the look at the roof of before."""
    late = replace(BEFORE, latest_time=TEN)
    assert timed(late, late, replace(event, time=NINE)).latest_time == TEN
    assert timed(late, late, replace(Resumed(None, False), time=NINE)).latest_time == NINE


@pytest.mark.parametrize("kept", ["", "yesterday", "2026-11-26T10:00:00"])
def test_a_time_that_is_none_is_followed_by_any(kept: str) -> None:
    """Nor is one that does not say of which clock it is."""
    state = replace(BEFORE, latest_time=kept)
    assert timed(state, state, replace(Noted("hot roof"), time=NINE)).latest_time == NINE
