"""A call for help, what is named afterwards, and what was done about a STOP: none is lost."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.events.effects import DEAD, THEN, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.dangers import ANY_DANGER
from troubleshoot.safety.stops.record import HandOverResult, StopMet
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import (
    DangerReported,
    DangerTakenBack,
    Halted,
    Reopened,
    TakenAfresh,
    after,
)
from troubleshoot.visit.state import VisitState

HELP = StopMet(ANY_DANGER, 1, reported="help")
GAS = StopMet("gas-odour", 1, reported="gas smell", done_here="shut the cock")
FIRE = StopMet("smoke-or-heat-now", 1)
RESULT = HandOverResult("gas-utility", "union tightened", "0 % at it", "2026-11-26 09:30")


@pytest.mark.parametrize(
    ("stops", "instead", "beside"),
    [
        ((), (), ()),
        ((HELP,), (), (HELP,)),
        ((GAS,), (GAS,), (GAS,)),
        ((GAS, FIRE, HELP), (GAS, FIRE), (GAS, FIRE, HELP)),
        ((HELP, GAS, FIRE), (HELP, GAS, FIRE), (HELP, GAS, FIRE)),
    ],
)
def test_what_a_caller_names_stands_instead_of_the_call_and_of_no_other_danger(
    stops: tuple[StopMet, ...], instead: tuple[StopMet, ...], beside: tuple[StopMet, ...],
    shipped: Knowledge, visit: VisitState,
) -> None:  # fmt: skip
    state = replace(visit, stops=stops)
    hazard = shipped.hazards["gas-odour"]
    met = StopMet("gas-odour", 1, (hazard.all_clear or "", None), "i smell gas")
    named = DangerReported.of(hazard, "i smell gas", names_the_last=True)
    assert after(shipped, state, named).stops == (*instead, met)
    more = DangerReported("gas-odour", "i smell gas", hazard.all_clear)
    assert more == DangerReported.of(hazard, "i smell gas")
    assert after(shipped, state, more).stops == (*beside, met)


@pytest.mark.parametrize(
    ("stops", "left"),
    [
        ((), ()),
        ((HELP,), ()),
        ((GAS,), (GAS,)),
        ((GAS, FIRE, HELP), (GAS, FIRE)),
        ((HELP, GAS, FIRE), (HELP, GAS, FIRE)),
    ],
)
def test_only_a_call_that_named_nothing_can_be_taken_back(
    stops: tuple[StopMet, ...], left: tuple[StopMet, ...], shipped: Knowledge, visit: VisitState
) -> None:
    changed(shipped, replace(visit, stops=stops), DangerTakenBack("leant on the keys"), stops=left)


def test_a_stop_has_its_finding_only_where_one_shows_it() -> None:
    assert Halted.over("gas-odour", None) == Halted("gas-odour")
    at_all = Halted.over("gas-odour", ("walk-round", None))
    assert at_all == Halted("gas-odour", "walk-round")


@pytest.mark.parametrize(
    ("hazard", "gas"), [("gas-odour", "unsure"), ("of-other-rules", "on"), ("lightning", "on")]
)
def test_whom_a_stop_sends_to_the_gas_cock_may_have_shut_it(
    hazard: str, gas: str, shipped: Knowledge, visit: VisitState
) -> None:
    state = replace(visit, work=replace(DEAD, gas="on"))
    assert state.at_work.burns_gas
    assert after(shipped, state, Halted(hazard, "walk-round")).work.gas == gas


def test_what_was_done_about_a_stop_stays_until_more_is_said(
    shipped: Knowledge, visit: VisitState
) -> None:
    first, last = FIRE, replace(GAS, result=RESULT)
    state = replace(visit, stops=(FIRE, first, last))
    bare = TakenAfresh.of(("walk-round", None))
    assert after(shipped, state, bare).stops == state.stops
    done = TakenAfresh.of(("walk-round", None), "opened the doors")
    told = replace(last, done_here="opened the doors")
    assert after(shipped, state, done).stops == (FIRE, first, told)
    anew = replace(RESULT, reading="0 % everywhere")
    cleared = replace(bare, result=anew)
    assert after(shipped, state, cleared).stops == (FIRE, first, replace(last, result=anew))
    assert after(shipped, replace(state, stops=()), done).stops == ()


@pytest.mark.parametrize(("heat", "gas"), [("gas", "unsure"), ("electric", "on"), (None, "unsure")])
def test_whoever_made_it_safe_may_have_turned_the_cock_of_a_gas_unit_alone(
    heat: str | None, gas: str, shipped: Knowledge, visit: VisitState
) -> None:
    from troubleshoot.reasoning.unit.equipment import read_unit

    unit = read_unit(shipped, {} if heat is None else {"heat": heat})
    state = replace(visit, unit=unit, work=WorkState(gas="on"), stops=(GAS,), ended="stopped")
    back = Reopened.on("gas-odour", RESULT, ("walk-round", None))
    assert after(shipped, state, replace(back, time=THEN)).work.gas == gas
