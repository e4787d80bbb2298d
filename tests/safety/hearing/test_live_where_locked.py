"""Volts where there should be none are the electrical danger, with its orders, hand-over and tag.

Regression: danger voltage at a dead circuit was told as a danger that somebody reported, with words
of gas. The sentences were written by the one who mended it.
"""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.hearing.among_words import told_among
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.reporting import reported

KNOWLEDGE = load_shipped()
LIVE = "live-now"


@pytest.mark.parametrize(
    "typed",
    [
        "voltage at a dead circuit",
        "volts on a dead circuit",
        "voltage found where it is locked out",
        "still live after lockout",
        "hot after lock out",
        "voltage after lockout",
        "locked out and still have power",
        "locked out but still reads 120 volts",
        "circuit should be dead and has voltage",
        "dead circuit is live",
        "it should be dead and is not",
        "this conductor should be deenergized and it is not",
        "there is a live wire behind the dead panel",
        "found voltage on locked out unit",
        "unit locked out, still got volts",
        "voltage present with the disconnect locked",
    ],
)
def test_it_is_told_first_as_what_it_is(typed: str) -> None:
    for heard in (reported(KNOWLEDGE, typed), spoken_of(KNOWLEDGE, typed)):
        assert heard[0].id == LIVE and "electrician" in heard[0].defer_to
    assert [hazard.id for hazard in told_among(KNOWLEDGE, typed)] == [LIVE]


@pytest.mark.parametrize(
    "typed",
    [
        "no voltage after lockout",
        "locked out, 0 volts",
        "checked voltage before lockout",
        "board is locked out and has voltage at the transformer",
        "board in lockout, 24 volts at the valve",
        "compressor locked out, found 208 volts at the contactor",
        "unit is in lockout, found 24 volts",
        "furnace still in lockout, has power",
        "dead circuit, no voltage",
        "it should be dead, not tested yet",
        "unit is dead and should not be",
        "found the power disconnect and locked it",
        "lock is still on, power off",
        "power is still locked out",
        "voltage tester says the circuit is dead",
        "circuit 2 is dead, contactor has 24 volts",
    ],
)
def test_what_is_near_to_it_stops_nothing(typed: str) -> None:
    assert spoken_of(KNOWLEDGE, typed) == told_among(KNOWLEDGE, typed) == ()
