"""What a mechanic looks at or reads dead first, before anything is called or switched on again.

Common practice, no source, where nothing else is named; that work is done dead unless it cannot
be is NFPA 70E, 110.
"""

from __future__ import annotations

from typing import Final

import pytest

from tests.cases.led_by import Led, led_by
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case

COOLING: Final = {
    "refrigerant": "R-410A",
    "metering": "txv",
    "circuits": 1,
    "supply-phase": "three",
    "compressor-phase": "three",
    "line-volts-class": 208,
    "heat": "gas",
}
FURNACE: Final = {"heat": "gas", "fuel": "natural-gas", "draft": "induced", "ignition": "spark"}
SEEN_BURNT: Final = {
    "compressor-start-attempt": "hums-and-trips",
    "contactor-contacts": "pole-burnt-away",
}
SOUND_BESIDE_IT: Final = {
    "compressor-windings": "0.9/0.9/0.9 ohm",
    "condenser-fan-hand-spin": "free",
    "fuse-continuity": "good",
    "overload-relay": "normal",
}
RUNNING: Final = ("running", "running-open")
LIVE: Final = (*RUNNING, "energised-open")


def among(led: Led, states: tuple[str, ...], knowledge: Knowledge) -> list[str]:
    return [test for test in led.tests if knowledge.tests[test].work_state in states]


@pytest.mark.parametrize("sound", range(len(SOUND_BESIDE_IT) + 1))
def test_a_pole_seen_burnt_away_is_named_whatever_is_sound_beside_it(
    sound: int, shipped: Knowledge
) -> None:
    beside = dict(list(SOUND_BESIDE_IT.items())[:sound])
    led = led_by(shipped, "no-cooling", COOLING, {**SEEN_BURNT, **beside})
    assert led.first == "contactor-pole-burnt-away"
    assert led.causes[led.first] >= 0.9


def test_nothing_is_read_live_before_a_burnt_pole_is_replaced(shipped: Knowledge) -> None:
    led = led_by(shipped, "no-cooling", COOLING, SEEN_BURNT)
    assert not among(led, LIVE, shipped)


def test_trap_and_pan_are_looked_at_before_a_gallon_is_poured(shipped: Knowledge) -> None:
    float_in_water = {"safety-string-walk": "float-switch-open"}
    led = led_by(
        shipped,
        "no-cooling",
        COOLING,
        {**float_in_water, "condensate-float-switch": "open-in-water"},
    )
    assert set(led.tests[:2]) == {"drain-trap", "drain-pan"}
    assert "drain-pour-test" not in led.tests


def test_the_pour_comes_once_the_trap_is_known_to_be_clear(shipped: Knowledge) -> None:
    seen = {"condensate-float-switch": "open-in-water", "drain-trap": "normal"}
    assert "drain-pour-test" in led_by(shipped, "no-cooling", COOLING, seen).tests


@pytest.mark.parametrize("coil", [{}, {"contactor-coil-ohms, contactor 1": "0.8 ohm"}])
def test_nothing_is_called_behind_an_open_control_fuse(
    coil: dict[str, str], shipped: Knowledge
) -> None:
    led = led_by(shipped, "dead-unit", COOLING, {"control-fuse": "open", **coil})
    assert not among(led, RUNNING, shipped)
    assert shipped.tests[led.next].work_state == "locked-out"


def test_behind_an_open_control_fuse_loads_and_wires_are_read_dead_first(
    shipped: Knowledge,
) -> None:
    led = led_by(shipped, "dead-unit", COOLING, {"control-fuse": "open"})
    assert {"contactor-coil-ohms", "control-wiring-look"} <= set(led.tests[:4])


def test_elements_are_read_to_ground_behind_an_open_heater_fuse(shipped: Knowledge) -> None:
    unit = {"heat": "electric", "supply-phase": "three", "line-volts-class": 208}
    open_fuse = {"heater-bank-amps": "none", "heater-fuses": "open"}
    led = led_by(shipped, "no-heat", unit, {f"{t}, heat stage 1": s for t, s in open_fuse.items()})
    assert led.next == "heater-elements"
    assert "thermostat-batteries" not in led.tests[:5]


def test_a_limit_that_opens_in_run_stops_the_heat_as_a_high_rise_does(shipped: Knowledge) -> None:
    for told in ({"main-limit": "opens-in-run"}, {"heat-temperature-rise": "high"}):
        readings = [{"test": test, "outcome": said} for test, said in told.items()]
        case = {"unit": FURNACE, "complaint": "heat-short-cycles", "readings": readings}
        found = Reasoner(shipped).conclude(read_case(shipped, case))
        assert "rise-over-the-plate" in {fired.hazard.id for fired in found.hazards}


@pytest.mark.parametrize(
    "ran",
    [
        {"restart-and-watch": "runs"},
        {"suction-pressure, circuit 1": "normal"},
        {"compressor-amps, compressor 1": "normal"},
    ],
)
def test_a_unit_seen_to_run_is_not_switched_off(ran: dict[str, str], shipped: Knowledge) -> None:
    led = led_by(shipped, "no-cooling", COOLING, ran)
    assert led.causes.get("disconnect-or-breaker-off", 0.0) < 0.002


def test_a_coil_that_gets_nothing_while_called_is_not_accused(shipped: Knowledge) -> None:
    seen = {
        "cooling-call, circuit 1": "26 V",
        "contactor-pull-in, contactor 1": "does-not-pull-in",
        "contactor-coil-volts, contactor 1": "0 V",
    }
    led = led_by(shipped, "no-cooling", COOLING, seen)
    assert not {"contactor-coil-open", "contactor-coil-shorted"} & set(list(led.causes)[:4])
    assert led.causes.get("contactor-coil-open", 0.0) < 0.01


@pytest.mark.parametrize(
    "seen",
    [
        {"flue-outlet-and-hood": "blocked"},
        {"inducer-fan": "normal", "draft-at-pressure-switch": "below"},
    ],
)
def test_the_rooms_are_read_where_a_flue_does_not_draw(
    seen: dict[str, str], shipped: Knowledge
) -> None:
    led = led_by(shipped, "no-heat", FURNACE, seen)
    assert led.next == "room-carbon-monoxide"
    assert "flame-picture" not in led.tests
