"""A roof edge that a file tells of: while nothing protects there, nobody works at the unit."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety import steps
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_step
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import WorkState

_OF_THE_ROOF: Final = (steps.ROOF, steps.EDGE_PROTECTION)


def edge_is_open(conclusions: Conclusions) -> bool:
    """Whether an edge was found near, and nothing has been said since that protects there."""
    at_work = unit_at_work(conclusions.case.unit)
    work = WorkState()
    for reading in conclusions.readings:
        if reading.test in _OF_THE_ROOF:
            work = after_step(work, Step(reading.test, None), reading.seen, at_work)
    return work.roof == "edge-near"


def protection_first(conclusions: Conclusions) -> tuple[Test, ...]:
    """What comes before anything at the unit."""
    tests = conclusions.hypotheses.knowledge.tests
    return (tests[steps.EDGE_PROTECTION],) if edge_is_open(conclusions) else ()
