"""The gas train, the flame and the flue: input, flue gas, rise, draft, flame current.

Flow through an orifice goes with its area and the root of the pressure on it (National Fuel Gas
Code, annex on sizing orifices). Flue gas by the stoichiometry of methane. Heat to the air by one
exchanger of given conductance. Inches of water, Btu/h, degrees F, percent of dry flue gas, ppm.
"""

from __future__ import annotations

import math
from typing import Final

from troubleshoot.frozen import frozen

RATED_MANIFOLD: Final = 3.5
RATED_EXCESS: Final = 0.45
"""Excess air of an induced-draft heat section at its rating (common practice, no source)."""
VALVE_DROP: Final = 1.0
"""Inches of water that the valve takes at rated flow."""
_AIR_PER_GAS: Final = 9.52
_OXYGEN: Final = 0.2095
_HEAT_OF_METHANE: Final = 802.6
"""kJ/mol, water as vapour; 890.6 with it condensed."""
_LIQUID_SHARE: Final = 890.6 / 802.6
_RATED_CURRENT: Final = 4.0


@frozen
class GasSection:
    """What the plate says: Btu/h put in; the middle of its range of rise in F."""

    input: float = 115000.0
    rise: float = 45.0


@frozen
class GasFaults:
    """Inlet pressure with nothing firing and how much of it the pipe loses at rated flow (inches
    of water); the manifold's setting; orifice diameter over the right one; share of the burners
    blocked, of the flue blocked, of the exchanger's conductance lost to soot; inducer speed; what
    a coating leaves of the rod's current; the gas's heat in Btu/ft3."""

    inlet: float = 7.0
    pipe_drop: float = 0.4
    manifold: float = RATED_MANIFOLD
    orifice: float = 1.0
    burners_blocked: float = 0.0
    flue_blocked: float = 0.0
    soot: float = 0.0
    inducer: float = 1.0
    rod: float = 1.0
    heat_content: float = 1030.0


@frozen
class Fired:
    """What the heat section does in steady state."""

    inlet: float
    manifold: float
    input: float
    excess_air: float
    oxygen: float
    carbon_dioxide: float
    carbon_monoxide: float
    stack: float
    rise: float
    draft: float
    flame_current: float


def fire(section: GasSection, faults: GasFaults, cfm: float, air_f: float) -> Fired:
    """The heat section with this airflow, combustion air at `air_f`."""
    share, inlet, manifold = _gas(faults)
    air, draft = _combustion_air(faults)
    excess = (1.0 + RATED_EXCESS) * air / max(share, 0.02) - 1.0
    heat = section.input * share * faults.heat_content / 1030.0
    stack, kept = _exchanger(faults, share, excess, air_f)
    monoxide = _monoxide(excess) + 60.0 * faults.soot / (1.0 - min(faults.soot, 0.9))
    return Fired(
        inlet,
        manifold,
        heat,
        100.0 * excess,
        dry_flue_gas(excess)[0],
        dry_flue_gas(excess)[1],
        monoxide / (1.0 + max(excess, 0.0)),
        stack,
        heat * kept / (1.08 * cfm),
        draft,
        _current(faults, manifold, excess),
    )


def _gas(faults: GasFaults) -> tuple[float, float, float]:
    """Flow over rated, inlet with all firing, manifold: pipe, valve and orifice in one row."""
    area = faults.orifice**2 * (1.0 - faults.burners_blocked)
    share = 1.0
    for _ in range(60):
        inlet = max(faults.inlet - faults.pipe_drop * share**2, 0.0)
        manifold = max(min(faults.manifold, inlet - VALVE_DROP * share**2), 0.0)
        passed = area * math.sqrt(manifold / RATED_MANIFOLD)
        share += 0.4 * (passed - share)
    return share, inlet, manifold


def _combustion_air(faults: GasFaults) -> tuple[float, float]:
    """Air over rated, and the draft at the pressure switch in inches of water.

    The inducer pulls through burners and exchanger, then pushes through the flue; the switch sits
    ahead of the inducer, so that it reads the flow's drop through the exchanger.
    """
    open_share = max(1.0 - faults.flue_blocked, 0.02)
    inside, flue, inducer = 0.75, 0.25 / open_share**2, 1.6
    air = faults.inducer * math.sqrt(inducer / (inducer - 1.0 + inside + flue))
    return air, 0.95 * air**2


def dry_flue_gas(excess: float) -> tuple[float, float]:
    """Oxygen and carbon dioxide in percent of dry flue gas, for methane."""
    if excess <= 0.0:
        return 0.0, 100.0 / 8.52 * (1.0 + 0.5 * excess)
    gas = 1.0 + _AIR_PER_GAS * (1.0 - _OXYGEN) + _AIR_PER_GAS * excess
    return 100.0 * _AIR_PER_GAS * _OXYGEN * excess / gas, 100.0 / gas


def _monoxide(excess: float) -> float:
    """ppm free of air: little, until air runs short or the flame is blown cold."""
    short = 25000.0 * max(0.12 - excess, 0.0)
    starved = 200.0 * math.exp(-(excess - 0.10) / 0.045) if excess > 0 else 2000.0
    return min(25.0 + short + min(starved, 2000.0) + 120.0 * max(excess - 1.4, 0.0), 20000.0)


def _exchanger(faults: GasFaults, share: float, excess: float, air_f: float) -> tuple[float, float]:
    """Stack degrees F, and the share of the input (water condensed) that reaches the air."""
    moles = 1.0 + 2.0 + _AIR_PER_GAS * (1.0 + max(excess, 0.0)) - 2.0
    per_f = moles * 33.0 / 1.8 / 1000.0
    burnt = min(1.0, 1.0 + excess)
    flame = _HEAT_OF_METHANE * burnt / per_f
    gas_flow = share * moles
    rated_flow = 1.0 + _AIR_PER_GAS * (1.0 + RATED_EXCESS)
    units = 2.35 * (1.0 - faults.soot) * (rated_flow / gas_flow) ** 0.45
    stack = air_f + 60.0 + (flame - 60.0) * math.exp(-units)
    kept = burnt - per_f * (stack - air_f) / _HEAT_OF_METHANE
    return stack, max(kept, 0.05) / _LIQUID_SHARE


def _current(faults: GasFaults, manifold: float, excess: float) -> float:
    """uA: a flame that is weak or stands off the rod touches less of it."""
    reach: float = min(manifold / RATED_MANIFOLD, 1.3) ** 0.6
    lean = 1.0 / (1.0 + 0.6 * max(excess - 0.9, 0.0))
    return _RATED_CURRENT * faults.rod * reach * lean
