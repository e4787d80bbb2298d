"""What brings about that a guard stands: the next step towards it, read off the declarations.

Nothing of the order of work is written here. What a step brings, and what must stand before its
own turn, is said once, where the step is declared.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.safety.declaration import SafetyStep
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.step_guards import StepGuard
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import WHOLE_UNIT, UnitAtWork, WorkState


def _brought_by() -> Mapping[StepGuard, tuple[SafetyStep, ...]]:
    found: dict[StepGuard, list[SafetyStep]] = defaultdict(list)
    for step in STEPS.values():
        for guard in (*step.brings, *step.brings_again):
            found[guard].append(step)
    return MappingProxyType({guard: tuple(by) for guard, by in found.items()})


BROUGHT_BY: Final = _brought_by()
"""Guard -> the steps that make it stand. Any other is given: a step is for where it stands."""


_GIVEN: Final = {
    id: tuple(guard for guard in step.after if guard not in BROUGHT_BY)
    for id, step in STEPS.items()
}
"""Step -> the guards before its turn that no step makes stand."""


def stands(guard: StepGuard, place: str | None, state: WorkState, unit: UnitAtWork) -> bool:
    """Whether a guard stands at a place, or on the unit as a whole."""
    return guard.stands(state, place or WHOLE_UNIT, unit)


def next_towards(guard: StepGuard, place: str | None, state: WorkState, unit: UnitAtWork) -> Step:
    """The next step towards a guard standing that does not: what its turn waits for comes first.

    Where several steps would do it is the one made for just this state: that with most givens.
    """
    could = [
        Step(each.id, where, again=guard in each.brings_again)
        for each in BROUGHT_BY[guard]
        for where in ((place,) if place else _to_do(each, state, unit))
    ]
    step = could[0]
    if len(could) > 1:
        step = max(could, key=lambda each: _made_for(each, state, unit))
    declared = STEPS[step.id]
    for before in declared.after:
        if before in BROUGHT_BY and not stands(before, step.place, state, unit):
            same = any(each.at == declared.at for each in BROUGHT_BY[before])
            return next_towards(before, step.place if same else None, state, unit)
    return step


def _made_for(step: Step, state: WorkState, unit: UnitAtWork) -> int:
    """How many givens stand before a step; less than none where one is missing."""
    given = _GIVEN[step.id]
    if not all(stands(guard, step.place, state, unit) for guard in given):
        return -1
    return len(given)


def _to_do(step: SafetyStep, state: WorkState, unit: UnitAtWork) -> tuple[str | None, ...]:
    """Where a step is still to be done."""
    stored = {"capacitor": unit.capacitors, "drive": unit.drives}
    if step.at in stored:
        return tuple(place for place in stored[step.at] if place not in state.discharged)
    left = {
        "jumper": sorted(state.jumpers),
        "tap": sorted(state.taps_open),
        "circuit": state.circuits_without_charge,
    }
    return tuple(left[step.at]) if step.at in left else (None,)
