"""What stands between somebody and a test: what no step mends, and what somebody else has to do."""

from __future__ import annotations

import pytest

from tests.safety.work_state_samples import HANDS_IN, LOOK_FROM_AFAR, RUNNING, a_test
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.reaching import beyond, is_blocked
from troubleshoot.visit.state import VisitState

GAS_LOOK = a_test("flame-seen", kind="look", who=("gas",))
STEP = a_test("verified-dead", kind="step")
GAS_PERSON = "hand over to a qualified gas person"
ELECTRICAL = "hand over to a qualified electrical person"


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
