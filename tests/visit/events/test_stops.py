"""What a STOP and what comes of it change of a visit, and that none of it lifts the STOP."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import base, test_of, unit_of
from troubleshoot.knowledge.model import Complaint, Finding, Hazard, Knowledge, Stop, Trigger
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.record import Given, HandOverResult, StopMet
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import (
    DangerReported,
    Event,
    Halted,
    Reopened,
    TakenAfresh,
    VisitEnded,
)
from troubleshoot.visit.state import VisitState

ONE, TWO = Place("circuit", 1), Place("circuit", 2)
HALT = Stop("whole-job", "it")
FOUND = Trigger((Finding("look", ("bad",)),))
KNOWN = base(
    [test_of("look", "bad", per="circuit"), test_of("room", "bad"), test_of("all-clear", "not")],
    hazards=(
        Hazard("leak", "DANGER", "keep off", (FOUND,), HALT),
        Hazard("smell", "DANGER", "keep off", (Trigger(complaint="smells"),), HALT),
        Hazard("both", "DANGER", "keep off", (FOUND, Trigger(complaint="smells")), HALT),
        Hazard("clear", "DANGER", "keep off", (FOUND,), HALT, all_clear="all-clear"),
        Hazard("bare", "DANGER", "keep off", (), HALT),
        Hazard("chill", "DANGER", "keep off", (Trigger(complaint="cold"),), HALT),
    ),
    complaints=(Complaint("smells", "it smells", all_clear="room"), Complaint("cold", "cold")),
)
RESULT = HandOverResult("gas-utility", "union tightened", "0 % everywhere", "2026-11-26 09:30")
OLD = StopMet("old", 0, told="somebody")


def visit(*answers: Answer, **more: Any) -> VisitState:
    given: dict[str, Any] = {
        "fresh": ("room", None), "fresh_read": True, "aim": ("room", None),
        "failed_steps": (Step("second-person"),), **more,
    }  # fmt: skip
    return VisitState(unit=unit_of(KNOWN, circuits=2), answers=answers, **given)


def said(test: str, *at: Place | None) -> Answer:
    return Answer(test, ("normal",), places=at or (None,))


def test_a_stop_ends_what_was_on_its_way_and_is_kept_with_its_finding_and_time() -> None:
    state = visit(said("room"), stops=(OLD,))
    event = Halted("leak", "look", "circuit 2", time="now")
    after = event.apply(KNOWN, state)
    met = StopMet("leak", 1, ("look", TWO), time="now")
    assert after == replace(state, stops=(OLD, met), fresh=None, fresh_read=False, aim=None)
    assert replace(event, at=None).apply(KNOWN, state).stops[-1].spot == ("look", None)


def test_a_reported_danger_is_kept_with_its_words() -> None:
    event = DangerReported("leak", "it hisses", test="room")
    met = event.apply(KNOWN, visit()).stops[-1]
    assert met == StopMet("leak", 0, ("room", None), "it hisses")


def test_a_stop_on_record_hangs_on_no_finding() -> None:
    event = Halted("gone-by-now", on_record=True)
    assert event.apply(KNOWN, visit()).stops == (StopMet("gone-by-now", 0, on_record=True),)


@pytest.mark.parametrize(
    ("hazard", "complaint", "answers", "spot"),
    [
        ("leak", None, (said("look", ONE), said("look", TWO), said("room")), ("look", TWO)),
        ("leak", None, (said("look", TWO, ONE),), ("look", TWO)),
        ("leak", None, (said("room"),), ("look", None)),
        ("leak", "smells", (), ("look", None)),
        ("smell", "smells", (), ("room", None)),
        ("smell", "cold", (), None),
        ("both", "smells", (), ("room", None)),
        ("both", "cold", (), ("look", None)),
        ("both", None, (), ("look", None)),
        ("clear", None, (), ("all-clear", None)),
        ("bare", None, (said("look", ONE),), None),
        ("bare", "smells", (), None),
        ("chill", "cold", (), None),
    ],
)
def test_an_old_journal_says_no_finding_and_the_likeliest_stands_for_it(
    hazard: str, complaint: str | None, answers: tuple[Answer, ...], spot: Any
) -> None:
    state = visit(*answers, complaint=complaint)
    met = Halted(hazard).apply(KNOWN, state).stops[-1]
    assert met == StopMet(hazard, len(answers), spot)


def test_a_finding_taken_afresh_counts_from_now_and_only_an_all_clear_has_a_result() -> None:
    last = StopMet("leak", 0)
    state = visit(said("room"), said("room"), stops=(OLD, last), fresh=None)
    event = TakenAfresh("look", "circuit 1")
    after = event.apply(KNOWN, state)
    assert after == replace(state, fresh=("look", ONE), fresh_read=False, fresh_since=2)
    with_result = replace(event, result=RESULT).apply(KNOWN, state)
    assert with_result == replace(after, stops=(OLD, replace(last, result=RESULT)))
    without_stop = replace(event, result=RESULT).apply(KNOWN, replace(state, stops=()))
    assert without_stop.stops == ()


def test_the_end_keeps_who_was_told_of_the_last_stop() -> None:
    last = StopMet("leak", 0)
    state = visit(stops=(OLD, last))
    told = VisitEnded("stopped", "the utility", "15:10")
    assert told.apply(KNOWN, state) == replace(
        state, ended="stopped", stops=(OLD, replace(last, told="the utility", told_at="15:10"))
    )
    assert replace(told, ending="closed").apply(KNOWN, state) == replace(state, ended="closed")
    silent = VisitEnded("stopped").apply(KNOWN, state)
    assert silent == replace(state, ended="stopped")
    assert told.apply(KNOWN, replace(state, stops=())) == replace(state, ended="stopped", stops=())


REOPENED = Reopened("leak", RESULT, "look", "circuit 2", profiles=("gas",))


def handed_over(**more: Any) -> VisitState:
    given: dict[str, Any] = {
        "stops": (OLD, StopMet("leak", 0, ("room", None))), "ended": "stopped", "closing": True,
        "fresh": None, "profiles": frozenset({"technician"}), **more,
    }  # fmt: skip
    return visit(said("room"), said("room"), **given)


def test_a_reopened_visit_goes_on_with_its_finding_its_people_and_nothing_taken_for_granted() -> (
    None
):
    state = handed_over(work=WorkState(roof="go", panels="off", occupants_told=True))
    after = REOPENED.apply(KNOWN, state)
    met = StopMet("leak", 2, state.stops[-1].spot, result=RESULT, reopened=True)
    assert met.spot == ("room", None)  # its own finding, whichever is taken first
    assert after == replace(
        state, stops=(OLD, met), fresh=("look", TWO), profiles=frozenset({"gas"}), fresh_since=2,
        fresh_read=False, failed_steps=(), aim=None, closing=False, ended=None, work=after.work,
    )  # fmt: skip
    assert (after.work.roof, after.work.panels, after.work.occupants_told) == (
        "not-checked", "unsure", False,
    )  # fmt: skip
    unnamed = replace(REOPENED, profiles=None)
    assert unnamed.apply(KNOWN, state).profiles == {"technician"}


def test_a_stop_that_an_old_journal_kept_no_record_of_is_made_from_the_reopening() -> None:
    after = REOPENED.apply(KNOWN, handed_over(stops=()))
    assert after.stops == (StopMet("leak", 2, ("look", TWO), result=RESULT, reopened=True),)


def test_one_that_nobody_gave_back_is_met_anew_though_nothing_of_it_was_read() -> None:
    """Whoever makes it safe now does so after this time, and not after the one before."""
    found = Halted("leak", "look", "circuit 2", time="now")
    between = DangerReported("bare", "a bang").apply(KNOWN, found.apply(KNOWN, visit()))
    again = replace(found, time="later").apply(KNOWN, between).stops[-1]
    assert again == StopMet("leak", 0, ("look", TWO), time="later", first_time="now")


def test_a_danger_that_todays_rules_have_lost_is_met_again_as_one_to_be_handed_over() -> None:
    """Whatever a journal says of its reopening: nobody knows what would show it gone."""
    gone = Halted("gone-by-now", on_record=True)
    told = replace(gone.apply(KNOWN, handed_over()), ended="stopped")
    between = DangerReported("bare", "a bang").apply(KNOWN, REOPENED.apply(KNOWN, told))
    assert between.stops[-2].reopened
    again = gone.apply(KNOWN, between).stops[-1]
    assert again == StopMet("gone-by-now", 2, on_record=True)


@pytest.mark.parametrize("ending", [None, "closed"])
def test_only_a_stopped_visit_is_reopened(ending: str | None) -> None:
    state = handed_over(ended=ending)
    assert REOPENED.apply(KNOWN, state) is state


@pytest.mark.parametrize(
    ("heat", "before", "swept"),
    [
        ("gas", True, False), ("electric", True, True), ("electric", False, False),
        (None, True, False),
    ],
)  # fmt: skip
def test_who_made_it_safe_may_have_opened_the_gas_of_a_gas_unit(
    heat: str | None, before: bool, swept: bool, shipped: Knowledge
) -> None:
    from troubleshoot.reasoning.unit.equipment import read_unit

    unit = read_unit(shipped, {} if heat is None else {"heat": heat})
    state = replace(handed_over(), unit=unit, work=WorkState(gas_swept=before))
    event = replace(REOPENED, test="room-carbon-monoxide", at=None)
    assert event.apply(shipped, state).work.gas_swept is swept


@pytest.mark.parametrize(
    "event", [Halted("leak", "look", "circuit 2"), DangerReported("leak", "it hisses"), REOPENED]
)
def test_what_was_given_of_an_earlier_hand_over_is_no_part_of_the_next(event: Event) -> None:
    """A result told half-way before another STOP would be taken for the result of this one."""
    state = handed_over(given=(Given("by", "gas-utility"),), shown=("room", None))
    after = event.apply(KNOWN, state)
    assert (after.given, after.shown) == ((), None)


def between(before: StopMet) -> VisitState:
    """One STOP met, then another, and nothing read since."""
    return visit(said("room"), stops=(before, StopMet("bare", 1)))


@pytest.mark.parametrize(
    "more", [{"done_here": "opened the doors"}, {"told": "the owner"}, {"reported": "it hisses"}]
)
def test_what_was_done_about_one_that_nobody_gave_back_is_not_done_about_it_met_anew(
    more: dict[str, str],
) -> None:
    """Or words of before would answer for what is found now."""
    before = StopMet("leak", 1, ("look", TWO), time="now", **more)  # type: ignore[arg-type]
    again = Halted("leak", "look", "circuit 2", time="later").apply(KNOWN, between(before))
    assert again.stops[-1] == StopMet("leak", 1, ("look", TWO), time="later", first_time="now")


def test_one_that_was_given_back_keeps_its_result_and_has_the_time_it_was_met_anew() -> None:
    before = StopMet("leak", 1, ("look", TWO), time="now", result=RESULT, reopened=True)
    again = Halted("leak", "look", "circuit 2", time="later").apply(KNOWN, between(before))
    assert again.stops[-1] == replace(before, time="later", first_time="now")


def test_one_that_hangs_on_no_finding_is_met_anew_without_any() -> None:
    before = StopMet("bare", 1, time="now")
    state = visit(said("room"), stops=(before, StopMet("leak", 1, ("look", TWO))))
    again = Halted("bare", time="later").apply(KNOWN, state).stops[-1]
    assert again == StopMet("bare", 1, time="later")
