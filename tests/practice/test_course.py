"""The course: every shipped case has its week, and a week opens once the one before is done."""

from __future__ import annotations

from dataclasses import replace

from tests.practice.playing import scenario_named
from tests.practice.test_scores import PLAY
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.course import next_case, weeks_of
from troubleshoot.practice.form import WEEKS
from troubleshoot.practice.loading import load_scenarios, scenario_paths
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.scores import Play


def done(scenario: Scenario) -> Play:
    return replace(PLAY, scenario=scenario.id)


def test_every_shipped_case_has_a_week_of_six(shipped: Knowledge) -> None:
    weeks = weeks_of([], load_scenarios(shipped))
    assert len(weeks) == WEEKS == 6
    assert sum(len(week.cases) for week in weeks) == len(scenario_paths())
    assert min(len(week.cases) for week in weeks) >= 5


def test_the_course_goes_from_looks_to_refrigerant_to_gas(shipped: Knowledge) -> None:
    """No gauges and no burner lit in the first week; both circuits of trouble come late."""
    weeks = weeks_of([], load_scenarios(shipped))
    subsystems = [{case.subsystem for case in week.cases} for week in weeks]
    assert not subsystems[0] & {"refrigerant", "metering", "compressor-mechanical"}
    assert {"refrigerant", "metering"} <= subsystems[4]
    assert {"gas", "ignition", "combustion"} <= subsystems[5]


def test_no_week_is_about_one_subsystem(shipped: Knowledge) -> None:
    """Otherwise the week would tell what its units have."""
    for week in weeks_of([], load_scenarios(shipped)):
        assert len({case.subsystem for case in week.cases}) >= 4, week.number


def test_a_week_opens_once_the_one_before_is_done(shipped: Knowledge) -> None:
    scenarios = load_scenarios(shipped)
    first, second = weeks_of([], scenarios)[:2]
    assert (first.is_open, second.is_open) == (True, False)
    plays = [done(case) for case in first.cases]
    guessed = [*plays[:-1], replace(plays[-1], reasoned=False)]
    assert not weeks_of(guessed, scenarios)[1].is_open
    assert not weeks_of([*plays[:-1], replace(plays[-1], failed=True)], scenarios)[1].is_open
    again = weeks_of([*guessed, plays[-1]], scenarios)
    assert (again[1].is_open, again[2].is_open) == (True, False)
    following = next_case(again)
    assert following is not None and following.week == 2
    in_order = sorted(scenarios, key=lambda case: case.week or 0)
    assert next_case(weeks_of([done(case) for case in in_order], scenarios)) is None


def test_a_case_played_before_its_week_does_nothing_for_the_course(shipped: Knowledge) -> None:
    """Regression: pump-square, of week 2, counted while week 2 opened after week 1."""
    scenarios = load_scenarios(shipped)
    first, second = weeks_of([], scenarios)[:2]
    early = done(second.cases[0])
    opens = [done(case) for case in first.cases]
    assert not weeks_of([early, *opens], scenarios)[1].done
    assert weeks_of([early, *opens, early], scenarios)[1].done == {second.cases[0].id}


def test_the_plainest_case_of_a_week_comes_first(shipped: Knowledge) -> None:
    scenarios = [scenario_named(shipped, name) for name in ("nursery-road", "weir-road")]
    following = next_case(weeks_of([], scenarios))
    assert following is not None and following.difficulty == 1
