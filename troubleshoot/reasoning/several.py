"""Two faults at once: how a test reads when a fault already put right was there as well.

After a repair that leaves the complaint, the old answers are scored anew with the repaired fault
present. The faults act independently on "normal" (leaky noisy-OR, Henrion 1989): the healthy
outcome is seen only if neither disturbs it.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from troubleshoot.reasoning.rows import Row, Signs


def combined(own: Row, present: Row, usual: Row, healthy: Sequence[str]) -> Row:
    """The row with both faults there; the background is the leak, counted once."""
    well = [o for o in usual if o in healthy]
    quiet = math.fsum(usual[o] for o in well)
    if not well or quiet <= 0:
        return _scaled({o: own[o] * present[o] / usual[o] for o in usual})
    undisturbed = min(
        1.0,
        math.fsum(own[o] for o in well) * math.fsum(present[o] for o in well) / quiet,
    )
    row = {o: undisturbed * usual[o] / quiet for o in well}
    ill = {o: own[o] + present[o] for o in usual if o not in healthy}
    total = math.fsum(ill.values())
    for outcome, share in ill.items():
        row[outcome] = (1 - undisturbed) * share / total if total > 0 else 0.0
    return {o: row[o] for o in usual}


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


def _scaled(row: Row) -> Row:
    total = math.fsum(row.values())
    return {o: p / total for o, p in row.items()}
