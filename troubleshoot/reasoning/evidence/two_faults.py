"""Two faults at once: how a test reads when a fault already put right was there as well.

After a repair that leaves the complaint, the old answers are scored anew with the repaired fault
present. The faults act independently on "normal" (leaky noisy-OR, Henrion 1989): the healthy
outcome is seen only if neither disturbs it. A fault that says nothing about a test (its row is the
background) changes nothing.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, Row, Signs, pattern_row


def together(
    own: Row | Signs, present: Row | Signs, usual: Row | Signs, healthy: Sequence[str]
) -> Row | Signs:
    """The row of a test with both faults there, from either's row and the background."""
    if isinstance(own, Signs) and isinstance(present, Signs) and isinstance(usual, Signs):
        return combined_signs(own, present, usual)
    well = (NONE_OF_THEM,) if isinstance(usual, Signs) else healthy
    return combined(pattern_row(own), pattern_row(present), pattern_row(usual), well)


def combined(own: Row, present: Row, usual: Row, healthy: Sequence[str]) -> Row:
    """The row with both faults there; the background is the leak, counted once."""
    both = {o: own[o] * present[o] / usual[o] for o in usual}
    well = [o for o in usual if o in healthy]
    if not well:
        return _share(both, 1.0)
    undisturbed = min(
        math.fsum(both[o] for o in well),
        max(math.fsum(row[o] for o in well) for row in (own, present)),
    )
    ill = {o: _either(own, present, usual, o) for o in usual if o not in well}
    row = _share({o: both[o] for o in well}, undisturbed) | _share(ill, 1 - undisturbed)
    return {o: row[o] for o in usual}


def _either(own: Row, present: Row, usual: Row, outcome: str) -> float:
    """How much two faults make of a bad outcome; what any unit shows of it counts once."""
    less, more = sorted((own[outcome], present[outcome]))
    return less + max(0.0, more - usual[outcome])


def combined_signs(own: Signs, present: Signs, usual: Signs) -> Signs:
    """The same for a test of signs: each sign may come from either fault or from neither."""
    signs = {
        s: 1 - (1 - own.signs[s]) * (1 - present.signs[s]) / (1 - usual.signs[s])
        if usual.signs[s] < 1
        else 1.0
        for s in usual.signs
    }
    signs = {s: min(max(p, 0.0), 1.0) for s, p in signs.items()}
    none = own.none * present.none / usual.none if usual.none > 0 else 0.0
    return Signs(signs, min(none, 1.0))


def _share(parts: Row, total: float) -> dict[str, float]:
    whole = math.fsum(parts.values())
    return {o: total * p / whole if whole > 0 else 0.0 for o, p in parts.items()}
