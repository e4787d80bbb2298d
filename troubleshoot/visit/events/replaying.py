"""One visit as a chain of events, and the state that they add up to.

`after` makes the next state from the last one and an event; `replay` does so from the start. Undo
is an event too: it takes back the words of the last answer, not what hands have done, so the work
state goes on from the more cautious of the two. Nothing here reads a clock, a file or a terminal.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime
from typing import Any

from troubleshoot.frozen import changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.steps import EDGE_PROTECTION, ROOF
from troubleshoot.safety.work_state import cautious
from troubleshoot.visit.events.answers import Answered, StepDone
from troubleshoot.visit.events.apart import Undone
from troubleshoot.visit.events.event import Event
from troubleshoot.visit.events.passing_time import Resumed
from troubleshoot.visit.events.undoing import taken_back, without
from troubleshoot.visit.events.way import put_aside
from troubleshoot.visit.state import VisitState


def replay(knowledge: Knowledge, events: Sequence[Event]) -> VisitState:
    """The state that all events add up to.

    After an undo the work goes on from the most careful of what it was before what is taken back,
    what it is now, with what was in hand begun, and what it would be had that never been said.
    """
    state = VisitState()
    works = []
    gone_over: list[tuple[Event, VisitState]] = []
    as_it_came = True
    for number, event in enumerate(events):
        works.append(state.work)
        if not isinstance(event, Undone):
            state = after(knowledge, state, event)
            if as_it_came:
                gone_over.append((event, state))
            continue
        as_it_came = False
        gone = taken_back(events[:number])
        if gone is None:
            continue
        work = cautious(works[gone], put_aside(knowledge, state).work)
        before, state = state, _go_over(knowledge, without(events[:number], gone), gone_over)
        state = replace(state, work=cautious(state.work, work), aim=None, shown=None, trying=False)
        state = timed(before, state, event)
    return state


def _go_over(
    knowledge: Knowledge, events: Sequence[Event], known: list[tuple[Event, VisitState]]
) -> VisitState:
    """The state that events without an undo add up to.

    `known`: those gone over last, each with the state after it; so far as these are the same they
    are not gone over again, and it holds these events from then on.
    """
    same = 0
    for (before, _), event in zip(known, events, strict=False):
        if before is not event:
            break
        same += 1
    del known[same:]
    state = known[-1][1] if known else VisitState()
    for event in events[same:]:
        state = after(knowledge, state, event)
        known.append((event, state))
    return state


def after(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
    """The state after one event. Raises SaysNothing where an answer names no outcome."""
    return timed(state, event.apply(knowledge, state), event)


def timed(before: VisitState, after: VisitState, event: Event) -> VisitState:
    """The state after an event, with the times that its own time settles."""
    latest = _latest(before, event)
    times: dict[str, Any] = {} if latest == after.latest_time else {"latest_time": latest}
    if event.reports or (isinstance(event, Resumed) and event.voids):
        times["last_time"] = event.time
    if after.work.roof == "go" and (_looked_at_roof(event) or before.work.roof != "go"):
        times["roof_time"] = event.time
    if after.work.power == "locked-out" and before.work.power != "locked-out":
        times["power_off_time"] = event.time
    if after.work.gas == "shut" and before.work.gas != "shut":
        times["gas_shut_time"] = event.time
    return changed(after, **times) if times else after


def _latest(before: VisitState, event: Event) -> str:
    """The latest time that was told; a break begins anew, however the clock was set.

    What else is told at an earlier time was told on a clock set back, which the turn has to see.
    """
    if not event.time or isinstance(event, Resumed):
        return event.time or before.latest_time
    try:
        is_back = datetime.fromisoformat(event.time) < datetime.fromisoformat(before.latest_time)
    except (TypeError, ValueError):
        return event.time
    return before.latest_time if is_back else event.time


def _looked_at_roof(event: Event) -> bool:
    if isinstance(event, StepDone):
        return event.step in (ROOF, EDGE_PROTECTION)
    return isinstance(event, Answered) and event.test in (ROOF, EDGE_PROTECTION)
