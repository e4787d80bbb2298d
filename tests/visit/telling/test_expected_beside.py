"""What is expected of a reading is told beside it, but not beside a danger."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.expected_now import Expected
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.telling.expected_beside import expected_beside

AIR = {"outdoor-temperature": "95 F", "return-air-temperature": "80 F"}
UNIT = {"refrigerant": "R-410A", "metering": "txv", "circuits": 1, "heat": "gas"}


def read(shipped: Knowledge, *suctions: str, **unit: str) -> Conclusions:
    case = {
        "unit": {**UNIT, **unit},
        "conditions": AIR,
        "readings": [
            {"test": "suction-pressure", "at": "circuit 1", "text": text} for text in suctions
        ],
    }
    return Reasoner(shipped).conclude(read_case(shipped, case))


def beside(before: Conclusions, after: Conclusions) -> Expected | None:
    (reading,) = (each for each in after.readings if each.test == "suction-pressure")
    return expected_beside(reading, before, after)


def test_it_is_told_beside_an_ordinary_reading(shipped: Knowledge) -> None:
    found = beside(read(shipped), read(shipped, "140 psig"))
    assert found is not None and found.unit == "psig"


@pytest.mark.parametrize("before", [(), ("-5 psig",)], ids=["new", "standing already"])
def test_a_reading_that_is_a_dangers_has_nothing_beside_it(
    shipped: Knowledge, before: tuple[str, ...]
) -> None:
    """A suction in vacuum, read once and once more."""
    assert beside(read(shipped, *before), read(shipped, *before, "-5 psig")) is None


def test_nor_has_one_on_a_unit_that_the_rules_know_nothing_of(shipped: Knowledge) -> None:
    after = read(shipped, "140 psig", **{"heat-pump": "fitted"})
    assert after.beyond
    assert beside(read(shipped), after) is None
