"""A reading that shows a danger brings it, told wherever it is, whether it is taken or not.

What is over its limit is a danger by the tests' own sources: 14 in wc at a gas valve, 5 V from
a cabinet to ground, 10 % of the lower explosive limit, 400 ppm in a flue, a suction under zero.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from tests.edge.test_asked_where_words_hint import (
    at_a_step,
    at_a_test,
    at_the_complaint,
    is_asked,
)
from tests.edge.test_dangers_of_a_stranger import orders_of, shown
from tests.edge.visits import begin, events_of, lead_to, task
from troubleshoot.knowledge.model import Knowledge

Reach = Callable[[Path, Clock], Person]
SHOW = {
    "flue co 600 ppm air free": "flue-carbon-monoxide-extreme",
    "gas inlet 20 inches": "gas-pressure-too-high",
    "cabinet to ground 120 V": "unexplained-voltage",
    "cabinet reads 120 V to ground": "unexplained-voltage",
    "47 V from cabinet to ground": "unexplained-voltage",
    "lel 25 %": "gas-odour",
    "combustible gas 30 percent lel": "gas-odour",
    "suction -5": "compressor-pulls-a-vacuum",
    "rollout is open": "rollout-tripped",
    "o2 moves 2 points when blower starts": "heat-exchanger-breach",
    "the fuse keeps blowing so i put a penny in": "wrong-fuse-or-breaker",
}
HARMLESS = (
    "flue co 32 ppm air free", "gas inlet 7 inches", "cabinet to ground 0.4 V", "lel 0 %",
    "suction 118", "rollout is closed", "o2 moves 0.1 points when blower starts",
)  # fmt: skip


@pytest.mark.parametrize("reach", [at_a_test, at_a_step, at_the_complaint])
@pytest.mark.parametrize(("typed", "hazard"), SHOW.items())
def test_it_brings_its_danger(
    typed: str, hazard: str, reach: Reach, data: Path, clock: Clock, shipped: Knowledge
) -> None:
    with reach(data, clock) as person:
        person.types(typed)
        assert "STOP" in person.last and orders_of(shipped, hazard) in shown(person), person.last
    assert f'"hazard": "{hazard}"' in events_of(data)


@pytest.mark.parametrize("reach", [at_a_test, at_a_step])
def test_what_is_harmless_passes(reach: Reach, data: Path, clock: Clock) -> None:
    with reach(data, clock) as person:
        for typed in HARMLESS:
            person.types(typed)
            assert "STOP" not in person.last and not is_asked(person), person.last


def test_what_is_judged_by_the_unit_is_brought_too(
    data: Path, clock: Clock, shipped: Knowledge
) -> None:
    """4.2 in wc is too much of natural gas, and of propane next to nothing (fuel-gas sheets)."""
    with begin(data, clock, words="no-heat") as person:
        person.types("unit heat gas", "unit fuel propane", "manifold 4.2 in wc")
        assert "STOP" not in person.last, person.last
        person.types("unit fuel natural gas", "manifold 4.2 in wc")
        assert orders_of(shipped, "over-fired-or-wrong-fuel") in shown(person), person.last


def test_what_may_be_of_another_day_is_asked_about(data: Path, clock: Clock) -> None:
    with at_a_test(data, clock) as person:
        person.types("cabinet to ground was 120 V last week")
        assert is_asked(person), person.last


def test_the_supply_air_takes_the_number_of_the_monitor(
    data: Path, clock: Clock, shipped: Knowledge
) -> None:
    """70 ppm and more: everybody out. It was refused: "give a number, or one of"."""
    with begin(data, clock, words="heat-short-cycles") as person:
        person.types("unit heat gas", "do supply-air-carbon-monoxide")
        lead_to(person, "Test: Carbon monoxide in the supply air")
        person.types("180 ppm")
        assert orders_of(shipped, "carbon-monoxide-evacuate") in shown(person), person.last
    assert '"text": "180 ppm"' in events_of(data)


def test_a_sweep_by_words_does_not_refuse_a_number_in_silence(
    data: Path, clock: Clock, shipped: Knowledge
) -> None:
    with begin(data, clock, words="no-cooling") as person:
        person.types("unit refrigerant R-454B", "do suction-pressure")
        lead_to(person, "Sweep for flammable refrigerant")
        assert "Sweep" in task(person)
        person.types("40 ppm")
        assert orders_of(shipped, "flammable-refrigerant-found") in shown(person), person.last
