"""What a mechanic's instruments read on the unit, by the rule base's test ids.

True values in the trade's units, then the same with the errors of ordinary meters in good order,
drawn by a seed and rounded as their displays round. Errors of each kind: limits of common field
instruments, taken as even between the limits (common practice, no source).
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.physics.capacitor_motor import COMPRESSOR, FAN, Turning, Windings, rated
from troubleshoot.physics.knobs import CircuitFaults, Day, Faults
from troubleshoot.physics.plate import (
    BLOWER_MICROFARADS,
    COMPRESSOR_MICROFARADS,
    FAN_MICROFARADS,
    RATED_RPM,
    blower_fla,
    compressor_rla,
    condenser_fan_fla,
)
from troubleshoot.physics.refrigerant import Refrigerant, refrigerant
from troubleshoot.physics.sizing import Nameplate
from troubleshoot.physics.unit import CircuitRead, Cooling, cool, heat, psig

CAPACITOR_VOLTS: Final = 370.0
"""Volts across a sound capacitor of a motor at work."""
MICROFARAD_VOLTS: Final = 2652.58
"""Amps times this over volts is microfarads at 60 Hz."""
METER_DIAL: Final = 2.0
"""Cubic feet of gas in one turn of the meter's test dial."""


@frozen
class Meter:
    """Limits of error: share of the reading, and the same in its unit; digits shown."""

    share: float
    fixed: float
    digits: int


METERS: Final[Mapping[str, Meter]] = MappingProxyType(
    {
        "psig": Meter(0.01, 1.0, 0),
        "F": Meter(0.0, 1.0, 1),
        "F-diff": Meter(0.0, 1.0, 1),
        "A": Meter(0.02, 0.05, 2),
        "V": Meter(0.007, 0.3, 1),
        "V-drop": Meter(0.02, 0.01, 2),
        "in wc": Meter(0.02, 0.01, 2),
        "uF": Meter(0.025, 0.1, 1),
        "uA": Meter(0.02, 0.05, 2),
        "percent": Meter(0.0, 0.2, 1),
        "ppm": Meter(0.05, 5.0, 0),
        "rpm": Meter(0.002, 1.0, 0),
        "ohm": Meter(0.01, 0.1, 1),
        "s": Meter(0.0, 0.4, 1),
        "ft3": Meter(0.0, 0.0, 1),
        "cfm": Meter(0.06, 10.0, 0),
    }
)


@frozen
class Value:
    """What one test would read: where ("" for the whole unit), one number or one for each leg."""

    test: str
    at: str
    numbers: tuple[float, ...]
    unit: str


def cooling_values(plate: Nameplate, faults: Faults, day: Day) -> Iterator[Value]:
    """What would be read, without error, on a call for cooling; standing pressure after it."""
    made = cool(plate, faults, day)
    yield from _air_values(plate, faults, day, made)
    yield from _supply_values(plate, faults, made)
    for number, read in enumerate(made.circuits, start=1):
        yield from _circuit_values(plate, faults.of_circuit(number), day, number, read)


def heating_values(plate: Nameplate, faults: Faults, day: Day) -> Iterator[Value]:
    """The same on a call for heat."""
    fired, blown = heat(plate, faults, day)
    yield Value("return-air-temperature", "", (day.dry_bulb,), "F")
    yield Value("external-static", "", (blown.external,), "in wc")
    yield Value("filter-pressure-drop", "", (blown.filter,), "in wc")
    yield Value("heating-supply-temperature", "", (day.dry_bulb + fired.rise,), "F")
    yield Value("gas-inlet-pressure-idle", "", (faults.gas.inlet,), "in wc")
    yield Value("gas-inlet-pressure-all-firing", "", (fired.inlet,), "in wc")
    yield Value("gas-manifold-pressure", "", (fired.manifold,), "in wc")
    yield Value("meter-dial", "", (METER_DIAL,), "ft3")
    turn_of_dial = METER_DIAL * 3600.0 * faults.gas.heat_content / fired.input
    yield Value("meter-time", "", (turn_of_dial,), "s")
    yield Value("flue-oxygen", "", (fired.oxygen,), "percent")
    yield Value("flue-carbon-monoxide", "", (fired.carbon_monoxide,), "ppm")
    yield Value("draft-at-pressure-switch", "", (fired.draft,), "in wc")
    yield Value("flame-current", "", (fired.flame_current,), "uA")


def _air_values(plate: Nameplate, faults: Faults, day: Day, made: Cooling) -> Iterator[Value]:
    yield Value("outdoor-temperature", "", (day.outdoor,), "F")
    yield Value("return-air-temperature", "", (day.dry_bulb,), "F")
    yield Value("return-wet-bulb", "", (day.wet_bulb,), "F")
    if day.outdoor_air:
        yield Value("mixed-air-temperature", "", (fahrenheit(made.entering.dry_bulb),), "F")
    yield Value("supply-air-temperature", "", (fahrenheit(made.supply.dry_bulb),), "F")
    yield Value("external-static", "", (made.air.external,), "in wc")
    yield Value("filter-pressure-drop", "", (made.air.filter,), "in wc")
    yield Value("evaporator-pressure-drop", "", (made.air.coil,), "in wc")
    yield Value("blower-rpm", "", (made.blower_speed * RATED_RPM,), "rpm")
    amps = made.blower_amps * blower_fla(plate)
    yield Value("blower-amps", "", (amps,), "A")
    if not plate.three_phase:
        yield from _capacitor(
            "capacitor blower", faults.air.capacitor, BLOWER_MICROFARADS, None, FAN
        )


def _supply_values(plate: Nameplate, faults: Faults, made: Cooling) -> Iterator[Value]:
    pairs = faults.supply.pairs if plate.three_phase else faults.supply.pairs[:1]
    yield Value("line-volts-running", "", tuple(v * plate.volts for v in pairs), "V")
    yield Value("transformer-secondary-volts", "", (made.control.secondary,), "V")
    yield Value("thermostat-cable-ohms", "", (faults.supply.cable_ohms,), "ohm")
    for number in range(1, plate.circuits + 1):
        yield Value("contactor-coil-volts", f"contactor {number}", (made.control.coil,), "V")


def _circuit_values(
    plate: Nameplate,
    wrong: CircuitFaults,
    day: Day,
    number: int,
    read: CircuitRead,
) -> Iterator[Value]:
    where, fluid = f"circuit {number}", refrigerant(plate.refrigerant)
    amps = tuple(a * compressor_rla(plate) for a in read.amps)
    if not read.running and plate.three_phase:
        amps = (0.0, 0.0, 0.0)
    yield Value("compressor-amps", f"compressor {number}", amps, "A")
    fan = read.fan.drawn.amps / rated(FAN).amps * 0.92 * condenser_fan_fla(plate)
    yield Value("condenser-fan-amps", f"condenser fan {number}", (fan,), "A")
    where_fan = f"capacitor condenser fan {number}"
    yield from _capacitor(where_fan, wrong.fan_capacitor, FAN_MICROFARADS, read.fan, FAN)
    if not plate.three_phase:
        yield from _capacitor(
            f"capacitor compressor {number}",
            wrong.compressor_capacitor,
            COMPRESSOR_MICROFARADS,
            read.start,
            COMPRESSOR,
        )
    yield Value("standing-pressure", where, (psig(read.standing),), "psig")
    if read.running is None:
        return
    drop = (wrong.pole_drop,) + ((0.1, 0.1) if plate.three_phase else ())
    yield Value("contactor-pole-drop", f"contactor {number}", drop, "V-drop")
    entering = fahrenheit(read.condenser_entering) - day.outdoor
    yield Value("condenser-air-entering", "", (entering,), "F-diff")
    yield Value("condenser-air-rise", "", (read.condenser_rise * 1.8,), "F-diff")
    yield from _refrigerant_values(fluid, where, read)


def _refrigerant_values(fluid: Refrigerant, where: str, read: CircuitRead) -> Iterator[Value]:
    now = read.running
    assert now is not None
    liquid = now.liquid_temperature(fluid)
    yield Value("suction-pressure", where, (psig(now.suction),), "psig")
    yield Value("head-pressure", where, (psig(now.head),), "psig")
    for test, celsius in (
        ("suction-line-temperature", now.suction_temperature(fluid)),
        ("liquid-line-temperature", liquid),
        ("drier-in-temperature", liquid),
        ("drier-out-temperature", now.device_temperature(fluid)),
        ("discharge-temperature", now.discharge_temperature(fluid)),
    ):
        yield Value(test, where, (fahrenheit(celsius),), "F")


def _capacitor(
    where: str, share: float, rating: float, motor: Turning | None, windings: Windings
) -> Iterator[Value]:
    """Out of circuit, and under load where the motor is known to turn."""
    yield Value("capacitance-out-of-circuit", where, (share * rating,), "uF")
    if motor is not None and motor.turns:
        volts = motor.drawn.capacitor_volts / rated(windings).capacitor_volts * CAPACITOR_VOLTS
        yield Value("capacitor-running-volts", where, (volts,), "V")
        yield Value("start-lead-amps", where, (share * rating * volts / MICROFARAD_VOLTS,), "A")


def fahrenheit(celsius: float) -> float:
    """Degrees F."""
    return celsius * 1.8 + 32.0


def typed(value: Value, dice: random.Random | None = None) -> dict[str, str]:
    """A reading as a case writes it, with the meter's error where dice are given."""
    meter = METERS[value.unit]
    shown = []
    for number in value.numbers:
        error = meter.share * abs(number) + meter.fixed if number else 0.0
        off = dice.uniform(-error, error) if dice is not None else 0.0
        shown.append(f"{number + off:.{meter.digits}f}")
    unit = {"F-diff": "F", "percent": "%", "V-drop": "V"}.get(value.unit, value.unit)
    row = {"test": value.test, "text": f"{'/'.join(shown)} {unit}"}
    return {**row, "at": value.at} if value.at else row
