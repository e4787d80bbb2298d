"""The steps that make sure of the air: of refrigerant, of gas, of what a burner makes."""

from __future__ import annotations

from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import all_of, any_other, clears, only_if, sets, unclears
from troubleshoot.safety.declaration import SafetyStep
from troubleshoot.safety.step_guards import (
    GAS_AIR_CLEAR,
    GAS_SWEPT,
    GAS_SWEPT_BEFORE_A_CALL,
    GAS_SWEPT_BEFORE_OPENING,
    REFRIGERANT_CLEAR,
    REFRIGERANT_SWEPT,
    ROOF_SAFE,
    ROOM_AIR_CLEAR,
)
from troubleshoot.safety.work_state import WorkState


def _gas_was_swept(state: WorkState) -> bool:
    return steps.GAS_SWEEP in state.clear


REFRIGERANT_SWEEP: Final = SafetyStep(
    id=steps.REFRIGERANT_SWEEP,
    sound="none",
    after=(ROOF_SAFE,),
    brings=(REFRIGERANT_SWEPT, REFRIGERANT_CLEAR),
    does=clears(steps.REFRIGERANT_SWEEP),
    otherwise=any_other(unclears(steps.REFRIGERANT_SWEEP)),
    lost={"resumed": unclears(steps.REFRIGERANT_SWEEP)},
    gone=unclears(steps.REFRIGERANT_SWEEP),
    hangs_on=("refrigerant", "refrigerant-class"),
)
GAS_SWEEP: Final = SafetyStep(
    id=steps.GAS_SWEEP,
    sound="none",
    after=(ROOF_SAFE,),
    brings=(GAS_AIR_CLEAR, GAS_SWEPT, GAS_SWEPT_BEFORE_OPENING, GAS_SWEPT_BEFORE_A_CALL),
    does=all_of(clears(steps.GAS_SWEEP), sets(gas_swept=True)),
    otherwise=any_other(all_of(unclears(steps.GAS_SWEEP), sets(gas_swept=False))),
    lost={"resumed": unclears(steps.GAS_SWEEP), "reopened": sets(gas_swept=False)},
    gone=only_if(_gas_was_swept, all_of(unclears(steps.GAS_SWEEP), sets(gas_swept=False))),
    hangs_on=("heat",),
)
ROOM_AIR: Final = SafetyStep(
    id=steps.ROOM_AIR,
    sound="normal",
    brings=(ROOM_AIR_CLEAR,),
    does=clears(steps.ROOM_AIR),
    otherwise=any_other(unclears(steps.ROOM_AIR)),
    lost={"resumed": unclears(steps.ROOM_AIR)},
    gone=unclears(steps.ROOM_AIR),
    hangs_on=("heat",),
)
