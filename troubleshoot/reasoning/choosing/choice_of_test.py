"""Which of the tests that tell something is done next: what pays, in the order people would rather.

The best rate, but what the call leads to first, the less exposed of near equals, and before each
what its rules would rather have done first.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from troubleshoot.reasoning.choosing.next_test import Candidate, in_order
from troubleshoot.reasoning.choosing.stopping import least_rate_on
from troubleshoot.reasoning.evidence.ranking import Ranking
from troubleshoot.reasoning.unit.places import CAPACITOR_KINDS, Place, device_of

CLOSE_RATE = 0.9
"""Among tests within a tenth of the best rate, the less exposed one wins."""
LED_RATE = 0.2
"""A test that the call leads to comes first at this share of the best rate (common practice, no
source)."""
_EXPOSURE = {"none": 0, "control": 1, "line": 2}


def choose(
    candidates: Sequence[Candidate], ranking: Ranking, first: Sequence[str] = ()
) -> Candidate | None:
    """The next test, or nothing when none pays.

    `first`: what is looked at first on such a call, in that order, unless another test tells far
    more in the same time. What is better done before the one chosen comes before it, if it pays.
    """
    least = least_rate_on(ranking)
    worth = [c for c in _in_one_go(candidates, first) if c.pays(least)]
    if not worth:
        return None
    led = [c for c in worth if c.test.id in first and c.rate >= LED_RATE * worth[0].rate]
    if led:
        best = min(led, key=lambda c: (first.index(c.test.id), *in_order(c)))
    else:
        near = [c for c in worth if c.rate >= CLOSE_RATE * worth[0].rate]
        best = min(near, key=lambda c: (_EXPOSURE[c.test.exposes], *in_order(c)))
    return _after_others(best, worth)


def _in_one_go(candidates: Sequence[Candidate], first: Sequence[str]) -> Sequence[Candidate]:
    """The candidates, of which those that the call leads to share a change of work state.

    Whoever locks out to look at the filters looks at belt, wheel and coil under the same lock.
    """
    states: dict[str, list[Candidate]] = {}
    for each in candidates:
        if each.test.id in first and each.switch_minutes > 0:
            states.setdefault(each.test.work_state, []).append(each)
    shared = {}
    for same in states.values():
        change, gain = max(c.switch_minutes for c in same), math.fsum(c.gain for c in same)
        for c in same:
            share = change * c.gain / gain / c.switch_minutes
            shared[c.test.id, c.at] = replace(c, share=min(c.share, share))
    return sorted((shared.get((c.test.id, c.at), c) for c in candidates), key=in_order)


def _after_others(chosen: Candidate, worth: Sequence[Candidate]) -> Candidate:
    """What the rules would rather have before a test, at its own place."""
    for name in chosen.test.after:
        for other in worth:
            if other.test.id == name and _goes_with(chosen.at, other.at):
                return _after_others(other, worth)
    return chosen


def _goes_with(one: Place | None, other: Place | None) -> bool:
    """Whether two places belong together: of one number, a capacitor with the motor it serves."""
    if one is None or other is None:
        return True
    if other.kind in CAPACITOR_KINDS and one.kind not in CAPACITOR_KINDS:
        return device_of(other) == one
    return one.number == other.number
