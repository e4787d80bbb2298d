"""A safety step that came out otherwise: whether the way goes on, and what has failed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.events.effects import AIM, DEAD
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.events import StepDone, after
from troubleshoot.visit.state import VisitState

HUNG = replace(DEAD, circuits=(("circuit 1", "gauges-on"),))
RAN_BADLY, BLED_FIRST = ("struggles",), ("charged-before-bleeding",)


@pytest.mark.parametrize(
    ("event", "chosen", "unchosen"),
    [
        (StepDone("gauges-off", ("off",), "circuit 1"), AIM, AIM),
        (StepDone("gauges-off", ("leaks",), "circuit 1"), None, None),
        (StepDone("gauges-off", ("off",), "circuit 1", valid=False), None, None),
        (StepDone("restart-and-watch", RAN_BADLY), AIM, None),
        (StepDone("restart-and-watch", RAN_BADLY, valid=False), None, None),
        (StepDone("capacitor-discharge", BLED_FIRST, "capacitor blower"), AIM, AIM),
        (StepDone("capacitor-discharge", ("holds-charge",), "capacitor blower"), None, None),
        (StepDone("capacitor-discharge", (), "capacitor blower"), None, None),
    ],
)
def test_after_a_step_that_came_out_otherwise_only_what_was_chosen_goes_on(
    event: StepDone, chosen: Spot | None, unchosen: Spot | None, shipped: Knowledge,
    visit: VisitState,
) -> None:  # fmt: skip
    """What a step is for stands or not; a capacitor that held its charge is bled and read again."""
    for is_chosen, aim in ((True, chosen), (False, unchosen)):
        state = replace(visit, work=HUNG, aim_chosen=is_chosen)
        assert after(shipped, state, event).aim == aim


@pytest.mark.parametrize(("found", "times"), [("proved", 0), ("failed", 2)])
def test_each_failing_of_a_step_is_counted_until_it_is_sound(
    found: str, times: int, shipped: Knowledge, visit: VisitState
) -> None:
    proof = Step("tester-proof")
    state = replace(visit, work=DEAD, failed_steps=(proof,))
    assert after(shipped, state, StepDone.of(proof, (found,))).failed_steps == (proof,) * times


@pytest.mark.parametrize(("found", "open_way"), [("safe", True), ("lightning", False)])
def test_only_a_step_that_is_sound_leads_on_to_the_rest_of_a_stop(
    found: str, open_way: bool, shipped: Knowledge, visit: VisitState
) -> None:
    fresh = replace(visit, fresh=("roof-conditions", None), fresh_read=not open_way)
    assert after(shipped, fresh, StepDone("roof-conditions", (found,))).fresh_read is open_way


MINE, OTHERS = frozenset({"gas"}), frozenset({"electrical"})


@pytest.mark.parametrize(
    ("event", "hung_by"),
    [
        (StepDone("lockout", ("locked",)), MINE),
        (StepDone("lockout", ("locked",), valid=True), MINE),
        (StepDone("lockout", ("locked",), valid=False), OTHERS),
        (StepDone("lockout", ("cannot-lock",)), OTHERS),
        (StepDone("lockout", ("locked", "second-source")), OTHERS),
        (StepDone("tester-proof", ("proved",)), OTHERS),
        (StepDone("lock-off", ("switched-on",)), OTHERS),
    ],
)
def test_a_lock_is_theirs_who_hung_it_last(
    event: StepDone, hung_by: frozenset[str], shipped: Knowledge, visit: VisitState
) -> None:
    """Whoever hung it may take it off; what hangs no lock leaves it theirs who did."""
    state = replace(visit, work=DEAD, profiles=MINE, lock_by=OTHERS)
    assert after(shipped, state, event).lock_by == hung_by
