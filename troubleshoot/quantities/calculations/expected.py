"""The calculation of what a sound unit should read now."""

from collections.abc import Iterator
from typing import Final

from troubleshoot.quantities.calculations.model import (
    WORD,
    Calculation,
    Computed,
    Figure,
    Given,
    Parameter,
    Result,
)
from troubleshoot.quantities.calculations.saturation import GAUGES, STEADY
from troubleshoot.quantities.expected import (
    DEVICES,
    MADE_FROM,
    REFRIGERANTS,
    Conditions,
    expected,
    tells_superheat,
)
from troubleshoot.quantities.saturation import refrigerant_named
from troubleshoot.quantities.span import Span

_NO_TARGET: Final = (
    "superheat is left out: charging charts of a fixed orifice have no target in this weather, for "
    "liquid may reach the compressor; do not judge or set the charge by superheat."
)
_OWN: Final = {
    "chart-suction-pressure": ("suction-pressure", 5.0),
    "chart-head-pressure": ("head-pressure", 5.0),
    "chart-superheat": ("superheat", 5.0),
    "stated-subcooling": ("subcooling", 3.0),
}
"""What the unit itself says, of which result, and how far off it a sound unit may lie (source: see
the calculation)."""


def _expected(given: Given) -> Computed:
    wet_bulb = given.optional("return-wet-bulb")
    conditions = Conditions(
        given.word("refrigerant"),
        given.word("metering"),
        given.number("outdoor-dry-bulb"),
        given.number("return-dry-bulb"),
        wet_bulb,
    )
    found = expected(conditions, given.optional("rla"), given.optional("tons"))
    own, cautions = dict(_own(given)), []
    if own:
        cautions.append(f"By the unit's own chart or data plate: {', '.join(own)}.")
    if wet_bulb is None:
        cautions.append(
            "return-wet-bulb was not given: the ranges cover rooms at 40 to 60 percent humidity."
        )
    figures: dict[str, Figure] = {**found, **own}
    if "superheat" not in own and not tells_superheat(conditions):
        del figures["superheat"]
        cautions.insert(0, _NO_TARGET)
    return Computed(figures, tuple(cautions))


def _own(given: Given) -> Iterator[tuple[str, Span]]:
    for parameter, (result, either_way) in _OWN.items():
        value = given.optional(parameter)
        if value is not None:
            yield result, Span(max(value - either_way, 0.0), value + either_way)


CALCULATIONS: Final = (
    Calculation(
        name="expected",
        parameters=(
            Parameter(
                "refrigerant",
                WORD,
                "as on the nameplate",
                choices=REFRIGERANTS,
                standard_name=refrigerant_named,
            ),
            Parameter("metering", WORD, "how refrigerant is metered", choices=DEVICES),
            Parameter("outdoor-dry-bulb", "F", "of the air entering the condenser"),
            Parameter("return-dry-bulb", "F", "of the air entering the indoor coil"),
            Parameter("return-wet-bulb", "F", "of the same air", required=False),
            Parameter("rla", "A", "rated-load amps of the compressor", required=False),
            Parameter("tons", "ton", "rated cooling of the unit", required=False),
            Parameter("chart-suction-pressure", "psig", "by the unit's own chart", required=False),
            Parameter("chart-head-pressure", "psig", "by the unit's own chart", required=False),
            Parameter("chart-superheat", "F-diff", "by the unit's own chart", required=False),
            Parameter("stated-subcooling", "F-diff", "by the unit's data plate", required=False),
        ),
        results=(
            Result("suction-pressure", "psig", "at the compressor"),
            Result("head-pressure", "psig", "at the condenser"),
            Result("superheat", "F-diff", "at the compressor"),
            Result("subcooling", "F-diff", "at the condenser outlet"),
            Result("condensing-over-ambient", "F-diff", "condensing over outdoor air"),
            Result("air-split", "F-diff", "entering less supply air"),
            Result("compressor-amps", "A", "of a leg, with rla"),
            Result("airflow-per-ton", "cfm-per-ton", "over the indoor coil"),
            Result("airflow", "cfm", "over the indoor coil, with tons"),
        ),
        formula="mean of the sound units, and two standard uncertainties either way",
        source=f"{MADE_FROM}; about the unit's own values 5 F of superheat and 3 F of subcooling, "
        "California Title 24, RA3.2, and 5 psi, common practice, no source",
        compute=_expected,
        cautions=(
            "The unit's own charging chart stands above this, and so does its data plate.",
            "A reading inside its range does not clear the unit, and one outside accuses no part: "
            "it is one reading.",
            "Clean coils and filters, every fan and stage on, rated volts, outdoor damper shut, at "
            "sea level; gauges read 0.5 psi more for each 1000 ft.",
            STEADY,
            GAUGES,
        ),
    ),
)
