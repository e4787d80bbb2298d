"""What a mechanic looks at or reads dead first, before anything is called or switched on again.

Common practice, no source, where nothing else is named; that work is done dead unless it cannot
be is NFPA 70E, 110.
"""

from __future__ import annotations

from typing import Final

import pytest

from tests.cases.led_by import Led, led_by
from troubleshoot.knowledge.model import Knowledge

COOLING: Final = {
    "refrigerant": "R-410A",
    "metering": "txv",
    "circuits": 1,
    "supply-phase": "three",
    "compressor-phase": "three",
    "line-volts-class": 208,
    "heat": "gas",
}
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
