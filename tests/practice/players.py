"""Four players who meet a scenario each in their way, to see what their plays are worth.

The reasoned one goes the expert's way and calls what the readings lead to. The guesser reads one
thing and calls what is true: the luckiest there can be. Who measures everything takes every test
that the scenario has a reading for, and what is computed, work state by work state, and calls what
it leads to. The unsafe one goes in first, is stopped, and goes in again.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from tests.practice.playing import follow
from troubleshoot.knowledge.model import Test
from troubleshoot.practice.expert import ExpertPath
from troubleshoot.practice.played import Stopped
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, Score, score_of
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.choosing.next_test import NAMED
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to, steps_to_leave

Player = Callable[[Session, ExpertPath], Call]

LIVE_TO_DEAD: Final = (
    "any", "roof", "running", "running-open", "energised-open", "locked-closed", "locked-out",
)  # fmt: skip
MOST_CALLED: Final = 2


def reasoned(session: Session, expert: ExpertPath) -> Call:
    """Goes the expert's way, obeys a STOP, and calls what the readings lead to."""
    follow(session, expert)
    if session.declare_stop() is not None:
        return Call()
    return _led_to(session)


def lucky_guesser(session: Session, expert: ExpertPath) -> Call:
    """Asks who was here, and calls what is true, with all that belongs to it."""
    session.choose(session.knowledge.tests["visit-history"], None)
    return _true_call(session)


def measures_everything(session: Session, expert: ExpertPath) -> Call:
    """Takes every test of the sheet that a safe way leads to, and calls what they lead to."""
    listed = {shown.test for shown in session.scenario.listed}
    found = [
        (test, at)
        for test in session.tests()
        if test.id in listed or test.id in ("superheat", "subcooling", "air-temperature-split")
        for at in session.places(test)
    ]
    found.sort(key=lambda each: LIVE_TO_DEAD.index(each[0].work_state))
    for test, at in found:
        if session.standing_stop() is not None:
            session.declare_stop()
            return Call()
        _bring_about(session, test, at)
        if session.may(test, at):
            session.choose(test, at)
    return _led_to(session)


def unsafe(session: Session, expert: ExpertPath) -> Call:
    """Reaches in with the power on, does so again once it is explained, and calls what is true."""
    hands_in = next(test for test in session.tests() if test.work_state == "locked-out")
    for _ in range(2):
        assert isinstance(session.choose(hands_in, session.places(hands_in)[0]), Stopped)
    return _true_call(session)


PLAYERS: Final[Mapping[str, Player]] = {
    "reasoned": reasoned,
    "measures everything": measures_everything,
    "guesser": lucky_guesser,
    "unsafe": unsafe,
}


def played(name: str, session: Session, expert: ExpertPath) -> Score:
    """What a player's play of a scenario is worth, once the unit is put back."""
    call = PLAYERS[name](session, expert)
    put_back(session)
    return score_of(session, call, expert)


def put_back(session: Session) -> None:
    """Put the unit back, as before any call; at a STOP it stays as it is."""
    if session.left_open:
        for step in steps_to_leave(session.state.work, session.state.at_work):
            session.step(session.knowledge.tests[step.id], step.place)


def _true_call(session: Session) -> Call:
    truth = session.scenario.truth
    first = truth.faults[0].fault if truth.faults else None
    return Call(truth.faults, truth.behind, first, first)


def _led_to(session: Session) -> Call:
    """What a ranking leads to: the cause that is named, or the two that share being named."""
    causes: list[TrueFault] = []
    together = 0.0
    for cause in session.conclusions.causes[:MOST_CALLED]:
        causes.append(TrueFault(cause.fault.id, cause.at))
        together += cause.probability
        if together >= NAMED:
            first = causes[0].fault
            return Call(tuple(causes), session.scenario.truth.behind, first, first)
    return Call()


def _bring_about(session: Session, test: Test, at: Place | None) -> None:
    """Do the safety steps that the test, or what it is computed from, still needs."""
    for wanted, place in session.asked_for(test, at):
        needs = needs_of(wanted, spoken(place), session.state.at_work)
        for step in steps_to(session.state.work, needs, session.state.at_work):
            session.step(session.knowledge.tests[step.id], step.place)
