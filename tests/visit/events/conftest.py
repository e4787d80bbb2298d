"""The visit under way on which events are tried."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.events.effects import AIM, DEAD, FRESH, THEN, UNIT, asked
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import Started, replay
from troubleshoot.visit.state import VisitState


@pytest.fixture(scope="module")
def visit(shipped: Knowledge) -> VisitState:
    """A visit under way with something of everything."""
    state = replay(shipped, [Started(complaint="no-cooling", unit=UNIT)])
    return replace(
        state, aim=AIM, aim_chosen=True, fresh=FRESH, work=replace(DEAD, roof="not-checked"),
        answers=(Answer("x"),), asked=(asked("x", None),),
        skipped=frozenset({("weather-pattern", None)}),
        not_known=frozenset({"heat"}), notes=("a",), repaired=("f",), work_before=WorkState(),
        closing=True, last_time=THEN, profiles=frozenset({"gas"}), fresh_read=True,
        failed_steps=(Step("second-person"),), words="no cooling", left_before=("fuse out",),
        proofs=(("suction-pressure", "118 psig"),),
    )  # fmt: skip
