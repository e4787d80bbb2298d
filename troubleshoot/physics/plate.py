"""The unit's data plate and record, as a case states them."""

from __future__ import annotations

from typing import Final

from troubleshoot.physics.drives import RUNNING_SHARE, air_path, rated_power
from troubleshoot.physics.sizing import Nameplate

POWER_FACTOR: Final = 0.87
RATED_RPM: Final = 1075.0
PLATE_STATIC: Final = 0.6
"""Highest external static that the plate allows, in inches of water."""
DRAFT_SET_POINT: Final = 0.60
FAN_MICROFARADS: Final = 5.0
BLOWER_MICROFARADS: Final = 10.0
COMPRESSOR_MICROFARADS: Final = 45.0


def plate_facts(plate: Nameplate) -> dict[str, object]:
    """The unit as a case says it: facts and plate values."""
    single = not plate.three_phase
    return {
        "refrigerant": plate.refrigerant,
        "metering": plate.metering,
        "circuits": plate.circuits,
        "supply-phase": "single" if single else "three",
        "compressor-phase": "single" if single else "three",
        "condenser-fan-phase": "single",
        "condenser-fans": plate.circuits,
        "blower-drive": "direct" if single else "belt",
        "blower-motor": "single-phase-capacitor" if single else "three-phase",
        "variable-speed-drive": "not-fitted",
        "heat": "gas",
        "fuel": "natural-gas",
        "draft": "induced",
        "ignition": "hot-surface",
        "economizer": "not-fitted",
        "duct-smoke-detector": "not-fitted",
        "building-control": "not-fitted",
        "cooling-tons": f"{plate.tons:g} ton",
        "nameplate-volts": f"{plate.volts:g} V",
        "compressor-rla": f"{compressor_rla(plate):.1f} A",
        "condenser-fan-fla": f"{condenser_fan_fla(plate):.2f} A",
        "blower-fla": f"{blower_fla(plate):.1f} A",
        "design-blower-rpm": f"{RATED_RPM:g} rpm",
        "maximum-external-static": f"{PLATE_STATIC:g} in wc",
        "stated-subcooling": f"{plate.design.subcooling * 1.8:.0f} F",
        "gas-input-rating": f"{plate.gas_input:.0f} Btu/h",
        "heat-rise-low": "30 F",
        "heat-rise-high": "60 F",
        "gas-inlet-minimum": "5.0 in wc",
        "gas-inlet-maximum": "10.5 in wc",
        "pressure-switch-set-point": f"{DRAFT_SET_POINT:g} in wc",
        "capacitor-rated": _capacitors(plate),
    }


def _capacitors(plate: Nameplate) -> dict[str, str]:
    rated_uf = {
        f"capacitor condenser fan {number}": FAN_MICROFARADS
        for number in range(1, plate.circuits + 1)
    }
    if not plate.three_phase:
        rated_uf["capacitor blower"] = BLOWER_MICROFARADS
        rated_uf["capacitor compressor 1"] = COMPRESSOR_MICROFARADS
    return {place: f"{rating:g} uF" for place, rating in rated_uf.items()}


def own_record() -> dict[str, object]:
    """What is known of the place: the heat of its gas, as the utility says."""
    return {"gas-heat-content": "1030 Btu/ft3"}


def compressor_rla(plate: Nameplate) -> float:
    """Rated-load amps of one compressor."""
    phases = 3.0**0.5 if plate.three_phase else 1.0
    return rated_power(plate) / (phases * plate.volts * POWER_FACTOR * RUNNING_SHARE)


def condenser_fan_fla(plate: Nameplate) -> float:
    """Full-load amps of one condenser fan."""
    watt = plate.design.condenser_fan_watt_per_ton * plate.tons / plate.circuits
    return watt / (plate.volts * 0.95) / 0.92


def blower_fla(plate: Nameplate) -> float:
    """Full-load amps of the blower."""
    phases = 3.0**0.5 if plate.three_phase else 1.0
    watt = plate.design.blower_watt_per_cfm * air_path(plate).cfm
    return watt / (phases * plate.volts * 0.8) / 0.83
