"""Suction and head held to what sound units of its kind show in this weather, with no own record.

The ranges are those of `calc expected`; what is published for them stands with their table.
"""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.expected import Conditions, expected
from troubleshoot.quantities.saturation import bubble_pressure
from troubleshoot.quantities.units import STANDARD_ATMOSPHERE_PSIA
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case

UNIT: dict[str, Any] = {"refrigerant": "R-410A", "metering": "txv", "circuits": 1}
HUMID = Conditions("R-410A", "txv", 85.0, 80.0, 71.0)
DRY = Conditions("R-410A", "txv", 85.0, 80.0, 60.0)


def outcome(
    knowledge: Knowledge,
    test: str,
    psig: float,
    air: Conditions,
    record: dict[str, str] | None = None,
) -> str:
    readings = [
        {"test": "return-air-temperature", "text": f"{air.dry_bulb} F"},
        {"test": test, "at": "circuit 1", "text": f"{psig} psig"},
    ]
    if air.wet_bulb is not None:
        readings.append({"test": "return-wet-bulb", "text": f"{air.wet_bulb} F"})
    case = {
        "unit": {**UNIT, "refrigerant": air.refrigerant}, "own-record": record or {},
        "complaint": "weak-cooling", "readings": readings,
        "conditions": {"outdoor-temperature": f"{air.outdoor} F", "minutes-running": "25 min"},
    }  # fmt: skip
    found = Reasoner(knowledge).conclude(read_case(knowledge, case))
    return next(r.seen[0] for r in found.readings if r.test == test)


@pytest.mark.parametrize("test", ["suction-pressure", "head-pressure"])
@pytest.mark.parametrize("air", [HUMID, DRY])
def test_within_its_range_is_sound_and_beyond_it_is_not(
    test: str, air: Conditions, shipped: Knowledge
) -> None:
    span = expected(air)[test]
    assert outcome(shipped, test, (span.low + span.high) / 2, air) == "normal"
    assert outcome(shipped, test, span.low - 8, air) == "low"
    assert outcome(shipped, test, span.high + 8, air) == "high"


def test_the_same_suction_is_low_in_moist_air_and_sound_in_dry(shipped: Knowledge) -> None:
    psig = expected(DRY)["suction-pressure"].low + 1
    assert psig < expected(HUMID)["suction-pressure"].low
    assert outcome(shipped, "suction-pressure", psig, DRY) == "normal"
    assert outcome(shipped, "suction-pressure", psig, HUMID) == "low"


def test_the_units_own_record_stands_above_its_like(shipped: Knowledge) -> None:
    psig = expected(HUMID)["head-pressure"].high + 8
    assert outcome(shipped, "head-pressure", psig, HUMID) == "high"
    own = {"own-condensing-over-ambient": "27 F"}
    assert outcome(shipped, "head-pressure", psig, HUMID, own) == "normal"


def test_out_of_the_table_the_published_bands_hold(shipped: Knowledge) -> None:
    """12.5 F over ambient, condensing at 62.5 F, is under the 14 F of the band and no word more."""
    cool = Conditions("R-410A", "txv", 50.0, 75.0, 62.0)
    psig = bubble_pressure("R-410A", 62.5) - STANDARD_ATMOSPHERE_PSIA
    assert outcome(shipped, "head-pressure", round(psig, 1), cool) == "borderline"
