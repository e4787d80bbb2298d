"""What the flue gas tells: CO free of air, excess air, carbon dioxide, stack loss.

Oxygen and carbon dioxide in percent of the dry flue gas, measured ahead of any dilution; carbon
monoxide in ppm; temperatures in °F.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.quantities.ranges import OutOfRange, require
from troubleshoot.quantities.units import convert

OXYGEN_IN_AIR: Final = 20.9
"""Oxygen in dry air, percent, as combustion analysers and ANSI Z21 take it."""

HIGHEST_CO_AIR_FREE: Final = 400.0
"""Carbon monoxide allowed in the flue gas of vented heating, ppm free of air (ANSI Z21 series)."""

Gas = Literal["natural-gas", "methane", "propane"]


@frozen
class _Fuel:
    """`flue_share`: dry flue gas over air, both without excess; highest carbon dioxide, percent."""

    flue_share: float
    highest_carbon_dioxide: float


GASES: Final[Mapping[Gas, _Fuel]] = MappingProxyType(
    {
        "natural-gas": _Fuel(0.92, 11.8),
        "methane": _Fuel(8.52 / 9.52, 100 / 8.52),
        "propane": _Fuel(21.8 / 23.8, 300 / 21.8),
    }
)
"""Methane and propane by stoichiometry with 3.76 parts of nitrogen to one of oxygen. Natural gas:
0.92 gives the published process-heating figures for a pipeline gas of 94 % methane within 2.5 %."""


def co_air_free(co_ppm: float, o2_percent: float) -> float:
    """Return the carbon monoxide in ppm that the flue gas would hold without excess air.

    CO x 20.9 / (20.9 - O2) (ANSI Z21 combustion test). Raises OutOfRange at or above 20.5 % oxygen,
    where the sample is air.
    """
    require("co", co_ppm, "ppm", at_least=0)
    _require_flue_oxygen(o2_percent)
    return co_ppm * OXYGEN_IN_AIR / (OXYGEN_IN_AIR - o2_percent)


def excess_air(o2_percent: float, gas: Gas = "natural-gas") -> float:
    """Return the excess air in percent from the oxygen in dry flue gas.

    100 x k x O2 / (20.9 - O2), k being dry flue gas over air at no excess: 0.895 methane, 0.916
    propane, 0.92 natural gas. The shortcut without k reads 5 to 10 % high. Raises OutOfRange.
    """
    _require_flue_oxygen(o2_percent)
    return 100 * GASES[gas].flue_share * o2_percent / (OXYGEN_IN_AIR - o2_percent)


def carbon_dioxide(o2_percent: float, gas: Gas = "natural-gas") -> float:
    """Return the carbon dioxide in percent of dry flue gas: highest CO2 x (20.9 - O2) / 20.9."""
    _require_flue_oxygen(o2_percent)
    return GASES[gas].highest_carbon_dioxide * (OXYGEN_IN_AIR - o2_percent) / OXYGEN_IN_AIR


def _require_flue_oxygen(o2_percent: float) -> None:
    require("o2", o2_percent, "percent", at_least=0)
    if o2_percent > 20.5:
        raise OutOfRange(
            "o2",
            f"{o2_percent:.4g} percent oxygen is plain air",
            "put the probe in the flue gas, ahead of the draft opening",
        )


_HIGHER_HEAT: Final = 890.6
_LOWER_HEAT: Final = 802.6
"""Heat of combustion of methane at 25 degrees C, kJ/mol: water condensed, and water as vapour."""

_HEAT_CAPACITY: Final = MappingProxyType({"CO2": 41.8, "H2O": 34.6, "N2": 29.4, "O2": 30.5})
"""Mean molar heat capacity from 25 to about 250 degrees C, J/mol K."""

_LOWEST_STACK_F: Final = 212.0
_HIGHEST_STACK_F: Final = 1000.0


@frozen
class Efficiency:
    """Heat that does not leave by the flue, in percent of the gas's heat, counted both ways."""

    higher: float
    lower: float


def combustion_efficiency(stack_f: float, air_f: float, o2_percent: float) -> Efficiency:
    """Return the combustion efficiency of natural gas, taken as methane, by the stack loss.

    100 - heat of the flue gas above the air - (on the higher heating value) the heat of its water
    vapour. `higher` counts the gas's heat with its water condensed, as North American ratings do;
    `lower` without. Standing losses and the casing are not in it. Valid where nothing condenses:
    212 to 1000 °F in the stack. Raises OutOfRange. Heats of combustion and heat capacities: NIST.
    """
    require("stack-temperature", stack_f, "F", at_least=_LOWEST_STACK_F, at_most=_HIGHEST_STACK_F)
    require("air-temperature", air_f, "F", at_least=-60, at_most=200)
    excess = excess_air(o2_percent, "methane") / 100
    moles = {"CO2": 1.0, "H2O": 2.0, "N2": 7.52 * (1 + excess), "O2": 2 * excess}
    per_kelvin = sum(moles[part] * _HEAT_CAPACITY[part] for part in moles) / 1000
    sensible = per_kelvin * convert(stack_f - air_f, "F-diff", "C-diff")
    if sensible >= _LOWER_HEAT:
        raise OutOfRange(
            "o2",
            "the flue gas would carry off more heat than the gas gives",
            "the sample is diluted with air; move the probe",
        )
    return Efficiency(
        higher=100 * (_LOWER_HEAT - sensible) / _HIGHER_HEAT,
        lower=100 * (_LOWER_HEAT - sensible) / _LOWER_HEAT,
    )
