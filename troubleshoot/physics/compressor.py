"""A hermetic compressor: what it moves, what it takes, how hot the gas leaves.

Volumetric and overall isentropic efficiency by pressure ratio, as scroll machines of comfort
cooling have them (the shape is a fit by eye: common practice, no source).
"""

from __future__ import annotations

import math
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.physics.refrigerant import Refrigerant

SHELL_LOSS: Final = 0.05
"""Share of the electric power that leaves by the shell instead of with the gas."""
_BEST_RATIO: Final = 2.7
_LEAK_ROUNDS: Final = 3


@frozen
class Compressor:
    """`displacement` in m3/s; `efficiency`: electric to isentropic at its best pressure ratio."""

    displacement: float
    efficiency: float


@frozen
class Compressed:
    """What leaves: kg/s net of what leaks back, J/kg, W electric."""

    flow: float
    discharge: float
    power: float


def volumetric_efficiency(ratio: float) -> float:
    """Share of the displacement that is filled, by pressure ratio."""
    return max(0.985 - 0.022 * (ratio - 1.0), 0.2)


def isentropic_efficiency(ratio: float, best: float) -> float:
    """Isentropic over electric work: falls to both sides of the ratio that it is built for."""
    return float(max(best * (1.0 - 0.28 * math.log(ratio / _BEST_RATIO) ** 2), 0.15))


def compress(
    fluid: Refrigerant,
    machine: Compressor,
    suction_c: float,
    enthalpy: float,
    head: float,
    leak: float = 0.0,
) -> Compressed:
    """Gas at the dew point `suction_c` and J/kg pumped to `head` Pa; `leak`: kg/s back through.

    What leaks back is compressed again, and heats what is drawn in. Wet gas is pumped as a
    mixture of its liquid and vapour.
    """
    ratio = max(head / fluid.dew_pressure(suction_c), 1.05)
    filled = machine.displacement * volumetric_efficiency(ratio)
    efficiency = isentropic_efficiency(ratio, machine.efficiency)
    head_dew = fluid.dew_temperature(head)
    inside, discharge, flow, power = enthalpy, enthalpy, 0.0, 0.0
    for _ in range(_LEAK_ROUNDS if leak else 1):
        pumped = filled * _density(fluid, suction_c, inside)
        work = _isentropic_work(fluid, suction_c, inside, head_dew) / efficiency
        flow = max(pumped - leak, 0.02 * pumped)
        power = pumped * work
        discharge = enthalpy + (1.0 - SHELL_LOSS) * power / flow
        share = 1.0 - flow / pumped
        inside = enthalpy + share * (discharge - enthalpy)
    return Compressed(flow, discharge, power)


def _density(fluid: Refrigerant, dew_c: float, enthalpy: float) -> float:
    saturated = fluid.vapour_enthalpy(dew_c)
    if enthalpy >= saturated:
        return fluid.superheated(dew_c, fluid.superheat(dew_c, enthalpy))[2]
    latent = saturated - fluid.liquid_enthalpy(dew_c)
    quality = min(max(1.0 - (saturated - enthalpy) / latent, 0.3), 1.0)
    return fluid.vapour_density(dew_c) / quality


def _isentropic_work(fluid: Refrigerant, dew_c: float, enthalpy: float, head_dew: float) -> float:
    """J/kg; for wet gas that of the saturated vapour, shared by quality, its liquid left out."""
    superheat = max(fluid.superheat(dew_c, enthalpy), 0.0)
    start, entropy, _ = fluid.superheated(dew_c, superheat)
    after = fluid.superheat_at_entropy(head_dew, entropy)
    work = fluid.superheated(head_dew, after)[0] - start
    if enthalpy < start:
        latent = start - fluid.liquid_enthalpy(dew_c)
        work *= min(max(1.0 - (start - enthalpy) / latent, 0.3), 1.0)
    return max(work, 500.0)
