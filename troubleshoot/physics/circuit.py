"""One refrigerant circuit in steady state: three balances, three unknowns.

Unknown: the dew point in the evaporator, the bubble point in the condenser, the enthalpy that
leaves the evaporator. Balanced: what the device passes against what the compressor moves, what the
evaporator gives against what leaves it, and where all of the charge is. Newton with a line search;
where that fails, one bracketed search inside another, which cannot.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.physics import charge as charge_of
from troubleshoot.physics.charge import Volumes
from troubleshoot.physics.coils import Coil, Condensed, Evaporated, condense, evaporate
from troubleshoot.physics.compressor import Compressed, Compressor, compress
from troubleshoot.physics.metering import Liquid, Metering, density, flow
from troubleshoot.physics.moist import Air
from troubleshoot.physics.refrigerant import Refrigerant, refrigerant
from troubleshoot.physics.solving import Box, solve

SUCTION_GAIN: Final = 1200.0
"""J/kg that the suction line takes up on its way through the cabinet."""
GAS_CONSTANT: Final = 8.314
_GAS_ROOM: Final = 0.6
"""Share of a condenser's volume that gas which does not condense spreads over."""
_BLANKET: Final = 2.5
"""Loss of a condenser's conductance by the share of pressure that does not condense (ours)."""
_STARTS: Final = (
    (0.0, 0.0, 5.0), (-8.0, -2.0, 15.0), (-22.0, -5.0, 30.0), (3.0, 2.0, -8.0), (2.0, 12.0, 2.0)
)  # fmt: skip
"""K by which starts of the search differ from the guess, and their superheat."""


@frozen
class Circuit:
    """What a circuit is built of and works on, faults included.

    `restriction`: Pa of liquid line at one (kg/s)2 and 1000 kg/m3. `leak_share`: kg/s back through
    the compressor at 1 MPa. `strange_gas`: mol that do not condense. `charge` in kg.
    """

    refrigerant: str
    compressor: Compressor
    condenser: Coil
    evaporator: Coil
    metering: Metering
    volumes: Volumes
    charge: float
    restriction: float = 0.0
    leak_share: float = 0.0
    strange_gas: float = 0.0


@frozen
class Running:
    """A circuit at work. Temperatures in degrees C, pressures in Pa, kg/s, W.

    `settled` is False where no steady state lies within what the tables hold: at their upper end
    the high-pressure switch has long opened, at the lower one the low-pressure switch.
    """

    suction: float
    head: float
    evaporating: float
    condensing: float
    compressed: Compressed
    condensed: Condensed
    evaporated: Evaporated
    before_device: Liquid
    charge: float
    settled: bool

    def suction_temperature(self, fluid: Refrigerant) -> float:
        """Degrees C of the suction line at the compressor."""
        enthalpy = self.evaporated.enthalpy + SUCTION_GAIN
        over = fluid.superheat(self.evaporating, enthalpy)
        return self.evaporating + max(over, 0.0)

    def liquid_temperature(self, fluid: Refrigerant) -> float:
        """Degrees C of the liquid line at the condenser."""
        return min(fluid.liquid_temperature(self.condensed.enthalpy), self.condensing)

    def discharge_temperature(self, fluid: Refrigerant) -> float:
        """Degrees C of the discharge line."""
        dew = fluid.dew_temperature(self.head)
        return dew + max(fluid.superheat(dew, self.compressed.discharge), 0.0)

    def device_temperature(self, fluid: Refrigerant) -> float:
        """Degrees C of the liquid line behind the drier: it boils there if pressure is too low."""
        boiling = fluid.bubble_temperature(self.before_device.pressure)
        return min(self.liquid_temperature(fluid), boiling)


@frozen
class _State:
    running: Running
    off: tuple[float, float, float]


def run(circuit: Circuit, air: Air, outdoor: float, guess: tuple[float, float]) -> Running:
    """The steady state with this air on the evaporator and `outdoor` degrees C on the condenser.

    `guess`: evaporating and condensing temperature to begin from.
    """
    fluid = refrigerant(circuit.refrigerant)

    def state(te: float, tc: float, leaving: float) -> _State:
        return _state(fluid, circuit, air, outdoor, te, tc, leaving)

    low_h = fluid.liquid_enthalpy(0.0)
    high_h = fluid.superheated(5.0, 60.0)[0]
    box = Box(
        (-49.0, outdoor + 0.3, low_h),
        (air.dry_bulb - 0.3, fluid.highest, high_h),
        (1.0, 1.0, 2000.0),
    )
    starts = (
        (guess[0] + colder, guess[1] + cooler, fluid.superheated(guess[0] + colder, over)[0])
        for colder, cooler, over in _STARTS
    )
    found, settled = solve(lambda x: state(*x).off, starts, box)
    made = state(*found).running
    return replace(made, settled=settled)


def _state(
    fluid: Refrigerant,
    circuit: Circuit,
    air: Air,
    outdoor: float,
    te: float,
    tc: float,
    leaving: float,
) -> _State:
    volumes = circuit.volumes
    own = fluid.bubble_pressure(tc)
    strange = circuit.strange_gas * GAS_CONSTANT * (tc + 273.15) / (_GAS_ROOM * volumes.condenser)
    head, suction = own + strange, fluid.dew_pressure(te)
    leak = circuit.leak_share * max(head - suction, 0.0) / 1e6
    pumped = compress(fluid, circuit.compressor, te, leaving + SUCTION_GAIN, head, leak)
    blanket = 1.0 / (1.0 + _BLANKET * strange / head)
    coil = Coil(circuit.condenser.conductance * blanket, circuit.condenser.air)
    condensed = condense(fluid, coil, tc, pumped.flow, pumped.discharge, outdoor)
    before = Liquid(head, condensed.enthalpy)
    drop = circuit.restriction * pumped.flow**2 * 1000.0 / density(fluid, before)
    after = Liquid(max(head - drop, 0.3 * suction), condensed.enthalpy)
    superheat = fluid.superheat(te, leaving)
    passed = flow(fluid, circuit.metering, after, suction, superheat)
    cold = evaporate(fluid, circuit.evaporator, te, pumped.flow, condensed.enthalpy, air)
    held = charge_of.in_circuit(fluid, volumes, (tc, condensed), (te, cold), before)
    off = (
        passed / pumped.flow - 1.0,
        (cold.enthalpy - leaving) / 2e4,
        (held - circuit.charge) / circuit.charge,
    )
    running = Running(suction, head, te, tc, pumped, condensed, cold, after, held, settled=True)
    return _State(running, off)
