"""How each reference value on refrigerants is computed."""

import re
from collections.abc import Callable, Mapping
from typing import Any

from tests.checks.reference_entries import Entry, compute, entries

REFRIGERANTS = {
    "R22": "R-22",
    "R32": "R-32",
    "R134A": "R-134a",
    "R410A": "R-410A",
    "R407C": "R-407C",
    "R454B": "R-454B",
}


def refrigerant_of(entry: Entry) -> str:
    """Return the refrigerant that the entry speaks of."""
    named = re.search(r"R-\d+[A-Za-z]?", entry.quantity)
    assert named is not None, entry.id
    return named[0]


def saturation(entry: Entry) -> Mapping[str, float]:
    name = REFRIGERANTS[entry.id.split("-")[1]]
    found = compute("saturation", refrigerant=name, temperature=entry.typed("temperature"))
    return {"bubble_psig": found["bubble-pressure"], "dew_psig": found["dew-pressure"]}


def swapped_columns(entry: Entry) -> Mapping[str, float]:
    found = compute("saturation", refrigerant="R-407C", temperature=entry.typed("temperature"))
    return {"bubble_psig": found["bubble-pressure"], "dew_psig": found["dew-pressure"]}


def superheat(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "superheat",
        refrigerant=refrigerant_of(entry),
        suction_pressure=entry.typed("suction"),
        line_temperature=entry.typed("line"),
    )
    return {
        "saturation_degF": found["saturation-temperature"],
        "superheat_degF": found["superheat"],
    }


def subcooling(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "subcooling",
        refrigerant=refrigerant_of(entry),
        liquid_pressure=entry.typed("liquid"),
        line_temperature=entry.typed("line"),
    )
    return {
        "saturation_degF": found["saturation-temperature"],
        "subcooling_degF": found["subcooling"],
    }


def wrong_column(entry: Entry) -> Mapping[str, float]:
    return {"right_superheat": superheat(entry)["superheat_degF"]}


def at_altitude(entry: Entry) -> float:
    found = compute(
        "saturation",
        refrigerant="R-410A",
        temperature=entry.typed("temperature"),
        altitude="5000 ft",
    )
    return float(found["dew-pressure"])


def shortcut_target(entry: Entry) -> float:
    return float(
        compute(
            "target-superheat",
            return_wet_bulb=entry.typed("return_wet_bulb"),
            outdoor_dry_bulb=entry.typed("outdoor_dry_bulb"),
        )["superheat"]
    )


def charging_table_row(entry: Entry) -> Mapping[int, float]:
    return {
        wet_bulb: compute(
            "target-superheat",
            return_wet_bulb=f"{wet_bulb} F",
            outdoor_dry_bulb=entry.typed("outdoor_dry_bulb"),
        )["table-superheat"]
        for wet_bulb in entry.expected
    }


def misprinted_target(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "target-superheat",
        return_wet_bulb=entry.typed("wet_bulb"),
        outdoor_dry_bulb=entry.typed("outdoor_dry_bulb"),
    )
    return {"likely_K": found["table-superheat"] / 1.8}


def healthy_units(entry: Entry) -> Mapping[str, list[float]]:
    evaporating = [
        compute("saturation", refrigerant="R-410A", pressure=f"{psig} psig")["dew-temperature"]
        for psig in entry.expected["suction_psig"]
    ]
    condensing = [
        compute(
            "condensing-over-ambient",
            refrigerant="R-410A",
            liquid_pressure=f"{psig} psig",
            outdoor_dry_bulb=entry.typed("outdoor"),
        )
        for psig in entry.expected["liquid_psig"]
    ]
    return {
        "evaporating_degF": evaporating,
        "condensing_degF": [each["saturation-temperature"] for each in condensing],
        "over_ambient_degF": [each["difference"] for each in condensing],
    }


def compression_ratio(entry: Entry) -> float:
    return float(
        compute(
            "compression-ratio",
            suction_pressure=entry.typed("suction"),
            discharge_pressure=entry.typed("discharge"),
        )["ratio"]
    )


CHECKS: Mapping[str, Callable[[Entry], Any]] = {
    **{name: saturation for name in entries() if name.startswith("PT-")},
    "REF-001": swapped_columns,
    **dict.fromkeys(
        ("SH-001", "SH-002", "SH-003", "SH-004", "SH-006", "SH-007", "SH-008"), superheat
    ),
    "SH-009": wrong_column,
    "SH-010": at_altitude,
    **dict.fromkeys(("SC-002", "SC-005", "SC-008"), subcooling),
    **dict.fromkeys(("TSH-003", "TSH-004", "TSH-005", "TSH-007"), shortcut_target),
    **{name: charging_table_row for name in entries() if name.startswith("TSH-OEM-")},
    "TSH-TRAP": misprinted_target,
    "COA-002": healthy_units,
    "CR-003": compression_ratio,
}
"""The reference entry and what computes it."""
