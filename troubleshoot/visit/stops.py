"""Which STOP stands over a visit, and what fresh finding may lift it.

A STOP until made safe is lifted by taking the finding once more. One for the whole job that was
found, rather than complained of, is not lifted by the people who found it: the job is handed over,
and only after a reopening with the hand-over's result may the same finding be taken, once.
"""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.asking import Asking
from troubleshoot.reasoning.conclude import Conclusions, FiredHazard
from troubleshoot.reasoning.on_record import ON_RECORD
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.values import Values
from troubleshoot.visit.steps import CONFIRMED
from troubleshoot.visit.visit_state import Spot, VisitState

FOUND = ("possible:", "seen:")
"""How the atoms begin that stand for a finding."""


def standing_stop(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> FiredHazard | None:
    """The STOP to be told of: one that has to be handed over before any that may be lifted here.

    A second danger may be found on the way to lifting the first.
    """
    standing = conclusions.standing_stops
    final = (s for s in standing if lifting_finding(knowledge, state, conclusions, s) is None)
    return next(final, standing[0] if standing else None)


def is_all_clear(test: Test) -> bool:
    """Whether a test is the word of whoever cleared the place, and no step of ours."""
    return test.kind == "step" and test.id not in CONFIRMED


def finding_of(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, fired: FiredHazard
) -> Spot | None:
    """The finding that called a STOP up, or the all-clear of the complaint that did."""
    if ON_RECORD in fired.because:
        return None
    found = [atom.split(":")[1:] for atom in fired.because if atom.startswith(FOUND)]
    for test, outcome in found:
        for reading in conclusions.readings:
            if reading.test == test and outcome in reading.possible:
                return test, reading.at
    complaint = knowledge.complaints.get(state.complaint or "")
    if found or complaint is None or complaint.all_clear is None:
        return None
    return complaint.all_clear, None


def lifting_finding(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, fired: FiredHazard
) -> Spot | None:
    """The finding that may be taken afresh to lift a STOP; none where the job is handed over."""
    spot = finding_of(knowledge, state, conclusions, fired)
    by_finding = any(atom.startswith(FOUND) for atom in fired.because)
    final = fired.hazard.stop is not None and fired.hazard.stop.scope == "whole-job"
    if spot is None or not by_finding or not final:
        return spot
    if state.reopened_after is None:
        return None
    return spot if not_yet_afresh(knowledge, state, spot, state.reopened_after) else None


def not_yet_afresh(
    knowledge: Knowledge, state: VisitState, spot: Spot, since: int
) -> tuple[Test, ...]:
    """The tests that have to be asked for a finding and have not been since so many answers.

    A computed finding is taken afresh by reading everything it is computed from.
    """
    test = knowledge.tests[spot[0]]
    asked: tuple[Test, ...] = (test,)
    if not any(answer.test == test.id for answer in state.answers):
        asking = Asking(knowledge, state.unit, knowledge.tests.values())
        asked = asking.asks(test, spot[1], Values(knowledge, state.unit, {})) or (test,)
    since_then = state.answers[since:]
    return tuple(
        each
        for each in asked
        if not any(a.test == each.id and _serves(a.places, spot[1]) for a in since_then)
    )


def _serves(places: tuple[Place | None, ...], at: Place | None) -> bool:
    return at is None or at in places or None in places
