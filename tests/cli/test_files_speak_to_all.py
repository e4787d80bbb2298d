"""A reading of a file calls up its danger whatever the profile of whoever asks may do."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.cases.nothing_lifts import conclude_file

UNIT = {
    "heat": "gas",
    "refrigerant": "R-410A",
    "circuits": 1,
    "condenser-fans": 1,
    "metering": "txv",
    "line-volts-class": "480-volt",
    "supply-phase": "three",
    "compressor-phase": "three",
}


@pytest.mark.parametrize(
    ("test", "at", "text"),
    [
        ("line-volts-idle", None, "480/262/255 V"),
        ("line-volts-running", None, "478/262/255 V"),
        ("compressor-amps", "compressor 1", "30/0/31 A"),
        ("voltage-unbalance", None, "9 %"),
        ("head-pressure", "circuit 1", "600 psig"),
        ("fuse-volts-drop", None, "230 V"),
    ],
)
@pytest.mark.parametrize("complaint", ["no-cooling", "weak-cooling"])
def test_a_reading_that_stops_a_step_speaks_to_a_technician_too(
    complaint: str,
    test: str,
    at: str | None,
    text: str,
    shipped: Knowledge,
    command: Callable[..., tuple[int, str, str]],
    case_file: Callable[[dict[str, Any]], str],
) -> None:
    """Regression: what the profile may not read stood among the unread, with no caution, and tests
    were proposed that its danger forbids."""
    reading = {"test": test, "text": text} | ({"at": at} if at else {})
    plain = {"unit": UNIT, "complaint": complaint, "readings": [reading]}
    conclusions = conclude_file(Reasoner(shipped), read_case(shipped, plain))
    found = {fired.hazard.id for fired in conclusions.hazards if fired.found}
    assert found
    path = case_file(plain)
    out = command("diagnose", "--answers", path, "--json", "--profile", "technician")[1]
    account = json.loads(out)
    assert found <= {row["id"] for row in account["cautions"] if row.get("stands")}
    assert [row["test"] for row in account["unread"]] == []
    assert any(row["test"] == test and row["said_by"] == "file" for row in account["asked"])
    forbidden = Forbidden(conclusions)
    for row in account["would_separate"]:
        assert forbidden.by(shipped.tests[row["test"]], None) is None
