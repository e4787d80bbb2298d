"""What aiming at a test and going on without one change: this, and nothing else."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.events.effects import AIM, DEAD, ONE, TWO, UNIT, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.transitions import after_test, failed
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.events import Aimed, Skipped, after
from troubleshoot.visit.state import VisitState


@pytest.mark.parametrize(
    ("test", "at", "aim", "then"),
    [
        ("suction-pressure", ("circuit 1",), AIM, None),
        ("suction-line-temperature", ("circuit 1",), AIM, AIM),
        ("suction-line-temperature", ("circuit 1",), ("superheat", ONE), None),
        ("suction-line-temperature", ("circuit 1",), None, None),
    ],
)
def test_what_is_skipped_takes_along_only_what_hangs_on_it(
    test: str, at: tuple[str, ...], aim: Spot | None, then: Spot | None, shipped: Knowledge,
    visit: VisitState,
) -> None:  # fmt: skip
    gone = {("weather-pattern", None), (test, ONE)}
    changed(
        shipped, replace(visit, aim=aim), Skipped(test, at),
        skipped=frozenset(gone), aim=then, fresh=None, fresh_read=False,
    )  # fmt: skip


def test_without_a_place_every_place_of_it_is_skipped(
    shipped: Knowledge, visit: VisitState
) -> None:
    state = after(shipped, visit, Skipped("suction-pressure"))
    assert {("suction-pressure", ONE), ("suction-pressure", TWO)} <= state.skipped


def test_a_step_gone_on_without_has_failed(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(visit, work=DEAD)
    skipped = after(shipped, state, Skipped("tester-proof")).work
    assert skipped == failed(DEAD, DEAD, Step("tester-proof"), state.at_work) != DEAD


def test_a_test_that_had_been_shown_may_have_been_begun_and_another_not(
    shipped: Knowledge, visit: VisitState
) -> None:
    test = shipped.tests["wiring-burn-marks"]
    measured = next(
        t for t in shipped.tests.values()
        if t.work_state == "locked-out" and t.kind == "measurement" and t.per is None
        and not t.needs_state and not t.exists_when
    )  # fmt: skip
    shown = replace(visit, at_work=unit_at_work(read_unit(shipped, {
        **UNIT, "blower-motor": "three-phase", "variable-speed-drive": "not-fitted"})),
        work=replace(DEAD, discharged=frozenset(visit.at_work.capacitors)))  # fmt: skip
    for each in (test, measured):
        event = Skipped(each.id)
        begun = after_test(shown.work, each, None, (), shown.at_work)
        assert after(shipped, shown, event).work == begun
        not_shown = replace(shown, work=replace(shown.work, roof="not-checked"))
        assert after(shipped, not_shown, event).work == not_shown.work


def test_an_aim_is_a_test_at_a_place_with_its_reason(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(
        visit, skipped=frozenset({("suction-pressure", TWO), ("suction-pressure", ONE)})
    )
    event = Aimed("suction-pressure", "circuit 2", reason="why")
    changed(shipped, state, event, aim=("suction-pressure", TWO), aim_reason="why",
            aim_chosen=False, aim_since=1)  # fmt: skip
    changed(shipped, state, replace(event, chosen=True), aim=("suction-pressure", TWO),
            aim_reason="why", aim_chosen=True, aim_since=1,
            skipped=frozenset({("suction-pressure", ONE)}))  # fmt: skip
    nowhere = Aimed("suction-pressure")
    changed(shipped, replace(state, aim_reason="old"), nowhere, aim=("suction-pressure", None),
            aim_reason="", aim_chosen=False, aim_since=1)  # fmt: skip
    held = replace(after(shipped, state, event), answers=())
    assert after(shipped, held, event).aim_since == 1
    thrice = replace(held, answers=visit.answers * 3)
    chosen_now = after(shipped, thrice, replace(event, chosen=True))
    assert (chosen_now.aim, chosen_now.aim_since) == (held.aim, 3), "chosen since three answers"
    chosen = after(shipped, state, replace(nowhere, chosen=True))
    assert chosen.skipped == {("suction-pressure", TWO)}


def test_what_is_skipped_everywhere_has_failed_at_its_first_place(
    shipped: Knowledge, visit: VisitState
) -> None:
    first, *others = map(str, visit.unit.layout.places("capacitor"))
    assert others
    work = replace(DEAD, discharged=frozenset({first, *others}))
    skipped = after(shipped, replace(visit, work=work), Skipped("capacitor-discharge"))
    assert skipped.work.discharged == set(others)
