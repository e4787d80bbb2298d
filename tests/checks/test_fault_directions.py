"""Five faults of a fixed-orifice rooftop unit, by the directions in which its readings move.

Source of the directions: Rossi and Braun 1997, HVAC&R Research 3(1) 19-37, rule table, as reprinted
in the rooftop fault-detection report of Li and Braun (table 1-1). The sizes of the moves are ours:
large enough to leave the usual bands, physically consistent, nothing more.
"""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities import saturation
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.visit.cases.file import read_case

# evaporating, superheat, condensing, subcooling, discharge, condenser air rise, evaporator drop
DIRECTIONS: Mapping[str, str] = {
    "low-charge-from-leak": "-+--+--",
    "compressor-pumping-weak": "+------",
    "liquid-line-restriction": "-+-++--",
    "condenser-coil-dirty": "+-+-++-",
    "low-indoor-airflow": "------+",
}
LOW_AIRFLOW = frozenset(
    {"evaporator-coil-dirty", "filters-loaded", "blower-belt-slipping", "blower-wheel-dirty",
     "duct-damper-shut", "blower-belt-broken", "duct-liner-collapsed"}
)  # fmt: skip
SIZES = (11.0, 12.0, 12.0, 7.0, 35.0, 7.0, 7.0)
USUAL = (42.0, 14.0, 112.0, 10.0, 175.0, 17.0, 20.0)
OUTDOOR, RETURN, WET_BULB = 90.0, 78.0, 66.0


def moved(fault: str, without: str = "") -> dict[str, object]:
    """A case with readings moved as the table says."""
    values = [
        usual + (size if sign == "+" else -size)
        for usual, size, sign in zip(USUAL, SIZES, DIRECTIONS[fault], strict=True)
    ]
    evaporating, superheat, condensing, subcooling, discharge, rise, drop = values
    suction = saturation.dew_pressure("R-22", evaporating) - STANDARD_ATMOSPHERE_PSIA
    head = saturation.bubble_pressure("R-22", condensing) - STANDARD_ATMOSPHERE_PSIA
    readings = {
        "suction-pressure": f"{suction:.0f} psig",
        "suction-line-temperature": f"{evaporating + max(superheat, 0.5):.1f} F",
        "head-pressure": f"{head:.0f} psig",
        "liquid-line-temperature": f"{condensing - max(subcooling, 0.5):.1f} F",
        "discharge-temperature": f"{discharge:.0f} F",
        "condenser-air-rise": f"{rise:.1f} F",
        "return-air-temperature": f"{RETURN} F",
        "return-wet-bulb": f"{WET_BULB} F",
        "supply-air-temperature": f"{RETURN - drop:.1f} F",
    }
    readings.pop(without, None)
    return {
        "unit": {"refrigerant": "R-22", "metering": "fixed-orifice", "circuits": 1},
        "conditions": {"outdoor-temperature": f"{OUTDOOR} F", "minutes-running": 30},
        "complaint": "weak-cooling",
        "readings": readings,
    }


@pytest.fixture(scope="module")
def reasoner(shipped: Knowledge) -> Reasoner:
    return Reasoner(shipped)


def concluded(reasoner: Reasoner, case: dict[str, object]) -> Conclusions:
    return reasoner.conclude(read_case(reasoner.knowledge, case))


@pytest.mark.parametrize("fault", DIRECTIONS)
def test_readings_moved_in_the_published_directions_put_the_fault_first(
    fault: str, reasoner: Reasoner
) -> None:
    first = concluded(reasoner, moved(fault)).causes[0].fault.id
    expected = LOW_AIRFLOW if fault == "low-indoor-airflow" else {fault}
    assert first in expected, "Rossi and Braun 1997"


def test_leakage_and_restriction_stay_together_until_subcooling_is_known(
    reasoner: Reasoner,
) -> None:
    for fault in ("low-charge-from-leak", "liquid-line-restriction"):
        found = concluded(reasoner, moved(fault, without="liquid-line-temperature"))
        chances = {c.fault.id: c.probability for c in found.causes}
        pair = chances["low-charge-from-leak"], chances["liquid-line-restriction"]
        assert max(pair) < 15 * min(pair), "the table separates them by subcooling alone"
        assert {c.fault.id for c in found.causes[:4]} >= {
            "low-charge-from-leak",
            "liquid-line-restriction",
        }
