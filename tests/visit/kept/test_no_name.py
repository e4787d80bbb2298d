"""A digit, a reading, a dash, data or a path names no unit; whatever stands on a door does."""

from __future__ import annotations

import pytest

from troubleshoot.visit.kept.no_name import is_no_name


@pytest.mark.parametrize(
    "typed",
    [
        "-", "1", "12", "#3", "2.1 uF", "208 V", "45 psig", "3,5 A", "45%", '{"a":1}', "[1, 2]",
        "../../etc/x", "/etc/x", "C:\\units", "<name>", "...", "?", " 7 ",
    ],
)  # fmt: skip
def test_it_names_no_unit(typed: str) -> None:
    """Regression: each began a visit to a unit so called."""
    assert is_no_name(typed)


@pytest.mark.parametrize(
    "typed",
    [
        "RTU-4", "4 Mill Lane", "4 A", "Unit 12", "St. Anne School RTU 7", "RTU-3/4", "3 east",
        "\u00c9cole 4", "AHU #3", "Bldg. 2, RTU-1", "A", "12 Main St", "5 in the yard",
    ],
)  # fmt: skip
def test_it_may_be_one(typed: str) -> None:
    assert not is_no_name(typed)
