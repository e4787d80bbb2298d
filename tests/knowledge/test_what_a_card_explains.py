"""Readings that a fault brings about are on its card, or they would speak against it.

Common practice, no source: a fan that stands lets the head climb whatever stopped it; a blower that
slips leaves every room warm; a blocked flue keeps the burner from lighting, and makes no gas then.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.visit.events import Answered, Started, replay

COOLING = {"heat": "none", "refrigerant": "R-410A", "metering": "txv", "supply-phase": "three"}
GAS = {"heat": "gas", "fuel": "natural-gas", "draft": "induced"}


def chances(
    knowledge: Knowledge, complaint: str, unit: dict[str, str], *read: Answered
) -> list[str]:
    """The causes in their order."""
    state = replay(knowledge, [Started(complaint=complaint, unit=unit), *read])
    return [cause.fault.id for cause in Reasoner(knowledge).conclude(state.case).causes]


def test_a_dead_fan_motor_is_among_the_first_causes_of_a_high_head(shipped: Knowledge) -> None:
    """Regression: of a head of 600 psig neither motor was among the first six."""
    weather = Answered("outdoor-temperature", text="88 F")
    head = Answered("head-pressure", text="600 psig")
    found = chances(shipped, "fails-hot-afternoons", COOLING, weather, head)
    assert {"condenser-fan-motor-seized", "condenser-fan-motor-winding-failed"} & {*found[:6]}


def test_clean_air_in_the_rooms_hardly_speaks_against_a_blocked_flue(shipped: Knowledge) -> None:
    """Regression: a twentieth was left of it for 0 ppm on a unit that had never lit."""
    air = Answered("room-carbon-monoxide", text="0 ppm")
    reasoner = Reasoner(shipped)

    def chance(*read: Answered) -> float:
        state = replay(shipped, [Started(complaint="no-heat", unit=GAS), *read])
        causes = reasoner.conclude(state.case).causes
        return next(cause.probability for cause in causes if cause.fault.id == "vent-blocked")

    assert chance(air) > 0.6 * chance()


@pytest.mark.parametrize("fault", ["blower-belt-slipping", "blower-wheel-dirty"])
def test_too_little_air_leaves_every_room_warm(fault: str, shipped: Knowledge) -> None:
    card = shipped.faults[fault]
    seen = (finding for row in card.evidence for finding in row.findings)
    assert any(f.test == "room-by-room" and "all-too-warm" in f.outcomes for f in seen)
