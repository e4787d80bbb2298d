"""An unknown does not speak: a sound number rules out only what could be told by it.

Amps under full load and static under its limit are low or not by this unit's own value alone; with
none on record the number says nothing of that.
"""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.cases.file import read_case

UNIT: dict[str, Any] = {
    "metering": "txv", "blower-drive": "belt", "blower-motor": "three-phase",
    "compressor-phase": "three", "blower-fla": "6.0 A", "compressor-rla": "20 A",
    "maximum-external-static": "0.8 in wc",
}  # fmt: skip
OWN = {"blower-amps": "4.1 A", "external-static": "0.6 in wc", "compressor-amps": "15 A"}
SOUND = {"blower-amps": "4.0/4.1/4.1 A", "external-static": "0.6 in wc"}


def weight(knowledge: Knowledge, fault: str, row: dict[str, str], record: dict[str, str]) -> float:
    case = {
        "unit": UNIT, "own-record": record, "complaint": "weak-cooling",
        "conditions": {"outdoor-temperature": "88 F"}, "readings": [row],
    }  # fmt: skip
    found = Reasoner(knowledge).conclude(read_case(knowledge, case))
    cause = next(cause for cause in found.causes if cause.fault.id == fault)
    return sum(w.weight for w in cause.weights if w.tests[0][0] == row["test"])


@pytest.mark.parametrize("test", SOUND)
def test_a_sound_number_says_nothing_of_low_with_no_record(test: str, shipped: Knowledge) -> None:
    row = {"test": test, "text": SOUND[test]}
    assert weight(shipped, "blower-wheel-dirty", row, {}) == pytest.approx(0.0, abs=0.1)
    assert weight(shipped, "blower-wheel-dirty", row, OWN) < -0.5


def test_the_same_said_in_a_word_is_somebodys_judgement(shipped: Knowledge) -> None:
    row = {"test": "external-static", "outcome": "normal"}
    assert weight(shipped, "blower-wheel-dirty", row, {}) < -0.5


def test_a_number_over_the_limit_still_speaks_against_low(shipped: Knowledge) -> None:
    row = {"test": "external-static", "text": "1.2 in wc"}
    assert weight(shipped, "blower-wheel-dirty", row, {}) < -0.5


def test_compressor_amps_within_the_plate_say_nothing_of_low(shipped: Knowledge) -> None:
    row = {"test": "compressor-amps", "at": "compressor 1", "text": "15.0/15.1/15.0 A"}
    assert weight(shipped, "liquid-line-restriction", row, {}) > -0.05
    assert weight(shipped, "liquid-line-restriction", row, OWN) < -0.3
