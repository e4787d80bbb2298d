"""What the shipped limits make of readings of the heat.

Sources: NFPA 54 / ANSI Z223.1 for the derate above 2000 ft (4 % for every 1000 ft above sea level);
each limit of a nameplate is judged by itself, since sheets often give one alone (common practice,
no source).
"""

from __future__ import annotations

from typing import Any

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.cases.file import read_case

NATURAL: dict[str, Any] = {"heat": "gas", "fuel": "natural-gas"}
PROPANE: dict[str, Any] = {"heat": "gas", "fuel": "propane"}


def outcome(shipped: Knowledge, test: str, reads: dict[str, str], **case: Any) -> str:
    readings = [{"test": each, "text": text} for each, text in reads.items()]
    found = reasoner_of(shipped).conclude(read_case(shipped, {**case, "readings": readings}))
    (seen,) = next(each.seen for each in found.readings if each.test == test)
    return seen


@pytest.mark.parametrize("test", ["gas-inlet-pressure-idle", "gas-inlet-pressure-all-firing"])
@pytest.mark.parametrize(
    ("unit", "text", "expected"),
    [
        ({**NATURAL, "gas-inlet-minimum": "5.0 in wc"}, "7.1 in wc", "normal"),
        ({**NATURAL, "gas-inlet-minimum": "5.0 in wc"}, "11.2 in wc", "borderline"),
        ({**NATURAL, "gas-inlet-maximum": "13.5 in wc"}, "12.6 in wc", "normal"),
        ({**NATURAL, "gas-inlet-maximum": "9.0 in wc"}, "9.8 in wc", "borderline"),
        ({**PROPANE, "gas-inlet-maximum": "14.0 in wc"}, "13.6 in wc", "normal"),
        ({**PROPANE, "gas-inlet-minimum": "10.0 in wc"}, "10.6 in wc", "normal"),
        ({**NATURAL, "gas-inlet-maximum": "13.5 in wc"}, "16.2 in wc", "high"),
    ],
)
def test_each_limit_of_the_inlet_is_judged_by_itself(
    shipped: Knowledge, test: str, unit: dict[str, Any], text: str, expected: str
) -> None:
    assert outcome(shipped, test, {test: text}, unit=unit) == expected


@pytest.mark.parametrize(
    ("altitude", "seconds", "expected"),
    [
        ("", "72", "normal"),
        ("5200 ft", "72", "over"),
        ("5200 ft", "91", "normal"),
        ("", "91", "under"),
    ],
)
def test_the_meter_is_judged_by_the_input_due_at_the_altitude(
    shipped: Knowledge, altitude: str, seconds: str, expected: str
) -> None:
    """3600 x 2 / 72 = 100 ft3/h, by 1000 Btu/ft3 100,000 Btu/h; 79,100 in 91 s."""
    record = {"gas-heat-content": "1000 Btu/ft3"} | ({"altitude": altitude} if altitude else {})
    case = {"unit": {**NATURAL, "gas-input-rating": "100000 Btu/h"}, "own-record": record}
    reads = {"meter-dial": "2 ft3", "meter-time": f"{seconds} s"}
    assert outcome(shipped, "gas-meter-clocking", reads, **case) == expected


@pytest.mark.parametrize(("text", "expected"), [("140 ppm", "drifted"), ("610 ppm", "reads-high")])
def test_a_sensor_in_the_field_is_a_fault_beyond_200_ppm(
    shipped: Knowledge, text: str, expected: str
) -> None:
    """Common practice, no source; 75 ppm is asked of new ones."""
    unit = {"economizer": "fitted", "demand-ventilation": "fitted"}
    test = "carbon-dioxide-sensor"
    assert outcome(shipped, test, {test: text}, unit=unit) == expected
