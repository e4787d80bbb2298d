"""Calculations about the charge and the compressor."""

from typing import Final

from troubleshoot.quantities import refrigerant
from troubleshoot.quantities.calculations.model import (
    ALTITUDE,
    Calculation,
    Computed,
    Given,
    Parameter,
    Result,
)
from troubleshoot.quantities.calculations.saturation import GAUGES, STEADY, TOPIC
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
    return Computed({"superheat": shortcut, "table-superheat": by_table})


def _compression_ratio(given: Given) -> Computed:
    ratio = refrigerant.compression_ratio(
        given.number("suction-pressure"), given.number("discharge-pressure"), given.atmosphere()
    )
    return Computed({"ratio": ratio})


def _leak_rate(given: Given) -> Computed:
    rate = refrigerant.leak_rate(
        given.number("added"), given.number("full-charge"), given.number("days")
    )
    return Computed({"rate": rate})


CALCULATIONS: Final = (
    Calculation(
        name="target-superheat",
        topic=TOPIC,
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
        topic=TOPIC,
        parameters=(
            Parameter("suction-pressure", "psig", "at the compressor"),
            Parameter("discharge-pressure", "psig", "at the compressor"),
            ALTITUDE,
        ),
        results=(Result("ratio", "ratio", "of absolute pressures"),),
        formula="(discharge + atmosphere) / (suction + atmosphere)",
        source="definition: absolute pressures",
        compute=_compression_ratio,
        cautions=("A ratio of gauge pressures is wrong.", GAUGES),
    ),
    Calculation(
        name="leak-rate",
        topic=TOPIC,
        parameters=(
            Parameter("added", "lb", "weighed in"),
            Parameter("full-charge", "lb", "of the circuit"),
            Parameter("days", "day", "since refrigerant was last added"),
        ),
        results=(Result("rate", "percent", "of the full charge, per year"),),
        formula="100 x added / full charge x 365 / days; more than 365 days count as 365",
        source="40 CFR 82.152, annualizing method",
        compute=_leak_rate,
        cautions=("The owner's responsible person decides what the rule asks for.",),
    ),
)
