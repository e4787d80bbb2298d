"""Calculations about how much air moves, and what split it should show."""

from typing import Final

from troubleshoot.quantities import air
from troubleshoot.quantities.calculations.air import HANDBOOK
from troubleshoot.quantities.calculations.model import (
    ALTITUDE,
    ATMOSPHERE,
    Calculation,
    Parameter,
    Result,
    direct,
)

_STANDARD_AIR: Final = (
    "The standard-air constant 1.08 was used, scaled by air density if an altitude is given; 1.10 "
    "(moist air) is in print too and gives 1.9 percent less airflow."
)


CALCULATIONS: Final = (
    Calculation(
        name="air-velocity",
        parameters=(
            Parameter("velocity-pressure", "in-wc", "total less static pressure"),
            Parameter("density", "lb/ft3", "of the air", default="0.075 lb/ft3"),
        ),
        results=(Result("velocity", "ft/min", "at that point"),),
        formula="1096.7 x sqrt(velocity pressure / density): 4005 x sqrt for standard air",
        source="ASHRAE Handbook, Fundamentals (flow measurement)",
        compute=direct("velocity", air.air_velocity, "velocity-pressure", "density"),
        cautions=("One point is not the duct: average a traverse of velocities.",),
    ),
    Calculation(
        name="airflow-from-heat-rise",
        parameters=(
            Parameter("output", "Btu/h", "heat given to the air, not input"),
            Parameter("rise", "F-diff", "supply less return air"),
            ALTITUDE,
        ),
        results=(Result("airflow", "cfm", "over the heat exchanger"),),
        formula="output / (1.08 x rise), x air density over that at sea level",
        source=f"{HANDBOOK}, standard air 0.075 lb/ft3 and 0.24 Btu/lb F",
        compute=direct("airflow", air.airflow_from_heat_rise, "output", "rise", ATMOSPHERE),
        cautions=(_STANDARD_AIR, "Keep the thermometer out of sight of the heat exchanger."),
    ),
    Calculation(
        name="airflow-from-electric-heat",
        parameters=(
            Parameter("power", "kW", "taken by the heaters, volts x amps measured"),
            Parameter("rise", "F-diff", "supply less return air"),
            ALTITUDE,
        ),
        results=(Result("airflow", "cfm", "over the heaters"),),
        formula="power x 3412 / (1.08 x rise), x air density over that at sea level",
        source=f"{HANDBOOK}, standard air; 3412.14 Btu/h per kW",
        compute=direct("airflow", air.airflow_from_electric_heat, "power", "rise", ATMOSPHERE),
        cautions=(_STANDARD_AIR, "Keep the thermometer out of sight of the heaters."),
    ),
    Calculation(
        name="target-temperature-split",
        parameters=(
            Parameter("return-dry-bulb", "F", "of the air entering the coil"),
            Parameter("return-wet-bulb", "F", "of the air entering the coil"),
        ),
        results=(Result("split", "F-diff", "return less supply air"),),
        formula="-69.844 + 0.54637 x dry bulb + 2.18530 x wet bulb - 0.022726 x wet bulb squared",
        source="fitted within 0.1 F to California Energy Commission Table RA3.2-3, from memory",
        compute=direct("split", air.target_temperature_split, "return-dry-bulb", "return-wet-bulb"),
        cautions=(
            "3 F either way is normal; a larger split is low airflow until proved otherwise.",
            "Holds with the outdoor damper shut; else take mixed air for return air.",
            "A normal split does not clear low charge.",
        ),
    ),
)
