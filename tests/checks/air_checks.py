"""How each reference value on air and gas heat is computed."""

from collections.abc import Callable, Mapping
from typing import Any

from tests.checks.reference_entries import Entry, compute
from troubleshoot.quantities import air, combustion

WATER_TO_AIR = 0.621945
"""Molar mass of water over that of dry air (ASHRAE Handbook, Fundamentals, chapter 1)."""

ALTITUDES = {14.696: "0 ft", 12.228: "5000 ft"}
"""The altitude at which the standard atmosphere has the entry's pressure, psia."""


def moist_air(entry: Entry, **moisture: str) -> Mapping[str, float]:
    found = compute(
        "moist-air", dry_bulb=entry.typed("dry_bulb"), pressure=entry.typed("pressure"), **moisture
    )
    by_key = {
        "wet_bulb_degF": found["wet-bulb"],
        "humidity_ratio": found["humidity-ratio"],
        "relative_humidity_percent": found["relative-humidity"],
        "dew_point_degF": found["dew-point"],
        "enthalpy_btu_per_lb": found["enthalpy"],
        "volume_ft3_per_lb": found["volume"],
    }
    return {key: by_key[key] for key in entry.expected if key in by_key}


def from_wet_bulb(entry: Entry) -> Mapping[str, float]:
    return moist_air(entry, wet_bulb=entry.typed("wet_bulb"))


def from_relative_humidity(entry: Entry) -> Mapping[str, float]:
    return moist_air(entry, relative_humidity=entry.typed("relative_humidity"))


def water_vapour_pressure(entry: Entry) -> float:
    """Return the saturation pressure behind the humidity ratio of saturated air at 16 psia."""
    ratio = compute(
        "moist-air",
        dry_bulb=entry.typed("temperature"),
        relative_humidity="100 %",
        pressure="16 psia",
    )["humidity-ratio"]
    return float(16 * ratio / (WATER_TO_AIR + ratio))


def standard_pressure(entry: Entry) -> Mapping[str, float]:
    """Return the site's pressure behind the volume of dry air there and at sea level."""
    high, low = (
        compute("moist-air", dry_bulb="70 F", relative_humidity="0 %", altitude=altitude)["volume"]
        for altitude in (entry.typed("altitude"), "0 ft")
    )
    return {"pressure_psia": 14.695949 * low / high}


def dry_air(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "moist-air",
        dry_bulb=entry.typed("temperature"),
        relative_humidity="0 %",
        pressure="14.696 psia",
    )
    return {"enthalpy_btu_per_lb": found["enthalpy"], "volume_ft3_per_lb": found["volume"]}


def standard_air_constants(_entry: Entry) -> Mapping[str, float]:
    return {
        "total_4.5": air.TOTAL_FACTOR,
        "sensible_1.08": air.SENSIBLE_FACTOR,
        "latent_grains_0.68": air.LATENT_FACTOR,
        "latent_lb_4840": air.LATENT_FACTOR * 7000,
    }


def air_side_capacity(entry: Entry) -> Mapping[str, float]:
    entering, leaving = entry.pair("entering"), entry.pair("leaving")
    found = compute(
        "air-side-capacity",
        airflow=entry.typed("airflow"),
        entering_dry_bulb=entering[0],
        entering_wet_bulb=entering[1],
        leaving_dry_bulb=leaving[0],
        leaving_wet_bulb=leaving[1],
        altitude=ALTITUDES[entry.number("pressure")],
    )
    return {
        "total_btuh": found["total"],
        "sensible_btuh": found["sensible"],
        "latent_btuh": found["latent"],
        "tons": found["tons"],
        "shr": found["sensible-heat-ratio"],
    }


def altitude_factor(entry: Entry) -> float:
    high, low = (
        compute("airflow-from-heat-rise", output="80000 Btu/h", rise="50 F", altitude=altitude)
        for altitude in (entry.typed("altitude"), "0 ft")
    )
    return float(low["airflow"] / high["airflow"])


def outdoor_air_fraction(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "outdoor-air-fraction",
        return_air=entry.typed("return_air"),
        mixed_air=entry.typed("mixed"),
        outdoor=entry.typed("outdoor"),
    )
    return {
        "oa_percent": found["fraction"],
        "std_uncertainty_percent_for_1F_sensors": found["uncertainty"],
    }


def meter_flow(entry: Entry) -> float:
    found = compute("gas-input-rate", dial=entry.typed("dial"), time=entry.typed("time"))
    return float(found["flow"])


def meter_input(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "gas-input-rate",
        dial=entry.typed("dial"),
        time=entry.typed("time"),
        heating_value=entry.typed("heating_value"),
    )
    return {
        "cfh": found["flow"],
        "input_btuh": found["input"],
        "output_at_80_percent": 0.8 * found["input"],
    }


def two_turns(entry: Entry) -> Mapping[str, float]:
    found = compute(
        "gas-input-rate",
        dial=f"{entry.number('dial') * entry.number('turns')} ft3",
        time=entry.typed("time"),
        heating_value=entry.typed("heating_value"),
    )
    return {"right_cfh": found["flow"], "right_btuh": found["input"]}


def methane_flue_gas(entry: Entry) -> Mapping[str, float]:
    """Return the oxygen at which methane has this excess air, and the carbon dioxide there."""
    low, high = 0.0, 20.0
    while high - low > 1e-9:
        middle = (low + high) / 2
        excess = combustion.excess_air(middle, "methane")
        low, high = (middle, high) if excess < entry.number("excess_air") else (low, middle)
    return {"o2_percent": low, "co2_percent": combustion.carbon_dioxide(low, "methane")}


def flue_gas(result: str) -> Callable[[Entry], float]:
    return lambda entry: float(compute("excess-air", o2=entry.typed("o2"))[result])


CHECKS: Mapping[str, Callable[[Entry], Any]] = {
    **dict.fromkeys(
        ("PSY-001", "PSY-002", "PSY-004", "PSY-005", "PSY-007", "PSY-012"), from_wet_bulb
    ),
    **dict.fromkeys(("PSY-009", "PSY-010", "PSY-011"), from_relative_humidity),
    **dict.fromkeys((f"PSY-{number:03}" for number in range(13, 19)), water_vapour_pressure),
    **dict.fromkeys(("PSY-022", "PSY-023"), standard_pressure),
    "PSY-024": dry_air,
    "PSY-025": standard_air_constants,
    **dict.fromkeys(("ACAP-001", "ACAP-003"), air_side_capacity),
    "ACAP-005": altitude_factor,
    "GAS-001": lambda entry: compute(
        "airflow-from-heat-rise", output=entry.typed("output"), rise=entry.typed("rise")
    )["airflow"],
    "GAS-006": lambda entry: compute(
        "airflow-from-electric-heat", power=entry.typed("power"), rise=entry.typed("rise")
    )["airflow"],
    "GAS-007": meter_input,
    **dict.fromkeys(("GAS-008", "GAS-009", "GAS-010", "GAS-013"), meter_flow),
    "GAS-014": two_turns,
    **dict.fromkeys(
        ("GAS-022", "GAS-023", "GAS-024"),
        lambda entry: compute("co-air-free", co=entry.typed("co"), o2=entry.typed("o2"))[
            "co-air-free"
        ],
    ),
    "GAS-026": lambda _entry: {"vented_heating": combustion.HIGHEST_CO_AIR_FREE},
    **dict.fromkeys(("GAS-027", "GAS-028", "GAS-029", "GAS-030"), methane_flue_gas),
    "GAS-031": flue_gas("carbon-dioxide"),
    **dict.fromkeys(("GAS-043", "GAS-044", "GAS-045"), flue_gas("excess-air")),
    **dict.fromkeys(("OAF-001", "OAF-002", "OAF-003", "OAF-004"), outdoor_air_fraction),
    "VP-002": lambda entry: compute(
        "air-velocity",
        velocity_pressure=entry.typed("velocity_pressure"),
        density=entry.typed("density"),
    )["velocity"],
}
"""The reference entry and what computes it."""
