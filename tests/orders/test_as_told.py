"""What a caller says runs, hums or is locked out moves what is looked at first.

By a mechanic's practice (common practice, no source): a board that is locked out tries no light
before it is reset, and the reset takes its code, so the code comes first; a compressor that hums
has its call, so nobody climbs down to the thermostat for it.
"""

from __future__ import annotations

import pytest

from tests.orders.driven import MOST, Call, OrderedVisit, calls
from tests.practice.playing import reasoner_of
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.choosing.choice_of_test import choose
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Answered, Started, replay
from troubleshoot.visit.hearing.complaints import heard_complaint


def order_told(shipped: Knowledge, complaint: str, words: str) -> tuple[str, ...]:
    """The first looks of a visit whose caller said this, each answered with not known."""
    unit = next(call.unit for call in calls() if call.complaint == complaint)
    visit = OrderedVisit(reasoner_of(shipped), Call(complaint, unit, (), (), ()), "unknown", words)
    visit.drive()
    assert len(visit.order) == MOST
    return visit.order


@pytest.mark.parametrize("words", ["no heat, lockout", "furnace locked out", "no heat, locks out"])
def test_the_code_of_a_lockout_is_read_before_its_burner_is_tried(
    words: str, shipped: Knowledge
) -> None:
    """Regression: it was reset and tried first, and the code told of that trial."""
    order = order_told(shipped, "no-heat", words)
    assert order.index("board-code") < order.index("ignition-trials")
    assert order.index("flue-outlet-and-hood") < order.index("board-code")


def test_without_a_lockout_the_trial_is_watched_first(shipped: Knowledge) -> None:
    order = order_told(shipped, "no-heat", "no heat")
    assert order.index("ignition-trials") < order.index("board-code")


HUMS = "compressor hums and trips"


@pytest.mark.parametrize("words", [HUMS, "comp hums and clicks off"])
def test_a_compressor_that_hums_is_read_dead_and_not_its_thermostat(
    words: str, shipped: Knowledge
) -> None:
    """Regression: the first look was the setpoint, for a compressor that was called and hummed.

    Nor is it started once more to hear it: that burns it (`test_heard_to_hum.py`).
    """
    order = order_told(shipped, "no-cooling", words)
    assert "thermostat-settings" not in order[:5]
    assert {"capacitance-out-of-circuit", "contactor-contacts"} <= {*order[:5]}
    assert not {"compressor-start-attempt", "line-volts-running", "operating-sequence"} & {*order}


def test_what_hums_on_sound_volts_is_looked_for_at_its_capacitor(shipped: Knowledge) -> None:
    told = (
        Started(unit={"compressor-phase": "single"}, complaint="no-cooling", words=HUMS),
        Answered("compressor-start-attempt", ("compressor 1",), outcomes=("hums-and-trips",)),
        Answered("line-volts-running", outcomes=("normal",)),
    )
    reasoner = reasoner_of(shipped)
    state = replay(shipped, told)
    found = conclude_visit(reasoner, state)
    candidates = Decider(shipped, reasoner).candidates(state, found)
    chosen = choose(candidates, found.ranking, found.first_tests)
    assert chosen is not None and chosen.test.id.startswith("capacit"), chosen


@pytest.mark.parametrize("words", ["hums and trips", "hums and trips out", "just hums and trips"])
def test_what_hums_and_trips_is_no_call_about_noise(words: str, shipped: Knowledge) -> None:
    """Regression: it was taken for a noise, and the caller was asked to show it."""
    heard = heard_complaint(shipped, words)
    assert "no-cooling" in heard.which and heard.taken != "noise"


@pytest.mark.parametrize(
    "words", ["it makes a loud squealing noise", "belt squeals", "screeching up there"]
)
def test_what_squeals_is_looked_for_at_belt_and_bearings(words: str, shipped: Knowledge) -> None:
    """Regression: neither was among the first six looks."""
    assert {"blower-belt", "blower-bearings"} & {*order_told(shipped, "noise", words)[:6]}


def test_a_breaker_that_trips_with_the_compressor_leads_to_the_compressor(
    shipped: Knowledge,
) -> None:
    """Regression: the control fuse and the windings of a fan came before its own."""
    told = "trips the breaker when the compressor starts"
    order = order_told(shipped, "trips-breaker-or-fuse", told)
    looks = {"compressor-insulation", "compressor-windings", "contactor-contacts"}
    assert looks <= {*order[:7]}
    assert "condenser-fan-windings" not in order
    assert not {"gas-supply-look", "room-carbon-monoxide"} & {*order}
