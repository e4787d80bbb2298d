"""The closed lists of words that rule files may use, in their natural order.

Each stands here once: the model takes its types from here, the forms what they allow, the
reasoning its tables.
"""

from __future__ import annotations

from typing import Final, Literal, get_args

Grade = Literal["almost-always", "often", "sometimes", "seldom", "never"]
GRADES: Final[tuple[Grade, ...]] = get_args(Grade)

TestKind = Literal["question", "look", "input", "measurement", "computed", "step"]
Choose = Literal["one", "several"]
Comparison = Literal["value", "difference", "percent-difference", "percent-of", "times"]

Exposure = Literal["none", "control", "line"]
EXPOSURES: Final[tuple[Exposure, ...]] = get_args(Exposure)

Signal = Literal["DANGER", "WARNING", "CAUTION", "NOTICE"]
SIGNALS: Final[tuple[Signal, ...]] = get_args(Signal)

StopScope = Literal["whole-job", "until-made-safe", "this-step"]
STOP_SCOPES: Final[tuple[StopScope, ...]] = get_args(StopScope)

KeptOff = Literal["unit", "heat", "circuit", "nothing"]

HowCommon = Literal["very-common", "common", "uncommon", "rare", "very-rare"]

Status = Literal["draft", "gone-over", "signed"]
"""How far a card can be trusted: as it was written; gone over; signed by who answers for it."""

Call = Literal["cooling"]
"""What a unit is called for, where it can be for nothing else."""

WorkStateName = Literal[
    "any", "running", "running-open", "energised-open", "locked-closed", "locked-out"
]
"""`locked-closed`: locked out and tried, every cover over electrical parts on."""

Need = Literal[
    "meter-proved",
    "capacitors-discharged",
    "gas-shut",
    "gas-open",
    "manometer-at-inlet",
    "manometer-at-outlet",
    "meter-in-rod-lead",
    "clamp-on-heater-lead",
    "motor-leads-moved",
    "gauges-on",
    "at-ports",
    "charge-recovered",
    "unit-stopped",
    "clips-dead",
]
"""What must be true before a test may be shown, beyond its work state."""
NEEDS: Final[tuple[Need, ...]] = get_args(Need)

PlaceKind = Literal[
    "circuit",
    "compressor",
    "contactor",
    "compressor-capacitor",
    "condenser-fan",
    "condenser-fan-capacitor",
    "blower-capacitor",
    "capacitor",
    "heat-stage",
]
"""Kinds of place a unit may have several of. Whatever names none is about the whole unit."""
PLACE_KINDS: Final[tuple[PlaceKind, ...]] = get_args(PlaceKind)

Profile = Literal[
    "apprentice",
    "supervised",
    "technician",
    "electrical",
    "licensed-electrician",
    "refrigerant",
    "gas",
    "combustion",
    "fire-alarm",
    "building-controls",
    "utility",
    "owner",
]
"""Who may do a piece of work."""
PROFILES: Final[tuple[Profile, ...]] = get_args(Profile)

ClearingRole = Literal[
    "fire-service",
    "medical-service",
    "gas-utility",
    "gas-fitter",
    "combustion",
    "heating-contractor",
    "electrician",
    "electric-utility",
    "refrigerant",
    "fire-alarm",
    "building-owner",
    "supervisor",
]
"""Who may make a place safe after a STOP. Never "it was aired"."""

PartCost = Literal["adjust", "under-50", "50-to-250", "250-to-1000", "1000-to-4000", "over-4000"]

LegReducer = Literal[
    "highest",
    "lowest",
    "average",
    "unbalance",
    "ratio",
    "lowest-of-pairs",
    "average-of-others",
    "sum-error",
    "count-open",
    "count-zero",
    "farthest",
    "size",
]
"""How several legs typed as one answer become one number."""

FormulaName = Literal[
    "copy",
    "sum",
    "average",
    "difference",
    "absolute-difference",
    "ratio",
    "percent-difference",
    "dew-temperature",
    "bubble-temperature",
    "dew-pressure",
    "bubble-pressure",
    "target-superheat",
    "target-split",
    "compression-ratio",
    "outdoor-air-fraction",
    "mixed-air-temperature",
    "capacitance-under-load",
    "gas-flow",
    "gas-input",
    "input-at-altitude",
    "meter-time",
    "airflow-per-ton",
    "co-air-free",
    "evaporating-least",
    "evaporating-most",
    "condensing-over-ambient-least",
    "condensing-over-ambient-most",
]

PLAIN_SOURCES: Final = ("common practice, no source", "from memory", "calculated")
"""What may stand for a published source. Anything else is an id of sources.yaml."""

PROBABILITY: Final[dict[Grade, float]] = {
    "never": 0.02, "seldom": 0.14, "sometimes": 0.41, "often": 0.73, "almost-always": 0.92,
}  # fmt: skip
"""What a grade is reckoned with (common practice, no source)."""

BANDS: Final[dict[Grade, tuple[float, float]]] = {
    "never": (0.0, 0.03),
    "seldom": (0.03, 0.20),
    "sometimes": (0.20, 0.60),
    "often": (0.60, 0.90),
    "almost-always": (0.90, 1.0),
}
"""From and to what share of cases a grade speaks for."""

MOST_OF_A_ROW: Final = 0.98
"""Grades on one test may add up to this; a row that would pass it is scaled."""
