"""The whole unit on one day: supply, control, fans, air, circuits, put together.

Cooling runs everything that its faults leave running. A switch that the steady state would open
has opened (`stopped`): then the circuit stands and its parts read as a standing circuit's do.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.physics import moist
from troubleshoot.physics.airside import Blown
from troubleshoot.physics.capacitor_motor import FAN, Turning, rated
from troubleshoot.physics.charge import standing_pressure
from troubleshoot.physics.circuit import GAS_CONSTANT, Circuit, Running, run
from troubleshoot.physics.coils import Coil
from troubleshoot.physics.control import Control, control
from troubleshoot.physics.drives import (
    air_path,
    blower,
    built_once,
    compressor_amps,
    condenser_fan,
    condenser_fan_watt,
)
from troubleshoot.physics.gas_heat import Fired, GasSection, fire
from troubleshoot.physics.knobs import CircuitFaults, Day, Faults
from troubleshoot.physics.metering import Metering
from troubleshoot.physics.moist import ATMOSPHERE, Air
from troubleshoot.physics.refrigerant import refrigerant
from troubleshoot.physics.sizing import KG_S_PER_CFM, RATED_OUTDOOR_C, Nameplate, rated_flow

PSI: Final = 6894.757
SWITCHES: Final[Mapping[str, tuple[float, float]]] = MappingProxyType(
    {"R-22": (25.0, 400.0), "R-410A": (50.0, 610.0), "R-32": (50.0, 640.0), "R-454B": (45.0, 610.0)}
)
"""psig at which the low- and the high-pressure switch open (common practice, no source)."""
_NATURAL: Final = 0.06
"""Flow through a condenser whose fan stands, over rated."""
_FACE_SHARE: Final = 0.5
"""Share of the condenser's air path that its face resists, the rest being fan and cabinet."""


@frozen
class CircuitRead:
    """One circuit: its steady state (None where the compressor stands), the fan of its condenser,
    amps of the compressor's legs, standing pressure in Pa, degrees C of the air on the condenser
    and its rise in K, kg it holds; `stopped` names the switch or fault that keeps it off."""

    running: Running | None
    fan: Turning
    amps: tuple[float, ...]
    start: Turning | None
    standing: float
    condenser_entering: float
    condenser_rise: float
    charge: float
    stopped: str


@frozen
class Cooling:
    """The unit on a call for cooling. W of cooling counts the blower's heat off."""

    circuits: tuple[CircuitRead, ...]
    air: Blown
    blower_speed: float
    blower_amps: float
    entering: Air
    supply: Air
    control: Control
    cooling: float
    power: float

    @property
    def eer(self) -> float:
        """Btu/h over W."""
        return self.cooling * 3.412142 / self.power


def psig(pascal: float) -> float:
    """What a gauge shows at sea level."""
    return pascal / PSI - 14.696


def celsius(fahrenheit: float) -> float:
    """Degrees C."""
    return (fahrenheit - 32.0) / 1.8


def entering_air(day: Day) -> Air:
    """Air on the indoor coil: return air, with its share of outdoor air at 45 % humidity."""
    back = moist.from_wet_bulb(celsius(day.dry_bulb), celsius(day.wet_bulb))
    outside = celsius(day.outdoor)
    fresh = Air(outside, 0.45 * moist.saturated_humidity(outside))
    return moist.mixed(back, fresh, day.outdoor_air)


def cool(plate: Nameplate, faults: Faults, day: Day) -> Cooling:
    """The unit's steady state on a call for cooling."""
    chain = control(faults.supply.pairs[0], faults.supply.tap, faults.supply.cable_ohms)
    blown, speed, blower_amps, blower_power = blower(plate, faults)
    entering = entering_air(day)
    reads = tuple(_circuits(plate, faults, day, chain, blown, entering))
    supply, taken, power = entering, 0.0, blower_power
    for number, read in enumerate(reads, start=1):
        leaving = read.running.evaporated.air if read.running else entering
        supply = moist.mixed(supply, leaving, 1.0 / number)
        if read.running:
            taken += read.running.evaporated.heat
            power += read.running.compressed.power
        power += read.fan.drawn.power / rated(FAN).power * condenser_fan_watt(plate)
    warmed = blower_power / (blown.cfm * KG_S_PER_CFM * supply.specific_heat)
    supply = Air(supply.dry_bulb + warmed, supply.humidity)
    return Cooling(
        reads, blown, speed, blower_amps, entering, supply, chain, taken - blower_power, power
    )


def heat(plate: Nameplate, faults: Faults, day: Day) -> tuple[Fired, Blown]:
    """The gas section on a call for heat, dry coil counted as wet."""
    blown = blower(plate, faults)[0]
    return fire(GasSection(plate.gas_input), faults.gas, blown.cfm, day.outdoor), blown


def _circuits(
    plate: Nameplate, faults: Faults, day: Day, chain: Control, blown: Blown, entering: Air
) -> Iterator[CircuitRead]:
    for number in range(1, plate.circuits + 1):
        yield _circuit(plate, faults.of_circuit(number), faults, day, chain, blown, entering)


def _circuit(
    plate: Nameplate,
    wrong: CircuitFaults,
    faults: Faults,
    day: Day,
    chain: Control,
    blown: Blown,
    entering: Air,
) -> CircuitRead:
    pairs, outdoor = faults.supply.pairs, celsius(day.outdoor)
    fan = condenser_fan(wrong, pairs[0])
    indoor = blown.cfm / air_path(plate).cfm
    circuit = _with_faults(plate, wrong, fan.speed, indoor, faults.air.coil_dirt)
    standing = _standing(circuit, outdoor)
    around = outdoor + wrong.recirculation / 1.8
    off = _kept_off(faults, chain)
    if off:
        return CircuitRead(None, fan, (0.0,), None, standing, around, 0.0, circuit.charge, off)
    running = run(circuit, entering, around, (plate.design.evaporating, around + 11.0))
    amps, start = compressor_amps(plate, running, wrong, pairs)
    if start is not None and not start.turns:
        off = "will not start"
        return CircuitRead(None, fan, amps, start, standing, around, 0.0, circuit.charge, off)
    off = _opened(plate, running, around)
    if off:
        none = tuple(0.0 for _ in amps)
        return CircuitRead(None, fan, none, start, standing, around, 0.0, circuit.charge, off)
    rise = running.condensed.heat / (circuit.condenser.air * 1010.0)
    return CircuitRead(running, fan, amps, start, standing, around, rise, circuit.charge, "")


def _standing(circuit: Circuit, outdoor: float) -> float:
    """Pa of the circuit at rest; what does not condense spreads over half of it."""
    fluid, volumes = refrigerant(circuit.refrigerant), circuit.volumes
    strange = circuit.strange_gas * GAS_CONSTANT * (outdoor + 273.15) / (0.5 * volumes.all)
    return standing_pressure(fluid, volumes, circuit.charge, outdoor) + strange


def _kept_off(faults: Faults, chain: Control) -> str:
    if faults.supply.reversed:
        return "turns backward"
    return "" if chain.pulls_in else "contactor out"


def _with_faults(
    plate: Nameplate, wrong: CircuitFaults, fan_speed: float, indoor: float, dirt: float
) -> Circuit:
    """The circuit with what is wrong in it and on its coils; `indoor`: airflow over rated."""
    sound, aim, fluid = built_once(plate), plate.design, refrigerant(plate.refrigerant)
    flow = rated_flow(sound, aim)
    rated_head = fluid.bubble_pressure(RATED_OUTDOOR_C + aim.over_outdoor)
    difference = rated_head - fluid.dew_pressure(aim.evaporating)
    open_face = max(1.0 - wrong.coil_blocked, 0.05)
    air = max(fan_speed, _NATURAL) / (1.0 - _FACE_SHARE + _FACE_SHARE / open_face**2) ** 0.5
    hot, cold = sound.condenser, sound.evaporator
    return replace(
        sound,
        condenser=Coil(hot.conductance * (air * open_face) ** 0.5, hot.air * air),
        evaporator=Coil(cold.conductance * indoor**0.6 * (1.0 - dirt), cold.air * indoor),
        metering=_device(sound.metering, wrong),
        charge=sound.charge * wrong.charge,
        restriction=wrong.restriction * difference / flow**2,
        leak_share=wrong.valve_leak * flow / (difference / 1e6),
        strange_gas=wrong.strange_gas * ATMOSPHERE * sound.volumes.all / (GAS_CONSTANT * 295.0),
    )


def _device(device: Metering, wrong: CircuitFaults) -> Metering:
    if device.opens_at is None:
        return replace(device, area=device.area * wrong.orifice)
    return replace(device, most=wrong.valve_most, least=wrong.valve_least)


def _opened(plate: Nameplate, running: Running, outdoor: float) -> str:
    """The switch that this state opens.

    Past the tables' ends the high one has opened long ago; where too little is left to condense at
    all, the low one has.
    """
    low, high = SWITCHES[plate.refrigerant]
    head, suction = psig(running.head), psig(running.suction)
    if head > high or running.condensing > refrigerant(plate.refrigerant).highest - 0.5:
        return "high-pressure switch"
    empty = not running.settled and running.condensing < outdoor + 1.0
    return "low-pressure switch" if suction < low or empty else ""
