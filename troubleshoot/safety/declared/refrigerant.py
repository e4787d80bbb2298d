"""The steps at a refrigerant circuit: gauges on and off, the charge out and back."""

from __future__ import annotations

from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import circuit_is
from troubleshoot.safety.declaration import SafetyStep
from troubleshoot.safety.step_guards import (
    CHARGE_BACK,
    CHARGE_IN,
    CHARGE_IS_OUT,
    CHARGE_WAS_OUT,
    CIRCUIT_CLOSED,
    GAUGED,
    GAUGES_ARE_OFF,
    GAUGES_MAY_BE_ON,
    LOCKED_OUT,
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
    brings=(CHARGE_IS_OUT,),
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
RECHARGE: Final = SafetyStep(
    id=steps.RECHARGE,
    at="circuit",
    sound="charged",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, CHARGE_IS_OUT, REFRIGERANT_SWEPT),
    brings=(CHARGE_IN, CHARGE_BACK),
    does=circuit_is("gauges-on"),
    lost=GAUGES_ON.lost,
)
