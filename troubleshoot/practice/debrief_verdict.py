"""What it was and what was called, part by part; a near miss is told as such."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from typing import Final

from troubleshoot.practice.offered import PROOFS_SAID, Part, near_miss
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.scoring import Call, Score
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.evidence.outcome_chances import pattern_row

LIKELY: Final = 0.5
"""A card that gives a sound outcome this chance has it with the fault there as well."""


def verdict_told(
    session: Session, call: Call, score: Score, told: Collection[str]
) -> Iterator[str]:
    """What it was, and how each part of the call stands; a hazard in `told` is not told again."""
    if score.shown_before:
        yield "Half, since it had been shown in this data folder under another name."
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


def said(session: Session, fault: TrueFault) -> str:
    """A fault with its place, where the unit has several."""
    known = session.knowledge.faults[fault.fault]
    where = session.scenario.unit.layout.shown(known.per, fault.at)
    return f"{known.name} ({where})" if where else known.name


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
    yield from _near(session, "repair", call.repair, score.repair_right)
    yield from _near(session, "proof", call.proof, score.proof_right)


def _near(session: Session, part: Part, chosen: str | None, right: bool | None) -> Iterator[str]:
    """How a repair or a proof that is not the right one is near it."""
    truth = session.scenario.truth.faults
    if right is not False or chosen is None or not truth:
        return
    near = near_miss(session.knowledge, session.knowledge.faults[truth[0].fault], chosen)
    if near:
        yield f"A near miss, the {part}: {near}."
    if part == "proof":
        for test in dict.fromkeys(sound_all_the_same(session, chosen)):
            yield f"  {test} reads so with the fault there as well: that proves nothing."


def sound_all_the_same(session: Session, chosen: str) -> Iterator[str]:
    """The tests of another card's proof that read sound although the true fault is there.

    As the scenario lists it, or as the fault's card says of them; where both are silent, nobody
    knows.
    """
    found, scenario = session.start.hypotheses, session.scenario
    true = scenario.truth.faults[0].fault
    pictures = [h.picture for h in (*found.causes, *found.effects) if h.fault.id == true]
    own = {proof.finding.test for proof in session.knowledge.faults[true].proof if proof.finding}
    read = {
        each.test: each.seen for each in session.decider.reasoner.conclude(scenario.case).readings
    }
    for proof in session.knowledge.faults[chosen].proof[:PROOFS_SAID]:
        wanted = proof.finding
        if wanted is None or wanted.test in own:
            continue
        rows = [
            pattern_row(found.row(picture, wanted.test))
            for picture in pictures
            if wanted.test in picture.cells
        ]
        likely = [sum(row.get(o, 0.0) for o in wanted.outcomes) >= LIKELY for row in rows]
        if {*read.get(wanted.test, ())} & {*wanted.outcomes} or (likely and all(likely)):
            yield session.knowledge.tests[wanted.test].name
