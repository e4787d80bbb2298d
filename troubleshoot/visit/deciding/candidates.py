"""The tests worth a look on a state of the visit: what may be proposed, and what it takes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache, partial

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.choosing.asking import Asking
from troubleshoot.reasoning.choosing.next_test import Candidate, SwitchMinutes
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.closed_ways import is_closed
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.reaching import leads_nowhere
from troubleshoot.safety.route import switch_minutes
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.safety.unit_at_work import SERVICE_PORTS
from troubleshoot.visit.deciding.put_before import read_or_skipped
from troubleshoot.visit.deciding.seen_first import with_the_climb
from troubleshoot.visit.state import VisitState


def candidates_from(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> tuple[Candidate, ...]:
    """Every test worth a look from here, the best rate first; none that is out of place."""
    ask = asking(knowledge, state, conclusions)
    is_unfit = unfit(state, conclusions)
    done = read_or_skipped(state, conclusions)

    def asks(test: Test, place: Place | None) -> tuple[Test, ...]:
        asked = ask.asks(test, place, conclusions.values)
        each_once = {each.id: each for each in (test, *asked)}.values()
        return () if any(is_unfit(each, place) for each in each_once) else asked

    return conclusions.candidates(done, asks, switch_from(knowledge, state))


def switch_from(knowledge: Knowledge, state: VisitState) -> SwitchMinutes:
    """The minutes to the work state of a test from here; many tests need the same.

    Where nobody was asked yet where the service ports are, they are reckoned as outside: the answer
    is asked for on the way there, and what it costs is reckoned anew.
    """
    work, unit, tests = state.work, state.at_work, knowledge.tests
    if SERVICE_PORTS not in {*state.unit.facts, *state.not_known}:
        unit = replace(unit, ports_outside=True)
    minutes = cache(lambda needs: switch_minutes(work, needs, unit, tests))
    return with_the_climb(state, lambda test, at: minutes(needs_of(test, spoken(at), unit)))


def unfit(state: VisitState, conclusions: Conclusions) -> Callable[[Test, Place | None], bool]:
    """What is not to be proposed: what a hazard forbids, what no step leads nearer to, what is
    behind a step that failed each time, and, once a part is accused and the unit is locked out for
    it, what needs the power back."""
    forbidden = Forbidden(conclusions)
    stays_off = conclusions.named is not None and state.work.power == "locked-out"
    blocked = cache(partial(leads_nowhere, state))

    def is_unfit(test: Test, at: Place | None) -> bool:
        if forbidden.by(test, at) is not None or is_closed(state, test, at):
            return True
        needs = needs_of(test, spoken(at), state.at_work)
        return blocked(needs) or (stays_off and needs.energised)

    return is_unfit


def asking(knowledge: Knowledge, state: VisitState, conclusions: Conclusions) -> Asking:
    """What has to be asked on this unit, without what was skipped or told in words alone.

    Who says that a reading was normal has no number to give, and is not asked for one again.
    """
    told = {answer.test for answer in state.answers if not answer.text}
    numbers = {answer.test for answer in state.answers if answer.text}
    left_out = {test for test, _ in state.skipped} | (told - numbers)
    return Asking(knowledge, state.unit, conclusions.hypotheses.tests.values(), left_out)
