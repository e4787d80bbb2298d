"""Tests of parts that no fault drawn for a call touches: they read sound.

Of what such a fault would show elsewhere and physics does not reckon (bubbles in a sight glass,
the feel of a line, rooms alike), nothing is known. What nobody can know of a drawn unit (its
history, the weather of other days) is not known either.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.measure.physics.cards import Mode

_ALWAYS: Final = frozenset({
    "walk-round", "panels-and-gaskets", "panels-while-reading", "wiring-burn-marks",
    "instrument-proof", "gauge-refrigerant-setting", "odour-source",
    "thermostat-settings", "thermostat-place", "thermostat-batteries", "thermostat-output",
    "cooling-call", "heating-call", "fan-call", "space-load", "building-control-command",
    "drain-pan", "drain-trap", "drain-pour-test", "drain-slope", "curb-and-panels",
    "condensate-float-switch", "smoke-detector", "remote-shutdown", "fire-panel-relay",
    "door-switch", "board-output", "control-fuse", "control-wiring-look", "control-short-search",
    "control-common-ground", "jumper-search", "wiggle-test", "transformer-ohms",
    "transformer-primary-and-tap", "sensor-resistance",
    "breaker-and-disconnect", "fuse-continuity", "fuse-volts-drop", "ground-and-bond",
    "contactor-coil-ohms", "contactor-movement", "indoor-fan-relay", "overload-relay",
    "capacitor-appearance", "capacitor-leak-to-can", "start-gear",
    "compressor-windings", "compressor-windings-at-terminals", "compressor-insulation",
    "crankcase-heater", "compressor-protection-relay", "compressor-protection-sensors",
    "condenser-fan-blade-look", "condenser-fan-windings", "condenser-fan-control",
    "blower-motor-windings", "blower-bearings", "txv-bulb-mounting",
    "high-pressure-switch", "low-pressure-switch",
    "gas-supply-look", "gas-joint-bubble-test", "gas-valve-coil-ohms", "gas-valve-shut-off",
    "hot-surface-igniter-ohms", "burner-ground-and-polarity", "burner-compartment-seal",
    "inducer-fan", "pressure-switch-tube", "main-limit",
})  # fmt: skip
SOUND: Final[Mapping[Mode, frozenset[str]]] = MappingProxyType({
    "cooling": _ALWAYS | {
        "flue-outlet-and-hood", "heat-exchanger-look", "burner-orifices", "flame-rod",
        "rollout-switches", "gas-inlet-pressure-idle", "heat-stages", "ignition-trials",
    },
    "heating": _ALWAYS | {
        "condenser-coil-face", "evaporator-coil-face", "contactor-contacts", "contactor-pull-in",
        "condenser-fan-hand-spin", "capacitance-out-of-circuit", "fixed-orifice",
        "compressor-start-attempt", "standing-pressure", "ice-on-coil", "line-volts-idle",
        "line-volts-running", "transformer-secondary-volts",
    },
})  # fmt: skip
"""By the call that the faults of a unit are drawn for."""
