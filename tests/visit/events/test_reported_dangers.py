"""A danger that somebody reports takes away what the step had shown that would clear it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import EDGE_PROTECTION, Step
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    DangerReported,
    Event,
    Halted,
    Reopened,
    Started,
    StepDone,
    TakenAfresh,
    VisitEnded,
    replay,
)
from troubleshoot.visit.state import VisitState

KNOWLEDGE = load_shipped()
DECIDER = Decider(KNOWLEDGE)
UNIT = {"refrigerant": "R-410A", "circuits": 1, "duct-smoke-detector": "not-fitted"}
NINE, TEN = "2026-11-26T09:00:00+00:00", "2026-11-26T10:00:00+00:00"
START = Started(complaint="no-cooling", unit=UNIT, time=NINE)
SAFE_ROOF = replace(StepDone.of(Step("roof-conditions"), ("safe",)), time=NINE)


def at(time: str, event: Event) -> Event:
    return replace(event, time=time)


def no_rail() -> list[Event]:
    """On a roof that was found safe, somebody reports an edge without a rail, an hour later."""
    danger = DangerReported.of(KNOWLEDGE.hazards["roof-edge-under-6-ft"], "no rail here")
    return [START, SAFE_ROOF, at(TEN, danger), at(TEN, TakenAfresh.of((EDGE_PROTECTION, None)))]


def test_an_edge_without_a_rail_is_guarded_before_anything_else() -> None:
    decision = DECIDER.decide(replay(KNOWLEDGE, no_rail()))
    assert decision.step == Step(EDGE_PROTECTION)
    guarded = at(TEN, StepDone.of(Step(EDGE_PROTECTION), ("on",)))
    after = DECIDER.decide(replay(KNOWLEDGE, [*no_rail(), guarded]))
    assert after.stop is None and after.test is not None


def test_a_report_is_no_look_at_the_roof() -> None:
    """What names a step in passing does not start its hour anew."""
    for event in (
        DangerReported.of(KNOWLEDGE.hazards["roof-edge-under-6-ft"], "no rail here"),
        TakenAfresh.of((EDGE_PROTECTION, None)),
        Aimed("roof-conditions"),
    ):
        assert replay(KNOWLEDGE, [START, SAFE_ROOF, at(TEN, event)]).roof_time == NINE


@pytest.mark.parametrize(
    "hazard", [h.id for h in KNOWLEDGE.hazards.values() if h.stop and h.all_clear in CONFIRMED]
)
def test_what_would_clear_a_reported_danger_is_not_taken_for_done(hazard: str) -> None:
    found = KNOWLEDGE.hazards[hazard]
    assert found.all_clear is not None
    done = at(NINE, StepDone.of(Step(found.all_clear), (CONFIRMED[found.all_clear],)))
    reported = at(TEN, DangerReported.of(found, "it is so"))
    with_it = replay(KNOWLEDGE, [START, SAFE_ROOF, done, reported])
    without = replay(KNOWLEDGE, [START, SAFE_ROOF, reported])
    assert _confirmed(with_it) <= _confirmed(without)


GAS = KNOWLEDGE.hazards["gas-odour"]
SMELT = Answered("walk-round", outcomes=("gas-odour",))
NOT_SMELT = Answered("walk-round", outcomes=("clean",))
SWEPT = StepDone.of(Step("combustible-gas-sweep"), ("none",))
RESULT = HandOverResult("gas-utility", "tightened the union", "0 % at it", "2026-11-26 10:00")


def smelt_and_reported(reported_last: bool) -> list[Any]:
    """Gas was smelt on the walk round and reported as well, then handed over and taken back."""
    found = [SMELT, Halted.over(GAS.id, ("walk-round", None))]
    told = [DangerReported.of(GAS, "gas")]
    both = [*found, *told] if reported_last else [*told, *found]
    over = VisitEnded("stopped", "the gas utility", "2026-11-26 09:30")
    back = Reopened.on(GAS.id, RESULT, ("walk-round", None))
    return [START, SAFE_ROOF, *(at(NINE, e) for e in (*both, over, back)), at(NINE, SAFE_ROOF)]


@pytest.mark.parametrize("reported_last", [True, False])
def test_what_was_found_and_reported_is_lifted_by_neither_alone(reported_last: bool) -> None:
    events = [*smelt_and_reported(reported_last), at(TEN, NOT_SMELT)]
    assert DECIDER.decide(replay(KNOWLEDGE, events)).stop is not None
    swept = [*events, at(TEN, SWEPT)]
    assert DECIDER.decide(replay(KNOWLEDGE, swept)).stop is None
    alone = [*smelt_and_reported(reported_last), at(TEN, SWEPT)]
    assert DECIDER.decide(replay(KNOWLEDGE, alone)).stop is not None


@pytest.mark.parametrize("reported_last", [True, False])
def test_what_was_found_and_reported_can_be_lifted(reported_last: bool) -> None:
    """After the one finding the way leads to the other."""
    events = [*smelt_and_reported(reported_last), at(TEN, NOT_SMELT)]
    sweep = ("combustible-gas-sweep", None)
    decision = DECIDER.decide(replay(KNOWLEDGE, [*events, at(TEN, TakenAfresh.of(sweep))]))
    assert decision.aim == sweep


def _confirmed(state: VisitState) -> set[str]:
    """What the work state says for certain, as far as one of these steps can show it."""
    work = state.work
    shown = set(work.clear)
    shown |= {f"{name} {value}" for name, value in (
        ("roof", work.roof), ("dead", work.dead), ("meter", work.meter), ("calls", work.calls)
    ) if value in ("go", "tested", "proved", "off")}  # fmt: skip
    return shown | ({"told"} if work.occupants_told else set())
