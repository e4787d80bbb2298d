"""What a unit reads with its panels on, before it is stopped or opened live for what it reads open.

A wet bulb that is thought of once the panel is off costs a stop, a lock, the panel on, and a new
call; and a value that follows from what was read for it is not asked for once more.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from typing import TYPE_CHECKING

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.vocabulary import Need
from troubleshoot.reasoning.choosing.stopping import least_rate_on
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.superseded import inputs_of
from troubleshoot.reasoning.unit.places import Place, like, spoken
from troubleshoot.safety.at_ports import as_read_on
from troubleshoot.safety.closed_ways import is_closed
from troubleshoot.safety.needs import OPEN_LIVE, needs_of, with_needs
from troubleshoot.safety.reaching import beyond, is_blocked, steps_before
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.state import VisitState

if TYPE_CHECKING:
    from troubleshoot.visit.deciding.next import Decider


def has_come(knowledge: Knowledge, state: VisitState, conclusions: Conclusions) -> bool:
    """Whether what is aimed at has been computed from something that was read since it was."""
    if state.aim is None:
        return False
    name, at = state.aim
    known = any(
        reading.computed and reading.valid and reading.test == name and at in (None, reading.at)
        for reading in conclusions.readings
    )
    if not known:
        return False
    wanted = inputs_of(knowledge, {one.quantity for one in knowledge.tests[name].reads})
    return any(
        one.quantity in wanted
        for answer in state.answers[state.aim_since :]
        for one in knowledge.tests[answer.test].reads
    )


def first_of(state: VisitState, asked: Sequence[Test]) -> Test | None:
    """Of what a test is computed from, what is read next: as the unit stands, open live or not.

    Else in its order, so that what belongs together is read in one minute. None where nothing is.
    """
    is_open = state.work.energy in OPEN_LIVE
    alike = (t for t in asked if (needs_of(t, None, state.at_work).energy in OPEN_LIVE) == is_open)
    return next(chain(alike, asked), None)


def hooked_up_before(
    knowledge: Knowledge, state: VisitState, wanted: Test, at: Place | None, asked: Sequence[Test]
) -> Test:
    """One of the inputs that is read open and live, with what the others want put on before.

    Gauges and meter go on while the panel is still on, or under the lock, where whoever is asking
    may put them on.
    """
    unit = state.at_work
    live = needs_of(wanted, None, unit).energy in OPEN_LIVE
    if not live or state.work.energy in OPEN_LIVE:
        return wanted
    needs = [needs_of(each, None, unit) for each in asked]
    together: tuple[tuple[Need, bool], ...] = (
        ("meter-proved", any(each.meter for each in needs)),
        ("gauges-on", any("gauges-on" in each.needs_state for each in asked)),
    )
    hooked_up = with_needs(wanted, (need for need, is_wanted in together if is_wanted))
    refused = is_closed(state, hooked_up, at) or is_blocked(state, hooked_up, at)
    return wanted if refused or beyond(knowledge, state, (hooked_up,), at) else hooked_up


def read_while_shut(
    decider: Decider, state: VisitState, conclusions: Conclusions, found: Decision, wanted: Test
) -> tuple[Test, Place | None] | None:
    """What takes no further step, and what is read behind the open panel is judged by.

    Only where the next step ends that: the unit runs with its panels on, and is to be opened live.
    Of what pays behind the same panel; somebody's own choice and the way out wait for nothing.
    """
    work, unit = state.work, state.at_work
    opens = needs_of(wanted, None, unit).energy in OPEN_LIVE
    if found.step is None or not opens or work.energy != "running":
        return None
    if state.aim_chosen or state.closing or state.walking is not None:
        return None
    forbidden, tests = Forbidden(conclusions), decider.knowledge.tests
    least = least_rate_on(conclusions.ranking)
    for candidate in decider.candidates(state, conclusions):
        behind = as_read_on(candidate.test, unit).work_state in OPEN_LIVE
        if not candidate.pays(least) or not behind:
            continue
        for test in (as_read_on(tests[name], unit) for name in candidate.asks):
            at = like(candidate.at, state.unit.layout.places(test.per))
            shows = test.work_state == "any" or needs_of(test, spoken(at), unit).energised
            if not shows or steps_before(state, test, at):
                continue
            if test.work_state in OPEN_LIVE or forbidden.by(test, at) is not None:
                continue
            if beyond(decider.knowledge, state, (test,), at) is None:
                return test, at
    return None
