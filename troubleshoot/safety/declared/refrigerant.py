"""The steps at a refrigerant circuit: gauges on and off, the charge out, and back into a vacuum.

What a repair has opened counts as open and empty until it has held nitrogen and vacuum and its
charge is weighed in; one that opened nothing is said so in words. Gauges go on and come off behind
a panel only where it is dead: nothing about a hose needs power, and what leaves it must meet no
contactor (29 CFR 1910.333(a)(1) and NFPA 70E 110.2, from memory). Gas that came in while the
circuit was open stays in it unless it is drawn off first. What is weighed in may escape where it
was opened: the air is swept anew before the gauges come off.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.safety import steps
from troubleshoot.safety.changes import all_of, any_other, circuit_is, only_if, unclears
from troubleshoot.safety.declaration import Outcomes, SafetyStep
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
    NOT_SAID_WHETHER_OPENED,
    OPENED_HOLDS,
    OPENED_KNOWN,
    PORTS_BLED,
    PORTS_DEAD,
    PORTS_LOCKED_OUT,
    PORTS_OPENED,
    REFRIGERANT_SWEPT,
    ROOF_SAFE,
    WAS_OPENED,
)
from troubleshoot.safety.step_guards import GAUGES_ON as GAUGES_ARE_ON
from troubleshoot.safety.unit_at_work import SERVICE_PORTS
from troubleshoot.safety.work_state import Circuit, WorkState


def _gauges_may_be_off(state: WorkState, place: str) -> WorkState:
    circuits: tuple[tuple[str, Circuit], ...] = tuple(
        (each, "gauges-unsure" if now == "gauges-on" else now) for each, now in state.circuits
    )
    return state.with_facts(circuits=circuits)


def _locked_out(state: WorkState) -> bool:
    return state.power == "locked-out"


def _laid_off(state: WorkState, place: str) -> WorkState:
    return state.laid_off


_AT_THE_PORTS: Final = (PORTS_LOCKED_OUT, PORTS_OPENED, PORTS_DEAD, PORTS_BLED)
_GLOVES_CHANGED: Final = only_if(_locked_out, _laid_off)
"""Hoses are handled in gloves for refrigerant, not in those for an arc."""


def _vacuum_may_be_gone(state: WorkState, place: str) -> WorkState:
    """Nobody watched it: it is drawn down once more before a charge goes in."""
    circuits: tuple[tuple[str, Circuit], ...] = tuple(
        (each, "under-vacuum" if now == "evacuated" else now) for each, now in state.circuits
    )
    return state.with_facts(circuits=circuits)


def _never_opened_with_its_charge(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    """Only the word that says so, with the charge in it, takes back that it may be empty."""
    never = outcomes == ("nothing-opened",)
    return state.with_circuit(place, "gauges-unsure") if never else state


def _never_opened_without_its_charge(state: WorkState, place: str, outcomes: Outcomes) -> WorkState:
    """Its charge is out by the record: it is drawn down and weighed in all the same."""
    never = outcomes == ("nothing-opened",)
    return state.with_circuit(place, "charge-recovered") if never else state


GAUGES_ON: Final = SafetyStep(
    id=steps.GAUGES_ON,
    at="circuit",
    sound="on",
    by="enter",
    after=(ROOF_SAFE, REFRIGERANT_SWEPT, CIRCUIT_CLOSED, *_AT_THE_PORTS),
    brings=(GAUGED, GAUGES_ARE_ON),
    does=all_of(circuit_is("gauges-on"), _GLOVES_CHANGED),
    otherwise=any_other(_GLOVES_CHANGED),
    lost={"resumed": _gauges_may_be_off},
    hangs_on=(SERVICE_PORTS,),
)
GAUGES_OFF: Final = SafetyStep(
    id=steps.GAUGES_OFF,
    at="circuit",
    sound="off",
    by="enter",
    after=(ROOF_SAFE, REFRIGERANT_SWEPT, GAUGES_MAY_BE_ON, *_AT_THE_PORTS),
    brings=(GAUGES_ARE_OFF,),
    does=all_of(circuit_is("closed"), _GLOVES_CHANGED),
    otherwise=any_other(_GLOVES_CHANGED),
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
# Asked before anything is done for it: it may be that nothing was opened.
CIRCUIT_OPENED: Final = SafetyStep(
    id=steps.CIRCUIT_OPENED,
    at="circuit",
    sound="opened",
    also_by_word=frozenset({"nothing-opened"}),
    after=(NOT_SAID_WHETHER_OPENED,),
    brings=(OPENED_KNOWN,),
    does=circuit_is("opened"),
    otherwise=_never_opened_with_its_charge,
)
CIRCUIT_HELD: Final = SafetyStep(
    id=steps.CIRCUIT_HELD,
    at="circuit",
    sound="held",
    also_by_word=frozenset({"nothing-opened"}),
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, OPENED_KNOWN, WAS_OPENED),
    brings=(OPENED_HOLDS,),
    does=circuit_is("under-nitrogen"),
    otherwise=_never_opened_without_its_charge,
)
CIRCUIT_TO_ZERO: Final = SafetyStep(
    id=steps.CIRCUIT_TO_ZERO,
    at="circuit",
    sound="at-zero",
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, OPENED_HOLDS, CHARGE_WAS_OUT),
    brings=RECOVER.brings,
    does=circuit_is("charge-recovered"),
)
EVACUATE: Final = SafetyStep(
    id=steps.EVACUATE,
    at="circuit",
    sound="held",
    number_says_part=True,  # how far it was drawn down, or where it stood with the pump shut off
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
    number_says_part=True,  # the weight, of which the data plate alone says whether it is right
    by_hand=True,
    after=(ROOF_SAFE, LOCKED_OUT, EVACUATED, REFRIGERANT_SWEPT),
    brings=(CHARGE_IN, CHARGE_BACK),
    does=all_of(circuit_is("gauges-on"), unclears(steps.REFRIGERANT_SWEEP)),
    lost=GAUGES_ON.lost,
)
