"""The closed lists of words that rule files may use, in their natural order."""

from __future__ import annotations

from typing import Final, get_args

from troubleshoot.knowledge import model

GRADES: Final[tuple[str, ...]] = get_args(model.Grade)
TEST_KINDS: Final[tuple[str, ...]] = get_args(model.TestKind)
CHOOSE: Final[tuple[str, ...]] = get_args(model.Choose)
EXPOSURES: Final[tuple[str, ...]] = get_args(model.Exposure)
SIGNALS: Final[tuple[str, ...]] = get_args(model.Signal)
STOP_SCOPES: Final[tuple[str, ...]] = get_args(model.StopScope)
HOW_COMMON: Final[tuple[str, ...]] = get_args(model.HowCommon)
WORK_STATES: Final[tuple[str, ...]] = get_args(model.WorkStateName)

NEEDS: Final = (
    "meter-proved",
    "capacitors-discharged",
    "gas-shut",
    "gauges-on",
    "charge-recovered",
)
"""What must be true before a test may be shown, beyond its work state."""

PLACE_KINDS: Final = (
    "circuit",
    "compressor",
    "contactor",
    "compressor-capacitor",
    "condenser-fan",
    "condenser-fan-capacitor",
    "blower-capacitor",
    "capacitor",
    "heat-stage",
)
"""Kinds of place a unit may have several of. Whatever names none is about the whole unit."""

PROFILES: Final = (
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
)
"""Who may do a piece of work."""

CLEARING_ROLES: Final = (
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
)
"""Who may make a place safe after a STOP. Never "it was aired"."""

PART_COSTS: Final = (
    "adjust",
    "under-50",
    "50-to-250",
    "250-to-1000",
    "1000-to-4000",
    "over-4000",
)

LEG_REDUCERS: Final = (
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
)
"""How several legs typed as one answer become one number."""

COMPARISONS: Final = ("value", "difference", "percent-difference", "percent-of", "times")

FORMULAS: Final = (
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
    "compression-ratio",
    "outdoor-air-fraction",
    "mixed-air-temperature",
    "capacitance-under-load",
    "gas-flow",
    "gas-input",
    "meter-time",
    "airflow-per-ton",
    "co-air-free",
)

PLAIN_SOURCES: Final = (
    "common practice, no source",
    "from memory",
    "calculated",
)
"""What may stand for a published source. Anything else is an id of sources.yaml."""
