"""Every shipped scenario: its numbers hold together, and the rules see what is wrong in it."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from pathlib import Path
from statistics import mean

import pytest

from tests.practice.playing import conclusions_of, path_of, reasoner_of, scenario_named
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.advice import advice_problems
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.consistency import consistency_problems
from troubleshoot.practice.loading import load_scenarios, scenario_paths
from troubleshoot.practice.worth_copying import unworthy
from troubleshoot.reasoning.choosing.next_test import NAMED

PATHS = scenario_paths()
FAULTY = sorted(name for name, path in PATHS.items() if path.parent.name == "faulty")
HEALTHY = sorted(name for name, path in PATHS.items() if path.parent.name == "healthy")
BUILDING_SIDE = "building-side"


@pytest.mark.parametrize("name", sorted(PATHS))
def test_the_numbers_of_a_scenario_can_be_true_together(shipped: Knowledge, name: str) -> None:
    scenario = scenario_named(shipped, name)
    assert list(consistency_problems(reasoner_of(shipped), scenario)) == []


def test_a_slow_fan_makes_little_static(shipped: Knowledge) -> None:
    """Regression: hardly any air from a fan at 690 of 1075 rpm, and its static read normal.

    Pressure goes with the square of the speed (the fan laws, ASHRAE Handbook, from memory):
    (690 / 1075)^2 = 0.41 of its own value.
    """
    scenario = scenario_named(shipped, "station-arcade")
    unit = AnsweringUnit(reasoner_of(shipped), scenario)
    shown = unit.shows(shipped.tests["external-static"], None)
    assert shown is not None and shown.text is not None
    own = str(scenario.plain["own-record"]["own-external-static"])  # type: ignore[index]
    share = float(shown.text.split()[0]) / float(own.split()[0])
    assert share == pytest.approx((690 / 1075) ** 2, abs=0.03)
    (reading,) = (
        each
        for each in conclusions_of(shipped, "station-arcade").readings
        if each.test == "external-static"
    )
    assert set(reading.seen) <= {"low", "very-low"}
    unlisted = replace(
        scenario, listed=tuple(s for s in scenario.listed if s.test != "external-static")
    )
    said = AnsweringUnit(reasoner_of(shipped), unlisted).shows(
        shipped.tests["external-static"], None
    )
    assert said is not None and not {*said.outcomes} & {"normal"}


@pytest.mark.parametrize("name", sorted(PATHS))
def test_the_expert_comes_to_an_end_and_asks_nothing_a_third_time(
    shipped: Knowledge, name: str
) -> None:
    tests = path_of(shipped, name).tests
    asked = Counter((move.test, move.at) for move in tests if move.reason)
    assert max(asked.values(), default=0) <= 2, asked.most_common(3)


@pytest.mark.parametrize("name", sorted(PATHS))
def test_the_expert_is_worth_copying(shipped: Knowledge, name: str) -> None:
    """At most 15 tests and 90 minutes, no shortlist, nothing that contradicts the lesson."""
    scenario = scenario_named(shipped, name)
    assert [each.what for each in unworthy(shipped, scenario, path_of(shipped, name))] == []


def test_the_expert_takes_less_than_fifty_minutes_on_the_mean(shipped: Knowledge) -> None:
    assert mean(path_of(shipped, name).minutes for name in PATHS) < 50


def test_every_lesson_of_a_unit_to_work_on_rests_on_a_test(shipped: Knowledge) -> None:
    """Where a STOP is called at once there is nothing to take."""
    for name in PATHS:
        scenario = scenario_named(shipped, name)
        assert scenario.taught_by or not path_of(shipped, name).tests


@pytest.mark.parametrize("name", FAULTY)
def test_the_readings_of_a_faulty_unit_lead_to_its_fault(shipped: Knowledge, name: str) -> None:
    scenario = scenario_named(shipped, name)
    found = conclusions_of(shipped, name)
    first = found.causes[0]
    true = [(fault.fault, fault.at) for fault in scenario.truth.faults]
    assert (first.fault.id, first.at) in true


@pytest.mark.parametrize("name", FAULTY)
def test_of_several_faults_the_next_comes_first_after_the_repair(
    shipped: Knowledge, name: str
) -> None:
    """Whichever true fault is named first: repaired, it gives way to another one.

    On a round every abnormal finding is a case of its own.
    """
    scenario = scenario_named(shipped, name)
    left = {fault.fault for fault in scenario.truth.faults}
    if len(left) < 2 or shipped.complaints[scenario.complaint].unlisted != "never":
        return
    start = conclusions_of(shipped, name)
    repaired: tuple[str, ...] = ()
    while left:
        found = reasoner_of(shipped).conclude(replace(start.case, repaired=repaired))
        first = found.causes[0].fault.id
        assert first in left, (repaired, first)
        left.remove(first)
        repaired = (*repaired, first)


@pytest.mark.parametrize("name", FAULTY)
def test_the_complaint_of_a_faulty_unit_lists_its_fault(shipped: Knowledge, name: str) -> None:
    scenario = scenario_named(shipped, name)
    complaint = shipped.complaints[scenario.complaint]
    listed = (*complaint.faults, *complaint.also)
    assert [f.fault for f in scenario.truth.faults if f.fault not in listed] == []


@pytest.mark.parametrize("name", HEALTHY)
def test_the_readings_of_a_sound_unit_accuse_nothing(shipped: Knowledge, name: str) -> None:
    scenario = scenario_named(shipped, name)
    assert scenario.truth.nothing_wrong
    found = conclusions_of(shipped, name)
    assert found.causes[0].probability < NAMED, found.causes[0].fault.id
    assert found.stop is None


@pytest.mark.parametrize("name", FAULTY)
def test_a_stop_that_is_the_truth_stops_the_job(shipped: Knowledge, name: str) -> None:
    scenario = scenario_named(shipped, name)
    found = conclusions_of(shipped, name)
    assert bool(found.standing_stops) >= (scenario.truth.stop is not None)


def test_there_are_enough_scenarios_of_every_kind(shipped: Knowledge) -> None:
    scenarios = load_scenarios(shipped)
    subsystems = {fault.subsystem for fault in shipped.faults.values()}
    stops = {scenario.complaint for scenario in scenarios if scenario.truth.stop}
    assert len(scenarios) >= 40
    assert {"gas-smell", "refrigerant-alarm", "carbon-monoxide-alarm"} <= stops
    assert sum(len(scenario.truth.faults) > 1 for scenario in scenarios) >= 5
    assert sum(scenario.truth.nothing_wrong for scenario in scenarios) >= 3
    assert sum(scenario.subsystem == BUILDING_SIDE for scenario in scenarios) >= 2
    assert sum(any(s.valid is False for s in scenario.listed) for scenario in scenarios) >= 3
    assert {scenario.subsystem for scenario in scenarios} == subsystems


@pytest.mark.parametrize("name", sorted(PATHS))
def test_name_and_title_are_of_a_place_and_a_unit_only(shipped: Knowledge, name: str) -> None:
    """Regression: a dozen names told the cause, `valve-will-not-open` among them."""
    title = re.fullmatch(r"[^:]+ at ([^:,]+), unit [0-9]+", scenario_named(shipped, name).title)
    assert title is not None
    assert name == "-".join(re.findall(r"[a-z]+", title[1].lower().replace("'", "")))


@pytest.mark.parametrize("name", sorted(PATHS))
def test_the_season_fits_the_day(shipped: Knowledge, name: str) -> None:
    """Warm from 75 F outdoors, cold under 50 F (common practice, no source)."""
    scenario = scenario_named(shipped, name)
    outdoor = float(str(scenario.case.conditions["outdoor-temperature"]).removesuffix(" F"))
    fits = "summer" if outdoor >= 75 else "winter" if outdoor < 50 else "spring-or-fall"
    assert scenario.season == fits


def test_every_scenario_file_is_formatted_as_text_people_can_edit() -> None:
    for path in PATHS.values():
        text = Path(path).read_text("utf-8")
        assert text.startswith("format: 1\nscenario: "), path
        assert "\t" not in text, path


@pytest.mark.parametrize("name", sorted(PATHS))
def test_no_scenario_advises_what_must_not_be_done(name: str) -> None:
    path = PATHS[name]
    root = read_located(path.read_text("utf-8"), str(path))
    assert [str(problem) for problem in advice_problems(root, str(path))] == []
