"""What is found out below comes before the ladder, what shows from outside before a stop or a lock.

By a mechanic who had never seen the rules: he asks and reads the thermostat below, tells the people
before he climbs, and looks at fans and coil before anything wants a lock. Where too little air or
cold comes the filters wait for no look, in eight prompts (`tests/edge/test_filters_first.py`).
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

import pytest

from tests.dialogue.constant import ConstantVisit
from tests.dialogue.on_a_round import RoundVisit
from tests.practice.playing import reasoner_of
from troubleshoot.dialogue.prompts import AskTest, DoStep, Prompt
from troubleshoot.dialogue.talk import Reply
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.needs import IN_THE_BUILDING
from troubleshoot.safety.steps import LOCKOUT, ROOF, STOP_BY_CONTROLS, TELL_OCCUPANTS
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import Aimed, Started, StepDone, replay

FILTERS_FIRST = ("weak-airflow", "weak-cooling")
OTHERS = ("no-cooling", "ice-on-pipes-or-coil", "no-heat", "heat-short-cycles", "no-air")


class Ordered(ConstantVisit):
    """A visit that keeps every step and test in its order."""

    def __init__(self, reasoner: Reasoner, unit: Mapping[str, object], call: str) -> None:
        super().__init__(reasoner, unit, call, "sound")
        self.order: list[str] = []

    def reply(self, prompt: Prompt) -> Reply | None:
        if isinstance(prompt, AskTest | DoStep) and prompt.decision.test is not None:
            self.order.append(prompt.decision.test.id)
        return super().reply(prompt)


@cache
def order_on(call: str) -> list[str]:
    shipped = load_shipped()
    unit = shipped.typical_units["middling-two-circuits"].unit
    visit = Ordered(reasoner_of(shipped), unit, call)
    visit.drive()
    return visit.order


@pytest.mark.parametrize("call", [*OTHERS, *FILTERS_FIRST])
def test_people_are_told_before_anybody_climbs(call: str) -> None:
    order = order_on(call)
    assert order.index(TELL_OCCUPANTS) < order.index(ROOF)


@pytest.mark.parametrize("call", OTHERS)
def test_what_the_call_looks_at_below_is_not_sprung_on_the_roof(
    call: str, shipped: Knowledge
) -> None:
    """Regression: the thermostat's setpoint was asked for on the roof, with the unit locked out."""
    order = order_on(call)
    first = set(shipped.complaints[call].first_tests)
    below = {n for n in first & {*order} if shipped.tests[n].area == IN_THE_BUILDING}
    assert below
    assert all(order.index(name) < order.index(ROOF) for name in below)


def test_what_tells_only_as_it_runs_is_looked_at_before_the_filters_want_a_lock() -> None:
    """Ice is looked at before anything is switched off: it is why the unit was called about."""
    order = order_on("ice-on-pipes-or-coil")
    lock = min(order.index(STOP_BY_CONTROLS), order.index(LOCKOUT))
    assert order.index("ice-on-coil") < lock < order.index("air-filters")


@pytest.mark.parametrize("call", FILTERS_FIRST)
def test_filters_wait_for_no_look_but_the_walk_round(call: str, shipped: Knowledge) -> None:
    """Regression: on weak cooling they came behind thermostat, fan and split, in 13 prompts."""
    order = order_on(call)
    before = order[: order.index("air-filters")]
    assert [n for n in before if shipped.tests[n].kind != "step"] == ["walk-round"]


def test_on_a_round_people_are_told_before_the_ladder_too(shipped: Knowledge) -> None:
    unit = shipped.typical_units["light-single-phase"].unit
    visit = RoundVisit(reasoner_of(shipped), unit, "spring")
    visit.drive()
    order = [p.decision.test.id for p in visit.shown if p.decision.test is not None]
    assert order.index(TELL_OCCUPANTS) < order.index(ROOF)


def test_a_test_of_ones_own_choice_waits_for_no_look(shipped: Knowledge) -> None:
    """But the people below, whom it stops the air of, are told before the ladder."""
    decider = Decider(shipped)
    start, chosen = Started(complaint="weak-cooling"), Aimed("air-filters", chosen=True)
    told = decider.decide(replay(shipped, [start, chosen]))
    assert told.step is not None and told.step.id == TELL_OCCUPANTS
    events = [start, chosen, StepDone.of(told.step, ("told",))]
    climb = decider.decide(replay(shipped, events)).step
    assert climb is not None and climb.id == ROOF


def test_nobody_is_told_below_for_a_look_that_stops_nothing(shipped: Knowledge) -> None:
    decider = Decider(shipped)
    chosen = Aimed("thermostat-settings", chosen=True)
    decision = decider.decide(replay(shipped, [Started(complaint="no-cooling"), chosen]))
    assert decision.step is None and decision.test is not None
    assert decision.test.id == "thermostat-settings"


def test_the_flue_outlet_is_looked_into_before_a_panel_is_opened_live() -> None:
    """Regression: a nest was met after the live readings. Common practice, no source."""
    order = order_on("no-heat")
    live = {"panels-off-energised", "hook-up-dead"} & {*order}
    assert "flue-outlet-and-hood" in order
    assert all(order.index("flue-outlet-and-hood") < order.index(step) for step in live)
