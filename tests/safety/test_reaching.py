"""What stands between somebody and a test: what no step mends, and what somebody else has to do."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.safety.work_state_samples import HANDS_IN, LOOK_FROM_AFAR, RUNNING, a_test
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.reaching import beyond, is_blocked, is_own_lock, steps_before
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.state import VisitState

GAS_LOOK = a_test("flame-seen", kind="look", who=("gas",))
STEP = a_test("verified-dead", kind="step")
GAS_PERSON = "hand over to a qualified gas person"
ELECTRICAL = "hand over to a qualified electrical person"
LOCKED = WorkState(power="locked-out", calls="off", roof="go", occupants_told=True, area_clear=True)


@pytest.mark.parametrize(
    ("test", "blocked"),
    [(STEP, True), (LOOK_FROM_AFAR, False), (RUNNING, False), (HANDS_IN, False)],
    ids=lambda value: value.id if isinstance(value, Test) else str(value),
)
def test_only_what_is_refused_with_no_step_towards_it_is_blocked(
    test: Test, blocked: bool, shipped: Knowledge
) -> None:
    assert is_blocked(VisitState(unit=read_unit(shipped, {})), test, None) is blocked


@pytest.mark.parametrize(
    ("tests", "profiles", "phrase"),
    [
        ((LOOK_FROM_AFAR,), {"technician"}, None),
        ((GAS_LOOK,), {"technician"}, GAS_PERSON),
        ((GAS_LOOK,), {"gas"}, None),
        ((LOOK_FROM_AFAR, GAS_LOOK), {"technician"}, GAS_PERSON),
        ((LOOK_FROM_AFAR, HANDS_IN), {"technician"}, ELECTRICAL),
        ((LOOK_FROM_AFAR, HANDS_IN), {"electrical"}, None),
    ],
)
def test_tests_are_handed_over_to_whom_any_of_them_or_of_the_steps_to_it_asks_for(
    tests: tuple[Test, ...],
    profiles: set[str],
    phrase: str | None,
    shipped: Knowledge,
) -> None:
    unit = read_unit(shipped, {})
    job = VisitState(unit=unit, profiles=frozenset(profiles))
    assert beyond(shipped, job, tests, None) == phrase


@pytest.mark.parametrize(
    ("hung", "now", "own"),
    [
        ({"technician"}, {"technician"}, True),
        ({"technician", "gas"}, {"gas", "technician"}, True),
        ({"technician"}, {"gas"}, False),
        ({"technician"}, {"technician", "gas"}, False),
        ({"technician", "gas"}, {"technician"}, False),
        (set(), {"technician"}, False),
        (set(), set(), False),
    ],
)
def test_who_hung_a_lock_takes_it_off_and_nobody_else_does(
    hung: set[str], now: set[str], own: bool, shipped: Knowledge
) -> None:
    """29 CFR 1910.147(e)(3), from memory: each lock is removed by the employee who applied it."""
    job = replace(VisitState(), work=LOCKED, lock_by=frozenset(hung), profiles=frozenset(now))
    assert is_own_lock(job, Step("lock-off")) is own
    assert not any(is_own_lock(job, Step(step)) for step in STEPS.keys() - {"lock-off"})
    assert Step("lock-off") in steps_before(job, RUNNING, None)
    assert beyond(shipped, job, (RUNNING,), None) == (None if own else ELECTRICAL)


def test_his_own_lock_lets_nobody_test_for_dead(shipped: Knowledge) -> None:
    """Whoever hung it may take it off; what is done behind it stays with who may do that."""
    technician = frozenset({"technician"})
    job = replace(VisitState(), work=LOCKED, lock_by=technician, profiles=technician)
    assert beyond(shipped, job, (HANDS_IN,), None) == ELECTRICAL
