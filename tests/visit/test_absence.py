"""How long nobody reported from the unit: by the times in the events, never by a guess."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta, timezone
from typing import Any

import pytest

from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.safety.work_state import Gas, WorkState
from troubleshoot.visit.absence import (
    hour_passed,
    minutes_since,
    resumed,
    silence,
    stamp,
)
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    DangerReported,
    Event,
    FactTold,
    Halted,
    HourPassed,
    MarkedInvalid,
    Named,
    Noted,
    Reopened,
    Repaired,
    Resumed,
    Skipped,
    Started,
    StepDone,
    Undone,
    VisitEnded,
)
from troubleshoot.visit.events.replaying import timed
from troubleshoot.visit.state import VisitState

NOON = datetime(2026, 11, 26, 12, 0, 0, 123456, tzinfo=timezone(timedelta(hours=-5)))
THEN = "2026-11-26T11:40:00-05:00"
RESULT = HandOverResult("gas-utility", "union tightened", "0 %", "2026-11-26 9:00")
STATE = VisitState(last_time=THEN, roof_time=THEN, work=WorkState(roof="go"))


def later(**passed: float) -> datetime:
    return NOON.replace(hour=11, minute=40, microsecond=0) + timedelta(**passed)


def test_a_moment_is_kept_to_the_second_with_its_offset() -> None:
    assert stamp(NOON) == "2026-11-26T12:00:00-05:00"


@pytest.mark.parametrize(
    ("time", "minutes"),
    [
        (THEN, 20.0), ("2026-11-26T16:40:00+00:00", 20.0), ("2026-11-26T12:00:00-05:00", 0.0),
        ("2026-11-26T12:00:01-05:00", None), ("", None), ("yesterday", None),
        ("2026-11-26T11:40:00", None), (None, None),
    ],
)  # fmt: skip
def test_minutes_are_counted_across_offsets_and_what_cannot_be_is_not_known(
    time: Any, minutes: float | None
) -> None:
    assert minutes_since(time, NOON.replace(microsecond=0)) == minutes


def test_whoever_goes_on_says_how_long_nobody_reported() -> None:
    wanted = Resumed(20.3, True)
    assert resumed(STATE, later(minutes=20, seconds=17)) == wanted
    who = resumed(STATE, later(minutes=20, seconds=17), ["technician", "gas"])
    assert who == replace(wanted, profiles=("gas", "technician"))
    next_day = resumed(STATE, later(hours=12, minutes=20))
    assert (next_day.minutes_away, next_day.same_day) == (740.0, False)
    unknown = resumed(VisitState(), NOON)
    assert (unknown.minutes_away, unknown.same_day) == (None, False)
    set_back = resumed(STATE, later(minutes=-1))
    assert (set_back.minutes_away, set_back.same_day) == (None, False)


def test_a_clock_behind_anything_that_was_kept_was_set_back() -> None:
    """An undo renews nothing; a clock that shows less after it is not to be believed."""
    after_undo = replace(STATE, latest_time=later(minutes=25).isoformat())
    event = resumed(after_undo, later(minutes=21))
    assert event.minutes_away is None and not event.same_day
    assert resumed(after_undo, later(minutes=26)).minutes_away == 26.0


def test_the_day_is_that_of_the_place_where_the_clock_hangs_now() -> None:
    evening = replace(STATE, last_time="2026-11-27T03:59:00+00:00")  # 22:59 on the 26th here
    assert resumed(evening, datetime.fromisoformat("2026-11-26T23:10:00-05:00")).same_day


@pytest.mark.parametrize(
    ("minutes", "work", "silent"),
    [
        (29.9, 0.0, False), (30.0, 0.0, True), (30.0, 0.2, False), (50.0, 20.1, False),
        (50.0, 20.0, True), (5.0, 20.0, False), (-1.0, 0.0, True), (-1.0, 60.0, True),
    ],
)  # fmt: skip
def test_a_silence_is_one_longer_than_half_an_hour_beyond_the_work_itself(
    minutes: float, work: float, silent: bool
) -> None:
    event = silence(STATE, later(minutes=minutes), work)
    assert (event is not None) is silent
    if event is not None and minutes >= 0:
        assert event.minutes_away == minutes


def test_a_night_is_a_silence_however_long_the_work() -> None:
    assert silence(STATE, later(hours=12, minutes=30), 10_000.0) is not None


@pytest.mark.parametrize(
    ("minutes", "roof", "passed"),
    [(60.0, "go", False), (60.1, "go", True), (-1.0, "go", True), (500.0, "edge-near", False)],
)
def test_the_look_at_the_roof_is_good_for_an_hour(minutes: float, roof: Any, passed: bool) -> None:
    state = replace(STATE, work=WorkState(roof=roof))
    assert hour_passed(state, later(minutes=minutes)) is passed
    unknown = replace(state, roof_time="")
    assert hour_passed(unknown, later(minutes=1)) is (roof == "go")


@pytest.mark.parametrize(
    ("event", "reports"),
    [
        *((said, True) for said in (
            Started(), FactTold("heat", "gas"), Answered("a"), StepDone("b", ()), Skipped("a"),
            Repaired("f"), Reopened("h", RESULT, "a", None))),
        *((said, False) for said in (
            Noted("x"), Aimed("a"), MarkedInvalid("x"), Halted("h"), VisitEnded("closed"),
            HourPassed(), Named("RTU-7"), DangerReported("h"))),
        (Resumed(29.0, True), False),
        (Resumed(31.0, True), True),
        (Resumed(None, True), True),
        (Resumed(1.0, False), True),
    ],
)  # fmt: skip
def test_only_who_is_at_the_unit_renews_the_time(event: Event, reports: bool) -> None:
    after = timed(STATE, STATE, replace(event, time="now"))
    assert after.last_time == ("now" if reports else THEN)
    assert timed(STATE, STATE, event).last_time == ("" if reports else THEN)


GO, LOCKED = WorkState(roof="go"), WorkState(power="locked-out")


@pytest.mark.parametrize(
    ("event", "before", "after", "looked"),
    [
        (StepDone("roof-conditions", ()), GO, GO, True),
        (StepDone("edge-protection", ()), GO, GO, True),
        (Answered("roof-conditions"), GO, GO, True),
        (StepDone("lockout", ()), GO, GO, False),
        (Undone(), WorkState(), GO, True),
        (StepDone("roof-conditions", ()), GO, WorkState(roof="no-go"), False),
    ],
)
def test_the_roofs_hour_runs_from_the_last_look(
    event: Event, before: WorkState, after: WorkState, looked: bool
) -> None:
    found = timed(
        replace(STATE, work=before), replace(STATE, work=after), replace(event, time="now")
    )
    assert found.roof_time == ("now" if looked else THEN)


@pytest.mark.parametrize(
    ("before", "after", "went_on"),
    [(GO, LOCKED, True), (LOCKED, LOCKED, False), (LOCKED, GO, False), (GO, GO, False)],
)
def test_the_wait_for_drives_runs_from_the_lock(
    before: WorkState, after: WorkState, went_on: bool
) -> None:
    event = StepDone("lockout", (), time="now")
    found = timed(replace(STATE, work=before), replace(STATE, work=after), event)
    assert found.power_off_time == ("now" if went_on else "")


@pytest.mark.parametrize(
    ("before", "after", "went_on"),
    [
        ("on", "shut", True), ("unsure", "shut", True), ("shut", "shut", False),
        ("shut", "unsure", False), ("on", "on", False),
    ],
)  # fmt: skip
def test_the_wait_for_the_purge_runs_from_the_shut_cock(
    before: Gas, after: Gas, went_on: bool
) -> None:
    event = StepDone("gas-cock-shut", (), time="now")
    found = timed(
        replace(STATE, work=WorkState(gas=before)),
        replace(STATE, work=WorkState(gas=after)),
        event,
    )
    assert found.gas_shut_time == ("now" if went_on else "")


def test_an_absence_voids_by_what_its_event_says() -> None:
    assert not Resumed(12, True).voids
    assert Resumed(12, False).voids
    assert Resumed(None, True).voids
