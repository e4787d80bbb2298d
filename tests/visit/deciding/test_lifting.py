"""The way to the fresh finding: as safe as any other, by whoever may go it, and no other way."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.visit.deciding.test_stops import UNIT, confirm_until, found, next_of, start
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.parts import not_yet_afresh
from troubleshoot.safety.stops.record import HandOverResult, Spot, StopMet
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.lifting import LIFTS, towards_lifting
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Event,
    Halted,
    Reopened,
    StepDone,
    TakenAfresh,
    VisitEnded,
    replay,
)
from troubleshoot.visit.state import Asked

Events = list[Event]
RESULT = HandOverResult("electrician", "second feed locked at its switch", "0 V", "2026-11-26 9:30")
EVERYBODY = ["electrical", "gas", "combustion", "refrigerant", "technician", "fire-alarm"]


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


BLOWER = ("blower motor", "blower drive")
ROOF: Spot = ("roof-conditions", None)


def lightning() -> Events:
    """Lightning was seen from the roof, and the job came back."""
    return [
        *start(),
        StepDone("roof-conditions", ("lightning",)),
        Halted.over("lightning", ROOF),
        VisitEnded("stopped", "the supervisor, 9:20", "2026-11-25 09:21"),
        Reopened.on("lightning", RESULT, ROOF),
    ]


def test_a_step_whose_turn_has_come_is_taken_itself(decider: Decider) -> None:
    decision = next_of(decider, lightning())
    assert decision.kind == "step" and decision.test is decider.knowledge.tests["roof-conditions"]
    assert decision.reason == LIFTS == "only this finding, taken afresh, lifts the STOP"
    assert decision.aim == ROOF and decision.stop is not None


LIVE: Spot = ("verified-dead", None)


def live() -> Events:
    """Something stayed live behind its lock."""
    found_live = StepDone("verified-dead", ("live",))
    return [*start(), found_live]


def test_a_step_whose_turn_has_not_come_is_led_to_step_by_step(decider: Decider) -> None:
    events = live()
    stop = next_of(decider, events).stop
    assert stop is not None
    events += [Halted.over(stop.hazard.id, LIVE), TakenAfresh.of(LIVE)]
    steps = confirm_until(decider, events, "verified-dead")
    assert steps[0] == "roof-conditions" and "lockout" in steps and "panels-off" in steps
    decision = next_of(decider, events)
    assert decision.kind == "step" and decision.aim == LIVE


def test_the_result_of_an_all_clear_is_somebodys_word_and_asked_for_at_once(
    decider: Decider,
) -> None:
    complaint = decider.knowledge.complaints["gas-smell"]
    assert complaint.all_clear is not None
    spot: Spot = (complaint.all_clear, None)
    events: Events = start("gas-smell")
    stop = next_of(decider, events).stop
    assert stop is not None
    events += [
        Halted.over(stop.hazard.id, spot),
        VisitEnded("stopped", "the gas utility, 14:05", "2026-11-25 14:06"),
        Reopened.on(stop.hazard.id, RESULT, spot),
    ]
    decision = next_of(decider, events)
    assert (decision.kind, decision.at, decision.step) == ("ask", None, None)
    assert decision.test is decider.knowledge.tests[spot[0]] and decision.aim == spot


FIT: Spot = ("fit-for-live-work", None)
OPENED_LIVE = (
    ("roof-conditions", "safe"), ("tell-occupants", "told"), ("combustible-gas-sweep", "none"),
    ("stop-by-controls", "stopped"), ("arc-clothing-on", "dressed"),
    ("panels-off-energised", "open"),
)  # fmt: skip


@pytest.mark.parametrize("opened", [True, False])
def test_whoever_is_fit_for_live_work_says_so_with_no_live_part_open(
    opened: bool, decider: Decider
) -> None:
    """Regression: gloves and the second person were asked for in front of the open, live panel."""
    events = [*start(), *(StepDone(step, (said,)) for step, said in OPENED_LIVE[: 6 * opened])]
    events += [DangerReported("live-work", "no gloves", FIT[0]), TakenAfresh.of(FIT)]
    steps = []
    while (decision := next_of(decider, events)).step is not None:
        assert decision.aim == FIT and decision.stop is not None
        steps.append(decision.step.id)
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert steps == (["lockout"] if opened else [])
    assert decision.kind == "ask" and decision.test is decider.knowledge.tests[FIT[0]]


CLOTHING: Spot = ("arc-clothing-on", None)


@pytest.mark.parametrize("opened", [True, False])
@pytest.mark.parametrize(
    "told",
    [
        StepDone("arc-clothing-on", ("missing",)),
        DangerReported("arc-flash-480-volt", "no face shield", "arc-clothing-on"),
    ],
    ids=["found", "reported"],
)
def test_clothing_that_is_missing_at_480_volts_stops_until_it_is_on_away_from_live_parts(
    told: Event, opened: bool, decider: Decider
) -> None:
    events = [*start(), *(StepDone(step, (said,)) for step, said in OPENED_LIVE[: 6 * opened])]
    events.append(told)
    assert not replay(decider.knowledge, events).work.arc_clothing
    stop = next_of(decider, events).stop
    assert stop is not None and stop.hazard.id == "arc-flash-480-volt"
    if isinstance(told, StepDone):
        events.append(Halted.over(stop.hazard.id, CLOTHING))
    events.append(TakenAfresh.of(CLOTHING))
    steps = []
    while (decision := next_of(decider, events)).stop is not None:
        assert decision.step is not None and decision.aim == CLOTHING
        steps.append(decision.step.id)
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    assert steps == (["lockout", "arc-clothing-on"] if opened else ["arc-clothing-on"])


def test_nothing_leads_on_where_nothing_is_taken_afresh_or_another_stop_is(
    decider: Decider,
) -> None:
    knowledge = decider.knowledge

    def towards(events: Events) -> Any:
        state = replay(knowledge, events)
        conclusions = conclude_visit(decider.reasoner, state)
        return towards_lifting(knowledge, state, conclusions, conclusions.standing_stops[0])

    limit = [*start(), found("main-limit", "stuck"), Halted("safety-does-not-open")]
    assert towards(limit) is None
    afresh = towards([*limit, TakenAfresh.of(("main-limit", None))])
    assert afresh is not None and afresh.stop.hazard.id == "safety-does-not-open"
    assert towards([*limit, TakenAfresh.of(("wiring-burn-marks", None))]) is None
    apprentice = [*start(profiles=("apprentice",)), *limit[1:]]
    assert towards([*apprentice, TakenAfresh.of(("main-limit", None))]) is None
    crack = found("heat-exchanger-look", "crack")
    state = replay(knowledge, [*limit, crack])
    both = conclude_visit(decider.reasoner, state)
    (liftable,) = (s for s in both.standing_stops if s.hazard.id == "safety-does-not-open")
    assert len(both.standing_stops) == 2
    assert towards_lifting(knowledge, state, both, liftable) is None


def step_towards(
    decider: Decider, spot: Spot, hazard: str, work: WorkState, *asked: Asked
) -> Decision | None:
    """The way to a fresh finding from a state of the work, after what was asked."""
    knowledge = decider.knowledge
    state = replay(knowledge, start(profiles=EVERYBODY))
    met = StopMet(hazard, 0, spot)
    state = replace(state, fresh=spot, stops=(met,), work=work, asked=asked)
    conclusions = conclude_visit(decider.reasoner, state)
    return towards_lifting(knowledge, state, conclusions, conclusions.standing_stops[0])


OPENED = WorkState(
    power="locked-out", panels="off", calls="off", dead="shown", meter="proved", roof="go",
    occupants_told=True,
)  # fmt: skip


def test_the_finding_itself_comes_before_other_steps_to_dead_work(decider: Decider) -> None:
    near = WorkState(roof="edge-near")
    decision = step_towards(decider, ROOF, "wind-or-slick-roof", near)
    assert decision is not None and decision.step == Step("roof-conditions")


def test_a_step_whose_turn_never_comes_on_the_way_is_not_led_to(decider: Decider) -> None:
    proved = replace(
        OPENED,
        dead="proved",
        discharged=frozenset(
            unit_at_work(replay(decider.knowledge, start()).unit).capacitors + BLOWER
        ),
    )
    spot: Spot = ("panels-off-energised", None)
    assert step_towards(decider, spot, "second-power-source", proved) is None


def test_a_step_is_taken_afresh_where_it_was_done_last(decider: Decider) -> None:
    def asked(place: str) -> Asked:
        return Asked("drive-discharge", None, "x", None, True, 1.0, "any", place)

    spot: Spot = ("drive-discharge", None)
    for places in (BLOWER, BLOWER[::-1]):
        done = [asked(place) for place in places]
        decision = step_towards(decider, spot, "stored-charge", OPENED, *done)
        assert decision is not None and decision.step == Step("drive-discharge", places[-1])


def test_a_finding_at_a_circuit_is_taken_afresh_there(decider: Decider) -> None:
    knowledge = decider.knowledge
    two: Spot = ("high-pressure-switch", Place("circuit", 2))
    events = [
        *start(unit={**UNIT, "circuits": 2}),
        found("high-pressure-switch", "stuck", "circuit 2"),
        Halted.over("safety-does-not-open", two),
        TakenAfresh.of(two),
    ]
    state = replay(knowledge, events)
    conclusions = conclude_visit(decider.reasoner, state)
    decision = towards_lifting(knowledge, state, conclusions, conclusions.standing_stops[0])
    assert decision is not None and decision.aim == two
    confirm_until(decider, events, "high-pressure-switch")
    assert next_of(decider, events).at == Place("circuit", 2)


def test_what_was_read_afresh_and_is_bad_again_leads_nowhere(decider: Decider) -> None:
    spot: Spot = ("flue-gas-analysis", None)
    read = [
        Answered("flue-carbon-monoxide", text="900 ppm"),
        Answered("flue-oxygen", text="7 %"),
    ]
    events = [
        *start(), *read, Halted.over("flue-carbon-monoxide-extreme", spot),
        VisitEnded("stopped", "a combustion-qualified person", "2026-11-25 11:02"),
        Reopened.on("flue-carbon-monoxide-extreme", RESULT, spot), *read,
    ]  # fmt: skip
    assert next_of(decider, events).kind == "stop"


def test_what_was_computed_afresh_until_made_safe_and_is_bad_again_leads_nowhere(
    decider: Decider,
) -> None:
    knowledge = decider.knowledge
    spot: Spot = ("gas-meter-clocking", None)
    state = replay(knowledge, start(profiles=EVERYBODY))
    inputs = not_yet_afresh(knowledge, state, spot, 0)
    assert inputs and knowledge.tests[spot[0]].kind == "computed"
    read = tuple(Answer(test.id, (), "1") for test in inputs)
    met = StopMet("over-fired-or-wrong-fuel", 0, spot)
    state = replace(state, fresh=spot, stops=(met,), answers=read)
    conclusions = conclude_visit(decider.reasoner, state)
    (standing,) = conclusions.standing_stops
    assert towards_lifting(knowledge, state, conclusions, standing) is None


def test_a_stop_that_is_found_on_the_way_to_lifting_another_is_told_first(
    decider: Decider,
) -> None:
    """Regression: a second feed found at the lock was passed by, for the sake of the first."""
    charge: Spot = ("drive-discharge", None)
    events = [
        *start(unit={**UNIT, "blower-motor": "electronically-commutated"}),
        StepDone("drive-discharge", ("holds-charge",), "blower motor", text="120 V"),
        Halted.over("stored-charge", charge),
        TakenAfresh.of(charge),
    ]
    assert confirm_until(decider, events, "lockout")
    events.append(StepDone("lockout", ("second-source",)))
    decision = next_of(decider, events)
    assert decision.kind == "stop" and decision.stop is not None
    assert decision.stop.hazard.id == "second-power-source"
