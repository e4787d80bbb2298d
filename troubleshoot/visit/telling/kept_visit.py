"""The account of a visit that is kept: the whole visit as it stands, and what goes with it."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.before_repair import LIVE
from troubleshoot.safety.stops.lifting import standing_stop, with_stops_met
from troubleshoot.safety.work_state import open_items
from troubleshoot.visit.deciding.left_off import gas_left, left_off_at
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.deciding.no_lock import SWITCH_LEFT, has_no_lock
from troubleshoot.visit.deciding.on_round import round_found
from troubleshoot.visit.hearing.proof_read import (
    lacking_lines,
    not_proved_before,
    not_proved_earlier,
)
from troubleshoot.visit.hearing.proofs_wanted import still_to_read
from troubleshoot.visit.kept.understanding import Understanding
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.account import Plain, ending_of
from troubleshoot.visit.telling.round_told import round_account
from troubleshoot.visit.telling.weighings import refrigerant_lines
from troubleshoot.visit.telling.whole_visit import (
    as_called,
    case_at_call,
    stops_account,
    visit_account,
)


def kept_account(
    knowledge: Knowledge, visit: str, state: VisitState, understanding: Understanding
) -> tuple[Plain, Plain]:
    """The account of a kept visit, and its extras as `records.report.markdown_report` takes them.

    `visit`: its name; `state`: where its events lead.
    """
    reasoner = Reasoner(knowledge)
    conclusions = with_stops_met(knowledge, state, _found(reasoner, state))
    stop = standing_stop(knowledge, state, conclusions)
    plain = visit_account(
        knowledge, state, conclusions, ending=_ending(state, conclusions), stop=stop
    )
    if state.round is not None:
        points = round_found(Decider(knowledge, reasoner), state, conclusions)
        plain["round"] = round_account(knowledge, state.round.season, points)
    if state.repairs and stop is None:
        called = reasoner.conclude(case_at_call(state))
        plain = as_called(plain, called, is_cured=state.cured)
    return plain, _extras(knowledge, visit, state, understanding, conclusions)


def _found(reasoner: Reasoner, state: VisitState) -> Conclusions:
    """What a visit has found: what was repaired is named, not what would be next without it."""
    case = state.case
    if state.cured:
        case = replace(case, repaired=case.repaired[:-1])
    return reasoner.conclude(case)


def _ending(state: VisitState, conclusions: Conclusions) -> str:
    if state.ended is None:
        return "left"
    return "stopped" if state.ended == "stopped" else ending_of(conclusions)


def _not_told(state: VisitState) -> Plain:
    """What was taken from the register, and not told here."""
    record = state.on_record.trusted
    return {name: value for name, value in record.items() if name not in state.unit_data}


def _extras(
    knowledge: Knowledge,
    visit: str,
    state: VisitState,
    understanding: Understanding,
    conclusions: Conclusions,
) -> Plain:
    is_closed = state.ended == "closed"
    off = left_off_at(knowledge, state, conclusions)
    switch = (SWITCH_LEFT,) if has_no_lock(state) else ()
    return {
        "title": f"Visit {visit}: {state.name}" if state.name else f"Visit {visit}",
        "words": state.words,
        "unit": state.unit_data,
        "on_record": _not_told(state),
        "stops": stops_account(knowledge, state),
        "left_before": state.left_before,
        "left_off": (*off.lines, *gas_left(off, state.work), *switch) if is_closed else (),
        "refrigerant": refrigerant_lines(knowledge, state),
        "notes": state.notes,
        "not_understood": understanding.unknown,
        "open_items": left_undone(knowledge, state),
    }


def left_undone(knowledge: Knowledge, state: VisitState) -> tuple[str, ...]:
    """What a visit has left open, a sentence each: of one that is closed its repairs alone."""
    return (
        *(() if state.ended == "closed" else open_items(state.work)),
        *(f"{LIVE}: {knowledge.faults[s.fault].name}" for s in state.repairs if s.live),
        *(f"The repair is not proved, {line}" for line in lacking_lines(knowledge, state)),
        *not_proved_earlier(knowledge, state),
        *still_to_read(knowledge, state),
        *not_proved_before(knowledge, state),
    )
