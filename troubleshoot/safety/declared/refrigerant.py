"""The steps at a refrigerant circuit: gauges on and off, the charge out, and back into a vacuum.

Gas that came in while the circuit was open stays in it unless it is drawn off first. What is
weighed in may escape where it was opened: the air is swept anew before the gauges come off.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import all_of, any_other, circuit_is, unclears
from troubleshoot.safety.declaration import SafetyStep
from troubleshoot.safety.step_guards import (
    CHARGE_BACK,
    CHARGE_IN,
    CHARGE_IS_OUT,
    CHARGE_WAS_OUT,
    CIRCUIT_CLOSED,
    EVACUATED,
    GAUGED,
    GAUGES_ARE_OFF,
    GAUGES_MAY_BE_ON,
    LOCKED_OUT,
    MAY_BE_EVACUATED,
    REFRIGERANT_SWEPT,
    ROOF_SAFE,
)
from troubleshoot.safety.step_guards import GAUGES_ON as GAUGES_ARE_ON
from troubleshoot.safety.work_state import Circuit, WorkState


def _gauges_may_be_off(state: WorkState, place: str) -> WorkState:
    circuits: tuple[tuple[str, Circuit], ...] = tuple(
        (each, "gauges-unsure" if now == "gauges-on" else now) for each, now in state.circuits
    )
    return state.with_facts(circuits=circuits)


def _vacuum_may_be_gone(state: WorkState, place: str) -> WorkState:
    """Nobody watched it: it is drawn down once more before a charge goes in."""
    circuits: tuple[tuple[str, Circuit], ...] = tuple(
        (each, "under-vacuum" if now == "evacuated" else now) for each, now in state.circuits
    )
    return state.with_facts(circuits=circuits)


GAUGES_ON: Final = SafetyStep(
    id=steps.GAUGES_ON,
    at="circuit",
    sound="on",
    by="enter",
    after=(ROOF_SAFE, REFRIGERANT_SWEPT, CIRCUIT_CLOSED),
    brings=(GAUGED, GAUGES_ARE_ON),
    does=circuit_is("gauges-on"),
    lost={"resumed": _gauges_may_be_off},
)
GAUGES_OFF: Final = SafetyStep(
    id=steps.GAUGES_OFF,
    at="circuit",
    sound="off",
    by="enter",
    after=(ROOF_SAFE, REFRIGERANT_SWEPT, GAUGES_MAY_BE_ON),
    brings=(GAUGES_ARE_OFF,),
    does=circuit_is("closed"),
)
RECOVER: Final = SafetyStep(
    id=steps.RECOVER,
    at="circuit",
    sound="recovered",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, REFRIGERANT_SWEPT, GAUGES_ARE_ON),
    brings=(CHARGE_IS_OUT, MAY_BE_EVACUATED),
    does=circuit_is("charge-recovered"),
)
CIRCUIT_TO_ZERO: Final = SafetyStep(
    id=steps.CIRCUIT_TO_ZERO,
    at="circuit",
    sound="at-zero",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, CHARGE_WAS_OUT),
    brings=RECOVER.brings,
    does=circuit_is("charge-recovered"),
)
EVACUATE: Final = SafetyStep(
    id=steps.EVACUATE,
    at="circuit",
    sound="held",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, MAY_BE_EVACUATED),
    brings=(EVACUATED,),
    does=circuit_is("evacuated"),
    otherwise=any_other(circuit_is("under-vacuum")),
    lost={"resumed": _vacuum_may_be_gone},
)
RECHARGE: Final = SafetyStep(
    id=steps.RECHARGE,
    at="circuit",
    sound="charged",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, EVACUATED, REFRIGERANT_SWEPT),
    brings=(CHARGE_IN, CHARGE_BACK),
    does=all_of(circuit_is("gauges-on"), unclears(steps.REFRIGERANT_SWEEP)),
    lost=GAUGES_ON.lost,
)
