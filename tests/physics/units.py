"""Units of the checks, and what is read off one circuit, in the trade's units."""

from __future__ import annotations

from troubleshoot.frozen import changed, frozen
from troubleshoot.physics.circuit import Circuit, Running, run
from troubleshoot.physics.coils import Coil
from troubleshoot.physics.knobs import CircuitFaults, Day, Faults
from troubleshoot.physics.moist import Air, from_wet_bulb
from troubleshoot.physics.refrigerant import refrigerant
from troubleshoot.physics.sizing import RATED_AIR, RATED_OUTDOOR_C, Design, Nameplate, built
from troubleshoot.physics.unit import PSI, cool

OF_THE_NINETIES = Design(
    evaporating=7.5,
    over_outdoor=15.5,
    superheat=6.5,
    subcooling=6.0,
    compressor_efficiency=0.62,
)
"""A unit of the efficiency that the published tests of the nineties were made on."""
FIXED = Nameplate("R-22", 3.0, 1, "fixed-orifice", 230.0, False, 75000.0, OF_THE_NINETIES)
VALVE = Nameplate("R-410A", 3.0, 1, "txv", 460.0, True, 75000.0)
RATED_DAY = Day()


@frozen
class Seen:
    """F, psig, W; superheat at the compressor, subcooling by the head's bubble point, the air's
    rise and drop in F."""

    evaporating: float
    condensing: float
    superheat: float
    subcooling: float
    discharge: float
    condenser_rise: float
    air_drop: float
    suction: float
    head: float
    capacity: float
    power: float

    @property
    def energy_ratio(self) -> float:
        """Power over capacity."""
        return self.power / self.capacity


def seen(circuit: Circuit, now: Running, entering: Air) -> Seen:
    """What is read off a circuit."""
    fluid = refrigerant(circuit.refrigerant)
    condensing = fluid.bubble_temperature(now.head)
    return Seen(
        fahrenheit(now.evaporating),
        fahrenheit(condensing),
        1.8 * (now.suction_temperature(fluid) - now.evaporating),
        1.8 * (condensing - now.liquid_temperature(fluid)),
        fahrenheit(now.discharge_temperature(fluid)),
        1.8 * now.condensed.heat / (circuit.condenser.air * 1010.0),
        1.8 * (entering.dry_bulb - now.evaporated.air.dry_bulb),
        now.suction / PSI - 14.696,
        now.head / PSI - 14.696,
        now.evaporated.heat,
        now.compressed.power,
    )


def of_circuit(plate: Nameplate, **news: object) -> Seen:
    """One circuit at the rated point, with parts of it changed."""
    circuit = changed(built(plate), **news)
    now = run(circuit, RATED_AIR, RATED_OUTDOOR_C, (9.0, 46.0))
    assert now.settled
    return seen(circuit, now, RATED_AIR)


def with_condenser_air(plate: Nameplate, share: float) -> Seen:
    """Less air over the condenser; the coil's conductance goes with its root."""
    hot = built(plate).condenser
    return of_circuit(plate, condenser=Coil(hot.conductance * share**0.5, hot.air * share))


def with_indoor_air(plate: Nameplate, share: float) -> Seen:
    """Less air over the evaporator."""
    cold = built(plate).evaporator
    return of_circuit(plate, evaporator=Coil(cold.conductance * share**0.6, cold.air * share))


def of_unit(plate: Nameplate, day: Day = RATED_DAY, **wrong: object) -> Seen:
    """The whole unit, with faults of its circuit."""
    faults = Faults(refrigerant=changed(CircuitFaults(), **wrong))
    made = cool(plate, faults, day)
    read = made.circuits[0]
    assert read.running is not None, read.stopped
    found = seen(built(plate), read.running, made.entering)
    return changed(found, condenser_rise=1.8 * read.condenser_rise)


def on_a_day(plate: Nameplate, outdoor: float, dry_bulb: float, wet_bulb: float) -> Seen:
    """A sound circuit with this air in F."""
    circuit = built(plate)
    air = from_wet_bulb((dry_bulb - 32) / 1.8, (wet_bulb - 32) / 1.8)
    out = (outdoor - 32) / 1.8
    now = run(circuit, air, out, (9.0, out + 11))
    assert now.settled
    return seen(circuit, now, air)


def fahrenheit(celsius: float) -> float:
    """Degrees F."""
    return celsius * 1.8 + 32.0
