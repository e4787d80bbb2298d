"""Drawn cases: the same seed draws the same, numbers hold together, the expert finds the fault."""

from __future__ import annotations

import pytest

from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.consistency import consistency_problems
from troubleshoot.practice.drawing import NothingDrawn, draw_scenario
from troubleshoot.practice.expert import expert_path
from troubleshoot.practice.worth_copying import MOST_MINUTES, MOST_TESTS

DRAWN = (("power", 1, 1), ("condensate", 2, 2), ("condenser", 5, 3))
LONG = (("refrigerant", 4), ("filters-coil-duct", 1), ("gas", 2))
"""Drawn with an expert of 234, 180 and 119 minutes once."""


@pytest.mark.parametrize(("subsystem", "seed", "difficulty"), DRAWN)
def test_a_drawn_case_holds_together_and_the_expert_finds_it(
    shipped: Knowledge, subsystem: str, seed: int, difficulty: int
) -> None:
    reasoner = reasoner_of(shipped)
    scenario, path = draw_scenario(reasoner, subsystem, seed, difficulty)
    (true,) = scenario.truth.faults
    assert shipped.faults[true.fault].subsystem == subsystem == scenario.subsystem
    assert path.conclusions.causes[0].fault.id == true.fault
    assert list(consistency_problems(reasoner, scenario)) == []
    again = expert_path(reasoner, scenario, AnsweringUnit(reasoner, scenario))
    assert again.account == path.account
    assert bool(scenario.unavailable) == (difficulty >= 2)
    lies = [shown for shown in scenario.listed if shown.valid is False]
    assert len(lies) == (difficulty == 3)
    assert all(lie.why for lie in lies)
    assert scenario.teaches == f"What brings it about: {shipped.faults[true.fault].why}"
    assert not {move.test for move in path.tests} & set(scenario.unavailable)


@pytest.mark.parametrize(("subsystem", "seed"), LONG)
def test_a_drawn_case_is_short_enough_to_copy(
    shipped: Knowledge, subsystem: str, seed: int
) -> None:
    """Regression: 24 tests and 234 minutes at difficulty 1, where a file would be refused."""
    scenario, path = draw_scenario(reasoner_of(shipped), subsystem, seed)
    assert len(path.tests) <= MOST_TESTS and path.minutes <= MOST_MINUTES
    assert path.ending in ("named", "stopped") or not scenario.way


def test_the_same_seed_draws_the_same_case_and_another_seed_another(shipped: Knowledge) -> None:
    reasoner = reasoner_of(shipped)
    first, second = (draw_scenario(reasoner, "condensate", 2)[0] for _ in range(2))
    assert first == second
    other, _ = draw_scenario(reasoner, "condensate", 3)
    assert other.plain != first.plain


def test_a_case_of_one_fault(shipped: Knowledge) -> None:
    """Whoever has written a card plays it."""
    scenario, path = draw_scenario(reasoner_of(shipped), "blower-belt-slipping", 1)
    assert [true.fault for true in scenario.truth.faults] == ["blower-belt-slipping"]
    assert path.conclusions.causes[0].fault.id == "blower-belt-slipping"
    assert scenario.subsystem == "indoor-blower"


def test_an_unknown_subsystem_is_told_with_those_there_are(shipped: Knowledge) -> None:
    with pytest.raises(NothingDrawn, match="powder is no subsystem and no fault; one of buil"):
        draw_scenario(reasoner_of(shipped), "powder", 1)
