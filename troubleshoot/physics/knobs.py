"""What can be wrong with a unit, and the day it is read on: one number each, sound by default.

Severity is the number; any two may be turned at once.
"""

from __future__ import annotations

from troubleshoot.frozen import frozen
from troubleshoot.physics.gas_heat import GasFaults


@frozen
class Day:
    """Outdoor and return air in F; the share of outdoor air by mass in what enters the coil."""

    outdoor: float = 95.0
    dry_bulb: float = 80.0
    wet_bulb: float = 67.0
    outdoor_air: float = 0.0


@frozen
class CircuitFaults:
    """`charge`: over the right one. `restriction`: drop in the liquid line at rated flow over the
    rated difference of head and suction. `strange_gas`: share of the circuit's volume that air of
    one atmosphere filled. `valve_leak`: flow back through the compressor over rated.

    `valve_most`: share of its area that a thermostatic valve can still open (underfeeding);
    `valve_least`: share that it can no longer close (overfeeding); `orifice`: area of a fixed
    orifice over the right one. `coil_blocked`: share of the condenser's face. `recirculation`: F by
    which its air enters warmer. `fan_capacitor`: over its rating; `fan_drag`: torque over rated;
    `fan_dead`: it has no supply.
    """

    charge: float = 1.0
    restriction: float = 0.0
    strange_gas: float = 0.0
    valve_leak: float = 0.0
    valve_most: float = 1.0
    valve_least: float = 0.02
    orifice: float = 1.0
    coil_blocked: float = 0.0
    recirculation: float = 0.0
    fan_capacitor: float = 1.0
    fan_drag: float = 0.0
    fan_dead: bool = False
    compressor_capacitor: float = 1.0
    pole_drop: float = 0.1


@frozen
class AirFaults:
    """Factors on the drops of filter and duct at equal flow; `coil_dirt`: share of the coil's
    conductance lost, its drop rises with it; `belt_slip`: share of speed lost; `wheel_dirt`: share
    of the wheel's pressure lost; `capacitor`: over its rating, of a direct-drive blower."""

    filter: float = 1.0
    duct: float = 1.0
    coil_dirt: float = 0.0
    belt_slip: float = 0.0
    wheel_dirt: float = 0.0
    speed: float = 1.0
    capacitor: float = 1.0


@frozen
class SupplyFaults:
    """Volts of the pairs 1-2, 2-3 and 3-1 over the plate's; ohms of the thermostat's wires out and
    back; the transformer's secondary over what its tap should give."""

    pairs: tuple[float, float, float] = (1.0, 1.0, 1.0)
    cable_ohms: float = 1.4
    tap: float = 1.0
    reversed: bool = False


@frozen
class Faults:
    """Everything that can be wrong at once.

    Faults of a refrigerant circuit are in the one that `circuit` numbers, in all of them where it
    is 0, as dirt and warm air come to all.
    """

    circuit: int = 1
    refrigerant: CircuitFaults = CircuitFaults()
    air: AirFaults = AirFaults()
    supply: SupplyFaults = SupplyFaults()
    gas: GasFaults = GasFaults()

    def of_circuit(self, number: int) -> CircuitFaults:
        """What is wrong in this circuit."""
        return self.refrigerant if self.circuit in (0, number) else CircuitFaults()
