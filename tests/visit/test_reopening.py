"""The result of a hand-over: who may give it, what it has to say, and when it was read."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest

from troubleshoot.knowledge.model import Hazard, Knowledge, Stop
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.on_record import ON_RECORD, hazard_on_record, stopping
from troubleshoot.visit.event_shapes import handed_over_event
from troubleshoot.visit.events import replay
from troubleshoot.visit.reopening import (
    ROLES,
    NotAResult,
    NotReopened,
    fitting_roles,
    in_words,
    minute,
    role,
    stopped_at,
    what_stopped,
    when_read,
)
from troubleshoot.visit.stops import conclude_visit
from troubleshoot.visit.visit_state import StopMet, VisitState

NOW = datetime(2026, 11, 26, 9, 45, 59)
SAID = {
    "fire-service": "the fire service",
    "medical-service": "the medical service",
    "gas-utility": "the gas utility",
    "gas-fitter": "a licensed gas fitter",
    "combustion": "a combustion-qualified person, with an analyzer",
    "heating-contractor": "a licensed heating contractor",
    "electrician": "a licensed electrician",
    "electric-utility": "the electric utility",
    "refrigerant": "a certified refrigerant technician, trained for this refrigerant",
    "fire-alarm": "a person licensed for fire alarms",
    "building-owner": "the building's owner",
    "supervisor": "the supervisor",
}


def test_the_roles_and_how_they_are_spoken_of() -> None:
    assert list(ROLES.items()) == list(SAID.items())


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


@pytest.mark.parametrize("typed", ["", "  ", "0", "3", "fire", "x", "fire-service-x"])
def test_what_names_no_single_role_is_refused_with_the_roles(typed: str) -> None:
    with pytest.raises(NotAResult, match="Give a number from 1 to 2, or one of: fire-service, fir"):
        role(typed, ("fire-service", "fire-alarm"))


def test_nothing_typed_names_nobody_though_there_is_only_one() -> None:
    with pytest.raises(NotAResult, match="Give a number from 1 to 1"):
        role("", ("supervisor",))


@pytest.mark.parametrize(
    "typed", ["valve was shut", "UNION TIGHTENED TWICE", "ab cy de", "a. ab ac ad"]
)
def test_three_words_tell_something(typed: str) -> None:
    assert in_words(typed) == typed


@pytest.mark.parametrize(
    "typed",
    ["", "shut it", "shut shut Shut", "a b c", "12 34 56", "bcd fgh jkl", "a e i o", "a1 e2 o3"],
)
def test_fewer_tell_nobody_anything(typed: str) -> None:
    with pytest.raises(NotAResult, match="a few words"):
        in_words(typed)


@pytest.mark.parametrize(
    ("typed", "stopped", "at"),
    [
        ("09:45", "", "2026-11-26 09:45"),
        ("2026-11-26 09:45", "2026-11-26 09:45", "2026-11-26 09:45"),
        ("2026-11-25 23:59", "", "2026-11-25 23:59"),
    ],
)
def test_a_time_is_one_of_today_or_of_the_day_given(typed: str, stopped: str, at: str) -> None:
    assert when_read(typed, stopped, NOW) == at


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("09:46", "still to come"), ("2026-11-27 00:00", "still to come"),
        ("09:43", "That was before the STOP of 2026-11-26 09:44"),
        ("noon", "Give the day and time as 2026-11-26 09:45, or only the time for today"),
        ("2026-11-26", "Give the day and time"), ("", "Give the day and time"),
    ],
)  # fmt: skip
def test_a_time_before_the_stop_to_come_or_none_is_refused(typed: str, why: str) -> None:
    with pytest.raises(NotAResult, match=why):
        when_read(typed, "2026-11-26 09:44", NOW)


def test_a_stop_is_read_after_its_own_time_or_else_after_it_was_told() -> None:
    met = StopMet("h", 0, time="2026-11-26T09:44:30-05:00", told_at="2026-11-26 10:00")
    assert stopped_at(met) == "2026-11-26 09:44"
    assert stopped_at(replace(met, time="")) == "2026-11-26 10:00"
    assert stopped_at(StopMet("h", 0)) == ""
    assert minute(NOW) == "2026-11-26 09:45"


def state_of(shipped: Knowledge, *more: dict[str, object], ended: bool = True) -> VisitState:
    events: list[dict[str, object]] = [
        {"event": "start", "complaint": "no-heat", "unit": {"heat": "gas"}},
        *more,
    ]
    if ended:
        events.append(dict(handed_over_event("the owner and a contractor", "2026-11-25 15:12")))
    return replay(shipped, events)


CRACK = {"event": "answer", "test": "heat-exchanger-look", "outcomes": ["crack"]}


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
    recorded = {"event": "stop", "hazard": "heat-exchanger-breach", "on_record": True}
    with pytest.raises(NotReopened, match="no finding can show"):
        asked(state_of(shipped, recorded))


def test_a_danger_on_record_stops_the_whole_job_known_today_or_not(shipped: Knowledge) -> None:
    assert ON_RECORD == "on-record"
    known = shipped.hazards["heat-exchanger-breach"]
    assert hazard_on_record(shipped, known.id) == known
    unknown = hazard_on_record(shipped, "gone-by-now")
    assert unknown.signal == "DANGER" and unknown.stop == Stop("whole-job", "gone by now")
    assert unknown.id == "gone-by-now" and "gone by now" in unknown.what_to_do
    assert unknown.defer_to == "the supervisor, who finds out who is licensed for it"
    assert unknown.tag == "Do not start: the work was stopped for gone by now."
    for hazard in shipped.hazards.values():
        covers = hazard.id.replace("-", " ") if hazard.stop is None else hazard.stop.covers
        assert stopping(shipped, hazard.id) == replace(hazard, stop=Stop("whole-job", covers))
    assert any(hazard.stop is None for hazard in shipped.hazards.values())
    assert stopping(shipped, "gone-by-now").stop == Stop("whole-job", "gone by now")
