"""A few tests and hazards, and visits under them that a STOP has halted."""

from __future__ import annotations

from typing import Any

from tests.building import base, fault, test_of, unit_of
from troubleshoot.knowledge.model import (
    Complaint,
    Finding,
    Hazard,
    Knowledge,
    Outcome,
    Quantity,
    Stop,
    Test,
    Trigger,
)
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.lifting import conclude_visit, finding_of, lifting_finding
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
