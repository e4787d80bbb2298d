"""The round's sheet as a mechanic prints it: the season's points, blanks, limits, what drifts."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest

from tests.edge.person import Clock, Person
from troubleshoot.knowledge.model import Knowledge

Call = Callable[..., tuple[int, str, str]]


def flat(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("season", ["spring", "fall"])
def test_a_sheet_holds_all_of_its_season_and_nothing_else(
    season: str, command: Call, shipped: Knowledge
) -> None:
    """Regression: nothing read round.yaml."""
    code, out, _ = command("inspect", "RTU-3", "--sheet", "--season", season)
    said = flat(out)
    assert code == 0 and f"PM, {season}: RTU-3" in said
    places = []
    for point in sorted(shipped.round_points.values(), key=lambda p: p.number):
        head = f"{point.number} {flat(point.point)}"
        assert (head in said) == (season in point.season)
        if season in point.season:
            places.append(said.index(head))
            for part in (point.how_often, point.limit, point.trend, point.source):
                assert part in said[places[-1] :]
            for test in point.tests:
                assert shipped.tests[test].name in said[places[-1] :]
    assert places == sorted(places)


def test_every_drift_stands_on_one_sheet_or_the_other(command: Call, shipped: Knowledge) -> None:
    sheets = [flat(command("inspect", "--sheet", "--season", s)[1]) for s in ("spring", "fall")]
    for alarm in shipped.drift_alarms.values():
        assert any(alarm.text in said for said in sheets), alarm.id
        assert all(said.count(alarm.text) <= 1 for said in sheets), alarm.id
    assert "Capacitor 4 % under its rating (-4 %)" in sheets[0]


@pytest.mark.parametrize(
    ("day", "season"),
    [("2026-01-31", "fall"), ("2026-02-01", "spring"), ("2026-07-31", "spring"),
     ("2026-08-01", "fall")],
)  # fmt: skip
def test_the_season_is_that_of_the_day_and_it_reads_at_40_columns(
    day: str, season: str, tmp_path: Path
) -> None:
    clock = Clock(tmp_path)
    clock.set(datetime.fromisoformat(f"{day}T09:00:00+00:00"))
    with Person(tmp_path / "data", "inspect", "--sheet", clock=clock, columns=40) as person:
        assert f"PM, {season}: {day}" in person.said
        assert all(len(line) <= 40 for line in person.said.splitlines())
        assert person.exit_code == 0
    assert not (tmp_path / "data").exists(), "a sheet begins no visit"


def test_a_season_without_a_sheet_is_refused(command: Call) -> None:
    code, _, err = command("inspect", "--season", "fall")
    assert code == 2 and "--sheet" in err
