"""What follows from a case file, in which nothing lifts a STOP.

A file tells neither what was done to make it safe nor the safety steps before a finding afresh. So
a STOP that any of its lines met stands, whatever the file says after it: one that halts the work as
in a visit, and one for a single step, which in a visit its step done soundly afresh does lift.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.safety.stops.lifting import finding_of, with_stops_met
from troubleshoot.safety.stops.parts import is_all_clear
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.visit.state import VisitState


def conclude_file(reasoner: Reasoner, case: Case) -> Conclusions:
    """Everything that follows from a case, its answers taken in the file's order."""
    last = reasoner.conclude(case)
    if not _may_take_away(reasoner.knowledge, case):
        return last
    state = VisitState(unit=case.unit, complaint=case.complaint, answers=())
    of_a_step: dict[str, FiredHazard] = {}
    for number in range(len(case.answers) + 1):
        state = replace(state, answers=case.answers[:number])
        so_far = reasoner.conclude(replace(case, answers=state.answers))
        of_a_step |= {fired.hazard.id: fired for fired in so_far.hazards if _stops_a_step(fired)}
        now = with_stops_met(reasoner.knowledge, state, so_far)
        for fired in now.standing_stops:
            if state.met(fired.hazard.id) is None:
                spot = finding_of(reasoner.knowledge, state, now, fired)
                # As if it were met behind the file's last line: nothing in it is afresh.
                met = StopMet(fired.hazard.id, len(case.answers), spot)
                state = replace(state, stops=(*state.stops, met))
    return _with(with_stops_met(reasoner.knowledge, state, last), of_a_step.values())


def with_stops_of_steps(conclusions: Conclusions, file: Conclusions) -> Conclusions:
    """The conclusions of a visit on a file, with the STOPs for a step that the file has met."""
    return _with(conclusions, filter(_stops_a_step, file.hazards))


def _with(conclusions: Conclusions, stops: Iterable[FiredHazard]) -> Conclusions:
    """The conclusions with these standing, where they do not stand anyhow."""
    standing = {fired.hazard.id for fired in conclusions.hazards if fired.stops}
    gone = {fired.hazard.id: fired for fired in stops if fired.hazard.id not in standing}
    others = (fired for fired in conclusions.hazards if fired.hazard.id not in gone)
    return replace(conclusions, hazards=(*others, *gone.values()))


def _stops_a_step(fired: FiredHazard) -> bool:
    stop = fired.hazard.stop if fired.stops else None
    return stop is not None and stop.scope == "this-step"


def _may_take_away(knowledge: Knowledge, case: Case) -> bool:
    """Whether a later answer may take away what an earlier one, or the call, has called up.

    One at another place does not: what was read at each stands, and no STOP rests on what was not.
    """
    spots = [(answer.test, place) for answer in case.answers for place in answer.places]
    tests = {test for test, _ in spots}
    called = knowledge.complaints.get(case.complaint or "")
    cleared = called is not None and called.all_clear in tests
    asked_for = any(is_all_clear(knowledge.tests[test]) for test in tests)
    return cleared or asked_for or len(set(spots)) < len(spots)
