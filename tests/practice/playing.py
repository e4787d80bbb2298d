"""What the tests of practice share: the shipped scenarios, and a play by the expert's choices."""

from __future__ import annotations

from functools import cache
from typing import Any

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.expert import ExpertPath, expert_path
from troubleshoot.practice.loading import load_scenario, scenario_paths
from troubleshoot.practice.played import Done, places_of_step
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.reaching import steps_before

_REASONERS: dict[str, Reasoner] = {}


def reasoner_of(knowledge: Knowledge) -> Reasoner:
    """One reasoner for all tests: it is the dear part."""
    if knowledge.digest not in _REASONERS:
        _REASONERS[knowledge.digest] = Reasoner(knowledge)
    return _REASONERS[knowledge.digest]


@cache
def _scenario(digest: str, name: str) -> Scenario:
    return load_scenario(_REASONERS[digest].knowledge, scenario_paths()[name])


def scenario_named(knowledge: Knowledge, name: str) -> Scenario:
    reasoner_of(knowledge)
    return _scenario(knowledge.digest, name)


@cache
def _conclusions(digest: str, name: str) -> Conclusions:
    return _REASONERS[digest].conclude(_scenario(digest, name).case)


def conclusions_of(knowledge: Knowledge, name: str) -> Conclusions:
    """What follows from all the readings of a shipped scenario."""
    scenario_named(knowledge, name)
    return _conclusions(knowledge.digest, name)


@cache
def _path(digest: str, name: str) -> ExpertPath:
    reasoner, scenario = _REASONERS[digest], _scenario(digest, name)
    return expert_path(reasoner, scenario, AnsweringUnit(reasoner, scenario))


def path_of(knowledge: Knowledge, name: str) -> ExpertPath:
    """The expert's way through a shipped scenario."""
    scenario_named(knowledge, name)
    return _path(knowledge.digest, name)


def session_of(knowledge: Knowledge, name: str) -> Session:
    return Session(reasoner_of(knowledge), scenario_named(knowledge, name))


def follow(session: Session, path: ExpertPath) -> None:
    """Play a scenario with the expert's choices; a reading that misleads is doubted."""
    for move in path.moves:
        test = session.knowledge.tests[move.test]
        if move.is_step:
            assert move.at is None or isinstance(move.at, str)
            result: Any = session.step(test, move.at)
        else:
            assert not isinstance(move.at, str)
            result = session.choose(test, move.at)
        assert isinstance(result, Done) != move.skipped, (move, result)
        if isinstance(result, Done) and any(shown.valid is False for shown in result.shown):
            session.doubt("it does not fit")


def answers_file(session: Session) -> dict[str, Any]:
    """The case file that `diagnose --answers` would need: all that the unit was asked."""
    scenario = session.scenario
    listed = list(scenario.plain["readings"])  # type: ignore[call-overload]
    known = {(shown.test, place) for shown in scenario.listed for place in shown.places}
    for done in session.done:
        for shown in done.shown if done.gain is not None else ():
            key = (shown.test, shown.places[0])
            if key in known or (shown.test, None) in known:
                continue
            known.add(key)
            at = {} if shown.places[0] is None else {"at": str(shown.places[0])}
            what = {"text": shown.text} if shown.text else {"outcome": list(shown.outcomes)}
            listed.append({"test": shown.test, **at, **what})
    readings = [each for each in listed if each["test"] not in scenario.unavailable]
    return {**scenario.plain, "readings": readings}


TO_OPEN_AND_RUN = (
    "roof-conditions", "tell-occupants", "combustible-gas-sweep", "tester-proof",
    "stop-by-controls", "second-person", "arc-clothing-on", "panels-off-energised", "tools-clear",
    "restart-and-watch",
)  # fmt: skip


def do_steps(session: Session, *names: str) -> None:
    """Do safety steps one after the other; each must be in its turn."""
    for name in names:
        for place in places_of_step(name, session.state.work, session.state.at_work):
            assert isinstance(session.step(session.knowledge.tests[name], place), Done), name


def lead_to(session: Session, name: str) -> None:
    """Do the safety steps that lead to a test at its first place, in their turn."""
    test, state = session.knowledge.tests[name], session.state
    for step in steps_before(state, test, session.places(test)[0]):
        result = session.step(session.knowledge.tests[step.id], step.place)
        assert isinstance(result, Done), step
