"""The result of a hand-over: who may give it, what it has to say, and when it was read."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.model import Hazard, Knowledge, Stop
from troubleshoot.reasoning.chaining.on_record import ON_RECORD, hazard_on_record, stopping
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.hearing.roles import names_a_role, roles_in
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.safety.stops.reopening import (
    NotReopened,
    fitting_roles,
    minute,
    role,
    stopped_at,
    what_stopped,
    when_read,
)
from troubleshoot.safety.stops.result import NotAResult
from troubleshoot.visit.events import Answered, Event, Halted, Started, VisitEnded, replay
from troubleshoot.visit.state import VisitState

NOW = datetime(2026, 11, 26, 9, 45, 59)


def test_a_hazard_says_who_may_clear_it_and_else_the_supervisor_does() -> None:
    hazard = Hazard("h", "DANGER", "keep off")
    assert fitting_roles(hazard) == ("supervisor",)
    some = replace(hazard, cleared_by=("gas-fitter", "fire-service"))
    assert fitting_roles(some) == ("fire-service", "gas-fitter")


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("1", "fire-service"), ("2", "fire-alarm"), ("3", "fire"), ("fire", "fire"),
        ("fire s", "fire-service"), ("FIRE   Alarm", "fire-alarm"), ("gas fitter", "gas-fitter"),
        ("g", "gas-fitter"),
    ],
)  # fmt: skip
def test_a_role_is_a_number_its_name_or_the_beginning_of_one(typed: str, named: str) -> None:
    assert role(typed, ("fire-service", "fire-alarm", "fire", "gas-fitter")) == named


@pytest.mark.parametrize("typed", ["", "  ", "0", "3", "fire", "x", "fire-services"])
def test_what_names_no_single_role_is_refused_with_the_roles(typed: str) -> None:
    with pytest.raises(NotAResult, match="Give a number from 1 to 2, or one of: fire-service, fir"):
        role(typed, ("fire-service", "fire-alarm"))


def test_nothing_typed_names_nobody_though_there_is_only_one() -> None:
    with pytest.raises(NotAResult, match="Give a number from 1 to 1"):
        role("", ("supervisor",))


@pytest.mark.parametrize(
    ("typed", "roles"),
    [
        ("gas utility tech", {"gas-utility"}), ("the gas company", {"gas-utility"}),
        ("Fire Brigade, just now", {"fire-service"}), ("fire dept 9:10", {"fire-service"}),
        ("building engineer", {"building-owner"}), ("facility manager", {"building-owner"}),
        ("fire alarm tech", {"fire-alarm"}), ("foreman", {"supervisor"}),
        ("boss 3:10", {"supervisor"}), ("dispatcher, 14:05", set()),
        ("the foreman's office", {"supervisor"}), ("power company", {"electric-utility"}),
        ("owner and electrician", {"building-owner", "electrician"}),
    ],
)  # fmt: skip
def test_people_are_known_by_their_roles(typed: str, roles: set[str]) -> None:
    assert set(roles_in(typed)) == roles and names_a_role(typed)


@pytest.mark.parametrize(
    "typed",
    ["", "the cat at noon", "Bob", "nobody", "no supervisor", "me", "x", "could not reach it"],
)
def test_a_name_without_a_role_and_nobody_are_nobody_to_call(typed: str) -> None:
    assert not names_a_role(typed)


@pytest.mark.parametrize(
    ("typed", "named"),
    [("the gas company", "gas-utility"), ("utility", "gas-utility"), ("fitter", "gas-fitter")],
)
def test_a_role_is_known_by_its_other_words(typed: str, named: str) -> None:
    assert role(typed, ("gas-utility", "gas-fitter", "fire-service")) == named


@pytest.mark.parametrize(
    "typed",
    ["the gas utility is on its way", "gas utility refused", "fitter cancelled",
     "gas fitter en route", "the gas utility could not come",
     "gas utility was called and declined"],
)  # fmt: skip
def test_who_is_still_to_come_or_would_not_has_made_nothing_safe(typed: str) -> None:
    with pytest.raises(NotAResult):
        role(typed, ("gas-utility", "gas-fitter", "fire-service"))


@pytest.mark.parametrize(
    ("typed", "stopped", "at"),
    [
        ("09:45", "", "2026-11-26 09:45"),
        ("2026-11-26 09:45", "2026-11-26 09:44", "2026-11-26 09:45"),
        ("2026-11-25 23:59", "", "2026-11-25 23:59"),
        ("just now", "", "2026-11-26 09:45"), ("10 min ago", "", "2026-11-26 09:35"),
        ("half an hour ago", "", "2026-11-26 09:15"), ("2 hours ago", "", "2026-11-26 07:45"),
        ("9:44 am", "", "2026-11-26 09:44"), ("at 9:10", "", "2026-11-26 09:10"),
        ("9 am", "", "2026-11-26 09:00"), ("yesterday 2:44 pm", "", "2026-11-25 14:44"),
        ("12:10 am", "", "2026-11-26 00:10"), ("yesterday, 16:00", "", "2026-11-25 16:00"),
        ("2:44 p.m.", "2026-11-25 01:00", None), ("3:10", "", "2026-11-26 03:10"),
    ],
)  # fmt: skip
def test_a_time_is_one_of_today_or_of_the_day_given(
    typed: str, stopped: str, at: str | None
) -> None:
    if at is None:
        with pytest.raises(NotAResult, match="still to come"):
            when_read(typed, stopped, NOW)
    else:
        assert when_read(typed, stopped, NOW) == at


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("09:46", "still to come"), ("2026-11-27 00:00", "still to come"),
        ("noon", "still to come"),
        ("09:43", "not after 2026-11-26 09:44"), ("09:44", "not after 2026-11-26 09:44"),
        ("2026-11-26", "Give the time as"), ("", "Give the time as"),
        ("25:00", "Give the time as"), ("10:75", "Give the time as"),
        ("13:00 pm", "Give the time as"), ("9", "Give the time as"),
        ("2026-13-45 10:00", "Give the time as"),
        ("the cat", "Give the time as"),
    ],
)  # fmt: skip
def test_a_time_before_the_stop_to_come_or_none_is_refused(typed: str, why: str) -> None:
    with pytest.raises(NotAResult, match=why):
        when_read(typed, "2026-11-26 09:44", NOW)


@given(st.text(max_size=30))
def test_no_text_is_read_as_a_time_but_in_one_of_the_forms(text: str) -> None:
    try:
        at = when_read(text, "", NOW)
    except NotAResult:
        return
    assert at <= minute(NOW)


def test_a_stop_is_read_after_its_own_time_or_else_after_it_was_told() -> None:
    met = StopMet("h", 0, time="2026-11-26T09:44:30-05:00", told_at="2026-11-26 10:00")
    assert stopped_at(met) == "2026-11-26 09:44"
    assert stopped_at(replace(met, time="")) == "2026-11-26 10:00"
    assert stopped_at(StopMet("h", 0)) == ""
    assert minute(NOW) == "2026-11-26 09:45"


def state_of(shipped: Knowledge, *more: Event, ended: bool = True) -> VisitState:
    events: list[Event] = [
        Started(complaint="no-heat", unit={"heat": "gas"}),
        *more,
    ]
    if ended:
        events.append(VisitEnded("stopped", "the owner and a contractor", "2026-11-25 15:12"))
    return replay(shipped, events)


CRACK = Answered("heat-exchanger-look", outcomes=("crack",))


def test_what_stopped_a_visit_is_its_stop_and_the_finding_to_take_afresh(
    shipped: Knowledge,
) -> None:
    reasoner = Reasoner(shipped)

    def asked(state: VisitState) -> object:
        return what_stopped(shipped, state, conclude_visit(reasoner, state))

    stopped = state_of(shipped, CRACK)
    hazard = shipped.hazards["heat-exchanger-breach"]
    assert asked(stopped) == (hazard, ("heat-exchanger-look", None))
    with pytest.raises(NotReopened, match="still open"):
        asked(state_of(shipped, CRACK, ended=False))
    for closed in (state_of(shipped), replace(stopped, ended="closed")):
        with pytest.raises(NotReopened, match="closed, not stopped"):
            asked(closed)
    recorded = Halted("heat-exchanger-breach", on_record=True)
    with pytest.raises(NotReopened, match="no finding can show"):
        asked(state_of(shipped, recorded))


def test_a_danger_on_record_stops_the_whole_job_known_today_or_not(shipped: Knowledge) -> None:
    assert ON_RECORD == "on-record"
    known = shipped.hazards["heat-exchanger-breach"]
    assert hazard_on_record(shipped, known.id) == known
    unknown = hazard_on_record(shipped, "gone-by-now")
    assert unknown.signal == "DANGER" and unknown.stop == Stop("whole-job", "gone-by-now")
    assert unknown.id == "gone-by-now" and "gone-by-now" in unknown.what_to_do
    assert unknown.defer_to == "the supervisor, who finds out who is licensed for it"
    assert unknown.tag == "Do not start: the work was stopped for gone-by-now."
    for hazard in shipped.hazards.values():
        covers = hazard.spoken if hazard.stop is None else hazard.stop.covers
        assert stopping(shipped, hazard.id) == replace(hazard, stop=Stop("whole-job", covers))
    assert any(hazard.stop is None for hazard in shipped.hazards.values())
    assert stopping(shipped, "gone-by-now").stop == Stop("whole-job", "gone-by-now")
