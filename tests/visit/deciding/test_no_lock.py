"""What was said of a switch: whether it takes no lock, has held its own, and what its tag says."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.safety.stops.little_rules import hazard
from troubleshoot.knowledge.model import Finding, Knowledge
from troubleshoot.safety.steps import CANNOT_LOCK, DEAD_TEST, LOCKOUT
from troubleshoot.visit.deciding.no_lock import (
    has_no_lock,
    holds_a_lock,
    stopped_by,
    switch_tag,
)
from troubleshoot.visit.kept.lock_before import after_visit
from troubleshoot.visit.state import Asked, VisitState

BEFORE, WHO = ("as it was told before",), frozenset({"technician"})


def said(
    outcome: str | None,
    text: str | None = None,
    *,
    test: str = LOCKOUT,
    valid: bool = True,
    nobody: bool = False,
) -> Asked:
    return Asked(test, None, outcome, text, valid, 0, "", nobody=nobody)


FROZEN, AGAIN = said(CANNOT_LOCK, "handle froze"), said(CANNOT_LOCK)
OWN, ELSEWHERE, SKIPPED = said("locked"), said("locked", "MCC"), said(None)


@pytest.mark.parametrize(
    ("asked", "without", "held"),
    [
        ((), False, False), ((FROZEN,), True, False), ((OWN,), False, True),
        ((ELSEWHERE,), False, False), ((FROZEN, ELSEWHERE), True, False),
        ((FROZEN, OWN), False, True), ((OWN, FROZEN), True, False),
        ((FROZEN, OWN, ELSEWHERE), False, True), ((OWN, OWN), False, True),
        ((OWN, SKIPPED), False, False), ((FROZEN, SKIPPED), True, False),
        ((OWN, said(CANNOT_LOCK, valid=False)), False, True),
        ((FROZEN, said("locked", nobody=True)), True, False),
        ((OWN, said(CANNOT_LOCK, test=DEAD_TEST)), False, True),
    ],
)  # fmt: skip
def test_a_switch_has_no_lock_until_its_own_has_held(
    asked: tuple[Asked, ...], without: bool, held: bool
) -> None:
    """A lock at the breaker, one that nobody hung, and what was voided say nothing of it."""
    state = VisitState(asked=asked)
    assert (has_no_lock(state), holds_a_lock(state)) == (without, held)


def test_the_tag_says_which_switch_what_was_told_and_who_takes_it_off(shipped: Knowledge) -> None:
    state = VisitState(name="RTU-7", asked=(said(CANNOT_LOCK, "no hasp"), FROZEN, AGAIN))
    assert switch_tag(shipped, state) == (
        "This switch of RTU-7 cannot be locked off: nobody reaches in behind it.",
        'Reported: "handle froze".',
        "Told: ____________ at ______.",
        "Only a licensed electrician or the supervisor may remove this tag, once it opens and is "
        "locked.",
        "Hung by: ____________, on ______ at ______.",
    )
    plain = switch_tag(shipped, VisitState(asked=(AGAIN,)))
    assert plain[0].startswith("This switch cannot be locked off") and len(plain) == 4
    assert switch_tag(shipped, VisitState(asked=(OWN,))) == ()


def test_who_sees_to_it_stands_with_the_hazard_of_the_lock(shipped: Knowledge) -> None:
    assert any(each.test == LOCKOUT for each in stopped_by(shipped).findings)


@pytest.mark.parametrize(
    ("test", "outcome"), [(LOCKOUT, "second-source"), (DEAD_TEST, CANNOT_LOCK)]
)
def test_no_other_hazard_says_who_sees_to_it(test: str, outcome: str, shipped: Knowledge) -> None:
    """Regression: the first hazard of the lock-out in the file did, whatever it was found by."""
    other = hazard("other", None, Finding(test, (outcome,)))
    known = replace(shipped, hazards={other.id: other, **shipped.hazards})
    assert stopped_by(known) == stopped_by(shipped)


def test_what_is_told_of_it_stays_until_its_own_lock_has_held(shipped: Knowledge) -> None:
    def after(*asked: Asked, ended: str = "2026-11-26T09:30:00+00:00") -> tuple[str, ...]:
        return after_visit(shipped, BEFORE, "visit-2", VisitState(asked=asked, profiles=WHO), ended)

    assert after() == after(ELSEWHERE) == BEFORE and after(FROZEN, OWN) == ()
    what, who = after(FROZEN)
    assert what == (
        "The switch could not be locked off on 2026-11-26 by a technician: it takes no lock, or "
        "does not open fully (visit visit-2)."
    )
    assert who == (
        "A licensed electrician or the supervisor sees to it: nobody reaches in behind it."
    )
    assert "locked off by a technician" in after(FROZEN, ended="")[0]
