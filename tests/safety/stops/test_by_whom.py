"""Who made it safe stands in the report with the role and with the words, where they say more."""

from __future__ import annotations

import pytest

from troubleshoot.safety.hearing.roles import ROLES
from troubleshoot.safety.stops.record import HandOverResult


@pytest.mark.parametrize(
    ("by", "who", "by_whom"),
    [
        ("gas-fitter", "", ROLES["gas-fitter"]),
        ("gas-fitter", "the fitter on call", f'{ROLES["gas-fitter"]} ("the fitter on call")'),
        ("a role of before", "", "a role of before"),
    ],
)
def test_it_names_the_role_and_who_it_was(by: str, who: str, by_whom: str) -> None:
    assert (
        HandOverResult(by, "union tightened", "0 ppm", "2026-11-26 11:30", who).by_whom == by_whom
    )
