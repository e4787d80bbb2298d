"""What a STOP, its hand-over, its fresh finding and the reopening do to the state of a visit.

None of these lifts a STOP: the finding that called it up stays what it is until it is taken afresh.
"""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.reasoning.places import parse_place
from troubleshoot.safety.dangers import ANY_DANGER
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stop_record import HandOverResult, Spot, StopMet
from troubleshoot.safety.transitions import expire, failed
from troubleshoot.visit.event_shapes import Event
from troubleshoot.visit.visit_state import VisitState


def stop_met(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """A STOP halted the visit here."""
    on_record = bool(event.get("on_record", False))
    spot: Spot | None = None
    if not on_record:
        spot = (
            _spot(knowledge, state, event)
            if event.get("test")
            else _likely_spot(knowledge, state, knowledge.hazards[event["hazard"]])
        )
    met = StopMet(
        event["hazard"],
        len(state.answers),
        spot,
        event.get("words"),
        event.get("time", ""),
        on_record=on_record,
    )
    return replace(state, stops=(*state.stops, met), fresh=None, aim=None)


def danger_reported(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """Somebody reported a danger: it halts the visit like a STOP that was found, a closed one too.

    The step that would show the all-clear shows it no more: no rail here, and the roof is not safe.
    """
    if event.get("names_the_last") and state.stops[-1:] and state.stops[-1].hazard == ANY_DANGER:
        state = replace(state, stops=state.stops[:-1])
    state = replace(stop_met(knowledge, state, event), ended=None)
    step = Step(str(event.get("test")))
    if step.id not in CONFIRMED:
        return state
    return replace(state, work=failed(state.work, state.work, step, state.at_work))


def take_afresh(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """The finding that called the STOP up is to be taken once more; an all-clear has a result."""
    stops = state.stops
    spot = _spot(knowledge, state, event)
    if stops and event.get("result"):
        stops = (*stops[:-1], replace(stops[-1], result=HandOverResult(**event["result"])))
    return replace(state, stops=stops, fresh=spot, fresh_since=len(state.answers))


def ended(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """The end of the visit; a stopped one was handed over to somebody, at some time."""
    stops = state.stops
    if stops and event["ending"] == "stopped":
        told, when = event.get("told", ""), event.get("told_at", "")
        stops = (*stops[:-1], replace(stops[-1], told=told, told_at=when))
    return replace(state, ended=event["ending"], stops=stops)


def reopened(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """A stopped visit goes on, as on another day, with the finding that has to be taken afresh.

    Nothing but a visit that was handed over at a STOP can be reopened. Whoever made it safe may
    have opened the gas, so it is swept for before anything runs.
    """
    if state.ended != "stopped":
        return state
    stops = state.stops or (StopMet(event["hazard"], 0),)
    work = expire(state.work, "reopened")
    if state.unit.facts.get("heat", "gas") != "gas":
        work = replace(work, gas_swept=state.work.gas_swept)
    result = HandOverResult(**event["result"])
    spot = _spot(knowledge, state, event)
    last = replace(
        stops[-1],
        result=result,
        reopened=True,
        answers=len(state.answers),
        spot=stops[-1].spot or spot,
    )
    before = (replace(m, reopened=True) if m.hazard == last.hazard else m for m in stops[:-1])
    return replace(
        state,
        stops=(*before, last),
        fresh=spot,
        profiles=frozenset(event.get("profiles", state.profiles)),
        fresh_since=len(state.answers),
        work=work,
        aim=None,
        closing=False,
        ended=None,
    )


def _likely_spot(knowledge: Knowledge, state: VisitState, hazard: Hazard) -> Spot | None:
    """What shows whether a STOP still stands, where the event does not say (journals of before)."""
    tests = [finding.test for trigger in hazard.triggers for finding in trigger.findings]
    for answer in reversed(state.answers):
        if answer.test in tests:
            return answer.test, answer.places[0]
    complaint = knowledge.complaints.get(state.complaint or "")
    called_up = any(trigger.complaint == state.complaint for trigger in hazard.triggers)
    if complaint is not None and called_up and complaint.all_clear is not None:
        return complaint.all_clear, None
    test = hazard.all_clear or next(iter(tests), None)
    return None if test is None else (test, None)


def _spot(knowledge: Knowledge, state: VisitState, event: Event) -> Spot:
    test = knowledge.tests[event["test"]]
    if event["at"] is None:
        return test.id, None
    return test.id, parse_place(event["at"], test.per, state.unit.layout)[0]
