"""Fuses read out of their clips: how many of them are open tells which fault it is."""

from __future__ import annotations

import pytest

from tests.building import case, unit_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer

UNIT = {"supply-phase": "three", "line-volts-class": "480-volt"}


@pytest.mark.parametrize(
    ("read", "outcome", "fault"),
    [
        ("0.1/OL/0.1", "open", "one-fuse-open-whole-unit"),
        ("OL/OL/0.1", "several-open", "two-or-three-fuses-open"),
        ("OL/OL/OL", "several-open", "two-or-three-fuses-open"),
    ],
)
def test_one_leg_that_reads_open_is_one_fuse(
    shipped: Knowledge, read: str, outcome: str, fault: str
) -> None:
    """Regression: exactly one open fuse ranked "two or three fuses open" five times as high."""
    asked = case(
        shipped, Answer("fuse-continuity", text=read), unit=unit_of(shipped, **UNIT),
        complaint="dead-unit",
    )  # fmt: skip
    found = Reasoner(shipped).conclude(asked)
    assert next(r.seen for r in found.readings if r.test == "fuse-continuity") == (outcome,)
    pair = ("one-fuse-open-whole-unit", "two-or-three-fuses-open")
    of_fuses = [c.fault.id for c in found.ranking.causes() if c.fault.id in pair]
    assert of_fuses[0] == fault
