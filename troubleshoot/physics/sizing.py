"""A unit built to its nameplate: parts sized so that the rated point comes out.

Rated point: AHRI 210/240 and 340/360, 95 F outdoors, 80 F dry bulb and 67 F wet bulb entering.
What the design aims at there (evaporating, condensing, superheat, subcooling) is given; how the
unit behaves anywhere else follows.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Final, Literal

from scipy.optimize import brentq

from troubleshoot.frozen import frozen
from troubleshoot.physics.charge import Volumes, in_circuit
from troubleshoot.physics.circuit import SUCTION_GAIN, Circuit
from troubleshoot.physics.coils import Coil, condense, evaporate
from troubleshoot.physics.compressor import Compressor, compress
from troubleshoot.physics.metering import VALVE_RESERVE, VALVE_SPAN_K, Liquid, Metering, flow
from troubleshoot.physics.moist import from_wet_bulb
from troubleshoot.physics.refrigerant import Refrigerant, refrigerant

RATED_OUTDOOR_C: Final = 35.0
RATED_AIR: Final = from_wet_bulb(26.67, 19.44)
WATT_PER_TON: Final = 3516.85
KG_S_PER_CFM: Final = 0.00047195 * 1.2
"""Dry air of 0.075 lb/ft3, as airflow is rated."""
AIR_RISE_SHARE: Final = 0.72
"""Rise of the condenser's air over what condensing lies above it (common practice, no source)."""

Device = Literal["txv", "fixed-orifice"]


@frozen
class Design:
    """What a unit is built for at the rated point; degrees C and K.

    The defaults lie among the six packaged units of the reference tests.
    """

    evaporating: float = 9.5
    over_outdoor: float = 11.0
    superheat: float = 6.0
    subcooling: float = 5.5
    cfm_per_ton: float = 390.0
    compressor_efficiency: float = 0.70
    blower_watt_per_cfm: float = 0.36
    condenser_fan_watt_per_ton: float = 65.0


@frozen
class Nameplate:
    """What the plate says: the refrigerant, tons in all, circuits, device, supply and blower."""

    refrigerant: str = "R-410A"
    tons: float = 5.0
    circuits: int = 1
    metering: Device = "txv"
    volts: float = 460.0
    three_phase: bool = True
    gas_input: float = 115000.0
    design: Design = Design()


def volumes_for(watt: float) -> Volumes:
    """Inside volumes of a circuit of this capacity (round tubes: common practice, no source)."""
    per = watt / WATT_PER_TON / 1000.0
    return Volumes(1.15 * per, 1.05 * per, 0.16 * per, 0.9 * per)


@frozen
class _Point:
    """The rated point: degrees C, Pa, J/kg, kg/s; J/kg of the discharge gas."""

    evaporating: float
    condensing: float
    suction: float
    leaving: float
    liquid: Liquid
    flow: float
    gas: float


def built(plate: Nameplate) -> Circuit:
    """One circuit of the unit, sound and charged right."""
    aim, fluid = plate.design, refrigerant(plate.refrigerant)
    tons = plate.tons / plate.circuits
    watt = tons * (WATT_PER_TON + aim.blower_watt_per_cfm * aim.cfm_per_ton)
    machine, at = _rated_point(plate, watt)
    hot = _condenser(fluid, aim, at)
    cold = _evaporator(fluid, at, aim.cfm_per_ton * tons * KG_S_PER_CFM)
    condensed = condense(fluid, hot, at.condensing, at.flow, at.gas, RATED_OUTDOOR_C)
    cooled = evaporate(fluid, cold, at.evaporating, at.flow, at.liquid.enthalpy, RATED_AIR)
    volumes = volumes_for(watt)
    high, low = (at.condensing, condensed), (at.evaporating, cooled)
    charge = in_circuit(fluid, volumes, high, low, at.liquid)
    device = _metering(plate, at)
    return Circuit(plate.refrigerant, machine, hot, cold, device, volumes, charge)


def _rated_point(plate: Nameplate, watt: float) -> tuple[Compressor, _Point]:
    """A compressor that moves what so much cooling takes, and the states it works between."""
    aim, fluid = plate.design, refrigerant(plate.refrigerant)
    te, tc = aim.evaporating, RATED_OUTDOOR_C + aim.over_outdoor
    suction, head = fluid.dew_pressure(te), fluid.bubble_pressure(tc)
    leaving = fluid.superheated(te, aim.superheat)[0]
    liquid = fluid.liquid_enthalpy(tc - aim.subcooling)
    moved = watt / (leaving - liquid)
    one = Compressor(1e-3, aim.compressor_efficiency)
    by_one = compress(fluid, one, te, leaving + SUCTION_GAIN, head)
    machine = replace(one, displacement=1e-3 * moved / by_one.flow)
    return machine, _Point(te, tc, suction, leaving, Liquid(head, liquid), moved, by_one.discharge)


def _condenser(fluid: Refrigerant, aim: Design, at: _Point) -> Coil:
    rejected = at.flow * (at.gas - at.liquid.enthalpy)
    air = rejected / (AIR_RISE_SHARE * aim.over_outdoor) / 1010.0

    def off(conductance: float) -> float:
        coil = Coil(conductance, air)
        made = condense(fluid, coil, at.condensing, at.flow, at.gas, RATED_OUTDOOR_C)
        return made.enthalpy - at.liquid.enthalpy

    return Coil(_between(off, air * 1010.0), air)


def _evaporator(fluid: Refrigerant, at: _Point, air: float) -> Coil:
    def off(conductance: float) -> float:
        coil = Coil(conductance, air)
        made = evaporate(fluid, coil, at.evaporating, at.flow, at.liquid.enthalpy, RATED_AIR)
        return made.enthalpy - at.leaving

    return Coil(_between(off, air * 1010.0), air)


def rated_flow(circuit: Circuit, design: Design) -> float:
    """kg/s at the rated point."""
    fluid = refrigerant(circuit.refrigerant)
    leaving = fluid.superheated(design.evaporating, design.superheat)[0] + SUCTION_GAIN
    head = fluid.bubble_pressure(RATED_OUTDOOR_C + design.over_outdoor)
    return compress(fluid, circuit.compressor, design.evaporating, leaving, head).flow


def _between(off: Callable[[float], float], scale: float) -> float:
    """The conductance in W/K that brings the error to nought."""
    return float(brentq(off, 0.02 * scale, 40.0 * scale, xtol=0.1))


def _metering(plate: Nameplate, at: _Point) -> Metering:
    fluid, aim = refrigerant(plate.refrigerant), plate.design
    device = Metering(1e-6)
    if plate.metering == "txv":
        device = Metering(1e-6, aim.superheat - VALVE_SPAN_K / VALVE_RESERVE)
    passed = flow(fluid, device, at.liquid, at.suction, aim.superheat)
    return replace(device, area=1e-6 * at.flow / passed)
