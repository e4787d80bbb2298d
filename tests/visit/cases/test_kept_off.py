"""An assessment advises nothing that runs what a danger that stands keeps off."""

from __future__ import annotations

from typing import Any

import pytest

from tests.safety.stops.shipped import KNOWLEDGE, concluded, proposed, standing
from troubleshoot.knowledge.model import Hazard, Test

LIVE = ("running", "running-open", "energised-open")
BURNERS = ("gas", "ignition", "combustion")
ENDED = (None, "nothing")


def found_by(hazard: Hazard) -> list[tuple[str, str]]:
    """The tests and outcomes any one of which calls the hazard up."""
    return [
        (finding.test, outcome)
        for trigger in hazard.triggers
        for finding in trigger.findings
        for outcome in finding.outcomes
    ]


OF_ONE_STEP = [
    hazard.id
    for hazard in KNOWLEDGE.hazards.values()
    if hazard.stop is not None
    and hazard.stop.scope == "this-step"
    and hazard.keeps_off not in ENDED
    and found_by(hazard)
]
"""Hazards that halt no assessment, and keep something off once a finding has called them up."""


def after(test: str, outcome: str, complaint: str) -> tuple[list[str], set[str]]:
    reading: dict[str, Any] = {"test": test, "outcome": outcome}
    found = concluded([reading], complaint=complaint)
    return standing(found), proposed(found)


def runs_it(hazard: Hazard, test: Test, complaint: str) -> bool:
    """Whether a test runs what a hazard keeps off, and does not end a ban of it."""
    ends = {finding.test for ban in hazard.forbids for finding in ban.until}
    if test.work_state not in LIVE or test.id in ends:
        return False
    if hazard.keeps_off == "heat":
        return complaint == "no-heat" or test.area in BURNERS
    return hazard.keeps_off == "unit" and not hazard.forbids


@pytest.mark.parametrize("name", OF_ONE_STEP)
def test_nothing_is_lit_or_started_that_stays_off(name: str) -> None:
    """Regression: after a unit that locked out on ignition its flame was to be looked at."""
    hazard = KNOWLEDGE.hazards[name]
    started = []
    for complaint in ("no-heat", "no-cooling"):
        for test, outcome in found_by(hazard):
            stands, tests = after(test, outcome, complaint)
            if name in stands:
                live = [t for t in tests if runs_it(hazard, KNOWLEDGE.tests[t], complaint)]
                started += [(test, outcome, each) for each in live]
    assert started == []


@pytest.mark.parametrize(
    ("test", "outcome"), [("ignition-trials", "locks-out"), ("flue-outlet-and-hood", "blocked")]
)
def test_what_is_looked_at_with_the_gas_off_is_still_advised(test: str, outcome: str) -> None:
    dead = {"burner-orifices", "flame-rod", "gas-supply-look", "flue-outlet-and-hood"}
    assert after(test, outcome, "no-heat")[1] & dead


def test_a_blocked_flue_does_not_keep_the_cooling_from_being_looked_at() -> None:
    assert "safety-string-walk" in after("flue-outlet-and-hood", "blocked", "no-cooling")[1]


def test_what_ends_a_ban_is_still_read() -> None:
    """A suspect exchanger is proved by two readings that need the burner."""
    stands, tests = after("flue-oxygen-at-blower-start", "borderline", "no-heat")
    assert "heat-exchanger-suspect" in stands and "supply-air-carbon-monoxide" in tests


def test_a_head_may_be_read_once_as_the_caution_of_its_switch_says() -> None:
    """It is left off where the visit ends; what stops nothing takes no test away."""
    stands, tests = after("safety-string-walk", "high-pressure-open", "no-cooling")
    assert "high-pressure-switch-open" in stands
    assert {each for each in tests if KNOWLEDGE.tests[each].work_state in LIVE}
