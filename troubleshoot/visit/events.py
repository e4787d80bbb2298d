"""One visit as a chain of events, and how each changes the state of the visit.

An event is plain data, as it stands in the journal. `after` makes the next state from the last
one and an event; `replay` does so from the start. Undo is an event too: it takes back the words of
the last answer, not what hands have done, so the work state goes on from the more cautious of the
two. Nothing here reads a clock, a file or a terminal.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.answers import Answer
from troubleshoot.reasoning.equipment import Unit, read_unit
from troubleshoot.reasoning.places import Place, parse_place, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.profiles import FULLY_QUALIFIED
from troubleshoot.safety.steps import BEFORE_BLEEDING, Step
from troubleshoot.safety.stop_record import Spot
from troubleshoot.safety.transitions import after_step, after_test, expire, failed
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import cautious
from troubleshoot.visit.absence import timed, voided
from troubleshoot.visit.event_shapes import Event
from troubleshoot.visit.not_understood import NOT_UNDERSTOOD, not_understood
from troubleshoot.visit.stop_events import (
    danger_reported,
    ended,
    reopened,
    stop_met,
    take_afresh,
)
from troubleshoot.visit.undoing import taken_back, without
from troubleshoot.visit.visit_state import Asked, RepairSaid, VisitState


class SaysNothing(ValueError):
    """An answer without outcome or reading: nothing is kept as one."""


def replay(knowledge: Knowledge, events: Sequence[Event]) -> VisitState:
    """The state that all events add up to.

    After an undo the work goes on from the most careful of what it was before what is taken back,
    what it is now, and what it would be had that never been said.
    """
    state = VisitState()
    works = []
    for number, event in enumerate(events):
        works.append(state.work)
        if event["event"] != "undo":
            state = after(knowledge, state, event)
            continue
        gone = taken_back(events[:number])
        if gone is None:
            continue
        work = cautious(works[gone], state.work)
        state = replay(knowledge, without(events[:number], gone))
        state = replace(state, work=cautious(state.work, work), aim=None)
    return state


def after(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """The state after one event. Raises SaysNothing where an answer names no outcome."""
    return timed(state, _EFFECTS[event["event"]](knowledge, state, event), event)


def _start(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    data, own = event.get("unit", {}), event.get("own_record", {})
    unit = read_unit(knowledge, data, own, event.get("counts"))
    return replace(
        state,
        unit_data=data,
        own_record=own,
        unit=unit,
        at_work=unit_at_work(unit),
        complaint=event.get("complaint"),
        name=event.get("name", ""),
        words=event.get("words", ""),
        routine=bool(event.get("routine", False)),
        profiles=frozenset(event.get("profiles", FULLY_QUALIFIED)),
        conditions=dict(event.get("conditions", {})),
        repaired=tuple(event.get("repaired", ())),
        repairs=tuple(RepairSaid(fault) for fault in event.get("repaired", ())),
    )


def _fact(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """An equipment fact or plate value read on the way; None says that it is not known."""
    name = event["name"]
    if event["value"] is None:
        return replace(state, not_known=state.not_known | {name})
    value, before = event["value"], state.unit_data.get(name)
    if isinstance(value, Mapping) and isinstance(before, Mapping):
        value = {**before, **value}
    data = {**state.unit_data, name: value}
    unit = read_unit(knowledge, data, state.own_record, event.get("counts"))
    return replace(state, unit_data=data, unit=unit, at_work=unit_at_work(unit))


def _answer(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    test = knowledge.tests[event["test"]]
    if not event.get("outcomes") and not event.get("text"):
        raise SaysNothing(f"an answer to {test.id} names no outcome and holds no reading")
    places = places_from(event.get("at"), test.per, state.unit)
    answer = Answer(
        test.id,
        tuple(event.get("outcomes", ())),
        event.get("text"),
        places,
        bool(event.get("shared", False)),
        event.get("valid"),
        event.get("instrument"),
        event.get("why_invalid", ""),
        dict(event.get("conditions", {})),
        after_repair=state.mended_here,
    )
    where = places[0]
    asked = Asked(
        test.id,
        None if answer.shared else where,
        ", ".join(answer.outcomes) or None,
        answer.text,
        answer.valid is not False,
        test.minutes,
        test.work_state,
    )
    counts = answer.valid is not False
    outcomes = answer.outcomes if counts else ()
    work = after_test(state.work, test, spoken(where), outcomes, state.at_work)
    return replace(
        state,
        answers=(*state.answers, answer),
        asked=(*state.asked, asked),
        work=work,
        work_before=state.work,
        aim=_unless_reached(state.aim, test.id) if state.aim_chosen else None,
        fresh=_unless_reached(state.fresh, test.id),
    )


def _unless_reached(spot: Spot | None, answered: str) -> Spot | None:
    """What is aimed at is reached when its own test is answered, not by what leads on to it.

    What nobody chose is not held to: every answer may make another test tell more.
    """
    return None if spot is None or spot[0] == answered else spot


def _step(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    step = Step(event["step"], event.get("place"), bool(event.get("again", False)))
    outcomes = tuple(event["outcomes"])
    counts = event.get("valid") is not False
    work = after_step(state.work, step, outcomes if counts else (), state.at_work)
    test = knowledge.tests[step.id]
    asked = Asked(
        step.id,
        step_place(step, state.unit),
        ", ".join(outcomes),
        event.get("text"),
        counts,
        test.minutes + test.wait_minutes,
        test.work_state,
        step.place,
        bool(event.get("nobody", False)),
    )
    valid = None if counts else False
    answer = Answer(step.id, outcomes, event.get("text"), (asked.at,), valid=valid)
    confirmed = counts and outcomes == (CONFIRMED[step.id],)
    return replace(
        state,
        work=work,
        work_before=state.work,
        asked=(*state.asked, asked),
        answers=(*state.answers, answer),
        aim=state.aim if confirmed or outcomes == (BEFORE_BLEEDING,) else None,
        fresh=_unless_reached(state.fresh, step.id),
    )


def step_place(step: Step, unit: Unit) -> Place | None:
    """The place of the unit that a step's words name; None where they name none of its tree."""
    for kind, _ in unit.layout.counts:
        for place in unit.layout.places(kind):
            if str(place) == step.place:
                return place
    return None


def _skip(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    test = knowledge.tests[event["test"]]
    places = places_from(event.get("at"), test.per, state.unit)
    skipped = state.skipped | {(test.id, place) for place in places}
    aim = None if state.aim and _may_hang_on(knowledge, state.aim, test.id) else state.aim
    where = spoken(places[0])
    work = state.work
    if test.id in CONFIRMED:
        work = failed(state.work, state.work, Step(test.id, where), state.at_work)
    elif not allowed(work, test, where, state.at_work):
        # It had been shown: hands may have begun (leads lifted) before it was given up.
        work = after_test(work, test, where, (), state.at_work)
    return replace(state, skipped=skipped, aim=aim, fresh=None, work=work)


def _may_hang_on(knowledge: Knowledge, aim: Spot, skipped: str) -> bool:
    """Whether what is aimed at may need a test that was skipped, so that the way is sought afresh.

    What is computed may be had from other inputs; what was only to be saved on the way holds up
    nothing.
    """
    return aim[0] == skipped or knowledge.tests[aim[0]].kind == "computed"


def _aim(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    test = knowledge.tests[event["test"]]
    place = places_from(event.get("at"), test.per, state.unit)[0]
    skipped = state.skipped - {(test.id, place)} if event.get("chosen") else state.skipped
    return replace(
        state,
        aim=(test.id, place if event.get("at") else None),
        aim_reason=event.get("reason", ""),
        aim_chosen=bool(event.get("chosen", False)),
        skipped=skipped,
    )


def _note(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    return replace(state, notes=(*state.notes, event["text"]))


def _invalid(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """The last answer stays on record but counts for nothing; a proof, step or sweep has failed."""
    last = replace(state.answers[-1], valid=False, why_invalid=event["reason"])
    changed = replace(state, answers=(*state.answers[:-1], last))
    if last.test not in CONFIRMED:
        return changed
    asked = replace(state.asked[-1], valid=False)
    step = Step(last.test, asked.place or spoken(asked.at))
    work = failed(state.work_before, state.work, step, state.at_work)
    return replace(changed, asked=(*state.asked[:-1], asked), work=work)


def _repaired(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    said = RepairSaid(
        event["fault"],
        event.get("time", ""),
        state.proofs,
        event.get("words", ""),
        len(state.answers),
    )
    return replace(
        state,
        repaired=(*state.repaired, event["fault"]),
        repairs=(*state.repairs, said),
        proofs=(),
        mended_here=True,
        closing=False,
    )


def _proof(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """What was read to prove the repair that is said next; no text where it was not taken."""
    return replace(state, proofs=(*state.proofs, (event["reason"], event["text"] or "")))


def _resumed(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """Whoever goes on says who they are; an absence too long voids what others could change."""
    state = replace(state, fresh=None, profiles=frozenset(event.get("profiles", state.profiles)))
    if not voided(event):
        return state
    return replace(state, work=expire(state.work, "resumed"), aim=None)


def _named(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """The unit's name, where it was given only later."""
    return replace(state, name=event["name"])


def _call(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """The caller's words, before it is settled what they are taken for and who is asking."""
    return replace(state, words=event["words"])


def _hour_passed(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """Weather turns within the hour: the roof is looked at again."""
    return replace(state, work=expire(state.work, "hour-passed"))


def _closing(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    return replace(state, closing=True, cured=bool(event.get("cured", False)), aim=None)


_EFFECTS = {
    "start": _start,
    "fact": _fact,
    "answer": _answer,
    "step": _step,
    "skip": _skip,
    "aim": _aim,
    "invalid": _invalid,
    "note": _note,
    "repaired": _repaired,
    "proof": _proof,
    "resumed": _resumed,
    "hour-passed": _hour_passed,
    "closing": _closing,
    "named": _named,
    "call": _call,
    "stop": stop_met,
    "danger": danger_reported,
    "take-afresh": take_afresh,
    "end": ended,
    "reopened": reopened,
    NOT_UNDERSTOOD: not_understood,
}


def places_from(at: object, kind: str | None, unit: Unit) -> tuple[Place | None, ...]:
    """The places of an event; without any, those of the kind."""
    if at is None:
        return unit.layout.places(kind) or (None,)
    named: Iterable[object] = [at] if isinstance(at, str) else at  # type: ignore[assignment]
    return tuple(place for each in named for place in parse_place(str(each), kind, unit.layout))
