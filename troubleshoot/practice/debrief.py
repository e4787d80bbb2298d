"""The debrief: what it was and how one could tell, what each test was worth, what was missed.

Every sentence comes from the same weights, gains and guards that a live visit uses.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.expecting import Expected
from troubleshoot.practice.expert import ExpertPath, Move
from troubleshoot.practice.played import Done
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, Score
from troubleshoot.practice.session import HINT_MINUTES, Session
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.reasoning.fit import unexplained
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.ranking import Cause
from troubleshoot.visit.explain import said_findings, strength

WORTH: Final = (
    (0.6, "could have changed a great deal"),
    (0.25, "could have changed much"),
    (0.08, "could have changed something"),
    (0.02, "could have changed little"),
    (0.0, "could hardly have changed the ranking"),
)
"""Expected gain in bits, from the highest down, in words (common practice, no source)."""
DECIDING: Final = 3
MOVES_SHOWN: Final = 12


def debrief(
    session: Session, call: Call, score: Score, expert: ExpertPath, expected: Sequence[Expected]
) -> Iterator[str]:
    """The whole debrief in lines; a blank line parts its sections."""
    yield from _verdict(session, call, score)
    yield ""
    yield from _deciding(session, call)
    yield ""
    yield from _economy(session, score)
    yield from _tests(session)
    yield from _expectations(expected)
    yield from _unexplained(session, call)
    yield from _slips(session)
    yield ""
    yield from _expert(session.knowledge, expert)
    yield ""
    truth = session.scenario.truth
    yield f"Put right by: {truth.repair}"
    yield f"Proved by: {truth.proof}"
    yield f"To take home: {session.scenario.teaches}"
    yield f"Read: troubleshoot rules explain {to_read(session, call, score)}"


def _verdict(session: Session, call: Call, score: Score) -> Iterator[str]:
    if score.failed:
        yield "FAILED ON SAFETY, whatever the answer."
    heads = {"right": "Right.", "partly": "Partly right.", "wrong": "Wrong."}
    yield f"{heads[score.verdict]} {score.points} points of 100."
    knowledge, truth = session.knowledge, session.scenario.truth
    if truth.nothing_wrong:
        yield "Nothing was wrong with this unit."
    for number, fault in enumerate(truth.faults):
        yield f"{'And' if number else 'It was'}: {said(session, fault)}"
    for name in truth.behind:
        yield f"Behind it: {knowledge.faults[name].name}"
    if truth.stop is not None:
        obeyed = "You stopped." if session.stopped else "You did not stop."
        yield f"A STOP ended this job: {knowledge.hazards[truth.stop].what_to_do} {obeyed}"
    for cause in call.causes:
        yield f"You called: {said(session, cause)}"
    for right, name in (
        (score.behind_right, "the cause behind"),
        (score.repair_right, "the repair"),
        (score.proof_right, "the proof"),
    ):
        if right is not None:
            yield f"  {'right' if right else 'wrong'} on {name}"


def said(session: Session, fault: TrueFault) -> str:
    """A fault with its place, where the unit has several."""
    known = session.knowledge.faults[fault.fault]
    where = session.scenario.unit.layout.shown(known.per, fault.at)
    return f"{known.name} ({where})" if where else known.name


def _deciding(session: Session, call: Call) -> Iterator[str]:
    """The findings that decide, from everything the unit would have shown."""
    whole = session.decider.reasoner.conclude(session.scenario.case)
    true = {(fault.fault, fault.at) for fault in session.scenario.truth.faults}
    if true:
        yield "What decides it:"
    for cause in _causes(whole, session.scenario.truth.faults):
        yield from _weights(whole, cause, for_it=True)
    wrong = [c for c in call.causes if c.fault not in {fault for fault, _ in true}]
    for cause in _causes(whole, wrong):
        yield f"Against {cause.fault.name}:"
        yield from _weights(whole, cause, for_it=False)
    if not true:
        yield "Every reading lies where a sound unit's does."


def _causes(found: Conclusions, faults: Sequence[TrueFault]) -> Iterator[Cause]:
    """The causes and effects that stand for these faults, in their order."""
    for fault in faults:
        for cause in (*found.causes, *found.effects):
            if cause.fault.id == fault.fault and fault.at in (None, cause.at):
                yield cause
                break


def _weights(found: Conclusions, cause: Cause, *, for_it: bool) -> Iterator[str]:
    chosen = [weight for weight in cause.weights if (weight.weight > 0) == for_it]
    if not chosen:
        yield "  nothing that was read speaks against it" if not for_it else "  nothing listed"
    for weight in chosen[:DECIDING]:
        yield f"  {strength(weight.weight)}: {said_findings(found, weight)}"


def _economy(session: Session, score: Score) -> Iterator[str]:
    yield (
        f"You: {score.minutes} min, {score.tests} tests. "
        f"Expert: {score.expert_minutes} min, {score.expert_tests} tests."
    )
    if session.exposed_minutes:
        yield f"Near line volts: {session.exposed_minutes:.0f} min."
    if score.hints:
        yield f"Hints: {score.hints}, {score.hints * HINT_MINUTES:.0f} min of the total."


def worth(gain: float) -> str:
    """An expected gain in words."""
    return next(words for least, words in WORTH if gain >= least)


def _tests(session: Session) -> Iterator[str]:
    taken = [done for done in session.done if done.gain is not None]
    if taken:
        yield "What each test could tell when you took it:"
    for done in taken:
        yield f"  {_named(session, done)}: {worth(done.gain or 0.0)}"


def _named(session: Session, done: Done) -> str:
    at = done.at if isinstance(done.at, Place) else None
    where = session.scenario.unit.layout.shown(done.test.per, at)
    return f"{done.test.name} at {where}" if where else done.test.name


def _expectations(expected: Sequence[Expected]) -> Iterator[str]:
    said_so = [each for each in expected if each.nearness != "not-said"]
    if said_so:
        close = sum(each.nearness == "close" for each in said_so)
        yield f"What a sound unit reads: you knew {close} of {len(said_so)}."
    for each in said_so:
        if each.nearness != "close":
            yield f"  {each.test.name}: you said {each.said}; it is {each.band}"


def _unexplained(session: Session, call: Call) -> Iterator[str]:
    """Abnormal readings that the call leaves open."""
    found = session.conclusions
    open_ = unexplained(
        found.hypotheses, found.seen, list(_causes(found, call.causes)), found.effects
    )
    if open_ and not session.stopped:
        yield "Your call does not explain:"
        for reading in open_:
            name = session.knowledge.tests[reading.test].name
            yield f"  {name}: {', '.join(o.replace('-', ' ') for o in reading.seen)}"


def _slips(session: Session) -> Iterator[str]:
    if session.slips:
        yield "Stopped before it happened:"
    for slip in session.slips:
        grave = "could have hurt someone" if slip.grave else "would have spoilt the work"
        how = "past a STOP" if slip.past_stop else f"without {slip.gravest or slip.missing[0]}"
        yield f"  {slip.tried}, {how}: {grave}"


def _expert(knowledge: Knowledge, expert: ExpertPath) -> Iterator[str]:
    steps = sum(move.is_step for move in expert.moves)
    yield f"The expert's way, with {steps} safety steps between:"
    moves = expert.tests
    for move in moves[:MOVES_SHOWN]:
        yield f"  {_moved(knowledge, move)}"
    if len(moves) > MOVES_SHOWN:
        yield f"  and {len(moves) - MOVES_SHOWN} more"
    ending = {
        "named": "and the cause is named",
        "stopped": "and a STOP ends it",
        "nothing-wrong": "and nothing is wrong",
    }.get(expert.ending, "and no test pays any more")
    yield f"  {ending}"


def _moved(knowledge: Knowledge, move: Move) -> str:
    name = knowledge.tests[move.test].name
    return f"{name}: {move.reason}" if move.reason else name


def to_read(session: Session, call: Call, score: Score) -> str:
    """The one entry of the rules to read: what was slipped on, else what was missed."""
    for slip in session.slips:
        if slip.grave and slip.read is not None:
            return slip.read
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
