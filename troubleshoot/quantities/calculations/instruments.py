"""Calculations about instruments and what their readings prove."""

from typing import Final

from troubleshoot.quantities import conformance, instruments
from troubleshoot.quantities.calculations.model import (
    ANY_UNIT,
    WORD,
    Calculation,
    Choice,
    Computed,
    Given,
    Parameter,
    Result,
    direct,
)

TOPIC: Final = "Instruments"


def _false_accept_risk(given: Given) -> Computed:
    risk = conformance.false_accept_risk(
        given.number("in-tolerance-probability") / 100, given.number("sigma-ratio")
    )
    return Computed({"risk": 100 * risk})


CALCULATIONS: Final = (
    Calculation(
        name="reading-limits",
        parameters=(
            Parameter("reading", ANY_UNIT, "as shown"),
            Parameter("percent", "percent", "of the reading, from the specification", spread=True),
            Parameter("counts", "count", "of the last digit, from the specification"),
            Parameter("resolution", ANY_UNIT, "one count on the range in use", difference=True),
        ),
        results=(
            Result("error", ANY_UNIT, "limit of the error, either way"),
            Result("low", ANY_UNIT, "lowest value behind the reading"),
            Result("high", ANY_UNIT, "highest value behind the reading"),
        ),
        formula="reading x percent / 100 + counts x resolution",
        source="convention of meter specifications",
        compute=direct(
            {"error": "error", "low": "low", "high": "high"},
            instruments.reading_limits,
            "reading",
            "percent",
            "counts",
            "resolution",
        ),
        cautions=("Counts are worth the resolution of the range in use, not of the best range.",),
    ),
    Calculation(
        name="conformance",
        parameters=(
            Parameter("low-limit", ANY_UNIT, "lowest allowed", required=False),
            Parameter("high-limit", ANY_UNIT, "highest allowed", required=False),
            Parameter("reading", ANY_UNIT, "as shown"),
            Parameter("u", ANY_UNIT, "standard uncertainty of the reading", difference=True),
        ),
        results=(
            Result("probability", "ratio", "that the true value is within the limits"),
            Result("verdict", WORD, "within, outside, or too close to call with this meter"),
        ),
        choices=(Choice(("low-limit", "high-limit"), "at least one"),),
        formula="normal distribution about the reading; within or outside only beyond a guard "
        "band of 2 u on the limits",
        source="JCGM 106:2012, clause 7; ISO 14253-1; ILAC-G8:09/2019, 4.2.3",
        compute=direct(
            {"probability": "probability", "verdict": "verdict"},
            conformance.conformance,
            "reading",
            "u",
            "low-limit",
            "high-limit",
        ),
        cautions=("u is standard: an error limit from a specification divided by 1.732.",),
    ),
    Calculation(
        name="repeatability",
        parameters=(Parameter("values", ANY_UNIT, "readings of one thing", fewest=2),),
        results=(
            Result("mean", ANY_UNIT, "of the readings"),
            Result("standard-deviation", ANY_UNIT, "of one reading"),
        ),
        formula="square root of (sum of squared deviations from the mean / (n - 1))",
        source="JCGM 100:2008, 4.2",
        compute=direct(
            {"mean": "mean", "standard-deviation": "standard_deviation"},
            instruments.repeatability,
            "values",
        ),
    ),
    Calculation(
        name="false-accept-risk",
        parameters=(
            Parameter(
                "in-tolerance-probability", "percent", "share of things in tolerance", share=True
            ),
            Parameter("sigma-ratio", "ratio", "spread of the things over that of the meter"),
        ),
        results=(Result("risk", "percent", "out of tolerance and yet read as within"),),
        formula="joint probability of normal distributions, two-sided limits, simple acceptance",
        source="JCGM 106:2012, clause 9 (global risk)",
        compute=_false_accept_risk,
    ),
)
