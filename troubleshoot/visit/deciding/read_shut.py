"""What is read together as the unit stands: with its panels on, or open and live.

A wet bulb that is thought of once the panel is off costs a stop, a lock, the panel on, and a new
call; and a value that follows from what was read for it is not asked for once more.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import chain

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.vocabulary import Need
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.superseded import inputs_of
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.closed_ways import is_closed
from troubleshoot.safety.needs import OPEN_LIVE, needs_of, with_needs
from troubleshoot.safety.reaching import beyond, is_blocked
from troubleshoot.visit.state import VisitState


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

    The meter is proved while the panel is still on, and gauges go on before it is opened live,
    where whoever is asking may put them on.
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
    needed = (need for need, is_wanted in together if is_wanted)
    return with_needs_if_it_may(knowledge, state, wanted, at, needed)


def with_needs_if_it_may(
    knowledge: Knowledge, state: VisitState, test: Test, at: Place | None, needed: Iterable[Need]
) -> Test:
    """The test with more put on before it, where a way leads there and this person may do it."""
    more = with_needs(test, needed)
    refused = is_closed(state, more, at) or is_blocked(state, more, at)
    return test if refused or beyond(knowledge, state, (more,), at) else more
