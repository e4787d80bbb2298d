"""External static told by its two sides is read across the unit."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.hearing.static_read import across_the_unit


@pytest.mark.parametrize(
    "typed",
    [
        "1.15 supply -.20 return", "supply 1.15 return -0.2", "1.15 in supply, .2 in return",
        "-.2 return 1.15 supply", "1.15 in wc supply and 0.20 in wc return",
    ],
)  # fmt: skip
def test_both_sides_are_added(shipped: Knowledge, typed: str) -> None:
    assert across_the_unit(shipped.tests["external-static"], typed) == "1.35 in wc"


@pytest.mark.parametrize(
    "typed", ["1.15 supply", "return .2", "1.15", "supply 58 return 78 outdoor 95", "-1 supply"]
)
def test_one_side_or_more_than_two_are_none(shipped: Knowledge, typed: str) -> None:
    assert across_the_unit(shipped.tests["external-static"], typed) is None


def test_of_another_test_they_are_what_they_say(shipped: Knowledge) -> None:
    other = shipped.tests["return-air-temperature"]
    assert across_the_unit(other, "58 supply 78 return") is None
