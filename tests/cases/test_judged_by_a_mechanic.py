"""Cases of one or two readings that a mechanic of the trade answers at once.

What is expected is common practice, no source, where nothing else is named.
"""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.visit.cases.file import read_case

THREE_PHASE: dict[str, Any] = {"supply-phase": "three", "heat": "gas"}


def concluded(
    knowledge: Knowledge,
    complaint: str,
    read: dict[str, str],
    unit: dict[str, Any],
    **conditions: str,
) -> Conclusions:
    """Readings as typed, or as an outcome where one of the test's is named."""
    readings = [
        {"test": test, "outcome" if text in knowledge.tests[test].outcomes else "text": text}
        for test, text in read.items()
    ]
    case = {"unit": unit, "complaint": complaint, "readings": readings, "conditions": conditions}
    return Reasoner(knowledge).conclude(read_case(knowledge, case))


def leading(found: Conclusions, many: int = 1) -> list[str]:
    return [cause.fault.id for cause in found.causes[:many]]


def outcomes(found: Conclusions, test: str) -> tuple[str, ...]:
    return next(reading.seen for reading in found.readings if reading.test == test)


@pytest.mark.parametrize(
    ("supply", "volts"),
    [("208-to-240-volt", 208), ("208-to-240-volt", 240), ("480-volt", 480), ("480-volt", 575)],
)
def test_volts_on_three_legs_clear_the_switch_without_a_data_plate(
    supply: str, volts: int, shipped: Knowledge
) -> None:
    read = {"line-volts-idle": f"{volts}/{volts}/{volts} V", "transformer-secondary-volts": "0 V"}
    found = concluded(shipped, "dead-unit", read, {**THREE_PHASE, "line-volts-class": supply})
    assert not found.not_judged
    assert leading(found) == ["control-transformer-open"]
    chances = {cause.fault.id: cause.probability for cause in found.causes}
    for behind in ("disconnect-or-breaker-off", "two-or-three-fuses-open"):
        assert chances.get(behind, 0) < 0.05


@pytest.mark.parametrize(
    ("volts", "said"),
    [("170/171/170 V", "low"), ("280/281/280 V", "high"), ("208/120/119 V", "one-leg-dead")],
)
def test_volts_beyond_their_class_are_told_without_a_data_plate(
    volts: str, said: str, shipped: Knowledge
) -> None:
    unit = {**THREE_PHASE, "line-volts-class": "208-to-240-volt"}
    found = concluded(shipped, "no-cooling", {"line-volts-idle": volts}, unit)
    assert outcomes(found, "line-volts-idle") == (said,)
