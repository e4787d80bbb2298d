"""The first charge that is read on a capacitor under a lock is ordinary; what remains is a fault.

Taken for a fault at once it would call every good capacitor one that cannot be bled; taken for
ordinary twice it would send hands to one that still holds its charge.
"""

from __future__ import annotations

from datetime import datetime

import pytest

from troubleshoot.dialogue.answering import step_event_from
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.steps import (
    BEFORE_BLEEDING,
    BLEED_CAPACITOR,
    BLEED_DRIVE,
    LOCKOUT,
    ROOF,
    Step,
)
from troubleshoot.visit.events import Event, Started, StepDone, replay

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
THIS, OTHER = "capacitor blower", "capacitor compressor 1"
LOCKED = StepDone(LOCKOUT, ("locked",))
READ = StepDone(BLEED_CAPACITOR, (BEFORE_BLEEDING,), THIS, text="380 V")
READ_ON_OTHER = StepDone(BLEED_CAPACITOR, (BEFORE_BLEEDING,), OTHER, text="380 V")
DRIVE_THERE = StepDone(BLEED_DRIVE, ("holds-charge",), THIS, text="380 V")
LOOK = StepDone(ROOF, ("safe",))


def outcomes(
    shipped: Knowledge, typed: str, *before: Event, step: str = BLEED_CAPACITOR
) -> tuple[str, ...]:
    state = replay(shipped, [Started(complaint="no-cooling"), *before])
    return step_event_from(
        shipped, state, shipped.tests[step], Step(step, THIS), typed, NOW
    ).outcomes


@pytest.mark.parametrize("typed", ["380", "380 V DC", "still 380 on it"])
@pytest.mark.parametrize(
    ("before", "first"),
    [
        ((), True), ((LOCKED,), True), ((LOCKED, LOOK), True), ((LOOK,), True),
        ((LOCKED, READ), False), ((LOCKED, READ, LOOK), False), ((READ,), False),
        ((LOCKED, READ_ON_OTHER), True), ((LOCKED, DRIVE_THERE), True),
        ((LOCKED, READ, READ_ON_OTHER), False),
        ((LOCKED, READ, LOCKED), True), ((LOCKED, READ, LOCKED, READ), False),
    ],
)  # fmt: skip
def test_it_is_ordinary_once_on_each_capacitor_since_the_lock_went_on(
    before: tuple[Event, ...], first: bool, typed: str, shipped: Knowledge
) -> None:
    found = outcomes(shipped, typed, *before)
    assert found == ((BEFORE_BLEEDING,) if first else ("holds-charge",))


def test_an_empty_one_is_empty_the_first_time_too(shipped: Knowledge) -> None:
    for before in ((LOCKED,), (LOCKED, READ)):
        assert outcomes(shipped, "0 V", *before) == ("discharged",)


def test_what_is_seen_of_it_says_nothing_of_its_charge(shipped: Knowledge) -> None:
    """Nobody has read it: what was seen is all that stands in the record."""
    assert outcomes(shipped, "the can is swollen", LOCKED) == ("swollen-or-hissing",)


def test_what_is_wrong_stands_beside_a_charge(shipped: Knowledge) -> None:
    for before, charge in (((LOCKED,), BEFORE_BLEEDING), ((LOCKED, READ), "holds-charge")):
        found = outcomes(shipped, "it is swollen and reads 380", *before)
        assert set(found) == {charge, "swollen-or-hissing"}


def test_a_drive_has_had_its_wait_and_holds_what_it_holds(shipped: Knowledge) -> None:
    assert outcomes(shipped, "380 V", LOCKED, step=BLEED_DRIVE) == ("holds-charge",)
