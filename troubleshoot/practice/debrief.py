"""The debrief: what it was and how one could tell, how the work went, what to take home.

Every sentence comes from the same weights, gains and guards that a live visit uses. It is read on a
phone: what was said already is not said again.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.debrief_first import first_lines
from troubleshoot.practice.debrief_readings import readings_told
from troubleshoot.practice.debrief_verdict import verdict_told
from troubleshoot.practice.debrief_work import experts_way, work_done
from troubleshoot.practice.expecting import Expected
from troubleshoot.practice.expert import ExpertPath, answer_of
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, Score
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.ranking import Cause
from troubleshoot.reasoning.evidence.surprise import unexplained
from troubleshoot.reasoning.readings.misreadings import REPEAT
from troubleshoot.safety.stops.standing import standing_hazards
from troubleshoot.visit.telling.explain import said_findings, strength

DECIDING: Final = 3
"""So many findings are told for a cause, or against it."""
TELLING: Final = 0.25
"""A finding that weighs less speaks neither for a cause nor against it."""


def debrief(
    session: Session, call: Call, score: Score, expert: ExpertPath, expected: Sequence[Expected]
) -> Iterator[str]:
    """The whole debrief in lines; a blank line parts its sections."""
    standing = () if session.stopped else standing_hazards(session.conclusions)
    whole = session.decider.reasoner.conclude(session.scenario.case)
    true = next(_causes(whole, session.scenario.truth.faults), None)
    yield from first_lines(session, call, score, true)
    yield ""
    for each in standing:
        yield from each.lines
    yield from verdict_told(session, call, score, {each.hazard.id for each in standing})
    yield ""
    yield from _deciding(session, call, whole)
    yield from readings_told(session)
    yield from _misleading(session)
    yield from _unexplained(session, call)
    yield ""
    yield from work_done(session, score, expected)
    yield ""
    yield from experts_way(session.knowledge, expert)
    yield ""
    truth = session.scenario.truth
    yield f"Put right by: {truth.repair}"
    yield f"Proved by: {truth.proof}"
    yield f"To take home: {session.scenario.teaches}"
    hazard = next((slip.read for slip in session.slips if slip.grave and slip.read), None)
    if hazard is not None:
        yield f"Read first, of what was stopped: troubleshoot rules explain {hazard}"
    yield f"Read: troubleshoot rules explain {to_read(session, call, score)}"


def _deciding(session: Session, call: Call, whole: Conclusions) -> Iterator[str]:
    """The findings that decide, from everything the unit would have shown."""
    truths = session.scenario.truth.faults
    if not truths:
        yield "Every reading lies where a sound unit's does."
    for cause in _causes(whole, truths):
        yield f"What decides it{_of(cause, truths)}:"
        yield from _weights(whole, cause, for_it=True)
    wrong = [c for c in call.causes if c.fault not in {fault.fault for fault in truths}]
    for cause in _causes(_looked_for(session, wrong), wrong):
        yield f"Against {cause.fault.name}:"
        yield from _weights(whole, cause, for_it=False)


def _looked_for(session: Session, wrong: Sequence[TrueFault]) -> Conclusions:
    """What follows from all readings, with those that a wrong call would have shown by.

    What speaks most against it is often a sound reading: it stands in no file, and the unit has it.
    """
    found = session.start.hypotheses
    called = {cause.fault for cause in wrong}
    listed = {shown.test for shown in session.scenario.listed}
    unit = AnsweringUnit(session.decider.reasoner, session.scenario)
    answers = []
    for test in {t: None for h in found.causes if h.fault.id in called for t in h.picture.cells}:
        known = found.tests.get(test)
        if known is None or test in listed or known.kind in ("step", "computed"):
            continue
        shown = (unit.shows(known, at) for at in session.places(known))
        answers += [answer_of(each) for each in shown if each is not None]
    case = session.scenario.case
    return session.decider.reasoner.conclude(replace(case, answers=(*case.answers, *answers)))


def _of(cause: Cause, truths: Sequence[TrueFault]) -> str:
    """Which of several faults a cause is; nothing is said where there is one."""
    return f", {cause.fault.name}" if len(truths) > 1 else ""


def _causes(found: Conclusions, faults: Sequence[TrueFault]) -> Iterator[Cause]:
    """The causes and effects that stand for these faults, in their order."""
    for fault in faults:
        for cause in (*found.causes, *found.effects):
            if cause.fault.id == fault.fault and fault.at in (None, cause.at):
                yield cause
                break


def _weights(found: Conclusions, cause: Cause, *, for_it: bool) -> Iterator[str]:
    chosen = [w for w in cause.weights if (w.weight > 0) == for_it and abs(w.weight) >= TELLING]
    if not chosen:
        yield "  nothing that was read speaks against it" if not for_it else "  nothing listed"
    for weight in chosen[:DECIDING]:
        yield f"  {strength(weight.weight)}: {said_findings(found, weight)}"


def _misleading(session: Session) -> Iterator[str]:
    """The readings that mislead, with why, and whether they were let count."""
    lies = [shown for shown in session.scenario.listed if shown.valid is False]
    if lies:
        yield "What misled:"
    for lie in lies:
        test = session.knowledge.tests[lie.test]
        read = lie.text or ", ".join(map(test.spoken, lie.outcomes))
        counts = [
            answer.valid is not False
            for answer in session.state.answers
            if (answer.test, answer.text, answer.outcomes) == (lie.test, lie.text, lie.outcomes)
            and set(answer.places) <= set(lie.places)
        ]
        yours = "" if not counts else " You let it count." if any(counts) else " You doubted it."
        yield f"  {test.name}, {read}: {lie.why}{yours}"


def _unexplained(session: Session, call: Call) -> Iterator[str]:
    """Abnormal readings that the call leaves open; what people tell of the past is none.

    A doubted reading stands in the conclusions as a repeat that differs; nobody has taken that.
    """
    found = session.conclusions
    taken = {answer.test for answer in session.state.answers}
    open_ = [
        reading
        for reading in unexplained(
            found.hypotheses, found.seen, list(_causes(found, call.causes)), found.effects
        )
        if session.knowledge.tests[reading.test].kind != "question"
        and (reading.test != REPEAT or REPEAT in taken)
    ]
    if open_ and not session.stopped:
        yield "Your call does not explain:"
        for reading in open_:
            test = session.knowledge.tests[reading.test]
            yield f"  {test.name}: {', '.join(map(test.spoken, reading.seen))}"


def to_read(session: Session, call: Call, score: Score) -> str:
    """The one entry of the rules to read about the case: what was missed."""
    truth = session.scenario.truth
    called = {cause.fault for cause in call.causes}
    missed = [fault.fault for fault in truth.faults if fault.fault not in called]
    if missed:
        return missed[0]
    if truth.behind and score.behind_right is False:
        return truth.behind[0]
    if truth.faults and False in (score.repair_right, score.proof_right):
        return truth.faults[0].fault
    if truth.faults:
        alike = session.knowledge.faults[truth.faults[0].fault].look_alikes
        return alike[0] if alike else truth.faults[0].fault
    return session.scenario.complaint
