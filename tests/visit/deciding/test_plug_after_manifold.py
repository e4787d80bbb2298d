"""A visit in which the outlet tap was opened: it closes once its plug was tested under gas."""

from __future__ import annotations

import pytest

from tests.visit.deciding.test_burner_again import way
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import (
    GAS_SHUT,
    GAS_SWEEP,
    PLUG_TEST,
    PURGE_WAIT,
    RESTART,
    TAP_PLUGGED,
    Step,
)
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    Event,
    Reopened,
    Started,
    StepDone,
    VisitEnded,
    replay,
)

MANIFOLD = "gas-manifold-pressure"
PLUG = Step(PLUG_TEST, "outlet tap")
UNIT = {"heat": "gas", "fuel": "natural-gas", "circuits": 1}


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


@pytest.fixture
def called(decider: Decider) -> list[Event]:
    """The manifold read, the tap plugged, the unit called to run again on the way out."""
    events: list[Event] = [Started(complaint="no-heat", unit=UNIT), Aimed(MANIFOLD, chosen=True)]
    way(decider, events, MANIFOLD, most=90)
    events += [Answered(MANIFOLD, None, ("normal",)), Closing()]
    asked = way(decider, events, PLUG_TEST)
    assert [each for each in asked if each in (TAP_PLUGGED, RESTART, PLUG_TEST)] == [
        TAP_PLUGGED, RESTART, PLUG_TEST,
    ]  # fmt: skip
    return events


def test_once_it_is_tight_the_visit_closes(decider: Decider, called: list[Event]) -> None:
    called.append(StepDone.of(PLUG, ("tight",)))
    decision = decider.decide(replay(decider.knowledge, called))
    assert decision.step is None or decision.step.id not in (PLUG_TEST, GAS_SHUT)


def test_a_leak_at_it_stops_the_visit_as_one_at_any_joint(
    decider: Decider, called: list[Event]
) -> None:
    called.append(StepDone.of(PLUG, ("leaks",)))
    decision = decider.decide(replay(decider.knowledge, called))
    assert decision.stop is not None and decision.stop.hazard.id == "gas-odour"


def test_where_it_cannot_be_tested_the_cock_is_shut_and_nobody_is_held(
    decider: Decider, called: list[Event]
) -> None:
    called.append(StepDone.of(PLUG, ("cannot",)))
    assert PURGE_WAIT in way(decider, called, PLUG_TEST)  # it may not have lit
    called.append(StepDone.of(PLUG, ("cannot",)))
    asked = []
    while (decision := decider.decide(replay(decider.knowledge, called))).step is not None:
        asked.append(decision.step.id)
        called.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    state = replay(decider.knowledge, called)
    assert GAS_SHUT in asked and PLUG_TEST not in asked
    assert decision.kind == "ending" and state.work.gas == "shut"
    assert state.work.plugs_untested == {"outlet tap"}


def test_a_leak_made_good_is_lifted_by_the_same_plug_tested_under_gas_again(
    decider: Decider, called: list[Event]
) -> None:
    """The meter first, then the step itself: no way to dead work leads to a plug under gas."""
    result = HandOverResult("gas-fitter", "plug replaced, joints tested", "0 %LEL at the plug", "")
    told = "Gas utility dispatcher, just now"
    called += [StepDone.of(PLUG, ("leaks",)), VisitEnded("stopped", told)]
    called.append(Reopened.on("gas-odour", result, (GAS_SWEEP, None)))
    way(decider, called, GAS_SWEEP)
    called.append(Answered(GAS_SWEEP, outcomes=("none",)))
    asked = []
    while (decision := decider.decide(replay(decider.knowledge, called))).step != PLUG:
        assert decision.step is not None, asked
        asked.append(decision.step.id)
        called.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert asked.index(GAS_SHUT) < asked.index(GAS_SWEEP) < asked.index(RESTART)
    called.append(StepDone.of(PLUG, ("tight",)))
    assert decider.decide(replay(decider.knowledge, called)).stop is None
