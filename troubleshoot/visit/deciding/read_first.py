"""What is read after a repair before anything else: what a danger was found by, or what ends it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place, like
from troubleshoot.safety.stops.lifting import finding_of
from troubleshoot.safety.stops.parts import not_yet_afresh
from troubleshoot.safety.stops.put_right import to_see_put_right
from troubleshoot.safety.stops.standing import Forbidden, unread_ends, would_lift
from troubleshoot.visit.deciding.left_off import left_off
from troubleshoot.visit.state import VisitState


def read_first(
    knowledge: Knowledge, state: VisitState, conclusions: Conclusions
) -> Iterator[tuple[Test, Place | None]]:
    """What had forbidden tests, afresh, and what is still to be read before the power is back.

    So is what keeps the heat off: a burner that may not be lit cannot be proved. What stopped the
    work is seen put right on any way out; once the repair is proved and the complaint gone, so is
    what would still leave the unit or a circuit off.
    """
    if state.mended_here or state.closing:
        for name, at in to_see_put_right(knowledge, state, conclusions):
            yield knowledge.tests[name], at
    if not state.mended_here or (state.closing and state.repair_begun is None and not state.cured):
        return
    answers = state.answers
    # What an earlier repair came before may be what the last one has mended.
    made = state.mended_here
    since = next((n for n, a in enumerate(answers) if a.repairs >= made), len(answers))
    off = left_off(conclusions)
    if state.closing and state.repair_begun is None:
        yield from _afresh(knowledge, state, conclusions, (*off.unit, *off.circuits), since)
        return
    # A new fuse reads sound, whatever stands behind it: that is read before the fuse is.
    for name, at in unread_ends(conclusions):
        yield knowledge.tests[name], at
    read = {(a.test, at) for a in answers[since:] for at in a.places or (None,)}
    motors = [fired for fired in conclusions.hazards if fired.hazard.keeps_off == "circuit"]
    for fired in motors if state.closing else ():
        for name, at in would_lift(conclusions, fired) if fired.found else ():
            if (name, at) not in read:
                yield knowledge.tests[name], at
    holding = (*Forbidden(conclusions).holding(), *off.heat)
    yield from _afresh(knowledge, state, conclusions, holding, since)


def _afresh(
    knowledge: Knowledge,
    state: VisitState,
    conclusions: Conclusions,
    dangers: Iterable[FiredHazard],
    since: int,
) -> Iterator[tuple[Test, Place | None]]:
    """What these dangers were found by, or their all-clear, not read since so many answers."""
    for fired in dangers:
        spot = finding_of(knowledge, state, conclusions, fired)
        if spot is None or knowledge.tests[spot[0]].kind == "step":
            continue
        for test in not_yet_afresh(knowledge, state, spot, since):
            yield test, like(spot[1], state.unit.layout.places(test.per))
