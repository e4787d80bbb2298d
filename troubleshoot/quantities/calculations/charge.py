"""Calculations about the charge and the compressor."""

from typing import Final

from troubleshoot.quantities import refrigerant
from troubleshoot.quantities.calculations.model import (
    ALTITUDE,
    ATMOSPHERE,
    Calculation,
    Computed,
    Given,
    Parameter,
    Result,
    direct,
)
from troubleshoot.quantities.calculations.saturation import GAUGES, STEADY
from troubleshoot.quantities.ranges import OutOfRange


def _target_superheat(given: Given) -> Computed:
    wet_bulb, outdoor = given.number("return-wet-bulb"), given.number("outdoor-dry-bulb")
    shortcut = refrigerant.target_superheat(wet_bulb, outdoor)
    try:
        by_table = refrigerant.table_target_superheat(wet_bulb, outdoor)
    except OutOfRange:
        return Computed(
            {"superheat": shortcut},
            ("The charging table has no target here: do not set the charge by superheat.",),
        )
    return Computed(
        {"superheat": shortcut, "table-superheat": by_table},
        ("Where the two differ and the unit has no chart of its own, go by the table.",),
    )


CALCULATIONS: Final = (
    Calculation(
        name="target-superheat",
        parameters=(
            Parameter("return-wet-bulb", "F", "of the air entering the indoor coil"),
            Parameter("outdoor-dry-bulb", "F", "of the air entering the condenser"),
        ),
        results=(
            Result("superheat", "F-diff", "by the shortcut"),
            Result("table-superheat", "F-diff", "by the charging table, where it has an entry"),
        ),
        formula="(3 x return wet bulb - 80 - outdoor dry bulb) / 2; table: straight lines between "
        "its entries",
        source="common practice, no source; table: makers' manuals for fixed-orifice systems, some "
        "rows from memory",
        compute=_target_superheat,
        cautions=(
            "Fixed orifice only; with a thermostatic valve the charge shows in the subcooling.",
            "superheat is by the shortcut; it runs from 6 F under to 3 F over the table. The "
            "unit's own charging chart rules.",
            STEADY,
        ),
    ),
    Calculation(
        name="compression-ratio",
        parameters=(
            Parameter("suction-pressure", "psig", "at the compressor"),
            Parameter("discharge-pressure", "psig", "at the compressor"),
            ALTITUDE,
        ),
        results=(Result("ratio", "ratio", "of absolute pressures"),),
        formula="(discharge + atmosphere) / (suction + atmosphere)",
        source="definition: absolute pressures",
        compute=direct(
            "ratio",
            refrigerant.compression_ratio,
            "suction-pressure",
            "discharge-pressure",
            ATMOSPHERE,
        ),
        cautions=("A ratio of gauge pressures is wrong.", GAUGES),
    ),
    Calculation(
        name="leak-rate",
        parameters=(
            Parameter("added", "lb", "weighed in"),
            Parameter("full-charge", "lb", "of the circuit"),
            Parameter("days", "day", "since refrigerant was last added"),
        ),
        results=(Result("rate", "percent", "of the full charge, per year"),),
        formula="100 x added / full charge x 365 / days; more than 365 days count as 365",
        source="40 CFR 82.152, annualizing method",
        compute=direct("rate", refrigerant.leak_rate, "added", "full-charge", "days"),
        cautions=("The owner's responsible person decides what the rule asks for.",),
    ),
)
