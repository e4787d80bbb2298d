"""An all-clear that is not given shows the danger it was asked for, and else one without a name."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.building import base, test_of, unit_of
from tests.safety.stops.little_rules import CLEAR, LOOK, concluded, hazard, said
from troubleshoot.knowledge.model import Complaint, Finding, Hazard, Trigger
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety.hearing.dangers import ANY_DANGER
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.visit.state import VisitState

ROOM = test_of("room", "bad", "odd", "worse")
MADE = test_of("made-safe", "still-there", kind="step")
REFUSED, STILL_THERE = said("all-clear", "not-cleared"), said("made-safe", "still-there")
SMELT, ODD = said("look", "bad"), said("room", "odd")
REFUSALS = (
    Trigger((Finding("all-clear", ("not-cleared",)),)),
    Trigger((Finding("made-safe", ("still-there",)),)),
)
UNNAMED = replace(hazard(ANY_DANGER, "whole-job"), triggers=(*REFUSALS, Trigger(complaint="help")))
SMELL = hazard("smell", "whole-job", Finding("look", ("bad",)), all_clear="all-clear")
WARNED = hazard("warned", None, Finding("look", ("worse",)), all_clear="all-clear")
LOOSE = hazard("loose", "until-made-safe", Finding("room", ("bad",)), all_clear="made-safe")
BARE = hazard("bare", "until-made-safe", Finding("room", ("odd",)))
CALLED = tuple(Trigger(complaint=call) for call in ("burns", "cold"))
RUNG = replace(hazard("rung", "whole-job"), triggers=CALLED)
BOTH = Trigger((Finding("room", ("worse",)),), complaint="smells")
DRAWN = replace(hazard("drawn", "whole-job"), triggers=(BOTH,))
CALLS = (
    Complaint("smells", "it smells", all_clear="all-clear"),
    Complaint("burns", "it burns", all_clear="all-clear"),
    Complaint("help", "somebody wants help"),
    Complaint("cold", "it is cold"),
)


def standing(
    *answers: Answer,
    stops: tuple[StopMet, ...] = (),
    call: str | None = None,
    unnamed: Hazard = UNNAMED,
) -> set[str]:
    """The hazards that stop a visit under these few rules."""
    hazards = (unnamed, SMELL, WARNED, LOOSE, BARE, RUNG, DRAWN)
    knowledge = base((LOOK, ROOM, CLEAR, MADE), hazards=hazards, complaints=CALLS)
    state = VisitState(unit=unit_of(knowledge), answers=answers, stops=stops, complaint=call)
    return {fired.hazard.id for fired in concluded(state, knowledge).standing_stops}


@pytest.mark.parametrize("refused", [(REFUSED,), (STILL_THERE,), (REFUSED, STILL_THERE)])
def test_where_nothing_else_is_known_something_unnamed_is_dangerous(
    refused: tuple[Answer, ...],
) -> None:
    assert standing(*refused) == {ANY_DANGER}
    assert standing(*refused, unnamed=replace(UNNAMED, all_clear="all-clear")) == {ANY_DANGER}


def test_it_is_the_danger_that_was_found_and_is_cleared_by_that_word() -> None:
    assert standing(SMELT, REFUSED) == {"smell"}


def test_it_is_the_danger_that_halted_the_visit_and_hangs_on_that_word() -> None:
    met = StopMet("bare", 0, ("all-clear", None))
    assert standing(REFUSED, stops=(met,)) == {"bare"}
    assert standing(REFUSED, stops=(replace(met, spot=None),)) == {"bare", ANY_DANGER}


def test_it_is_the_danger_of_the_call_that_asks_for_that_word() -> None:
    """Whether the call alone called it up, or the call and a finding together."""
    assert standing(REFUSED, call="burns") == {"rung"}
    assert standing(said("room", "worse"), REFUSED, call="smells") == {"drawn"}


@pytest.mark.parametrize(
    ("answers", "call", "named"),
    [
        ((said("look", "worse"), REFUSED), None, set()),
        ((said("room", "bad"), REFUSED), None, {"loose"}),
        ((ODD, REFUSED), None, {"bare"}),
        ((said("room", "bad"), REFUSED), "smells", {"loose"}),
        ((REFUSED,), "cold", {"rung"}),
    ],
    ids=[
        "a caution",
        "of another word",
        "of no word",
        "no matter of the call",
        "a call of no word",
    ],
)
def test_a_danger_that_is_not_cleared_by_that_word_does_not_name_it(
    answers: tuple[Answer, ...], call: str | None, named: set[str]
) -> None:
    assert standing(*answers, call=call) == {*named, ANY_DANGER}


def test_what_somebody_has_called_for_help_for_is_not_named_by_what_is_found() -> None:
    met = StopMet(ANY_DANGER, 0, ("all-clear", None), "help")
    assert standing(SMELT, REFUSED, stops=(met,)) == {"smell", ANY_DANGER}
    assert standing(SMELT, call="help") == {"smell", ANY_DANGER}
