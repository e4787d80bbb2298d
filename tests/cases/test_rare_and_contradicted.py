"""What is rare leads on no plain finding, and what a reading contradicts pays for it.

Met by a mechanic; common practice, no source.
"""

from __future__ import annotations

import pytest

from tests.cases.led_by import led_by
from troubleshoot.knowledge.model import Knowledge

SPLIT = {
    "condenser-fan-turning": "normal",
    "air-filters": "clean",
    "return-air-temperature": "78 F",
    "supply-air-temperature": "68 F",
    "outdoor-temperature": "93 F",
}
UNIT = {"refrigerant": "R-410A", "metering": "txv", "circuits": 1, "economizer": "not-fitted"}


@pytest.mark.parametrize("ice", ["none", "frost"])
def test_a_low_split_is_low_charge_before_a_blocked_distributor(
    ice: str, shipped: Knowledge
) -> None:
    led = led_by(shipped, "weak-cooling", UNIT, {**SPLIT, "ice-on-coil": ice})
    assert led.first == "low-charge-from-leak"
    assert led.causes["distributor-tube-blocked"] < led.causes["low-charge-from-leak"] / 3


def test_mostly_outdoor_air_in_the_heat_leads_to_the_damper_by_its_temperatures(
    shipped: Knowledge,
) -> None:
    air = {
        "return-air-temperature": "78 F",
        "mixed-air-temperature": "92 F",
        "outdoor-temperature": "95 F",
    }
    led = led_by(shipped, "weak-cooling", {**UNIT, "economizer": "fitted"}, air)
    assert (led.first, led.next) == ("outdoor-damper-stuck-open", "economizer-damper")


@pytest.mark.parametrize("complaint", ["no-cooling", "weak-cooling", "cooling-short-cycles"])
def test_a_stopped_fan_that_hums_is_its_capacitor_and_has_its_power(
    complaint: str, shipped: Knowledge
) -> None:
    unit = {**UNIT, "condenser-fans": "one", "condenser-fan-phase": "single"}
    hums = {"condenser-fan-turning": "stopped", "condenser-fan-hum": "hums"}
    led = led_by(shipped, complaint, unit, hums)
    assert led.first == "condenser-fan-capacitor-weak"
    assert led.causes["condenser-fan-no-supply"] < 0.05
