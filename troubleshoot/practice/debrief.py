"""The debrief: what it was and how one could tell, how the work went, what to take home.

Every sentence comes from the same weights, gains and guards that a live visit uses. It is read on a
phone: what was said already is not said again.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from typing import Final

from troubleshoot.practice.debrief_readings import readings_told
from troubleshoot.practice.debrief_work import experts_way, work_done
from troubleshoot.practice.expecting import Expected
from troubleshoot.practice.expert import ExpertPath
from troubleshoot.practice.reasoned import rivals
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, Score
from troubleshoot.practice.session import Session
from troubleshoot.practice.slips import grave_kinds
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

HEADS: Final = {
    "right": "Right.",
    "partly": "Partly right.",
    "wrong": "Wrong.",
    "shown": "Shown, as you asked.",
}


def debrief(
    session: Session, call: Call, score: Score, expert: ExpertPath, expected: Sequence[Expected]
) -> Iterator[str]:
    """The whole debrief in lines; a blank line parts its sections."""
    standing = () if session.stopped else standing_hazards(session.conclusions)
    for each in standing:
        yield from each.lines
    yield from _verdict(session, call, score, {each.hazard.id for each in standing})
    yield ""
    yield from _deciding(session, call)
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


def _verdict(session: Session, call: Call, score: Score, told: Collection[str]) -> Iterator[str]:
    """Whether the call is right, and what it was; a hazard that has been told is not told again."""
    if score.failed:
        yield "FAILED ON SAFETY, whatever the answer."
    head = "Right, but a guess that came off." if score.came_off else HEADS[score.verdict]
    yield f"{head} {score.points} points of 100."
    if not score.failed:
        yield from _halved(session)
    if score.shown_before:
        yield "Half, since it had been shown in this data folder under another name."
    if score.came_off:
        yield from _not_separated(session, call)
    knowledge, truth = session.knowledge, session.scenario.truth
    if truth.nothing_wrong:
        yield "Nothing was wrong with this unit."
    for number, fault in enumerate(truth.faults):
        yield f"{'And' if number else 'It was'}: {said(session, fault)}"
    for name in truth.behind:
        yield f"Behind it: {knowledge.faults[name].name}"
    if truth.faults and not truth.behind:
        yield "Behind it: nothing that was found here"
    if truth.stop is not None and session.stopped:
        yield "A STOP ended this job, and you stopped."
    elif truth.stop is not None:
        asks = "" if truth.stop in told else f": {knowledge.hazards[truth.stop].what_to_do}"
        yield f"A STOP ended this job, and you did not stop{asks or '.'}"
    yield from _called(session, call, score)


def _halved(session: Session) -> Iterator[str]:
    """That first slips have cost points, where there were any."""
    kinds = len(grave_kinds(session.slips))
    if kinds:
        times = "" if kinds == 1 else f" {kinds} times, once for each kind"
        yield f"Halved{times}: it could have hurt someone, see below. The same again fails a play."


def _not_separated(session: Session, call: Call) -> Iterator[str]:
    """Which rivals nothing that was read sets apart from the call."""
    beside = rivals(session.conclusions, call.causes)
    names = [said(session, TrueFault(cause.fault.id, cause.at)) for cause in beside]
    if names:
        more = f", and {len(names) - DECIDING} more" if len(names) > DECIDING else ""
        yield f"What you had read left standing: {'; '.join(names[:DECIDING])}{more}."
    else:
        yield "Nothing that you had read spoke for it."


def _called(session: Session, call: Call, score: Score) -> Iterator[str]:
    """What was called, where it was not all right, and how each part of the answer stands."""
    if score.verdict in ("partly", "wrong"):
        for cause in call.causes:
            yield f"You called: {said(session, cause)}"
        if not call.causes and not session.stopped:
            yield "You called: nothing wrong"
    told: dict[str, list[str]] = {"Right on": [], "Wrong on": [], "Not said": []}
    for name, right, answer in (
        ("the cause behind", score.behind_right, call.behind),
        ("the repair", score.repair_right, call.repair),
        ("the proof", score.proof_right, call.proof),
    ):
        if right is not None:
            told["Right on" if right else "Not said" if answer is None else "Wrong on"].append(name)
    yield from (f"{head}: {', '.join(names)}" for head, names in told.items() if names)


def said(session: Session, fault: TrueFault) -> str:
    """A fault with its place, where the unit has several."""
    known = session.knowledge.faults[fault.fault]
    where = session.scenario.unit.layout.shown(known.per, fault.at)
    return f"{known.name} ({where})" if where else known.name


def _deciding(session: Session, call: Call) -> Iterator[str]:
    """The findings that decide, from everything the unit would have shown."""
    whole = session.decider.reasoner.conclude(session.scenario.case)
    truths = session.scenario.truth.faults
    if not truths:
        yield "Every reading lies where a sound unit's does."
    for cause in _causes(whole, truths):
        yield f"What decides it{_of(cause, truths)}:"
        yield from _weights(whole, cause, for_it=True)
    wrong = [c for c in call.causes if c.fault not in {fault.fault for fault in truths}]
    for cause in _causes(whole, wrong):
        yield f"Against {cause.fault.name}:"
        yield from _weights(whole, cause, for_it=False)


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
    """Abnormal readings that the call leaves open.

    A doubted reading stands in the conclusions as a repeat that differs; nobody has taken that.
    """
    found = session.conclusions
    taken = {answer.test for answer in session.state.answers}
    open_ = [
        reading
        for reading in unexplained(
            found.hypotheses, found.seen, list(_causes(found, call.causes)), found.effects
        )
        if reading.test != REPEAT or REPEAT in taken
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
