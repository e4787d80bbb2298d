"""A day on one roof: what fills it, in which order, what is batched, what the weather may spoil."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.refusal import NotUsable
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.records.day_plan import DayPlan, on_roof, plan_lines, planned, spent
from troubleshoot.records.due_rounds import DueRound
from troubleshoot.records.reckoned_round import BELOW, LEGS, reckoned_round
from troubleshoot.records.register.entry import Entry
from troubleshoot.visit.round.season import Season

FACTS = {"refrigerant": "R-410A", "heat": "gas", "circuits": "1", "metering": "txv"}


def due(name: str, roof: str = "lower roof", **more: str) -> DueRound:
    return DueRound(Entry(name, {"site": "college", "roof": roof, **more}, FACTS), "")


def names(plan: DayPlan) -> list[str]:
    return [stop.entry.name for stop in plan.stops]


def test_what_matters_most_fills_the_day_and_is_walked_by_name(shipped: Knowledge) -> None:
    rounds = [due("RTU-10"), due("RTU-2"), due("RTU-1")]
    whole = planned(shipped, "lower roof", rounds, "fall", None)
    assert names(whole) == ["RTU-1", "RTU-2", "RTU-10"] and whole.left == ()
    hours = round(whole.minutes / 60 * 2 / 3) + 1
    some = planned(shipped, "lower roof", rounds, "fall", hours)
    assert names(some) == ["RTU-2", "RTU-10"]
    assert [entry.name for entry in some.left] == ["RTU-1"]
    assert names(planned(shipped, "lower roof", rounds, "fall", 1)) == ["RTU-10"]


@pytest.mark.parametrize(("season", "most"), [("spring", 4), ("fall", 2)])
def test_a_round_is_locked_out_once_and_once_more_for_what_is_hooked_up(
    shipped: Knowledge, season: Season, most: int
) -> None:
    """As `visit/deciding/on_round.py` walks it: manometers and meter go on under one lock.

    Behind a panel gauges go on and come off under a lock as well (29 CFR 1910.333), and go over to
    a second circuit under one more.
    """
    for unit in shipped.typical_units.values():
        reckoned = reckoned_round(shipped, read_unit(shipped, unit.unit), season)
        assert 1 <= reckoned.lock_outs <= most
        assert set(reckoned.minutes) == set(LEGS) and min(reckoned.minutes.values()) >= 0
        whole = sum(reckoned.minutes.values())
        assert reckoned.on_the_roof == pytest.approx(whole - reckoned.minutes[BELOW])


def test_weather_is_told_where_it_spoils_readings(shipped: Knowledge) -> None:
    """Refrigerant readings want 55 F outdoors (California Title 24 RA3.2, from the rules)."""
    spring = planned(shipped, "roof", [due("RTU-1"), due("RTU-2")], "spring", None)
    ((reason, units),) = spring.gates
    assert "55 F" in reason and units == 2
    assert next(plan_lines(spring)) == (f"Weather, on 2 units: {reason}", 0)
    assert planned(shipped, "roof", [due("RTU-1")], "fall", None).gates == ()


def test_below_comes_before_the_roof_and_once_for_all(shipped: Knowledge) -> None:
    plan = planned(shipped, "r", [due("RTU-1", serves="hall"), due("RTU-2")], "fall", None)
    lines = [line for line, _ in plan_lines(plan)]
    below, up = (
        next(n for n, line in enumerate(lines) if word in line) for word in ("below", "up")
    )
    assert lines[below + 1 : up] == ["RTU-1: hall", "RTU-2: its rooms"]
    assert lines[up + 1].startswith("RTU-1: about ")


@pytest.mark.parametrize(
    ("words", "found"),
    [("lower", "college, lower roof"), ("COLLEGE upper", "college, upper roof")],
)
def test_a_roof_is_named_in_a_few_words(words: str, found: str) -> None:
    rounds = [due("RTU-1"), due("RTU-2", "upper roof")]
    roof, here = on_roof(rounds, words)
    assert roof == found and len(here) == 1


@pytest.mark.parametrize(
    ("words", "said"),
    [("roof", "more than one roof; name one of: "), ("annex", "no roof on which a unit is due")],
)
def test_what_names_no_roof_is_refused(words: str, said: str) -> None:
    with pytest.raises(NotUsable, match=said):
        on_roof([due("RTU-1"), due("RTU-2", "upper roof")], words)


def test_times_are_said_as_people_say_them() -> None:
    assert [spent(minutes) for minutes in (0, 45, 60, 370.4)] == [
        "0 min", "45 min", "1 h 0 min", "6 h 10 min",
    ]  # fmt: skip
