"""What a unit's motors do on its day: the blower, the condenser's fan, the compressor's amps."""

from __future__ import annotations

from functools import cache
from typing import Final

from troubleshoot.physics import capacitor_motor, three_phase
from troubleshoot.physics.airside import AirPath, Blown, Hindered, blow
from troubleshoot.physics.capacitor_motor import COMPRESSOR, FAN, Turning, rated, turn
from troubleshoot.physics.circuit import Circuit, Running, run
from troubleshoot.physics.knobs import CircuitFaults, Faults
from troubleshoot.physics.sizing import RATED_AIR, RATED_OUTDOOR_C, Nameplate, built
from troubleshoot.physics.three_phase import Legs

RUNNING_SHARE: Final = 0.78
"""Amps at the rated point over the plate's rated-load amps (common practice, no source)."""


@cache
def built_once(plate: Nameplate) -> Circuit:
    """One circuit of such a unit, sized once."""
    return built(plate)


@cache
def rated_power(plate: Nameplate) -> float:
    """W of one circuit's compressor at the rated point."""
    aim = plate.design
    guess = aim.evaporating, RATED_OUTDOOR_C + aim.over_outdoor
    return run(built_once(plate), RATED_AIR, RATED_OUTDOOR_C, guess).compressed.power


def air_path(plate: Nameplate) -> AirPath:
    """The blower's path at rated flow."""
    return AirPath(plate.design.cfm_per_ton * plate.tons)


def blower(plate: Nameplate, faults: Faults) -> tuple[Blown, float, float, float]:
    """What it moves, its speed over rated, amps over full-load, W taken in.

    A three-phase blower drives by a belt and hardly slows; a single-phase one sits on its motor's
    shaft and turns as fast as its motor can.
    """
    wrong, pairs = faults.air, faults.supply.pairs
    hindered = Hindered(
        wrong.duct, wrong.filter, 1.0 + 6.0 * wrong.coil_dirt, 1.0 - wrong.wheel_dirt
    )
    path = air_path(plate)
    load = blow(path, hindered, 1.0).power
    watt = plate.design.blower_watt_per_cfm * path.cfm
    if plate.three_phase:
        speed = wrong.speed * (1.0 - wrong.belt_slip)
        drawn = three_phase.draw(0.8 * load * speed**3, pairs)
        power = watt * load * speed**3
        return blow(path, hindered, speed), speed, max(drawn.amps), power
    turning = turn(FAN, wrong.capacitor, pairs[0], load * wrong.speed**3)
    speed = turning.speed * wrong.speed
    amps = turning.drawn.amps / rated(FAN).amps
    power = watt * turning.drawn.power / rated(FAN).power
    return blow(path, hindered, max(speed, 0.02)), speed, 0.9 * amps, power


def condenser_fan_watt(plate: Nameplate) -> float:
    """W of one condenser fan at its rated point."""
    return plate.design.condenser_fan_watt_per_ton * plate.tons / plate.circuits


def condenser_fan(wrong: CircuitFaults, volts: float) -> Turning:
    """How the condenser's fan turns on `volts` over the plate's."""
    if wrong.fan_dead:
        return turn(FAN, wrong.fan_capacitor, 0.0)
    return turn(FAN, wrong.fan_capacitor, volts, drag=wrong.fan_drag)


def compressor_amps(
    plate: Nameplate, running: Running, wrong: CircuitFaults, pairs: Legs
) -> tuple[tuple[float, ...], Turning | None]:
    """Amps of each leg over rated-load amps, and how a single-phase one turns."""
    load = RUNNING_SHARE * running.compressed.power / rated_power(plate)
    if plate.three_phase:
        drop = max(wrong.pole_drop - 0.1, 0.0) / plate.volts
        return three_phase.draw(load, pairs, (drop, 0.0, 0.0)).amps, None
    volts = pairs[0] - max(wrong.pole_drop - 0.1, 0.0) / plate.volts
    start = turn(COMPRESSOR, wrong.compressor_capacitor, volts, load, grows=0.0)
    return (start.drawn.amps / capacitor_motor.rated(COMPRESSOR).amps,), start
