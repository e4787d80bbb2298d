"""Gas heat: input by the meter, manifold and orifice, heat rise, altitude.

Gas flow in ft3/h, heat in Btu/h, gas pressures in inches of water column, temperatures in °F.
"""

import math
from typing import Final

from troubleshoot.quantities.ranges import OutOfRange, require

NATURAL_GAS_SPECIFIC_GRAVITY: Final = 0.60
SHARP_ORIFICE_COEFFICIENT: Final = 0.90
"""Discharge coefficient on which the orifice tables of NFPA 54, annex on orifices, rest."""

FIRST_DERATED_FT: Final = 2000.0
DERATE_PER_1000_FT: Final = 0.04
_HIGHEST_FT: Final = 10000.0

_ORIFICE_FACTOR: Final = 1658.5
_SECONDS_PER_HOUR: Final = 3600.0


def gas_flow(dial_ft3: float, time_s: float) -> float:
    """Return the gas flow in ft3/h from the time of one dial's turn: 3600 x dial / seconds.

    Everything else on the meter is off. Raises OutOfRange. Source: definition.
    """
    require("dial", dial_ft3, "ft3", above=0)
    require("time", time_s, "s", above=0)
    return _SECONDS_PER_HOUR * dial_ft3 / time_s


def gas_input(flow_ft3h: float, heating_value: float) -> float:
    """Return the input in Btu/h: flow x heating value (Btu/ft3, from the gas utility).

    Valid from 300 to 3500 Btu/ft3: natural gas has about 1000 to 1050, propane 2500. Raises
    OutOfRange.
    """
    require("flow", flow_ft3h, "ft3/h", at_least=0)
    require("heating-value", heating_value, "Btu/ft3", at_least=300, at_most=3500)
    return flow_ft3h * heating_value


def meter_time(dial_ft3: float, heating_value: float, input_btu_h: float) -> float:
    """Return the seconds that one dial takes at an input: 3600 x dial x heating value / input.

    Raises OutOfRange. Source: definition.
    """
    require("input", input_btu_h, "Btu/h", above=0)
    return _SECONDS_PER_HOUR * gas_input(dial_ft3, heating_value) / input_btu_h


def manifold_input_ratio(p1_in_wc: float, p2_in_wc: float) -> float:
    """Return the input at manifold pressure p2 over that at p1: sqrt(p2 / p1).

    Flow through an orifice goes with the square root of pressure. Raises OutOfRange.
    """
    require("p1", p1_in_wc, "in-wc", above=0)
    require("p2", p2_in_wc, "in-wc", at_least=0)
    return math.sqrt(p2_in_wc / p1_in_wc)


def orifice_area(diameter_in: float) -> float:
    """Return the area of a round orifice in square inches."""
    require("diameter", diameter_in, "in", above=0, at_most=1)
    return math.pi * diameter_in**2 / 4


def orifice_flow(
    diameter_in: float,
    pressure_in_wc: float,
    specific_gravity: float = NATURAL_GAS_SPECIFIC_GRAVITY,
    coefficient: float = SHARP_ORIFICE_COEFFICIENT,
) -> float:
    """Return the gas flow in ft3/h through one burner orifice.

    1658.5 x coefficient x area x sqrt(pressure / specific gravity), area in square inches (the
    relation behind the orifice tables of NFPA 54, which take 0.60 and 0.90). Raises OutOfRange.
    """
    require("pressure", pressure_in_wc, "in-wc", at_least=0, at_most=30)
    require("specific-gravity", specific_gravity, above=0, at_most=3)
    require("discharge-coefficient", coefficient, above=0, at_most=1)
    root = math.sqrt(pressure_in_wc / specific_gravity)
    return _ORIFICE_FACTOR * coefficient * orifice_area(diameter_in) * root


def altitude_derate(altitude_ft: float) -> float:
    """Return the part of the sea-level rated input that a gas unit may burn at an altitude.

    1 up to 2000 ft; above, 4 % less for each 1000 ft above sea level (NFPA 54 / ANSI Z223.1).
    Valid up to 10,000 ft. The rating plate and the utility's own derated gas rule. Raises
    OutOfRange.
    """
    require("altitude", altitude_ft, "ft", at_least=-1500, at_most=_HIGHEST_FT)
    if altitude_ft <= FIRST_DERATED_FT:
        return 1.0
    return 1 - DERATE_PER_1000_FT * altitude_ft / 1000


def input_at_altitude(rated_btu_h: float, altitude_ft: float) -> float:
    """Return what a gas unit may burn at an altitude in Btu/h, from its rated input.

    Rated input x altitude_derate (NFPA 54 / ANSI Z223.1). Raises OutOfRange.
    """
    require("rated-input", rated_btu_h, "Btu/h", above=0)
    return rated_btu_h * altitude_derate(altitude_ft)


def temperature_rise(supply_f: float, return_f: float) -> float:
    """Return supply minus return air in °F.

    Raises OutOfRange when the supply is colder than the return: then nothing is heating.
    """
    require("supply-air", supply_f, "F", at_least=-40, at_most=250)
    require("return-air", return_f, "F", at_least=-40, at_most=250)
    if supply_f < return_f:
        raise OutOfRange(
            "supply-air",
            "the supply air is colder than the return air",
            "the readings are swapped, or the unit is not heating",
        )
    return supply_f - return_f
