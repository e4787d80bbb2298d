"""Every safety step as one declaration, in the order of work; all other tables are read from it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.safety.declaration import SafetyStep
from troubleshoot.safety.declared import air, dead, gas, panels, power, refrigerant, roof_and_people

_IN_ORDER: Final = (
    roof_and_people.ROOF,
    roof_and_people.EDGE_PROTECTION,
    roof_and_people.TELL_OCCUPANTS,
    roof_and_people.TELL_FIRE_PANEL,
    roof_and_people.SECOND_PERSON,
    roof_and_people.ARC_CLOTHING,
    roof_and_people.FIRE_PANEL_BACK,
    air.REFRIGERANT_SWEEP,
    air.GAS_SWEEP,
    air.ROOM_AIR,
    dead.METER_PROOF,
    power.STOP_BY_CONTROLS,
    power.LOCKOUT,
    power.SECOND_SOURCE,
    panels.PANELS_OFF,
    panels.PANELS_OFF_ENERGISED,
    dead.DEAD_TEST,
    dead.BLEED_CAPACITOR,
    dead.BLEED_DRIVE,
    dead.CLIPS,
    gas.COCK_LOOK,
    gas.GAS_SHUT,
    gas.PURGE_WAIT,
    gas.GAS_OPEN,
    gas.TAP_OPENED,
    gas.TAP_PLUGGED,
    refrigerant.GAUGES_ON,
    refrigerant.GAUGES_OFF,
    refrigerant.RECOVER,
    refrigerant.CIRCUIT_OPENED,
    refrigerant.CIRCUIT_HELD,
    refrigerant.CIRCUIT_TO_ZERO,
    refrigerant.EVACUATE,
    refrigerant.RECHARGE,
    panels.HOOK_UP,
    panels.LEADS_BACK,
    panels.JUMPER_OUT,
    panels.PANELS_ON,
    panels.DOORS_SHUT,
    panels.TOOLS_CLEAR,
    power.LOCK_OFF,
    power.RESTART,
    gas.PLUG_TEST,
)
STEPS: Final[Mapping[str, SafetyStep]] = MappingProxyType({step.id: step for step in _IN_ORDER})
"""Step id -> its declaration."""

CONFIRMED: Final[Mapping[str, str]] = MappingProxyType({s.id: s.sound for s in _IN_ORDER})
"""Step id -> the outcome that confirms it."""

ENTER_CONFIRMS: Final = frozenset(step.id for step in _IN_ORDER if step.by == "enter")
"""Steps that a bare Enter confirms. All others want the word, or the number on the meter."""


def sound_outcomes(test: Test) -> frozenset[str]:
    """The outcomes of a test or step that are sound: the healthy ones, and what a step allows."""
    also = STEPS[test.id].also_sound if test.id in STEPS else frozenset[str]()
    return frozenset(test.healthy) | also
