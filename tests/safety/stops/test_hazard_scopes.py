"""How much a finding stops: a cover, a trace of gas, a leaking joint, somebody alone at 480 V."""

from __future__ import annotations

from typing import Any

import pytest

from tests.safety.stops.shipped import KNOWLEDGE, concluded, in_a_visit, proposed, standing
from troubleshoot.safety.at_ports import as_read_on
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.safety.work_state import UnitAtWork
from troubleshoot.visit.deciding.left_off import left_off

LIVE = {"running", "running-open", "energised-open"}
OPEN_LIVE = LIVE - {"running"}
ALONE = {"test": "second-person", "outcome": "alone"}
DEAD = {"test": "operating-sequence", "outcome": "load-dead"}


def in_states(tests: set[str], states: set[str]) -> set[str]:
    """Of some tests those in such states, read as where nobody knows where the ports are."""
    each = {test: as_read_on(KNOWLEDGE.tests[test], UnitAtWork()) for test in tests}
    return {name for name, test in each.items() if test.work_state in states}


@pytest.mark.parametrize(
    ("volts", "is_high"),
    [
        ({"line-volts-class": "480-volt"}, True),
        ({"nameplate-volts": "460 V"}, True),
        ({}, True),
        ({"line-volts-class": "208-to-240-volt"}, False),
        ({"nameplate-volts": "208 V"}, False),
        ({"supply-phase": "single"}, False),
    ],
)
def test_nobody_alone_is_offered_live_work_at_480_v(volts: dict[str, Any], is_high: bool) -> None:
    """The caution said so, and the safety string and the amps were proposed under it."""
    unit = {"refrigerant": "R-410A", "heat": "gas", "circuits": 2, **volts}
    alone = concluded([ALONE, DEAD], complaint="no-cooling", unit=unit)
    assert bool(in_states(proposed(alone), OPEN_LIVE)) is not is_high
    again = {**ALONE, "outcome": "there"}
    helped = concluded([ALONE, DEAD, again], complaint="no-cooling", unit=unit)
    assert in_states(proposed(helped), OPEN_LIVE)
    amps = KNOWLEDGE.tests["compressor-amps"]
    at = unit_place(alone)
    assert Forbidden(alone).even_if_chosen(amps, at) is None, "the step asks whoever chooses it"


def unit_place(conclusions: Any) -> Any:
    return conclusions.case.unit.layout.places("compressor")[0]


def test_a_cover_that_is_missing_keeps_off_before_anything_is_live() -> None:
    missing = {"test": "walk-round", "outcome": "panel-missing"}
    unit = {"line-volts-class": "480-volt", "heat": "gas"}
    found = concluded([missing], complaint="no-cooling", unit=unit)
    assert "cover-missing" in standing(found)
    assert in_states(proposed(found), LIVE) == set()
    assert "cover-missing" in [fired.hazard.id for fired in left_off(found).unit]
    fitted = {"test": "walk-round", "outcome": "clean"}
    assert "cover-missing" not in standing(in_a_visit([missing, fitted], unit=unit))


@pytest.mark.parametrize("outcome", ["found", "at-access-valve"])
def test_a_leak_found_at_a_joint_that_burns_is_worked_on(outcome: str) -> None:
    """The whole job stopped, and the blower of a locked unit was to clear the air."""
    unit = {"refrigerant": "R-454B", "refrigerant-class": "a2l", "heat": "none"}
    found = concluded([{"test": "leak-search", "outcome": outcome}], unit=unit)
    assert standing(found)[0] == "leaking-joint-that-burns"
    assert not found.standing_stops
    barred = Forbidden(found)
    assert barred.by(KNOWLEDGE.tests["compressor-amps"], unit_place(found)) is not None
    assert barred.by(KNOWLEDGE.tests["nitrogen-pressure-test"], None) is None
    in_the_air = concluded([{"test": "refrigerant-sweep-a2l", "outcome": "leak"}], unit=unit)
    assert [fired.hazard.id for fired in in_the_air.standing_stops] == [
        "flammable-refrigerant-found"
    ]


@pytest.mark.parametrize(("sweep", "stop"), [("trace", "gas-trace"), ("leak", "gas-odour")])
def test_a_trace_at_one_joint_stops_the_unit_and_a_leak_empties_the_building(
    sweep: str, stop: str
) -> None:
    found = concluded([{"test": "combustible-gas-sweep", "outcome": sweep}])
    assert [fired.hazard.id for fired in found.standing_stops] == [stop]
    orders = KNOWLEDGE.hazards[stop].what_to_do
    assert (
        orders.index("cock") < orders.index("everybody out")
        if sweep == "trace"
        else (orders.startswith("If gas is smelled or read: everybody out first"))
    )


def test_whoever_is_ill_from_heat_is_cooled_and_911_called_first() -> None:
    first = KNOWLEDGE.hazards["roof-heat"].what_to_do.split(".")[0]
    assert "911" in first and "cool them" in first


def test_a_smell_of_burning_calls_911_for_what_burns() -> None:
    orders = KNOWLEDGE.hazards["smoke-or-heat-now"].what_to_do
    assert "Call 911 for smoke, flame or heat" in orders and "is no all-clear" in orders
