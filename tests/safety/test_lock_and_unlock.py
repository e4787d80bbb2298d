"""Nobody is led to hang a lock that he may not take off: 29 CFR 1910.147(e)(3)."""

from __future__ import annotations

from itertools import combinations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.profiles import PROFILES, hand_over
from troubleshoot.safety.steps import LOCK_OFF, LOCKOUT, RESTART


def test_who_may_lock_out_may_unlock_and_call(shipped: Knowledge) -> None:
    whoever = [frozenset(two) for two in combinations(PROFILES, 2)]
    locks = [held for held in whoever if hand_over(shipped.tests[LOCKOUT], held) is None]
    assert locks
    for held in locks:
        assert hand_over(shipped.tests[LOCK_OFF], held) is None, held
        assert hand_over(shipped.tests[RESTART], held) is None, held
