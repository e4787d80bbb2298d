"""What rules put before others on the way to a test: first looks, and what a power cut would lose.

A first look comes as soon as the roof is found good, while nothing of the unit has been touched:
what leaks, hangs loose or lives in it is seen best then, and may stop the visit.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.choosing.stopping import least_rate_on
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.withdrawal import ASKED_ANEW
from troubleshoot.safety.needs import OPEN_LIVE, needs_of
from troubleshoot.safety.reaching import beyond
from troubleshoot.safety.steps import GAS_SHUT, LOCKOUT, METER_PROOF, STOP_BY_CONTROLS, Step
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.safety.work_state import is_as_found
from troubleshoot.visit.deciding.decision import Decision, nearer_to
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.state import VisitState


def first_look(
    knowledge: Knowledge,
    state: VisitState,
    conclusions: Conclusions,
    done: frozenset[Spot],
    wanted: Test,
) -> Decision | None:
    """The look that comes before all else on the way to a test on the roof, where one is left.

    Only what the roof alone allows, what no hazard forbids and what this person may do; it is
    neither read nor skipped before (`done`). Before a burner is called for it is made up for.
    """
    needs = needs_of(wanted, None, state.at_work)
    if not needs.roof or state.work.roof != "go":
        return None
    if not is_as_found(state.work) and needs.gas != "on":
        return None
    forbidden = Forbidden(conclusions)
    for fired in conclusions.procedures:
        for test in (knowledge.tests[name] for name in fired.procedure.first_on_the_roof):
            for at in state.unit.layout.places(test.per):
                spot = (test.id, at)
                if spot in done or forbidden.by(test, at) or beyond(knowledge, state, (test,), at):
                    continue
                found = nearer_to(knowledge, state, test, at)
                if found is not None and found.kind == "ask":
                    return replace(found, aim=spot, reason=fired.procedure.reason)
    return None


def to_save(
    state: VisitState,
    conclusions: Conclusions,
    candidates: Iterable[Candidate],
    wanted: Test,
    holds: Callable[[str], bool],
) -> Iterator[tuple[Candidate, str]]:
    """What a rule wants read before the power goes off, the nearest first, and why.

    Only what pays on this call, is in a file that `holds` it or shows as the unit stands; before
    what is done with the covers on, only what the call wants.
    """
    least = least_rate_on(conclusions.ranking)
    reasons = {
        name: fired.procedure.reason
        for fired in conclusions.procedures
        for name in fired.procedure.save_before_power_cut
    }
    off = left_off(conclusions)
    too_much = state.at_work.volts_480 or bool(off.unit or off.circuits)
    named = (c for c in candidates if c.test.id in reasons and c.pays(least))
    worth = (c for c in named if _can_be_saved(state, c, too_much))
    if needs_of(wanted, None, state.at_work).closed:
        worth = (c for c in worth if c.test.id in conclusions.first_tests)
    worth = (c for c in worth if holds(c.test.id) or _is_at_hand(state, c))
    for candidate in sorted(worth, key=lambda c: c.switch_minutes):
        yield candidate, reasons[candidate.test.id]


def _is_at_hand(state: VisitState, candidate: Candidate) -> bool:
    """Whether what would be lost shows as the unit stands, its panel open and live.

    A history is worth no live panel and no call of a unit that is to be locked out.
    """
    needs = needs_of(candidate.test, None, state.at_work)
    return needs.energy in OPEN_LIVE and state.work.energy in OPEN_LIVE


def _can_be_saved(state: VisitState, candidate: Candidate, out_of_proportion: bool) -> bool:
    """Whether a test is lost with the power, and is worth what it takes to save it.

    A cock that was shut is not opened again for it; nor is a panel opened live where that is out of
    proportion: at 480 V, and on a unit that a danger keeps off.
    """
    needs = needs_of(candidate.test, None, state.at_work)
    dry = needs.gas == "on" and state.work.gas == "shut"
    closed = state.work.panels != "off"
    opened = out_of_proportion and closed and needs.energy in OPEN_LIVE
    off = candidate.test.work_state in ("locked-closed", "locked-out")
    return not (off or dry or opened)


def cuts_power(state: VisitState, step: Step | None, wanted: Test) -> bool:
    """Whether a step begins the way to dead work, on which what a live unit tells is lost.

    It begins with the gas cock or the meter's proof: with the cock shut no call for heat tells
    anything, and from the meter's proof to the test for dead there is nothing but steps.
    """
    needs = needs_of(wanted, None, state.at_work)
    dead = needs.energy == "locked-out" or needs.closed
    first = not any(asked.test == LOCKOUT for asked in state.asked)
    begins = step is not None and step.id in (GAS_SHUT, METER_PROOF, STOP_BY_CONTROLS, LOCKOUT)
    return dead and first and begins


def read_or_skipped(state: VisitState, conclusions: Conclusions) -> frozenset[Spot]:
    """What was read, or gone on without."""
    taken = (r for r in conclusions.readings if r.why_invalid not in ASKED_ANEW)
    return frozenset((r.test, r.at) for r in taken) | state.skipped
