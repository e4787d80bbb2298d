"""What is read on another day to prove a repair is told at the end, and is never asked for."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.deciding.proving import left_to_prove
from troubleshoot.visit.events import Repaired, Started, replay
from troubleshoot.visit.hearing.proofs_wanted import proofs_on, proofs_today, still_to_read
from troubleshoot.visit.state import VisitState

LEAK, LATER = "low-charge-from-leak", "Superheat and subcooling the same a month later"


def repaired(shipped: Knowledge, *faults: str) -> VisitState:
    return replay(shipped, [Started(complaint="weak-cooling"), *map(Repaired, faults)])


def test_what_is_read_a_month_later_is_not_asked_the_same_hour(shipped: Knowledge) -> None:
    """Regression: strangers were asked for it at once, and their repair was said not proved."""
    state = repaired(shipped, LEAK)
    asked = [proof.text for proof in left_to_prove(shipped, state)]
    assert asked and LATER not in asked
    assert still_to_read(shipped, state) == (f"To be read on another day: {LATER}.",)


def test_each_repair_is_told_once_and_none_where_nothing_is_left(shipped: Knowledge) -> None:
    (told,) = still_to_read(shipped, repaired(shipped, LEAK, "fan-set-to-run-constantly", LEAK))
    assert told.count(LATER) == 1 and "Humidity falls" in told
    assert still_to_read(shipped, repaired(shipped, "condenser-fan-capacitor-weak")) == ()


@pytest.mark.parametrize(
    "days", ["month", "two days", "for a day", "logged", "next rain", "30 days"]
)
def test_the_cards_say_of_such_proofs_that_they_are_read_later(
    days: str, shipped: Knowledge
) -> None:
    texts = [proof for fault in shipped.faults.values() for proof in fault.proof]
    found = [proof for proof in texts if days in proof.text]
    assert found and all(proof.later for proof in found)


def test_every_repair_has_a_proof_of_the_same_visit(shipped: Knowledge) -> None:
    for fault in shipped.faults.values():
        state = repaired(shipped, fault.id)
        if proofs_on(shipped, state.unit, fault):
            assert proofs_today(shipped, state.unit, fault), fault.id
