"""The way to a test in the ids of its steps, and a state after steps that were confirmed."""

from __future__ import annotations

from tests.safety.work_state_samples import (
    PLAIN_UNIT,
)
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import (
    after_step,
)
from troubleshoot.safety.work_state import UnitAtWork, WorkState


def way(state: WorkState, test: Test, unit: UnitAtWork = PLAIN_UNIT) -> list[str]:
    """The ids of the steps to a test."""
    return [step.id for step in steps_to(state, needs_of(test, None, unit), unit)]


def done(state: WorkState, *steps: str, unit: UnitAtWork = PLAIN_UNIT) -> WorkState:
    """The state after steps that were confirmed."""
    for step in steps:
        state = after_step(state, Step(step), (CONFIRMED[step],), unit)
    return state
