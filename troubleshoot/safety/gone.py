"""What becomes of the work state once somebody says that something in it has gone, or never was.

What is said of one step may take away what rests on it, and nothing is won by it.
"""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.steps import BLEED_CAPACITOR, BLEED_DRIVE
from troubleshoot.safety.work_state import WHOLE_UNIT, UnitAtWork, WorkState


def without(state: WorkState, steps: Iterable[str], unit: UnitAtWork) -> WorkState:
    """The state once what these steps had confirmed is said to have gone, or never to have been.

    Nothing is left unburnt behind a shut cock, nor in a unit that burns no gas.
    """
    changed = state
    for step in steps:
        change = STEPS[step].gone
        if change is not None:
            changed = change(changed, WHOLE_UNIT)
    gas_came = unit.burns_gas and state.gas != "shut"
    return changed if gas_came else changed.with_facts(unburnt=state.unburnt)


def contradicted(state: WorkState, steps: Iterable[str], unit: UnitAtWork) -> tuple[str, ...]:
    """Those of the steps on which something stands that has then gone."""
    return tuple(step for step in steps if without(state, (step,), unit) != state)


def is_charge_at_hand(state: WorkState, step: str) -> bool:
    """Whether it is a charge where hands go in next: once locked out, before anything was bled."""
    return step in (BLEED_CAPACITOR, BLEED_DRIVE) and state.power == "locked-out"
