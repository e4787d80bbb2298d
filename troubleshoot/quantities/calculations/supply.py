"""Calculations about the supply."""

from typing import Final

from troubleshoot.quantities import supply
from troubleshoot.quantities.calculations.model import (
    WORD,
    Calculation,
    Computed,
    Given,
    Parameter,
    Result,
    direct,
)
from troubleshoot.quantities.ranges import OutOfRange

TOPIC: Final = "Supply"

_LIVE: Final = (
    "Read under load, live: only for those trained and equipped for live work; a licensed "
    "electrician or the utility corrects the supply."
)


def _voltage_unbalance(given: Given) -> Computed:
    pairs = given.number("ab"), given.number("bc"), given.number("ca")
    found = supply.unbalance(*pairs)
    figures: dict[str, float | None] = {
        "average": found.average,
        "largest-deviation": found.largest_deviation,
        "percent": found.percent,
        "derating": None,
        "negative-sequence-factor": None,
        "added-temperature-rise": None,
    }
    cautions: list[str] = []
    try:
        figures["derating"] = supply.derating_factor(found.percent)
        figures["added-temperature-rise"] = supply.added_temperature_rise(found.percent)
        low, high = supply.expected_current_unbalance(found.percent)
        cautions.append(
            f"By itself it brings a current unbalance of about {low:.0f} to {high:.0f} percent; "
            "more than that points at the motor or a contact."
        )
    except OutOfRange as beyond:
        cautions.append(f"No derating factor: {beyond}.")
    try:
        figures["negative-sequence-factor"] = supply.negative_sequence_factor(*pairs)
    except OutOfRange as misread:
        cautions.append(f"No negative-sequence factor: {misread}.")
    return Computed(figures, tuple(cautions))


def _service_voltage(given: Given) -> Computed:
    found = supply.service_voltage(given.numbers("nominal"), given.number("measured"))
    by_motor = found.verdict == "within" or len(given.numbers("nominal")) > 1
    by_motor = by_motor or given.numbers("nominal")[0] not in supply.SYSTEM_VOLTAGES_V
    return Computed(
        {
            "deviation": found.deviation_percent,
            "low-limit": found.low_limit_v,
            "high-limit": found.high_limit_v,
            "verdict": found.verdict,
        },
        (
            "Judged as a motor's nameplate: 10 percent either way, at the motor's terminals."
            if by_motor
            else "Judged as a system voltage by ranges A and B of ANSI C84.1, quoted from memory: "
            "range A is where it belongs, range B is for short and rare excursions.",
        ),
    )


CALCULATIONS: Final = (
    Calculation(
        name="voltage-unbalance",
        parameters=(
            Parameter("ab", "V", "line to line, first pair"),
            Parameter("bc", "V", "line to line, second pair"),
            Parameter("ca", "V", "line to line, third pair"),
        ),
        results=(
            Result("average", "V", "of the three"),
            Result("largest-deviation", "V", "of one pair from the average"),
            Result("percent", "percent", "unbalance by NEMA MG 1"),
            Result("derating", "ratio", "part of its rated load that a motor may carry"),
            Result("negative-sequence-factor", "percent", "V2 / V1, the unbalance by IEC"),
            Result("added-temperature-rise", "percent", "of the windings, rule of thumb"),
        ),
        formula="100 x largest deviation from the average / average; derating by straight lines "
        "between points read off the NEMA MG 1 curve (0.89 at 3 percent)",
        source="NEMA MG 1, 14.36 and Figure 14-1 / 20-2; V2 / V1: IEC 61000-4-30",
        compute=_voltage_unbalance,
        cautions=(
            "Percent is by NEMA MG 1; the factor by IEC differs from it by up to about 15 percent.",
            "Read-offs of the derating curve differ: 3 percent is in print as 0.88, 0.89 (used "
            "here) and 0.90, 5 percent as 0.75 and 0.76 (used here).",
            _LIVE,
        ),
    ),
    Calculation(
        name="current-unbalance",
        parameters=(
            Parameter("a", "A", "first leg"),
            Parameter("b", "A", "second leg"),
            Parameter("c", "A", "third leg"),
        ),
        results=(
            Result("average", "A", "of the three"),
            Result("largest-deviation", "A", "of one leg from the average"),
            Result("percent", "percent", "unbalance"),
        ),
        formula="100 x largest deviation from the average / average",
        source="definition as NEMA MG 1, 14.36, for amps",
        compute=direct(
            {"average": "average", "largest-deviation": "largest_deviation", "percent": "percent"},
            supply.unbalance,
            "a",
            "b",
            "c",
        ),
        cautions=(
            "Roll the three leads: what stays with the line is supply, what moves is motor.",
            _LIVE,
        ),
    ),
    Calculation(
        name="service-voltage",
        parameters=(
            Parameter(
                "nominal",
                "V",
                "of the system, or as on the data plate: 208/230, 460/3/60",
                fewest=1,
                plate=True,
            ),
            Parameter("measured", "V", "under load"),
        ),
        results=(
            Result("deviation", "percent", "from the nearest nominal"),
            Result("low-limit", "V", "used for the verdict"),
            Result("high-limit", "V", "used for the verdict"),
            Result("verdict", WORD, "range-a, range-b or outside; for a motor within or outside"),
        ),
        formula="100 x (measured - nominal) / nominal; service range A is 114 to 126 V and range B "
        "110 to 127 V on a 120 V base; a motor's nameplate is 10 percent either way",
        source="ANSI C84.1 (2006 and later), from memory; NEMA MG 1, 12.44",
        compute=_service_voltage,
        cautions=(_LIVE,),
    ),
)
