"""Calculations that lean on the saturation tables."""

from typing import Final

from troubleshoot.quantities import refrigerant, saturation
from troubleshoot.quantities.calculations.model import (
    ALTITUDE,
    WORD,
    Calculation,
    Choice,
    Computed,
    Given,
    Parameter,
    Result,
)
from troubleshoot.quantities.units import absolute_pressure, gauge_pressure

TOPIC: Final = "Refrigerant"

REFRIGERANT: Final = Parameter(
    "refrigerant",
    WORD,
    "as on the nameplate",
    choices=saturation.REFRIGERANTS,
    standard_name=saturation.refrigerant_named,
)

_TABLES: Final = "saturation tables computed with CoolProp's reference equations of state"
STEADY: Final = (
    "Holds after 15 minutes of steady running, outdoor air at 55 F or more, coil clear and dry."
)
GAUGES: Final = (
    "Refrigerant burns skin and eyes with cold and takes the air away: gloves and glasses; only "
    "certified technicians open a circuit."
)
_FLOODS: Final = (
    f"Liquid reaches the compressor under {refrigerant.LOWEST_TARGET_F:.0f} F of superheat, or "
    "soon will: it washes the oil off bearings and breaks valves. Take the reading again; if it "
    "stays, do not leave it running so, and find the cause (air, charge, metering) before the "
    "compressor is blamed."
)


def _doubts(name: str) -> tuple[str, ...]:
    """Return what is uncertain about the saturation figures of this refrigerant."""
    doubts = {
        "R-454B": "R-454B figures in print differ: take these as good to 1.5 percent of pressure, "
        "about 0.8 F.",
        "R-422D": "R-422D is computed as a mixture of its components: check against the maker's "
        "table where a degree matters.",
        "R-427A": "R-427A is computed as a mixture of its components: check against the maker's "
        "table where a degree matters.",
    }
    return (doubts[name],) if name in doubts else ()


def _saturation(given: Given) -> Computed:
    name = given.word("refrigerant")
    atmosphere = given.atmosphere()
    if given.has("pressure"):
        absolute = absolute_pressure(given.number("pressure"), atmosphere)
        return Computed(
            {
                "bubble-temperature": saturation.bubble_temperature(name, absolute),
                "dew-temperature": saturation.dew_temperature(name, absolute),
            },
            _doubts(name),
        )
    temperature = given.number("temperature")
    bubble = saturation.bubble_pressure(name, temperature)
    dew = saturation.dew_pressure(name, temperature)
    return Computed(
        {
            "bubble-pressure": gauge_pressure(bubble, atmosphere),
            "dew-pressure": gauge_pressure(dew, atmosphere),
        },
        _doubts(name),
    )


def _superheat(given: Given) -> Computed:
    name = given.word("refrigerant")
    state = refrigerant.superheat(
        name,
        given.number("suction-pressure"),
        given.number("line-temperature"),
        given.atmosphere(),
    )
    cautions = _doubts(name)
    if state.difference_f < 0:
        cautions += (
            "Negative superheat cannot be: check the clamp, the gauge and the refrigerant; with "
            "liquid in the line the true figure is zero.",
        )
    if state.difference_f < refrigerant.LOWEST_TARGET_F:
        cautions += (_FLOODS,)
    return Computed(
        {"saturation-temperature": state.saturation_f, "superheat": state.difference_f}, cautions
    )


def _subcooling(given: Given) -> Computed:
    name = given.word("refrigerant")
    state = refrigerant.subcooling(
        name,
        given.number("liquid-pressure"),
        given.number("line-temperature"),
        given.atmosphere(),
    )
    cautions = _doubts(name)
    if state.difference_f < 0:
        cautions += ("Negative subcooling: the liquid line holds gas, or a reading is wrong.",)
    return Computed(
        {"saturation-temperature": state.saturation_f, "subcooling": state.difference_f}, cautions
    )


def _condensing_over_ambient(given: Given) -> Computed:
    name = given.word("refrigerant")
    state = refrigerant.condensing_over_ambient(
        name,
        given.number("liquid-pressure"),
        given.number("outdoor-dry-bulb"),
        given.atmosphere(),
    )
    return Computed(
        {"difference": state.difference_f, "saturation-temperature": state.saturation_f},
        _doubts(name),
    )


CALCULATIONS: Final = (
    Calculation(
        name="saturation",
        parameters=(
            REFRIGERANT,
            Parameter("temperature", "F", "gives the pressures", required=False),
            Parameter("pressure", "psig", "gives the temperatures", required=False),
            ALTITUDE,
        ),
        results=(
            Result("bubble-pressure", "psig", "over boiling liquid"),
            Result("dew-pressure", "psig", "of vapor about to condense"),
            Result("bubble-temperature", "F", "for subcooling"),
            Result("dew-temperature", "F", "for superheat"),
        ),
        choices=(Choice(("temperature", "pressure"), "exactly one"),),
        formula="read from the table; between rows ln(pressure) runs straight against 1 / "
        "absolute temperature",
        source=_TABLES,
        compute=_saturation,
        cautions=("Dew for superheat, bubble for subcooling.",),
    ),
    Calculation(
        name="superheat",
        parameters=(
            REFRIGERANT,
            Parameter("suction-pressure", "psig", "at the suction port"),
            Parameter("line-temperature", "F", "of the suction line there, insulated clamp"),
            ALTITUDE,
        ),
        results=(
            Result("saturation-temperature", "F", "dew point at the suction pressure"),
            Result("superheat", "F-diff", "of the line over it"),
        ),
        formula="line temperature - DEW temperature at the suction pressure",
        source=f"definition; {_TABLES}",
        compute=_superheat,
        cautions=("Dew temperature was used.", STEADY, GAUGES),
    ),
    Calculation(
        name="subcooling",
        parameters=(
            REFRIGERANT,
            Parameter("liquid-pressure", "psig", "at the liquid port"),
            Parameter("line-temperature", "F", "of the liquid line there"),
            ALTITUDE,
        ),
        results=(
            Result("saturation-temperature", "F", "bubble point at the liquid pressure"),
            Result("subcooling", "F-diff", "of the line under it"),
        ),
        formula="BUBBLE temperature at the liquid pressure - line temperature",
        source=f"definition; {_TABLES}",
        compute=_subcooling,
        cautions=("Bubble temperature was used.", STEADY, GAUGES),
    ),
    Calculation(
        name="condensing-over-ambient",
        parameters=(
            REFRIGERANT,
            Parameter("liquid-pressure", "psig", "at the liquid port"),
            Parameter("outdoor-dry-bulb", "F", "of the air entering the condenser"),
            ALTITUDE,
        ),
        results=(
            Result("difference", "F-diff", "condensing temperature over outdoor air"),
            Result("saturation-temperature", "F", "bubble point at the liquid pressure"),
        ),
        formula="BUBBLE temperature at the liquid pressure - outdoor dry bulb",
        source=f"definition; {_TABLES}",
        compute=_condensing_over_ambient,
        cautions=(
            "Bubble temperature was used. Healthy units published: 14 to 21 F; older designs 30 F.",
            STEADY,
            GAUGES,
        ),
    ),
)
