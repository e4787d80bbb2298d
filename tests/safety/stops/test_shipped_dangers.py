"""What the shipped hazards call up on readings that a mechanic met, and what they then forbid."""

from __future__ import annotations

from typing import Any

import pytest

from tests.safety.stops.shipped import KNOWLEDGE, REASONER, concluded, proposed, standing
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.cases.assessment import assess_case, candidates_for
from troubleshoot.visit.cases.file import read_case

DEAD_FAN = [
    {"test": "condenser-fan-turning", "outcome": "stopped"},
    {"test": "head-pressure", "text": "640 psig"},
]


def test_a_compressor_is_not_run_against_a_dead_fan() -> None:
    """At 640 psig, below where its switch opens, amps and capacitance running were proposed."""
    found = concluded(DEAD_FAN, complaint="no-cooling", conditions={"outdoor-temperature": "95 F"})
    assert "compressor-against-dead-fan" in standing(found)
    left = [c.test for c in candidates_for(found)]
    running = [t for t in left if t.work_state in ("running", "running-open")]
    of_circuit = [t.id for t in running if t.per and t.per != "heat-stage"]
    assert of_circuit == []
    dead = KNOWLEDGE.tests["condenser-fan-hand-spin"]
    assert Forbidden(found).by(dead, None) is None


@pytest.mark.parametrize(
    ("test", "outcome"),
    [
        ("contactor-pull-in", "stays-in"),
        ("contactor-contacts", "welded"),
        ("contactor-movement", "stuck-in"),
    ],
)
def test_a_contactor_that_stays_in_leaves_the_disconnect_alone(test: str, outcome: str) -> None:
    found = concluded([{"test": test, "outcome": outcome}], complaint="cooling-will-not-stop")
    assert "contactor-will-not-open" in standing(found)
    states = {KNOWLEDGE.tests[name].work_state for name in proposed(found)}
    assert states <= {"any", "locked-closed", "locked-out"}, "the disconnect is open and locked"


@pytest.mark.parametrize(
    ("outcome", "hazard", "other"),
    [
        ("retries", "failed-lights", "delayed-light-off"),
        ("locks-out", "failed-lights", "delayed-light-off"),
        ("delayed-light", "delayed-light-off", "failed-lights"),
    ],
)
def test_only_a_bang_is_told_of_as_one(outcome: str, hazard: str, other: str) -> None:
    found = standing(concluded([{"test": "ignition-trials", "outcome": outcome}]))
    assert hazard in found and other not in found


def test_the_stop_that_stands_is_read_before_a_danger_that_may_be() -> None:
    """A storm call brings up wet switches, which stand before the weather in the rules."""
    found = concluded(
        [{"test": "roof-conditions", "outcome": "lightning"}], complaint="failed-after-storm"
    )
    assert standing(found)[0] == "lightning" and len(standing(found)) > 1


@pytest.mark.parametrize(
    ("hazard", "reading"),
    [
        ("no-edge-protection", {"test": "edge-protection", "outcome": "cannot"}),
        (
            "somebody-hurt",
            {
                "test": "what-they-saw",
                "outcome": "not-normal",
                "text": "my helper got a shock and does not answer",
            },
        ),
    ],
)
def test_a_file_that_tells_of_a_danger_stops(hazard: str, reading: dict[str, Any]) -> None:
    """The roof was taken as safe after all, and words beside an outcome were lost."""
    data = {"complaint": "no-cooling", "readings": [reading]}
    case = read_case(KNOWLEDGE, data)
    assessed, _ = assess_case(KNOWLEDGE, case)
    visited = ScriptedVisit(REASONER, case, start_event(case, data)).run()
    for account in (assessed, visited):
        assert hazard in [each["id"] for each in account["standing_stops"]]
    assert visited["ending"] == "stopped"


def test_nothing_is_proposed_at_a_cabinet_without_a_ground() -> None:
    """To look into the drain trap means hands on the metal that may be live."""
    found = concluded([{"test": "ground-and-bond", "outcome": "open-ground"}])
    assert "cabinet-not-bonded" in standing(found) and candidates_for(found) == ()
