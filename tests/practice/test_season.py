"""The season that a list tells: from the outdoor temperature of the day alone."""

from __future__ import annotations

import pytest

from tests.practice.playing import scenario_named
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.season import season_of


@pytest.mark.parametrize(
    ("name", "season"),
    [("quarry-road", "summer"), ("kiln-lane", "winter"), ("theatre-walk", "spring or fall")],
)
def test_the_season_is_that_of_the_day(name: str, season: str, shipped: Knowledge) -> None:
    """Outdoors 91 F, 8 F and 55 F in the files."""
    assert season_of(shipped, scenario_named(shipped, name)) == season
