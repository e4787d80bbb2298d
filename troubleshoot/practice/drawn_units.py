"""The units that drawn scenarios happen on: a few common nameplates, invented throughout."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

Plain = Mapping[str, object]

_GAS: Final[Plain] = {
    "heat": "gas",
    "fuel": "natural-gas",
    "draft": "induced",
    "gas-input-rating": "120000 Btu/h",
    "heat-rise-low": "30 F",
    "heat-rise-high": "60 F",
    "gas-inlet-minimum": "5.0 in wc",
    "gas-inlet-maximum": "10.5 in wc",
    "pressure-switch-set-point": "0.65 in wc",
    "flame-current-dropout": "1.0 uA",
}
SMALL: Final[Plain] = {
    "refrigerant": "R-410A",
    "metering": "fixed-orifice",
    "circuits": 1,
    "supply-phase": "single",
    "line-volts-class": "208-to-240-volt",
    "condenser-fans": 1,
    "blower-drive": "direct",
    "blower-motor": "single-phase-capacitor",
    "variable-speed-drive": "not-fitted",
    "economizer": "not-fitted",
    "duct-smoke-detector": "not-fitted",
    "building-control": "not-fitted",
    "phase-monitor": "not-fitted",
    "crankcase-heater": "fitted",
    "ignition": "hot-surface",
    "igniter": "silicon-carbide",
    **_GAS,
    "cooling-tons": "4 ton",
    "nameplate-volts": "230 V",
    "compressor-rla": "21.8 A",
    "condenser-fan-fla": "1.6 A",
    "blower-fla": "3.6 A",
    "design-blower-rpm": "1075 rpm",
    "charge": "7.5 lb",
    "capacitor-rated": {
        "capacitor compressor 1": "40 uF",
        "capacitor condenser fan 1": "5 uF",
        "capacitor blower": "10 uF",
    },
}
MIDDLING: Final[Plain] = {
    "refrigerant": "R-410A",
    "metering": "txv",
    "circuits": 2,
    "supply-phase": "three",
    "line-volts-class": "480-volt",
    "compressor-phase": "three",
    "compressor-type": "scroll",
    "condenser-fan-phase": "single",
    "condenser-fans": 2,
    "fans-serve": "own-circuit",
    "blower-drive": "belt",
    "blower-motor": "three-phase",
    "variable-speed-drive": "not-fitted",
    "economizer": "fitted",
    "duct-smoke-detector": "fitted",
    "building-control": "fitted",
    "phase-monitor": "fitted",
    "crankcase-heater": "fitted",
    "ignition": "spark",
    **_GAS,
    "cooling-tons": "10 ton",
    "nameplate-volts": "460 V",
    "compressor-rla": "8.9 A",
    "compressor-lra": "60 A",
    "condenser-fan-fla": "1.1 A",
    "blower-fla": "6.8 A",
    "design-blower-rpm": "980 rpm",
    "charge": "11 lb",
    "stated-subcooling": "10 F",
    "capacitor-rated": {"capacitor condenser fan 1": "10 uF", "capacitor condenser fan 2": "10 uF"},
}
NEWER: Final[Plain] = {
    "refrigerant": "R-454B",
    "metering": "txv",
    "circuits": 1,
    "supply-phase": "three",
    "line-volts-class": "208-to-240-volt",
    "compressor-phase": "three",
    "compressor-type": "scroll",
    "condenser-fan-phase": "single",
    "condenser-fans": 1,
    "blower-drive": "direct",
    "blower-motor": "electronically-commutated",
    "variable-speed-drive": "not-fitted",
    "economizer": "fitted",
    "duct-smoke-detector": "not-fitted",
    "building-control": "fitted",
    "phase-monitor": "not-fitted",
    "crankcase-heater": "fitted",
    "ignition": "hot-surface",
    "igniter": "silicon-nitride",
    **_GAS,
    "cooling-tons": "5 ton",
    "nameplate-volts": "208 V",
    "compressor-rla": "17.0 A",
    "condenser-fan-fla": "1.9 A",
    "charge": "9.4 lb",
    "capacitor-rated": {"capacitor condenser fan 1": "7.5 uF"},
}
DRIVEN: Final[Plain] = {
    **{key: value for key, value in MIDDLING.items() if key != "phase-monitor"},
    "variable-speed-drive": "fitted",
    "circuits": 1,
    "condenser-fans": 1,
    "phase-monitor": "not-fitted",
    "capacitor-rated": {"capacitor condenser fan 1": "10 uF"},
}

UNITS: Final[tuple[Plain, ...]] = (SMALL, MIDDLING, NEWER, DRIVEN)
OWN_RECORD: Final[Plain] = {"minimum-outdoor-air": "20 %", "gas-heat-content": "1030 Btu/ft3"}

PLACES: Final = (
    "the lending library at Fern Bank",
    "the swimming hall at Mill Race",
    "the tea rooms at Sun Lane",
    "the clinic at Almond Court",
    "the music school at Old Forge",
    "the seed store at Reed End",
    "the court house at Saddle Street",
    "the pottery at Ash Yard",
    "the nursery at Lime Walk",
    "the ticket office at Ferry Steps",
    "the chapel hall at Stone Bridge",
    "the bakery at Corn Hill",
)
"""Invented places for titles."""

LIES: Final = (
    "The probe hung in the sun and touched only paint.",
    "The meter's lead was broken inside its boot.",
    "It was read within five minutes of the start, before anything had settled.",
    "The hose was kinked and the gauge stuck.",
    "It was read with the panel off.",
)
"""Why a number misleads."""
MISNOTED: Final = "It was noted down from another unit's sheet."
"""Why a finding without a number misleads."""
NOT_TODAY: Final = (
    "the instrument for it is out on another roof",
    "the place cannot be reached today",
    "the owner does not want it done in opening hours",
)
"""Why a test cannot be done."""
