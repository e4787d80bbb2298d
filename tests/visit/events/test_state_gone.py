"""What somebody says has gone, or never was, counts no more: this, and nothing else."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.visit.events.effects import AIM, DEAD, FRESH, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.visit.events import SaysNothing, StateGone, after
from troubleshoot.visit.state import VisitState


@pytest.mark.parametrize(
    ("steps", "gone"),
    [
        (("tell-occupants",), {"occupants_told": False}),
        (("roof-conditions",), {"roof": "not-checked"}),
        (("tell-occupants", "roof-conditions"), {"occupants_told": False, "roof": "not-checked"}),
    ],
)
def test_what_stood_on_it_counts_no_more_and_a_stop_is_not_read_on(
    steps: tuple[str, ...], gone: dict[str, Any], shipped: Knowledge, visit: VisitState
) -> None:
    """The words stay beside the notes before them, and what somebody chose stays on the way."""
    state = replace(visit, work=DEAD, fresh_read=True)
    assert (state.aim, state.fresh) == (AIM, FRESH)
    notes = (*state.notes, "said to have gone, or never to have been: it is not so")
    changed(
        shipped, state, StateGone(steps, "it is not so"), work=replace(DEAD, **gone),
        fresh_read=False, notes=notes,
    )  # fmt: skip


@pytest.mark.parametrize(
    "steps",
    [(), ("weather-pattern",), ("tell-occupants", "weather-pattern"), ("of-other-rules",)],
)
def test_what_names_no_safety_step_says_nothing(
    steps: tuple[str, ...], shipped: Knowledge, visit: VisitState
) -> None:
    with pytest.raises(SaysNothing, match="no safety step whose state has gone"):
        after(shipped, visit, StateGone(steps, "it is not so"))


def test_all_of_it_may_have_gone_at_once(shipped: Knowledge, visit: VisitState) -> None:
    state = after(shipped, replace(visit, work=DEAD), StateGone(tuple(CONFIRMED), "all of it"))
    work = state.work
    assert not work.occupants_told and not work.discharged
    assert (work.roof, work.meter, work.dead) == ("not-checked", "failed", "not-shown")
