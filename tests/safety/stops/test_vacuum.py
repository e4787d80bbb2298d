"""A compressor that pulls a vacuum is off, and what empties or starves its circuit comes first."""

from __future__ import annotations

import pytest

from tests.safety.stops.shipped import KNOWLEDGE, concluded, proposed, standing

ONE_CIRCUIT = {"refrigerant": "R-410A", "metering": "txv", "heat": "gas", "circuits": 1}
STARVED = {
    "low-charge-from-leak",
    "liquid-line-restriction",
    "txv-underfeeding",
    "moisture-freezing-at-valve",
}
RUNS = [
    [],
    [{"test": "compressor-start-attempt", "outcome": "starts"}],
    [{"test": "compressor-amps", "text": "9 A"}],
]


@pytest.mark.parametrize("more", RUNS)
@pytest.mark.parametrize("suction", ["-5 psig", "-10 psig", "10 in vac"])
def test_a_compressor_that_pulls_a_vacuum_is_off_now(
    suction: str, more: list[dict[str, str]]
) -> None:
    """It read as a low suction: no caution, and a broken belt was the first cause."""
    readings = [{"test": "suction-pressure", "text": suction}, *more]
    found = concluded(readings, complaint="no-cooling", unit=ONE_CIRCUIT)
    assert standing(found)[0] == "compressor-pulls-a-vacuum"
    assert found.causes[0].fault.id == "low-charge-from-leak"
    assert "circuit-empty" in [each.fault.id for each in found.effects]
    running = {t for t in proposed(found) if KNOWLEDGE.tests[t].work_state.startswith("running")}
    assert running.isdisjoint({"operating-sequence", "condenser-fan-turning", "superheat"})
    assert not [t for t in running if KNOWLEDGE.tests[t].per in ("circuit", "compressor")]


def test_what_starves_the_circuit_comes_before_what_starves_the_air() -> None:
    readings = [{"test": "suction-pressure", "text": "-5 psig"}]
    found = concluded(readings, complaint="weak-cooling", unit=ONE_CIRCUIT)
    assert {cause.fault.id for cause in found.causes[:4]} == STARVED


@pytest.mark.parametrize("suction", ["20 psig", "60 psig"])
def test_a_low_suction_above_zero_is_no_vacuum(suction: str) -> None:
    low = concluded([{"test": "suction-pressure", "text": suction}], unit=ONE_CIRCUIT)
    assert low.readings[0].seen == ("low",) and standing(low) == []
