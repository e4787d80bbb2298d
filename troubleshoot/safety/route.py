"""The way from one work state to another: the next safe step, again and again, until all is met.

The order out: roof, people told, air swept, meter proved, stopped by its controls, locked out,
opened, tested dead, meter proved again, every capacitor discharged, tested dead again, meter proved
once more. The order back: leads, charge, gas, panels, tools and people clear, lock off, restart.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.safety.bringing import next_towards, stands
from troubleshoot.safety.changes import power_back
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import Needs, for_dead_work
from troubleshoot.safety.stages import STAGES
from troubleshoot.safety.steps import (
    LOCK_OFF,
    RESTART,
    TOOLS_CLEAR,
    Step,
    minutes_of,
)
from troubleshoot.safety.transitions import after_step
from troubleshoot.safety.way import Way
from troubleshoot.safety.work_state import UnitAtWork, WorkState

LEAVING: Final = Needs(energy="running", roof=True, gas="on")
"""A unit left running: panels on, gas on, nothing of ours in it. See also `steps_to_leave`."""

LEAVING_COLD: Final = replace(LEAVING, gas="shut")
"""The same with its gas cock shut."""

LEAVING_UNCALLED: Final = replace(LEAVING_COLD, uncalled=True)
"""Left with its gas cock shut and its heat off at the control."""

LEAVING_OFF: Final = Needs(roof=True, occupants=True, lock=True)
"""A unit that only has to be locked out: nobody reaches in."""

_STARTS: Final = frozenset({LOCK_OFF, RESTART})

_LONGEST: Final = 200


def next_step(
    state: WorkState, needs: Needs, unit: UnitAtWork, leaving: bool = False
) -> Step | None:
    """The next safety step towards `needs`, or None when no step leads further."""
    way = Way(state, needs, unit, leaving)
    for stage in STAGES:
        for place in stage.at(way):
            if not stands(stage.guard, place, state, unit):
                return next_towards(stage.guard, place, state, unit)
    return None


@lru_cache(maxsize=8192)
def steps_to(
    state: WorkState, needs: Needs, unit: UnitAtWork, leaving: bool = False
) -> tuple[Step, ...]:
    """The remaining steps in order, should each be confirmed."""
    remaining: list[Step] = []
    while (step := next_step(state, needs, unit, leaving)) is not None:
        remaining.append(step)
        if len(remaining) > _LONGEST:
            raise RuntimeError(f"no way to {needs} from {state}")
        state = after_step(state, step, (CONFIRMED[step.id],), unit)
    return tuple(remaining)


def steps_to_leave(state: WorkState, unit: UnitAtWork) -> tuple[Step, ...]:
    """The remaining steps until the unit can be left running with nothing of ours in it."""
    return steps_to(state, LEAVING, unit, leaving=True)


def steps_to_leave_cold(state: WorkState, unit: UnitAtWork) -> tuple[Step, ...]:
    """The remaining steps until the unit can be left with its gas cock shut.

    A call that is not known to be for cooling may be for heat, and is not made behind a shut cock;
    a unit that does not stop by its controls is locked out instead.
    """
    if unit.called_to_cool or not unit.burns_gas:
        return steps_to(state, LEAVING_COLD, unit, leaving=True)
    if state.gas == "shut" and state.calls == "stuck-on":
        return steps_to_leave_off(state, unit)
    return steps_to(state, LEAVING_UNCALLED, unit, leaving=True)


def steps_to_leave_off(state: WorkState, unit: UnitAtWork) -> tuple[Step, ...]:
    """The remaining steps until the unit can be left locked out with nothing of ours in it.

    Its gas cock stays as it is. Tools and people are looked for last, as nothing is started after
    it; what did not stop by its controls is stopped by the lock.
    """
    if state.power != "locked-out":
        return steps_to(state, replace(LEAVING_OFF, fire_panel=unit.fire_panel), unit)
    stopped = state.with_facts(calls="off")
    back = steps_to(stopped, replace(LEAVING, gas="any"), unit, leaving=True)
    steps = (step for step in back if step.id not in _STARTS)
    return tuple(sorted(steps, key=lambda step: step.id == TOOLS_CLEAR))


def switch_minutes(
    state: WorkState, needs: Needs, unit: UnitAtWork, tests: Mapping[str, Test]
) -> float:
    """What changing the work state would cost, in minutes by the rule base's steps.

    Power put back on what has been proved dead costs the way back too: the repair is done dead.
    """
    minutes = minutes_of(steps_to(state, needs, unit), tests)
    if state.dead == "proved" and needs.energised:
        minutes += minutes_of(steps_to(power_back(state, "on"), for_dead_work(unit), unit), tests)
    return minutes
