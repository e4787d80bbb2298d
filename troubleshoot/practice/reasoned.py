"""Whether a call is reasoned: what was read before it separates it from its rivals.

Judged by the ranking that the engine itself has at that moment. A call that is right without it is
a guess that came off.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import replace
from typing import Final

from troubleshoot.practice.scenario import TrueFault
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.ranking import Cause

LEAD: Final = 3.0
"""So many times as likely as its nearest rival is a cause that readings separate (common practice,
no source). The engine names one at nine to one against all others together."""
GROWN: Final = 1.5
"""So many times what it was at the call has the lead of nothing wrong to be: on a routine round it
is ahead from the start (common practice, no source)."""


def is_reasoned(
    reasoner: Reasoner,
    start: Conclusions,
    now: Conclusions,
    called: Sequence[TrueFault],
    true: Sequence[TrueFault] = (),
) -> bool:
    """Whether the readings between `start` and `now` separate every cause that is called.

    Without causes nothing is wrong is called. Of several causes each is looked at once more with
    the others put right, as on a visit that goes on after a repair. `true`: what is there beside
    a right call is no rival to it.
    """
    if not called:
        return _separated(_lead_of_nothing(start), _lead_of_nothing(now), by=GROWN)
    right = {fault.fault for fault in called} <= {fault.fault for fault in true}
    there = tuple(dict.fromkeys((*called, *(true if right else ()))))
    return all(_is_separated(reasoner, start, now, fault, there) for fault in called)


def lead(found: Conclusions, fault: TrueFault, called: Sequence[TrueFault] = ()) -> float:
    """How many times as likely a fault is as the likeliest rival; others that are called are none.

    For an effect: as likely as that it did not happen. Nothing wrong and what no rule knows count
    as rivals.
    """
    effects = _chance(found.effects, fault)
    if effects:
        return effects / max(1 - effects, 1e-9)
    own = (fault, *called)
    rivals = [cause.probability for cause in found.causes if not is_one_of(cause, own)]
    most = max((*rivals, found.ranking.nothing_wrong, found.ranking.outside))
    return _chance(found.causes, fault) / max(most, 1e-9)


def chance_of(found: Conclusions, faults: Sequence[TrueFault]) -> float:
    """The chance of these faults, the likeliest of them; without faults, that nothing is wrong."""
    if not faults:
        return found.ranking.nothing_wrong
    return max(_chance((*found.causes, *found.effects), fault) for fault in faults)


def rivals(found: Conclusions, called: Sequence[TrueFault]) -> tuple[Cause, ...]:
    """The causes that stand beside a call, the likeliest first: those it is no lead over."""
    leads = [_chance(found.causes, fault) for fault in called] or [found.ranking.nothing_wrong]
    least = min(leads) / LEAD
    return tuple(
        cause
        for cause in found.causes
        if cause.probability > least and not is_one_of(cause, called)
    )


def _is_separated(
    reasoner: Reasoner,
    start: Conclusions,
    now: Conclusions,
    fault: TrueFault,
    there: Sequence[TrueFault],
) -> bool:
    if _separated(lead(start, fault, there), lead(now, fault, there)):
        return True
    others = tuple(other.fault for other in there if other.fault != fault.fault)
    if not others:
        return False
    case = replace(now.case, repaired=(*now.case.repaired, *others))
    return _separated(lead(start, fault, there), lead(reasoner.conclude(case), fault, there))


def _separated(before: float, after: float, by: float = 1.0) -> bool:
    """Whether a lead is enough, and was not there before anything was read."""
    return after >= LEAD and after > before * by


def _lead_of_nothing(found: Conclusions) -> float:
    best = max((cause.probability for cause in found.causes), default=0.0)
    return found.ranking.nothing_wrong / max(best, found.ranking.outside, 1e-9)


def _chance(causes: Iterable[Cause], fault: TrueFault) -> float:
    """The chance of a fault at its place, or at any where none is said."""
    return math.fsum(cause.probability for cause in causes if _is(cause, fault))


def is_one_of(cause: Cause, faults: Iterable[TrueFault]) -> bool:
    """Whether a cause is one of these faults, at its place where that is said."""
    return any(_is(cause, fault) for fault in faults)


def _is(cause: Cause, fault: TrueFault) -> bool:
    return cause.fault.id == fault.fault and fault.at in (None, cause.at)
