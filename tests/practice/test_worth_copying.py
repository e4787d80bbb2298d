"""An expert worth copying: what a scenario is refused for, and a way written down."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from tests.practice.playing import follow, path_of, reasoner_of, scenario_named
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.expert import ExpertPath, NoWayThere, expert_path
from troubleshoot.practice.loading import ScenarioError, checked_scenario, scenario_paths
from troubleshoot.practice.scenario import Scenario
from troubleshoot.practice.session import Session
from troubleshoot.practice.starting import starting_scenario
from troubleshoot.practice.worth_copying import MOST_MINUTES, MOST_TESTS, unworthy
from troubleshoot.reasoning.unit.places import Place


def way_of(shipped: Knowledge, scenario: Scenario) -> ExpertPath:
    reasoner = reasoner_of(shipped)
    return expert_path(reasoner, scenario, AnsweringUnit(reasoner, scenario))


def told(shipped: Knowledge, scenario: Scenario, expert: ExpertPath) -> str:
    return "; ".join(each.what for each in unworthy(shipped, scenario, expert))


def test_a_way_is_followed_test_by_test_with_the_steps_between(shipped: Knowledge) -> None:
    scenario = scenario_named(shipped, "mill-lane")
    path = path_of(shipped, "mill-lane")
    taken = [move.test for move in path.tests]
    wanted = [name for name, _ in scenario.way]
    assert [name for name in taken if name in wanted] == wanted
    assert {"lockout", "verified-dead", "capacitor-discharge"} <= {m.test for m in path.moves}
    assert path.ending == "named"


@pytest.mark.parametrize("name", ["lock-house", "canal-wharf", "ferry-green"])
def test_a_way_is_as_safe_as_any(name: str, shipped: Knowledge) -> None:
    session = Session(reasoner_of(shipped), scenario_named(shipped, name))
    follow(session, path_of(shipped, name))
    assert not session.slips


def test_a_hint_is_the_next_test_of_the_way(shipped: Knowledge) -> None:
    session = Session(reasoner_of(shipped), scenario_named(shipped, "lock-house"))
    decision = session.hint()
    assert decision.aim == ("superheat", Place("circuit", 2))


def test_a_long_way_is_told(shipped: Knowledge) -> None:
    scenario, path = scenario_named(shipped, "mill-lane"), path_of(shipped, "mill-lane")
    assert told(shipped, scenario, path) == ""
    slow = replace(path, minutes=MOST_MINUTES + 1)
    assert "91 minutes, over 90" in told(shipped, scenario, slow)
    many = replace(path, moves=path.moves + path.tests * MOST_TESTS)
    assert "tests, over 15" in told(shipped, scenario, many)


def test_a_way_that_ends_in_a_shortlist_is_told(shipped: Knowledge) -> None:
    scenario = scenario_named(shipped, "mill-lane")
    early = replace(scenario, way=scenario.way[:1], taught_by=())
    assert "the expert ends shortlist" in told(shipped, early, way_of(shipped, early))


def test_an_expert_who_does_without_the_lesson_is_told(shipped: Knowledge) -> None:
    """Regression: the debrief taught to look at the bulb first, and the expert came to it last."""
    scenario = replace(scenario_named(shipped, "mill-lane"), taught_by=("head-pressure",))
    assert "does without" in told(shipped, scenario, path_of(shipped, "mill-lane"))


def test_a_test_that_no_safe_way_leads_to_is_no_way(shipped: Knowledge) -> None:
    scenario = scenario_named(shipped, "church-field")
    barred = replace(scenario_named(shipped, "mill-lane"), unavailable={"head-pressure": "gone"})
    barred = replace(barred, way=(("head-pressure", Place("circuit", 1)),))
    with pytest.raises(NoWayThere, match="head-pressure"):
        way_of(shipped, barred)
    assert path_of(shipped, scenario.id).ending == "stopped"


def test_a_file_of_ones_own_with_a_poor_expert_is_refused(
    shipped: Knowledge, tmp_path: Path
) -> None:
    reasoner = reasoner_of(shipped)
    file = tmp_path / "tea-rooms.yaml"
    text = starting_scenario(file.name)
    file.write_text(text, "utf-8")
    assert checked_scenario(reasoner, file).id == "tea-rooms"
    file.write_text(text.replace("truth:\n", "way:\n  - {test: visit-history}\ntruth:\n"), "utf-8")
    with pytest.raises(ScenarioError, match="the expert ends shortlist"):
        checked_scenario(reasoner, file)


def test_every_place_of_a_way_is_one_of_the_unit(shipped: Knowledge, tmp_path: Path) -> None:
    text = scenario_paths()["lock-house"].read_text("utf-8")
    file = tmp_path / "lock-house.yaml"
    way = "{test: drier-temperature-drop, at: circuit 2}"
    assert f"  - {way}\n" in text.partition("\nway:\n")[2]
    head, _, tail = text.partition("\nway:\n")
    file.write_text(head + "\nway:\n" + tail.replace(way, way.replace("2}", "7}"), 1), "utf-8")
    with pytest.raises(ScenarioError, match="circuit 7"):
        checked_scenario(reasoner_of(shipped), file)
