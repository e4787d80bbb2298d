"""A call that arrives at the board, or at the coil, clears what is ahead of it.

Met by a mechanic. Common practice, no source: volts are followed from the thermostat to the coil,
and what lies behind the place where they are missing has not been asked yet.
"""

from __future__ import annotations

from tests.cases.led_by import Led, led_by
from troubleshoot.knowledge.model import Knowledge

PACKAGED = {
    "supply-phase": "single",
    "nameplate-volts": "230 V",
    "heat": "electric",
    "refrigerant": "R-410A",
    "metering": "txv",
    "circuits": 1,
    "condenser-fans": "one",
    "condenser-fan-phase": "single",
}
NO_Y = {"transformer-secondary-volts": "26 V", "cooling-call": "0 V"}
MADE = {**NO_Y, "thermostat-output": "makes"}
NOT_IN = {
    "condenser-fan-turning": "stopped",
    "cooling-call": "25 V",
    "contactor-pull-in": "does-not-pull-in",
}
FED = {**NOT_IN, "contactor-coil-volts": "24.6 V"}


def no_cooling(knowledge: Knowledge, read: dict[str, str]) -> Led:
    return led_by(knowledge, "no-cooling", PACKAGED, read)


def test_without_y_at_the_board_the_thermostats_own_base_is_read(shipped: Knowledge) -> None:
    assert no_cooling(shipped, NO_Y).next == "thermostat-output"


def test_made_at_the_base_and_not_at_the_board_it_is_the_cable_and_is_rung_out(
    shipped: Knowledge,
) -> None:
    for told in ({}, {"heating-call": "26 V"}, {"control-fuse": "good"}):
        led = no_cooling(shipped, {**MADE, **told})
        assert (led.first, led.next) == ("thermostat-cable-broken", "thermostat-cable-ohms")


def test_nothing_behind_the_board_is_accused_of_a_call_that_never_came(shipped: Knowledge) -> None:
    led = no_cooling(shipped, MADE)
    behind = ("condenser-fan-capacitor-weak", "low-charge-from-leak", "contactor-coil-open")
    assert max(led.causes[fault] for fault in behind) < 0.01


def test_a_short_that_blows_the_fuse_pays_for_another_call_and_for_a_whole_fuse(
    shipped: Knowledge,
) -> None:
    before = no_cooling(shipped, NO_Y).causes["control-wiring-short"]
    cut = {"control-wiring-look": "gnawed-or-cut"}
    for told in ({"heating-call": "26 V"}, {"fan-call": "present"}, {"control-fuse": "good"}):
        led = no_cooling(shipped, {**NO_Y, **told, **cut})
        assert led.causes["control-wiring-short"] < before / 2
        assert led.causes["control-wiring-short"] < led.causes["thermostat-cable-broken"]


def test_a_control_transformer_pays_for_a_call_that_stands(shipped: Knowledge) -> None:
    assert no_cooling(shipped, NOT_IN).causes["control-transformer-open"] < 0.01


def test_called_and_not_in_the_coils_volts_are_read(shipped: Knowledge) -> None:
    assert no_cooling(shipped, NOT_IN).next == "contactor-coil-volts"


def test_fed_and_not_in_it_is_the_coil_whatever_hangs_on_the_contactor(shipped: Knowledge) -> None:
    for fan in ("stopped", "nothing-runs"):
        led = no_cooling(shipped, {**FED, "condenser-fan-turning": fan})
        assert (led.first, led.next) == ("contactor-coil-open", "contactor-coil-ohms")
        assert led.causes["condenser-fan-capacitor-weak"] < 0.01


def test_a_known_building_control_may_hold_what_a_thermostat_makes(shipped: Knowledge) -> None:
    known = {**PACKAGED, "building-control": "fitted"}
    led = led_by(shipped, "no-cooling", known, MADE)
    unknown = no_cooling(shipped, MADE)
    name = "building-control-holding-unit-off"
    assert led.causes[name] > 2 * unknown.causes[name]
