"""Calculations about the state, the cooling and the mixing of air."""

from typing import Final

from troubleshoot.quantities import air
from troubleshoot.quantities.calculations.model import (
    ALTITUDE,
    Calculation,
    Choice,
    Computed,
    Given,
    Parameter,
    Result,
    direct,
)

TOPIC: Final = "Air"

HANDBOOK: Final = "ASHRAE Handbook, Fundamentals, chapter 1"


def _moist_air(given: Given) -> Computed:
    from troubleshoot.quantities import moist_air  # psychrolib: only when needed

    pressure = given.optional("pressure")
    pressure = given.atmosphere() if pressure is None else pressure
    dry_bulb = given.number("dry-bulb")
    if given.has("wet-bulb"):
        state = moist_air.from_wet_bulb(dry_bulb, given.number("wet-bulb"), pressure)
    elif given.has("relative-humidity"):
        humidity = given.number("relative-humidity")
        state = moist_air.from_relative_humidity(dry_bulb, humidity, pressure)
    else:
        state = moist_air.from_dew_point(dry_bulb, given.number("dew-point"), pressure)
    return Computed(
        {
            "wet-bulb": state.wet_bulb_f,
            "relative-humidity": state.relative_humidity,
            "dew-point": state.dew_point_f,
            "humidity-ratio": state.humidity_ratio,
            "enthalpy": state.enthalpy,
            "volume": state.volume,
        }
    )


def _air_side_capacity(given: Given) -> Computed:
    found = air.air_side_capacity(
        given.number("airflow"),
        (given.number("entering-dry-bulb"), given.number("entering-wet-bulb")),
        (given.number("leaving-dry-bulb"), given.number("leaving-wet-bulb")),
        given.atmosphere(),
    )
    return Computed(
        {
            "total": found.total,
            "sensible": found.sensible,
            "latent": found.latent,
            "tons": found.tons,
            "sensible-heat-ratio": found.sensible_heat_ratio,
        }
    )


def _outdoor_air_fraction(given: Given) -> Computed:
    back, outdoor = given.number("return-air"), given.number("outdoor")
    found = air.outdoor_air_fraction(
        back, given.number("mixed-air"), outdoor, given.number("sensor-uncertainty")
    )
    cautions: tuple[str, ...] = ()
    if abs(back - outdoor) < air.LEAST_OUTDOOR_DIFFERENCE_F:
        cautions = ("Return and outdoor air are within 10 F: the fraction is worth little.",)
    return Computed({"fraction": found.percent, "uncertainty": found.uncertainty_percent}, cautions)


STATES: Final = (
    Calculation(
        name="moist-air",
        parameters=(
            Parameter("dry-bulb", "F", "ordinary thermometer"),
            Parameter("wet-bulb", "F", "wetted wick in moving air", required=False),
            Parameter("relative-humidity", "percent", "0 to 100", required=False, share=True),
            Parameter("dew-point", "F", "where dew forms", required=False),
            Parameter("pressure", "psia", "of the air, absolute", required=False),
            ALTITUDE,
        ),
        results=(
            Result("wet-bulb", "F", "of the air"),
            Result("relative-humidity", "percent", "of the air"),
            Result("dew-point", "F", "of the air"),
            Result("humidity-ratio", "lb/lb", "water per lb of dry air"),
            Result("enthalpy", "Btu/lb", "per lb of dry air, counted from 0 F"),
            Result("volume", "ft3/lb", "per lb of dry air"),
        ),
        choices=(
            Choice(("wet-bulb", "relative-humidity", "dew-point"), "exactly one"),
            Choice(("pressure", "altitude"), "at most one"),
        ),
        formula="equations of moist air as ideal gases",
        source=f"{HANDBOOK} (2017), by psychrolib",
        compute=_moist_air,
        cautions=("The humidity ratio lies 0.4 to 0.6 percent under that of real air.",),
    ),
    Calculation(
        name="air-side-capacity",
        parameters=(
            Parameter("airflow", "cfm", "over the coil"),
            Parameter("entering-dry-bulb", "F", "before the coil"),
            Parameter("entering-wet-bulb", "F", "before the coil"),
            Parameter("leaving-dry-bulb", "F", "after the coil"),
            Parameter("leaving-wet-bulb", "F", "after the coil"),
            ALTITUDE,
        ),
        results=(
            Result("total", "Btu/h", "heat taken out"),
            Result("sensible", "Btu/h", "by cooling the air"),
            Result("latent", "Btu/h", "by drying the air"),
            Result("tons", "ton", "total"),
            Result("sensible-heat-ratio", "ratio", "sensible / total"),
        ),
        formula="total = 4.5 x cfm x enthalpy drop; sensible = 1.08 x cfm x dry-bulb drop; latent "
        "= 0.68 x cfm x grains drop; each x air density over that at sea level",
        source=f"{HANDBOOK}, standard air 0.075 lb/ft3",
        compute=_air_side_capacity,
        cautions=(
            "1.08 and 0.68 were used (1.10 and 0.69 are in print too): sensible and latent fall 2 "
            "to 3 percent short of the total.",
            "It is no better than the airflow: 10 percent there is 10 percent here.",
        ),
    ),
)

MIXING: Final = (
    Calculation(
        name="outdoor-air-fraction",
        parameters=(
            Parameter("return-air", "F", "dry bulb"),
            Parameter("mixed-air", "F", "dry bulb, several points averaged"),
            Parameter("outdoor", "F", "dry bulb"),
            Parameter("sensor-uncertainty", "F-diff", "of each sensor, standard", default="1 F"),
        ),
        results=(
            Result("fraction", "percent", "outdoor air in the mixture"),
            Result("uncertainty", "percent", "standard uncertainty of the fraction"),
        ),
        formula="100 x (return - mixed) / (return - outdoor); uncertainty by propagation",
        source="sensible heat balance; JCGM 100, 5.1.2",
        compute=_outdoor_air_fraction,
        cautions=("Mixed air is layered: one point is not the mixture.",),
    ),
    Calculation(
        name="mixed-air-temperature",
        parameters=(
            Parameter("return-air", "F", "dry bulb"),
            Parameter("outdoor", "F", "dry bulb"),
            Parameter("fraction", "percent", "outdoor air in the mixture", share=True),
        ),
        results=(Result("temperature", "F", "of the mixture"),),
        formula="return - fraction x (return - outdoor)",
        source="sensible heat balance",
        compute=direct(
            "temperature", air.mixed_air_temperature, "return-air", "outdoor", "fraction"
        ),
    ),
)


CALCULATIONS: Final = (*STATES, *MIXING)
