"""What comes next in a visit, as data; and the one next thing on the way to a test."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard, Knowledge, Proof, Test
from troubleshoot.reasoning.conclusions import FiredHazard
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.closed_ways import has_failed
from troubleshoot.safety.needs import BURNER_AREAS, burns
from troubleshoot.safety.reaching import is_blocked, steps_before
from troubleshoot.safety.steps import RESTART, Step
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.state import VisitState


@frozen
class Decision:
    """What comes next.

    `step`, `ask`: a safety step or a test at a place, with the cautions that come before it.
    `aim`: the test that all this is for, where it is another. `stop`: the STOP that stands; a step
    or test that comes with one leads to the fresh finding that may lift it, and to nothing else.
    `ending`: no test pays any more, or the visit has ended. `prove`: a `proof` of the repair that
    was begun is read; without one it is asked whether the complaint is still there. `of_before`:
    the fault of a repair made before the visit, where the proof is of that. `findings`: of a round,
    which are not sound, and of which it is decided now or at its end what is done. `failed_before`:
    the step has failed, and is offered once more. `left_out`: the steps that failed each time, by
    id; nothing behind them is proposed. `call`: what the step calls for, where that is known.
    """

    kind: Literal["step", "ask", "stop", "prove", "findings", "ending"]
    test: Test | None = None
    at: Place | None = None
    step: Step | None = None
    cautions: tuple[Hazard, ...] = ()
    reason: str = ""
    aim: Spot | None = None
    stop: FiredHazard | None = None
    ending: str = ""
    handed_over: tuple[tuple[str, str], ...] = ()
    failed_before: bool = False
    left_out: tuple[str, ...] = ()
    proof: Proof | None = None
    of_before: str = ""
    findings: tuple[Spot, ...] = ()
    call: Literal["", "heat", "cooling"] = ""


def to_do(knowledge: Knowledge, state: VisitState, step: Step) -> Decision:
    """A safety step, with its cautions."""
    test = knowledge.tests[step.id]
    cautions = cautions_before(knowledge, state, test)
    failed = has_failed(state, step) > 0
    call = _call(knowledge, state) if step.id == RESTART else ""
    return Decision("step", test, step=step, cautions=cautions, failed_before=failed, call=call)


def _call(knowledge: Knowledge, state: VisitState) -> Literal["", "heat", "cooling"]:
    """What is called for: what is aimed at, or was mended, or is complained of."""
    unit, said = state.at_work, state.repair_begun
    wanted = (knowledge.tests[spot[0]] for spot in (state.aim, state.fresh) if spot)
    mended = said is not None and knowledge.faults[said.fault].subsystem in BURNER_AREAS
    lit = unit.burns_gas and mended and state.work.gas == "on"
    if lit or any(burns(test, test.work_state, unit) for test in wanted):
        return "heat"
    return "cooling" if unit.called_to_cool else ""


def to_ask(knowledge: Knowledge, state: VisitState, test: Test, at: Place | None) -> Decision:
    """A test at a place, with its cautions."""
    return Decision("ask", test, at, cautions=cautions_before(knowledge, state, test))


def is_read_as_it_tries(
    knowledge: Knowledge, state: VisitState, test: Test, at: Place | None
) -> bool:
    """Whether a call was made just now for a reading in the trial, and nothing else is wanting."""
    if not state.trying:
        return False
    as_if_lit = replace(state, work=state.work.with_facts(unburnt=False))
    ready = not steps_before(as_if_lit, test, at) and not is_blocked(as_if_lit, test, at)
    return ready and knowledge.tests[test.id].in_trial


def nearer_to(
    knowledge: Knowledge, state: VisitState, test: Test, at: Place | None
) -> Decision | None:
    """The next thing on the way to a test: a step, or the test itself once the guards are silent.

    Nothing where no safe way leads there: the guards have the last word over the planner. While a
    burner tries and does not light, what is read in its trial is read; the cock is shut after.
    """
    if is_read_as_it_tries(knowledge, state, test, at):
        return to_ask(knowledge, state, test, at)
    steps = steps_before(state, test, at)
    if steps:
        return to_do(knowledge, state, steps[0])
    return None if is_blocked(state, test, at) else to_ask(knowledge, state, test, at)
