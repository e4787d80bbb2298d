"""A repair that its card leaves to others says so wherever it is told."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]
Write = Callable[[dict[str, Any]], str]

HANDED_OVER = sorted(f.id for f in load_shipped().faults.values() if f.repair.hand_over)
TAG_OUT = "Stop, tag the unit out and hand it over"


@pytest.mark.parametrize("fault", [*HANDED_OVER, "air-filters", "filters-loaded"])
def test_its_page_says_so(fault: str, command: Call) -> None:
    assert (TAG_OUT in command("rules", "explain", fault)[1]) == (fault in HANDED_OVER)


def test_the_report_of_a_stop_tells_whoever_takes_over(
    command: Call, case_file: Write, shipped: Knowledge
) -> None:
    """Regression: nothing read hand-over of a repair. The case is the card's own example."""
    example = shipped.faults["rollout-switch-tripped"].examples[0]
    case = {"unit": dict(example.unit), "complaint": example.complaint,
            "conditions": dict(example.conditions),
            "readings": [dict(reading) for reading in example.readings]}  # fmt: skip
    report = command("diagnose", "--answers", case_file(case))[1]
    assert "The work was stopped for safety." in report
    lines = report[report.index("## Repair") :].splitlines()
    assert TAG_OUT in lines[2] and any(line.startswith("Who: ") for line in lines)
