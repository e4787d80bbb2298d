"""The account of a whole visit: what was asked with its cautions, and what it came to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import asdict, replace
from typing import cast

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.chaining.on_record import hazard_on_record
from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.measuring import read_with
from troubleshoot.reasoning.readings.readings import Reading, outcomes_of
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.visit.hearing.proof_read import unproved
from troubleshoot.visit.hearing.proofs_wanted import proofs_today
from troubleshoot.visit.state import Asked, RepairSaid, VisitState
from troubleshoot.visit.telling.account import NOBODY, TECHNICIAN, Plain, account, place_shown


def visit_account(
    knowledge: Knowledge,
    state: VisitState,
    conclusions: Conclusions,
    *,
    ending: str | None = None,
    stop: FiredHazard | None = None,
    candidates: Sequence[Candidate] = (),
    said_by: str = TECHNICIAN,
    timed: bool = True,
) -> Plain:
    """The account of a visit as it stands; `said_by`: who says what was done and read.

    `timed`: by a clock, and not by a program that takes no time.
    """
    rows = [
        (asked, {**_row(knowledge, state, conclusions, asked, said_by), **_when(asked, timed)})
        for asked in state.asked
    ]
    plain = account(
        conclusions,
        ending=ending,
        stop=stop,
        asked=[row for _, row in rows],
        cautions=[c for asked, row in rows for c in _cautions(knowledge, state, asked, row)],
        minutes=state.minutes,
        candidates=candidates,
    )
    return {**plain, "repairs": repairs_account(knowledge, state, conclusions)}


def case_at_call(state: VisitState) -> Case:
    """The case as it stood when the last repair was said, with what a round looked for then."""
    said = state.repairs[-1]
    before = tuple(each.fault for each in state.repairs[:-1] if each.fault != said.fault)
    return replace(
        state.case,
        answers=state.answers[: said.answers],
        repaired=before,
        search=said.search,
        apart=said.apart,
    )


def as_called(plain: Plain, called: Conclusions, *, is_cured: bool) -> Plain:
    """The account with the last repair's cause as it stood when the repair was said.

    Where the complaint went with it, that is what the visit has found: what was read to prove the
    repair speaks for no other cause.
    """
    repairs = [dict(each) for each in cast("list[Plain]", plain["repairs"])]
    fault = repairs[-1]["fault"]
    chances = (cause.probability for cause in called.causes if cause.fault.id == fault)
    repairs[-1]["probability_when_said"] = round(max(chances, default=0.0), 4)
    if not is_cured:
        return {**plain, "repairs": repairs}
    then = account(called)
    found = {key: then[key] for key in ("causes", "effects", "proofs", "behind", "unexplained")}
    if plain["ending"] != "left" and then["ending"] != "stopped":
        found["ending"] = then["ending"]
    return {**plain, **found, "repairs": repairs}


def repairs_account(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> list[Plain]:
    """Every repair that was said: when, in which words, and the readings that prove it or not.

    Proved: of each of its proofs it was said that it was read and is right, or what the rules judge
    was taken after it and is sound; and none taken after it is bad.
    """
    before = [_repair_before(knowledge, state, said) for said in state.repairs_before]
    return [*before, *(_repair(knowledge, conclusions, said, state) for said in state.repairs)]


def _repair_before(knowledge: Knowledge, state: VisitState, said: RepairSaid) -> Plain:
    """A repair made before the visit: only what was read for its own proofs proves it."""
    fault = knowledge.faults[said.fault]
    lacking = unproved(knowledge, state, fault, dict(said.proofs))
    return {
        "fault": fault.id,
        "name": fault.name,
        "before_visit": True,
        "said_at": said.time or None,
        "words": said.words,
        "complaint_still_there": None,
        "proofs": _proofs_of(said, lacking),
        "read_after": [],
        "proved": not lacking,
    }


def _proofs_of(said: RepairSaid, lacking: Mapping[str, str]) -> list[Plain]:
    return [
        {"to_read": what, "read": text or None, "proved": what not in lacking}
        for what, text in said.proofs
    ]


def _repair(
    knowledge: Knowledge, conclusions: Conclusions, said: RepairSaid, state: VisitState
) -> Plain:
    fault = knowledge.faults[said.fault]
    since = {answer.test for answer in state.answers[said.answers :]}
    wanted = proofs_today(knowledge, state.unit, fault)
    judged = [
        (reading, reading.possible <= set(finding.outcomes))
        for finding in (proof.finding for proof in wanted if proof.finding is not None)
        for reading in conclusions.readings
        if reading.test == finding.test and reading.test in since and reading.valid
    ]
    lacking = unproved(knowledge, state, fault, dict(said.proofs))
    taken = {reading.test for reading, _ in judged}
    proved = [p.text not in lacking or (p.finding and p.finding.test in taken) for p in wanted]
    return {
        "fault": fault.id,
        "name": fault.name,
        "before_visit": False,
        "said_at": said.time or None,
        "words": None,
        "complaint_still_there": said.still or None,
        "proofs": _proofs_of(said, lacking),
        "read_after": [
            {
                "test": reading.test,
                "at": place_shown(conclusions, knowledge.tests[reading.test].per, reading.at),
                "text": reading.text,
                "outcome": ", ".join(reading.seen) or None,
                "sound": sound,
            }
            for reading, sound in judged
        ],
        "proved": all(proved) and all(sound for _, sound in judged),
    }


def stops_account(knowledge: Knowledge, state: VisitState) -> list[Plain]:
    """Every STOP that halted the visit, whom it was handed over to, and what reopened it."""
    return [
        {
            "id": met.hazard,
            "what_to_do": hazard_on_record(knowledge, met.hazard).what_to_do,
            "reported": met.reported or None,
            "told": met.told or None,
            "told_at": met.told_at or None,
            "called": met.called or None,
            "made_safe": None if met.result is None else asdict(met.result),
            "done_here": met.done_here or None,
            "said_yes_to": list(met.said_yes_to),
            "reopened": met.reopened,
        }
        for met in state.stops
    ]


def _row(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions, asked: Asked, said_by: str
) -> Plain:
    """One thing asked; what nobody says was done neither counts nor counts not."""
    test = knowledge.tests[asked.test]
    outcome = asked.outcome
    reading = next(
        (r for r in conclusions.readings if (r.test, r.at) == (asked.test, asked.at)), None
    )
    if outcome is None and asked.text is not None:
        outcome = ", ".join(_judged(knowledge, conclusions, asked, reading)) or None
    valid = asked.valid if reading is None else asked.valid and reading.valid
    by = read_with(test, knowledge, state.meters) if asked.text else ""
    return {
        **({"instrument": by} if by else {}),
        "test": asked.test,
        "at": asked.place or state.unit.layout.shown(test.per, asked.at),
        "outcome": outcome,
        "text": asked.text,
        "valid": None if asked.nobody else valid,
        "said_by": NOBODY if asked.nobody else said_by,
        "minutes": round(asked.minutes, 1),
        "work_state": asked.work_state,
    }


def _judged(
    knowledge: Knowledge, conclusions: Conclusions, asked: Asked, reading: Reading | None
) -> tuple[str, ...]:
    """What a typed reading comes to; one that was read again later is judged by itself."""
    if reading is not None and reading.text == asked.text:
        return reading.seen
    answer = Answer(asked.test, text=asked.text, places=(asked.at,))
    return outcomes_of(knowledge, answer, asked.at, conclusions.values)


def _when(asked: Asked, timed: bool) -> Plain:
    return {"time": asked.time if timed and asked.time else None}


def _cautions(knowledge: Knowledge, state: VisitState, asked: Asked, row: Plain) -> Iterator[Plain]:
    """The cautions that came before one thing asked."""
    for hazard in cautions_before(knowledge, state, knowledge.tests[asked.test]):
        yield {
            "id": hazard.id,
            "signal": hazard.signal,
            "at": row["at"],
            "before": asked.test,
        }
