"""The account of a whole visit: what was asked with its cautions, and what it came to."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import asdict

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Conclusions, FiredHazard
from troubleshoot.reasoning.next_test import Candidate
from troubleshoot.reasoning.on_record import hazard_on_record
from troubleshoot.visit.account import NOBODY, TECHNICIAN, Plain, account
from troubleshoot.visit.cautions import cautions_before
from troubleshoot.visit.visit_state import Asked, VisitState


def visit_account(
    knowledge: Knowledge,
    state: VisitState,
    conclusions: Conclusions,
    *,
    ending: str | None = None,
    stop: FiredHazard | None = None,
    candidates: Sequence[Candidate] = (),
    said_by: str = TECHNICIAN,
) -> Plain:
    """The account of a visit as it stands; `said_by`: who says what was done and read."""
    rows = [(asked, _row(knowledge, state, conclusions, asked, said_by)) for asked in state.asked]
    return account(
        conclusions,
        ending=ending,
        stop=stop,
        asked=[row for _, row in rows],
        cautions=[c for asked, row in rows for c in _cautions(knowledge, state, asked, row)],
        minutes=state.minutes,
        candidates=candidates,
    )


def stops_account(knowledge: Knowledge, state: VisitState) -> list[Plain]:
    """Every STOP that halted the visit, whom it was handed over to, and what reopened it."""
    return [
        {
            "id": met.hazard,
            "what_to_do": hazard_on_record(knowledge, met.hazard).what_to_do,
            "told": met.told or None,
            "told_at": met.told_at or None,
            "made_safe": None if met.result is None else asdict(met.result),
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
    if outcome is None and reading is not None and reading.text == asked.text:
        outcome = ", ".join(reading.seen) or None
    valid = asked.valid if reading is None else asked.valid and reading.valid
    return {
        "test": asked.test,
        "at": asked.place or state.unit.layout.shown(test.per, asked.at),
        "outcome": outcome,
        "text": asked.text,
        "valid": None if asked.nobody else valid,
        "said_by": NOBODY if asked.nobody else said_by,
        "minutes": round(asked.minutes, 1),
        "work_state": asked.work_state,
    }


def _cautions(knowledge: Knowledge, state: VisitState, asked: Asked, row: Plain) -> Iterator[Plain]:
    """The cautions that came before one thing asked."""
    for hazard in cautions_before(knowledge, state, knowledge.tests[asked.test]):
        yield {
            "id": hazard.id,
            "signal": hazard.signal,
            "at": row["at"],
            "before": asked.test,
        }
