"""Which finding a STOP hangs on, and which fresh finding lifts it: that one, there, sound."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.building import base, fault, measured, test_of, unit_of
from troubleshoot.knowledge.model import (
    Complaint,
    Finding,
    Hazard,
    Knowledge,
    Outcome,
    Quantity,
    Read,
    Stop,
    Test,
    Trigger,
)
from troubleshoot.reasoning.chaining.on_record import ON_RECORD
from troubleshoot.reasoning.conclude import Conclusions, FiredHazard, Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.lifting import (
    MET,
    conclude_visit,
    finding_of,
    is_all_clear,
    lifting_finding,
    not_yet_afresh,
    standing_stop,
)
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.visit.state import VisitState

ONE, TWO = Place("circuit", 1), Place("circuit", 2)
LOOK = test_of("look", "bad", "worse", per="circuit")
ROOM = test_of("room", "bad", "odd")
ROOF = Test(
    "roof-conditions", "roof", "area", "step", healthy=("safe",),
    outcomes=tuple(map(Outcome, ("safe", "edge-6-to-15-ft", "edge-under-6-ft", "lightning"))),
)  # fmt: skip
CLEAR = test_of("all-clear", "not-cleared", kind="step")
TESTS = (LOOK, ROOM, ROOF, CLEAR)


def hazard(name: str, scope: str | None, *findings: Finding, **more: Any) -> Hazard:
    triggers = tuple(Trigger((each,)) for each in findings)
    stop = None if scope is None else Stop(scope, f"what {name} covers")  # type: ignore[arg-type]
    return Hazard(name, "DANGER", "keep off", triggers, stop, **more)


LEAK = hazard("leak", "until-made-safe", Finding("look", ("bad",)))
CRACK = hazard("crack", "whole-job", Finding("room", ("bad",)))
STORM = hazard("storm", "until-made-safe", Finding("roof-conditions", ("lightning",)))
STEP = hazard("this-one", "this-step", Finding("room", ("odd",)))
WORDS = hazard("heard-of", None)
SMELL = hazard("smell", "whole-job", all_clear="all-clear")
BARE = hazard("bare", "until-made-safe")
VOLTS = Quantity("volts", "V", "volts")
CALL = Complaint("smells", "it smells", all_clear="all-clear")
PLAIN_CALL = Complaint("cold", "it is cold")
KNOWN = base(
    TESTS,
    [fault("f", {"often": [{"look": "bad"}]})],
    hazards=(LEAK, CRACK, STORM, STEP, WORDS, SMELL, BARE),
    complaints=(CALL, PLAIN_CALL),
)


def said(test: str, outcome: str, at: Place | None = None, **more: Any) -> Answer:
    return Answer(test, (outcome,), places=(at,), **more)


def visit(*answers: Answer, stops: tuple[StopMet, ...] = (), **more: Any) -> VisitState:
    return VisitState(unit=unit_of(KNOWN, circuits=2), answers=answers, stops=stops, **more)


def concluded(state: VisitState, knowledge: Knowledge = KNOWN) -> Conclusions:
    return conclude_visit(Reasoner(knowledge), state)


def standing(state: VisitState) -> dict[str, FiredHazard]:
    return {fired.hazard.id: fired for fired in concluded(state).standing_stops}


def finding(state: VisitState, name: str) -> Any:
    found = concluded(state)
    return finding_of(KNOWN, state, found, next(f for f in found.hazards if f.hazard.id == name))


def lifting(state: VisitState, name: str) -> Any:
    return lifting_finding(KNOWN, state, concluded(state), standing(state)[name])


def fired(which: Hazard, *because: str) -> FiredHazard:
    return FiredHazard(which, (1,), because, found=True)


def test_a_stop_hangs_on_the_place_where_the_outcome_was_found() -> None:
    state = visit(said("look", "worse", ONE), said("look", "bad", TWO))
    assert finding(state, "leak") == ("look", TWO)
    state = visit(said("room", "bad"), said("look", "bad", TWO), said("look", "normal", ONE))
    assert finding(state, "leak") == ("look", TWO)


def test_a_sign_that_was_seen_is_a_finding_too() -> None:
    state = visit(said("look", "bad", TWO))
    for atom in ("possible:look:bad", "seen:look:bad"):
        assert finding_of(KNOWN, state, concluded(state), fired(LEAK, atom)) == ("look", TWO)
    assert finding_of(KNOWN, state, concluded(state), fired(LEAK, "fault:look:bad")) is None


def test_a_finding_that_is_gone_is_the_one_that_the_visit_met() -> None:
    met = StopMet("leak", 0, ("look", ONE))
    assert finding(visit(stops=(met,)), "leak") == ("look", ONE)
    bare = StopMet("bare", 0)
    assert finding(visit(stops=(bare,)), "bare") is None
    assert finding(visit(stops=(StopMet("smell", 0),)), "smell") == ("all-clear", None)


def test_without_a_finding_the_all_clear_is_the_complaints_or_else_the_hazards() -> None:
    for complaint, spot in (("smells", ("all-clear", None)), ("cold", None), (None, None)):
        state = visit(stops=(StopMet("bare", 0),), complaint=complaint)
        assert finding(state, "bare") == spot
    state = visit(said("room", "normal"), complaint="smells")
    gone = fired(CRACK, "possible:room:bad")
    assert finding_of(KNOWN, state, concluded(state), gone) is None, "a finding is no complaint"


def test_what_stands_by_the_record_alone_has_no_finding() -> None:
    state = visit(said("look", "bad", ONE), complaint="smells")
    assert (
        finding_of(KNOWN, state, concluded(state), fired(LEAK, ON_RECORD, "possible:look:bad"))
        is None
    )


def test_an_all_clear_is_a_step_that_is_none_of_ours() -> None:
    assert is_all_clear(CLEAR)
    assert not is_all_clear(ROOF) and not is_all_clear(LOOK)


def test_whoever_met_a_stop_until_made_safe_may_take_it_afresh() -> None:
    assert lifting(visit(said("look", "bad", TWO)), "leak") == ("look", TWO)


def test_one_for_the_whole_job_only_after_the_reopening_and_once() -> None:
    bad = said("room", "bad")
    assert lifting(visit(bad), "crack") is None
    met = StopMet("crack", 1, ("room", None))
    assert lifting(visit(bad, stops=(met,)), "crack") is None
    back = replace(met, reopened=True)
    assert lifting(visit(bad, stops=(back,)), "crack") == ("room", None)
    assert lifting(visit(bad, bad, stops=(back,)), "crack") is None


def test_a_stop_on_record_stays_without_a_finding_though_it_was_given_back() -> None:
    state = visit(stops=(StopMet("crack", 0, reopened=True),))
    recorded = fired(CRACK, ON_RECORD)
    assert lifting_finding(KNOWN, state, concluded(state), recorded) is None


def test_a_hazard_that_stops_nothing_is_looked_at_by_whoever_met_it() -> None:
    state = visit(said("look", "bad", TWO))
    found = fired(WORDS, "possible:look:bad")
    assert lifting_finding(KNOWN, state, concluded(state), found) == ("look", TWO)


def test_a_number_that_shows_no_outcome_lifts_nothing() -> None:
    volts = measured("volts", {"normal": {"at_most": 5}}, reads=(Read("volts"),))
    knowledge = base([volts], hazards=[replace(BARE, triggers=())], quantities=[VOLTS])
    met = StopMet("bare", 0, ("volts", None))
    for typed, lifted in (("3 V", True), ("900 V", False)):
        answer = Answer("volts", (), typed)
        state = VisitState(unit=unit_of(knowledge), answers=(answer,), stops=(met,))
        assert (not concluded(state, knowledge).standing_stops) is lifted, typed


def test_a_stop_that_has_to_be_handed_over_is_told_of_before_one_that_need_not_be() -> None:
    leak = said("look", "bad", ONE)
    state = visit(said("room", "bad"), leak, stops=(StopMet("bare", 2),))
    found = concluded(state)
    assert [f.hazard.id for f in found.standing_stops] == ["crack", "leak", "bare"]
    told = standing_stop(KNOWN, state, found)
    assert told is not None and told.hazard.id == "crack"
    met = StopMet("crack", 1, ("room", None), reopened=True)
    state = visit(said("room", "bad"), leak, stops=(met, StopMet("bare", 2)))
    told = standing_stop(KNOWN, state, concluded(state))
    assert told is not None and told.hazard.id == "bare", "nothing may lift it here"
    state = visit(said("room", "bad"), leak, stops=(met,))
    told = standing_stop(KNOWN, state, concluded(state))
    assert told is not None and told.hazard.id == "crack", "the first of those that may be lifted"
    assert standing_stop(KNOWN, visit(), concluded(visit())) is None


def test_a_stop_that_was_met_stands_though_nothing_calls_it_up_beside_what_else_is_known() -> None:
    odd = said("room", "odd")
    alone = concluded(visit(odd))
    state = visit(odd, stops=(StopMet("leak", 1, ("look", ONE)),))
    found = concluded(state)
    assert [f.hazard.id for f in found.hazards] == ["this-one", "leak"]
    assert found.hazards[0] == alone.hazards[0]
    assert found.hazards[1] == FiredHazard(LEAK, (1, 2), (MET,), found=True)
    assert MET == "met"


def test_a_stop_that_is_called_up_as_well_stands_once_and_by_its_finding() -> None:
    state = visit(said("look", "bad", ONE), stops=(StopMet("leak", 1, ("look", ONE)),))
    (only,) = concluded(state).hazards
    assert only.because == ("possible:look:bad",)


@pytest.mark.parametrize(
    ("name", "stop"),
    [
        ("heard-of", Stop("until-made-safe", "heard of")),
        ("this-one", Stop("until-made-safe", "what this-one covers")),
        ("leak", LEAK.stop),
        ("crack", CRACK.stop),
    ],
)
def test_a_danger_reported_in_words_halts_whatever_its_scope(name: str, stop: Stop) -> None:
    state = visit(said("room", "odd"), stops=(StopMet(name, 0, None, "watch out"),))
    assert standing(state)[name].hazard == replace(KNOWN.hazards[name], stop=stop)
    assert [f.hazard.id for f in concluded(state).hazards].count(name) == 1


@pytest.mark.parametrize(
    ("since", "lifted"),
    [
        ([said("look", "normal", TWO)], True),
        ([], False),
        ([said("look", "normal", ONE)], False),
        ([said("room", "normal")], False),
        ([said("look", "worse", TWO)], False),
        ([said("look", "normal", TWO, valid=False)], False),
        ([Answer("look", ("normal",), places=(ONE, TWO), shared=True)], False),
        ([said("look", "normal", ONE), said("look", "normal", TWO)], True),
        ([said("look", "normal", TWO), said("look", "worse", ONE)], True),
    ],
)
def test_only_the_same_finding_at_the_same_place_and_sound_lifts(
    since: list[Answer], lifted: bool
) -> None:
    before = said("look", "worse", TWO)
    state = visit(before, *since, stops=(StopMet("leak", 1, ("look", TWO)),))
    assert ("leak" not in standing(state)) is lifted


def test_a_finding_without_a_place_is_lifted_only_where_it_is_sound_everywhere() -> None:
    stops = (StopMet("leak", 0, ("look", None)),)
    good, bad = said("look", "normal", ONE), said("look", "worse", TWO)
    assert not standing(visit(good, stops=stops))
    assert "leak" in standing(visit(good, bad, stops=stops))
    assert "leak" in standing(visit(bad, good, stops=stops))


def test_one_answer_for_the_whole_unit_serves_each_place() -> None:
    whole = Answer("look", ("normal",), places=(None,))
    stops = (StopMet("leak", 0, ("look", TWO)),)
    assert not_yet_afresh(KNOWN, visit(whole, stops=stops), ("look", TWO), 0) == ()
    assert not_yet_afresh(KNOWN, visit(said("look", "bad", TWO)), ("look", None), 0) == ()
    assert not_yet_afresh(KNOWN, visit(said("look", "bad", ONE)), ("look", TWO), 0) == (LOOK,)
    assert not_yet_afresh(KNOWN, visit(said("look", "bad", TWO)), ("look", TWO), 1) == (LOOK,)
    assert not_yet_afresh(KNOWN, visit(said("room", "bad")), ("look", TWO), 0) == (LOOK,)


def test_a_stop_without_a_finding_and_one_not_given_back_are_lifted_by_nothing() -> None:
    sound = said("room", "normal")
    assert "bare" in standing(visit(sound, stops=(StopMet("bare", 0),)))
    assert "crack" in standing(visit(sound, stops=(StopMet("crack", 0, ("room", None)),)))
    back = StopMet("crack", 0, ("room", None), reopened=True)
    assert "crack" not in standing(visit(sound, stops=(back,)))
    assert "heard-of" not in standing(visit(sound, stops=(StopMet("heard-of", 0, ("room", None)),)))


@pytest.mark.parametrize(
    ("outcome", "lifted"),
    [("safe", True), ("edge-6-to-15-ft", True), ("edge-under-6-ft", True), ("lightning", False)],
)
def test_an_edge_is_no_storm(outcome: str, lifted: bool) -> None:
    stops = (StopMet("storm", 0, ("roof-conditions", None)),)
    assert ("storm" not in standing(visit(said("roof-conditions", outcome), stops=stops))) is lifted


SUM = Test("sum", "sum", "area", "computed", outcomes=(Outcome("high"),))


def test_what_can_be_computed_from_nothing_here_is_asked_itself(shipped: Knowledge) -> None:
    knowledge = base([SUM])
    state = VisitState(unit=unit_of(knowledge))
    assert not_yet_afresh(knowledge, state, ("sum", None), 0) == (SUM,)


def test_what_was_typed_itself_is_taken_afresh_itself_and_else_by_its_inputs(
    shipped: Knowledge,
) -> None:
    spot = ("flue-gas-analysis", None)
    inputs = ["flue-carbon-monoxide", "flue-oxygen"]
    nothing = VisitState(unit=unit_of(shipped))
    read = replace(nothing, answers=tuple(said(each, "high") for each in inputs))
    typed = replace(nothing, answers=(said(spot[0], "high"), *read.answers))

    def asked(state: VisitState) -> list[str]:
        return [t.id for t in not_yet_afresh(shipped, state, spot, len(state.answers))]

    assert (asked(nothing), asked(read), asked(typed)) == (inputs, inputs, [spot[0]])


@pytest.mark.parametrize(
    "since",
    [
        Answer("look", ("normal",), places=(ONE, TWO), shared=True),
        said("look", "normal", TWO, valid=False),
    ],
)
def test_a_finding_that_the_rules_lost_is_lifted_by_no_less(since: Answer) -> None:
    assert "leak" in standing(visit(since, stops=(StopMet("leak", 0, ("look", TWO)),)))
