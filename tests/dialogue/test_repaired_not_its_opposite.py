"""A repair tells how a thing stood before it; a cause that it stood the other way is none of it."""

from __future__ import annotations

import pytest

from tests.cli.lines import book_of
from tests.dialogue.test_repaired_at_a_shortlist import found
from tests.dialogue.test_repaired_the_leading_cause import say
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Answered, Started
from troubleshoot.visit.hearing.opposites import is_opposite, likeliest, was_only_set

OPEN, SHUT = "outdoor-damper-stuck-open", "outdoor-damper-stuck-closed"
STANDS_SHUT = (
    Started(complaint="weak-cooling"),
    Answered("economizer-damper", outcomes=("stuck-closed",)),
)
STANDS_OPEN = (STANDS_SHUT[0], Answered("economizer-damper", outcomes=("stuck-open",)))


@pytest.mark.parametrize(
    ("said", "fault", "opposite"),
    [
        ("freed the damper that was stuck open", SHUT, True),
        ("freed the damper that was stuck open", OPEN, False),
        ("opened the damper", OPEN, True),
        ("opened it up, it was stuck shut", OPEN, True),
        ("closed the damper back down", SHUT, True),
        ("closed the damper, it hung open", OPEN, False),
        ("shut the damper down", OPEN, False),
        ("damper wouldnt open, freed it", SHUT, False),
        ("swapped the contactor, it was stuck open", "contactor-welded-closed", True),
        ("replaced the contactor, it was welded shut", "contactor-welded-closed", False),
        ("changed the txv, it was stuck wide open", "txv-underfeeding", True),
        ("changed the txv, it was stuck wide open", "txv-overfeeding", False),
        ("valve was hung shut, put a new one in", "txv-overfeeding", True),
        ("tightened the belt", "blower-belt-slipping", False),
        ("loosened the belt, it was too tight", "blower-belt-slipping", True),
        ("freed the damper", OPEN, False),
        ("damper was stuck open and shut", OPEN, False),
        ("replaced the gas valve, it did not open", "gas-valve-failed", False),
        ("replaced the cap, it was open", "condenser-fan-capacitor-weak", False),
        ("cleaned the coil", SHUT, False),
    ],
)
def test_how_it_stood_is_told_by_what_it_was_or_by_the_deed(
    said: str, fault: str, opposite: bool, shipped: Knowledge
) -> None:
    assert is_opposite(shipped.faults[fault], said) is opposite


@pytest.mark.parametrize(
    ("said", "fault", "only_set"),
    [
        ("gas cock is brand new", "gas-shut-off-or-tank-empty", True),
        ("disconnect was replaced", "disconnect-or-breaker-off", True),
        ("opened the gas cock", "gas-shut-off-or-tank-empty", False),
        ("contactor is brand new", "contactor-welded-closed", False),
        ("filters are new", "filters-loaded", False),
    ],
)
def test_a_new_part_is_none_that_was_only_shut(
    said: str, fault: str, only_set: bool, shipped: Knowledge
) -> None:
    """Regression: a brand new gas cock was asked about as a shut one, put right before."""
    assert was_only_set(shipped.faults[fault], said) is only_set


@pytest.mark.parametrize(
    ("said", "events", "first"),
    [
        ("freed the damper that was stuck open", STANDS_OPEN, OPEN),
        ("freed the damper that was stuck open", STANDS_SHUT, OPEN),
        ("damper was stuck closed, freed it up just now", STANDS_SHUT, SHUT),
        ("opened the outdoor damper just now", STANDS_SHUT, SHUT),
        ("freed the damper", STANDS_OPEN, OPEN),
    ],
)
def test_the_opposite_is_never_first_nor_taken(
    said: str, events: tuple[Started | Answered, ...], first: str, shipped: Knowledge
) -> None:
    """Regression: with a damper stuck closed on record it was taken for one freed from open."""
    book, _ = say(shipped, events, "", "1", "1", told=said)
    assert [repair.fault for repair in book.state.repairs] == [first]


@pytest.mark.parametrize("said", ["repaired opened the damper", "repaired damper that hung open"])
def test_nor_is_it_taken_by_the_command(said: str, shipped: Knowledge) -> None:
    """Regression: opened was heard as the damper that stands open."""
    book, _ = say(shipped, STANDS_SHUT, said, "1")
    wanted = SHUT if "opened" in said else OPEN
    assert [repair.fault for repair in book.state.repairs] == [wanted]


def test_what_a_visit_names_comes_first_of_what_fits(shipped: Knowledge) -> None:
    causes = [cause.fault.id for cause in found(book_of(shipped, STANDS_SHUT)).causes]
    both = [shipped.faults[OPEN], shipped.faults[SHUT]]
    ordered = likeliest(both, "freed the damper", named=causes, heard=())
    assert [fault.id for fault in ordered] == [SHUT, OPEN]


def test_the_opposite_alone_is_not_asked_about(shipped: Knowledge) -> None:
    only = [shipped.faults[OPEN]]
    assert likeliest(only, "opened the damper", named=[OPEN], heard=()) == ()
