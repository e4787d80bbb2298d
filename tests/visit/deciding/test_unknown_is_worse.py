"""What nobody has read off a unit counts as the worse case until it is known."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from tests.cli.player import Player, play
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Event, Skipped, Started, StepDone, replay

KNOWN: dict[str, Any] = {"refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
SWEEP, PANEL = "refrigerant-sweep-a2l", "tell-fire-panel"


@pytest.mark.parametrize(
    ("unit", "flammable", "fire_panel"),
    [
        ({}, True, True),
        ({"refrigerant": "other"}, True, True),
        ({"refrigerant": "R-32", "duct-smoke-detector": "fitted"}, True, True),
        (KNOWN, False, False),
        ({"refrigerant": "other", "refrigerant-class": "a1"}, False, True),
    ],
)
def test_a_unit_is_as_dangerous_as_it_may_be(
    unit: dict[str, Any], flammable: bool, fire_panel: bool, shipped: Knowledge
) -> None:
    at_work = unit_at_work(read_unit(shipped, unit))
    assert (at_work.flammable, at_work.fire_panel) == (flammable, fire_panel)


@pytest.mark.parametrize(
    ("unit", "drives"),
    [
        ({}, ("blower motor", "blower drive")),
        ({"blower-motor": "three-phase"}, ("blower drive",)),
        ({"blower-motor": "electronically-commutated", "variable-speed-drive": "not-fitted"},
         ("blower motor",)),
        ({"blower-motor": "three-phase", "variable-speed-drive": "not-fitted"}, ()),
    ],
)  # fmt: skip
def test_electronics_that_may_be_there_may_hold_a_charge(
    unit: dict[str, Any], drives: tuple[str, ...], shipped: Knowledge
) -> None:
    assert unit_at_work(read_unit(shipped, unit)).drives == drives
    steps = way_to(shipped, {**KNOWN, **unit}, "wiring-burn-marks", None)
    assert steps.count("drive-discharge") == len(drives)


def way_to(shipped: Knowledge, unit: dict[str, Any], test: str, at: str | None) -> list[str]:
    """The steps that come before a test, each confirmed."""
    decider = Decider(shipped)
    events: list[Event] = [
        Started(complaint="no-cooling", unit=unit),
        Skipped("walk-round"),
        Aimed(test, at),
    ]
    steps = []
    for _ in range(40):
        decision = decider.decide(replay(shipped, events))
        if decision.step is None:
            assert decision.test is not None and decision.test.id == test
            return steps
        steps.append(decision.step.id)
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    raise AssertionError("no way there")


def test_the_fire_panel_is_told_and_the_air_swept_where_neither_is_known(
    shipped: Knowledge,
) -> None:
    steps = way_to(shipped, {}, "suction-pressure", "circuit 1")
    assert steps.index(SWEEP) < steps.index("gauges-on")
    steps = way_to(shipped, {}, "contactor-coil-volts", "contactor 1")
    assert steps.index(PANEL) < steps.index("stop-by-controls")
    for test, at in (("suction-pressure", "circuit 1"), ("contactor-coil-volts", "contactor 1")):
        assert not {SWEEP, PANEL} & set(way_to(shipped, KNOWN, test, at))


@pytest.mark.parametrize("test", [SWEEP, "gauges-on", "suction-pressure", "panels-off"])
def test_an_unknown_refrigerant_is_cautioned_for_before_work_on_the_circuit(
    test: str, shipped: Knowledge
) -> None:
    def cautions(unit: dict[str, Any]) -> dict[str, str]:
        state = replay(shipped, [Started(complaint="no-cooling", unit=unit)])
        return {h.id: h.what_to_do for h in cautions_before(shipped, state, shipped.tests[test])}

    unknown = cautions({})
    assert "unless it shows an A1 refrigerant" in unknown["refrigerant-not-known"]
    assert "flammable-refrigerant" in unknown
    assert "flammable-refrigerant" in cautions({"refrigerant": "R-454B"})
    assert "refrigerant-not-known" not in cautions({"refrigerant": "R-454B"})
    if test != SWEEP:
        assert not {"refrigerant-not-known", "flammable-refrigerant"} & set(cautions(KNOWN))


def asked(shipped: Knowledge, folder: Path, answers: dict[str, str]) -> Player:
    """A visit on a unit of which nothing is known, to a look with hands inside."""
    player = Player(shipped, {}, ["do wiring-burn-marks"], ["q"])
    usual = player._answer

    def answer() -> str:
        question = " ".join(player.lines[-3:])
        known = (typed for words, typed in answers.items() if words in question)
        return usual() if "Before the next step" not in question else next(known, "")

    player._answer = answer  # type: ignore[method-assign]
    play(shipped, folder, player, {"complaint": "no-cooling", "unit": {}})
    return player


def test_a_person_is_asked_first_and_the_answer_spares_the_step(
    shipped: Knowledge, tmp_path: Path
) -> None:
    answers = {
        "duct smoke detector": "not-fitted", "Which refrigerant": "R-410A",
        "kind of blower motor": "three-phase", "variable-speed drive": "not-fitted",
    }  # fmt: skip
    text = asked(shipped, tmp_path, answers).text
    assert "Is a duct smoke detector fitted?" in text and "Which refrigerant" in text
    assert "What kind of blower motor?" in text and "variable-speed drive fitted" in text
    assert f"Step: {shipped.tests[PANEL].name}" not in text
    assert shipped.tests["drive-discharge"].name not in text
    assert shipped.tests[SWEEP].name not in text


def test_what_nobody_knows_is_asked_once_and_counts_as_worse(
    shipped: Knowledge, tmp_path: Path
) -> None:
    text = asked(shipped, tmp_path, {}).text
    assert text.count("Is a duct smoke detector fitted?") == 1
    assert f"Step: {shipped.tests[PANEL].name}" in text
    assert f"Step: {shipped.tests[SWEEP].name}" in text
    # Both of them, each time that it is proved dead: for hands, and for the hoses behind a panel.
    assert text.count(f"Step: {shipped.tests['drive-discharge'].name}") == 4
