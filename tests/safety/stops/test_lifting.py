"""Which fresh finding lifts a STOP: that one, there, sound."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, measured, unit_of
from tests.safety.stops.little_rules import (
    BARE,
    CRACK,
    KNOWN,
    LOOK,
    ONE,
    TWO,
    VOLTS,
    WORDS,
    concluded,
    fired,
    hazard,
    lifting,
    said,
    standing,
    visit,
)
from troubleshoot.knowledge.model import Knowledge, Outcome, Read, Test
from troubleshoot.reasoning.chaining.on_record import ON_RECORD
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.lifting import lifting_finding
from troubleshoot.safety.stops.parts import not_yet_afresh
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.visit.state import VisitState


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


@pytest.mark.parametrize(
    ("at", "answers"),
    [
        (ONE, [said("look", "worse", ONE)]),
        (ONE, [said("look", "worse", None)]),
        (None, [said("look", "normal", ONE), said("look", "worse", TWO)]),
    ],
    ids=["there", "of no one place", "at one of its places"],
)
def test_what_was_read_unsound_after_the_reopening_is_handed_over_again(
    at: Place | None, answers: list[Answer]
) -> None:
    """Only what reads sound and may not be so by its meter is read once more."""
    back = StopMet("crack", 0, ("look", at), reopened=True)
    assert lifting(visit(*answers, stops=(back,)), "crack") is None


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


def test_a_number_that_shows_no_outcome_hands_over_again_what_others_have_to_lift() -> None:
    volts = measured("volts", {"normal": {"at_most": 5}}, reads=(Read("volts"),))
    gone = hazard("gone", "whole-job")
    knowledge = base([volts], hazards=[gone], quantities=[VOLTS])
    back = StopMet("gone", 0, ("volts", None), reopened=True)
    state = VisitState(unit=unit_of(knowledge), answers=(Answer("volts", (), "900 V"),))
    state = replace(state, stops=(back,))
    found = concluded(state, knowledge)
    assert lifting_finding(knowledge, state, found, found.standing_stops[0]) is None


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
