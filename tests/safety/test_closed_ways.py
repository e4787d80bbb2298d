"""Which steps have failed, and what is closed behind one that failed as often as it is offered."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.safety.work_state_samples import ENERGISED, HANDS_IN, LIVE_LINE, LOOK_FROM_AFAR, a_test
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.closed_ways import closed, failures, has_failed, is_closed
from troubleshoot.safety.steps import BEFORE_BLEEDING, Step
from troubleshoot.safety.transitions import after_step
from troubleshoot.safety.work_state import UnitAtWork, WorkState
from troubleshoot.visit.state import VisitState

UNIT = UnitAtWork(capacitors=("capacitor 1", "capacitor 2"), volts_480=True)
READY = WorkState(roof="go", occupants_told=True, second_person=True, arc_clothing=True)
METER = Step("tester-proof")


def failed(step: Step, *outcomes: str, before: tuple[Step, ...] = ()) -> tuple[Step, ...]:
    work = after_step(READY, step, outcomes, UNIT)
    return failures(before, step, outcomes, work, UNIT)


@pytest.mark.parametrize(
    ("step", "outcome", "fails"),
    [
        ("tester-proof", "failed", True),
        ("tester-proof", "proved", False),
        ("second-person", "alone", True),
        ("lockout", "cannot-lock", True),
        ("verified-dead", "live", True),
        ("roof-conditions", "lightning", True),
        ("roof-conditions", "edge-under-6-ft", False),
        ("restart-and-watch", "does-not-start", False),
        ("lock-off", "trips", False),
    ],
)
def test_a_step_has_failed_where_what_it_is_for_does_not_stand(
    step: str, outcome: str, fails: bool
) -> None:
    assert failed(Step(step), outcome) == ((Step(step),) if fails else ())


def test_a_step_that_names_nothing_has_failed() -> None:
    assert failed(METER) == (METER,)


def test_it_is_counted_at_its_place_until_it_is_sound() -> None:
    one, other = (Step("capacitor-discharge", f"capacitor {n}") for n in (1, 2))
    twice = failed(one, "holds-charge", before=failed(one, "holds-charge", before=(other,)))
    assert twice == (other, one, one)
    again = replace(one, again=True)
    assert failed(again, "holds-charge", before=(one,)) == (one, one)
    assert failed(one, BEFORE_BLEEDING, before=twice) == twice
    assert failed(again, "discharged", before=twice) == (other,)


def test_only_what_fails_twice_is_closed() -> None:
    roof = Step("roof-conditions")
    once = VisitState(failed_steps=(METER, roof))
    assert closed(once) == () and has_failed(once, METER) == 1
    twice = replace(once, failed_steps=(METER, roof, METER, METER, roof))
    assert closed(twice) == ("tester-proof", "roof-conditions")
    assert has_failed(twice, replace(METER, again=True)) == 3


@pytest.mark.parametrize(
    ("test", "is_behind"),
    [
        (HANDS_IN, True),
        (LIVE_LINE, True),
        (ENERGISED, True),
        (LOOK_FROM_AFAR, False),
        (a_test("look-inside", kind="look", work_state="energised-open"), False),
    ],
    ids=lambda given: given.id if isinstance(given, Test) else "",
)
def test_without_a_proved_meter_nothing_metered_and_nothing_dead_is_open(
    test: Test, is_behind: bool
) -> None:
    job = VisitState(at_work=UNIT, work=READY, failed_steps=(METER,))
    assert not is_closed(job, test, None)
    assert not is_closed(replace(job, failed_steps=()), test, None)
    assert is_closed(replace(job, failed_steps=(METER, METER)), test, None) is is_behind
    proved = replace(READY, meter="proved")
    live = test is not HANDS_IN
    assert live <= (not is_closed(replace(job, work=proved, failed_steps=(METER,) * 2), test, None))
