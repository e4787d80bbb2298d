"""A STOP stands until the finding that called it up is taken afresh, as safely as any other."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.record import HandOverResult, Spot
from troubleshoot.safety.stops.reopening import (
    NotReopened,
    role,
    what_stopped,
    when_read,
)
from troubleshoot.safety.stops.result import NotAResult
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    Event,
    Halted,
    Reopened,
    Resumed,
    Skipped,
    Started,
    StepDone,
    TakenAfresh,
    Undone,
    VisitEnded,
    replay,
)

UNIT = {"heat": "gas", "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
RESULT = HandOverResult(
    "heating-contractor", "exchanger replaced, burners set", "0 ppm in the room", "2026-11-26 09:30"
)
CRACK: Spot = ("heat-exchanger-look", None)
Events = list[Event]


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def start(complaint: str = "no-heat", **more: Any) -> Events:
    return [Started(complaint=complaint, **{"unit": UNIT, **more})]


def found(test: str, outcome: str, at: str | None = None) -> Event:
    return Answered(test, at, (outcome,))


def next_of(decider: Decider, events: Events) -> Decision:
    return decider.decide(replay(decider.knowledge, events))


def confirm_until(decider: Decider, events: Events, test: str) -> list[str]:
    """Confirm each step until a test comes; the steps' ids. `events` grows."""
    done = []
    for _ in range(40):
        decision = next_of(decider, events)
        assert decision.test is not None, decision
        if decision.test.id == test:
            return done
        assert decision.step is not None, decision.test.id
        done.append(decision.step.id)
        events.append(StepDone.of(decision.step, (CONFIRMED[decision.step.id],)))
    raise AssertionError(f"{test} never came")


def cracked() -> Events:
    """A crack was found, and the job handed over."""
    return [
        *start(),
        found("heat-exchanger-look", "crack"),
        Halted("heat-exchanger-breach"),
        VisitEnded("stopped", "the owner and a heating contractor, 15:10", "2026-11-25 15:12"),
    ]


def reopened() -> Events:
    return [*cracked(), Reopened.on("heat-exchanger-breach", RESULT, CRACK)]


def test_a_crack_is_not_looked_at_again_before_the_job_came_back(decider: Decider) -> None:
    events = [*cracked()[:-1], TakenAfresh.of(CRACK)]
    assert next_of(decider, events).kind == "stop"


def test_after_the_reopening_the_same_look_comes_first_with_the_whole_lock_out(
    decider: Decider,
) -> None:
    # 29 CFR 1910.147(f)(3): who goes on after others verifies the isolation afresh.
    events = reopened()
    steps = confirm_until(decider, events, "heat-exchanger-look")
    assert steps[0] == "roof-conditions"
    assert {"tester-proof", "lockout", "panels-off", "verified-dead"} <= set(steps)
    decision = next_of(decider, events)
    assert decision.kind == "ask" and decision.stop is not None


def test_a_good_fresh_look_lifts_the_stop_and_both_stay_on_record(decider: Decider) -> None:
    events = reopened()
    confirm_until(decider, events, "heat-exchanger-look")
    events.append(found("heat-exchanger-look", "sound"))
    assert next_of(decider, events).stop is None
    met = replay(decider.knowledge, events).stops
    assert [(m.hazard, m.result, m.reopened) for m in met] == [
        ("heat-exchanger-breach", RESULT, True)
    ]
    assert met[0].told.startswith("the owner")


def test_a_bad_fresh_look_stops_it_again_and_it_has_to_be_handed_over_again(
    decider: Decider,
) -> None:
    events = reopened()
    confirm_until(decider, events, "heat-exchanger-look")
    events.append(found("heat-exchanger-look", "crack"))
    assert next_of(decider, events).kind == "stop"
    events += [Halted("heat-exchanger-breach"), TakenAfresh.of(CRACK)]
    assert next_of(decider, events).kind == "stop"


def test_undo_reaches_past_no_stop_no_hand_over_and_no_reopening(decider: Decider) -> None:
    for events in (cracked()[:3], cracked(), reopened()):
        before = replay(decider.knowledge, events)
        assert replay(decider.knowledge, [*events, Undone()]) == before


def test_taking_back_the_good_fresh_look_lets_the_stop_stand(decider: Decider) -> None:
    events = reopened()
    confirm_until(decider, events, "heat-exchanger-look")
    events += [found("heat-exchanger-look", "sound"), Undone()]
    decision = next_of(decider, events)
    assert decision.stop is not None


def test_only_a_visit_handed_over_at_a_stop_is_reopened(
    shipped: Knowledge, decider: Decider
) -> None:
    event = Reopened.on("heat-exchanger-breach", RESULT, CRACK)
    closed: Events = [*start(), Closing(), VisitEnded("closed")]
    for events, words in ((cracked()[:-1], "still open"), (closed, "closed, not stopped")):
        before = replay(shipped, events)
        assert replay(shipped, [*events, event]) == before
        with pytest.raises(NotReopened, match=words):
            what_stopped(shipped, before, decider.reasoner.conclude(before.case))


def test_others_may_have_opened_gas_and_panels_before_the_reopening(shipped: Knowledge) -> None:
    work = replay(shipped, reopened()).work
    assert not work.gas_swept and work.panels == "unsure" and work.roof == "not-checked"
    electric = reopened()
    electric[0] = start(unit={**UNIT, "heat": "electric"})[0]
    assert replay(shipped, electric).work.gas_swept


def test_a_computed_finding_is_taken_afresh_from_what_it_is_read_from(
    decider: Decider,
) -> None:
    events = start()
    events += [
        Answered("flue-carbon-monoxide", text="900 ppm"),
        Answered("flue-oxygen", text="7 %"),
    ]
    stop = next_of(decider, events).stop
    assert stop is not None and stop.hazard.id == "flue-carbon-monoxide-extreme"
    spot: Spot = ("flue-gas-analysis", None)
    events += [
        Halted(stop.hazard.id),
        VisitEnded("stopped", "a combustion-qualified person, 11:00", "2026-11-25 11:02"),
        Reopened.on(stop.hazard.id, RESULT, spot),
    ]
    confirm = {"room-carbon-monoxide": "normal", "combustible-gas-sweep": "none"}
    asked = []
    for _ in range(40):
        decision = next_of(decider, events)
        if decision.stop is None:
            break
        assert decision.test is not None and decision.aim == spot
        if decision.step is not None:
            outcome = CONFIRMED.get(decision.step.id) or confirm[decision.step.id]
            events.append(StepDone.of(decision.step, (outcome,)))
            continue
        asked.append(decision.test.id)
        text = {"flue-carbon-monoxide": "30 ppm", "flue-oxygen": "7 %"}[decision.test.id]
        events.append(Answered(decision.test.id, text=text))
    assert asked == ["flue-carbon-monoxide", "flue-oxygen"]


def test_a_charge_that_came_back_is_bled_again_only_once_the_unit_is_dead_again(
    decider: Decider,
) -> None:
    looks = ("walk-round", "board-code", "operating-sequence")  # asked before power is cut
    events = [*start(), *(Skipped.over(test, None) for test in looks)]
    place = "capacitor condenser fan 1"
    events.append(Aimed("capacitance-out-of-circuit", place))
    confirm_until(decider, events, "capacitor-discharge")
    where = next_of(decider, events).step
    assert where is not None
    events.append(StepDone.of(where, ("holds-charge",)))
    assert next_of(decider, events).kind == "stop"
    assert where.place is not None
    afresh = TakenAfresh("capacitor-discharge", where.place)
    events += [
        Halted("stored-charge"),
        Resumed(45, True),
        afresh,
    ]
    steps = confirm_until(decider, events, "capacitor-discharge")
    assert "lockout" in steps and steps[-2:] == ["verified-dead", "tester-proof"]
    step = next_of(decider, events).step
    assert step is not None and step.place == where.place


def test_a_stop_on_the_way_out_halts_the_way_out(decider: Decider) -> None:
    events = [*start(), Closing(), found("combustible-gas-sweep", "leak")]
    assert next_of(decider, events).kind == "stop"


def test_a_finding_beyond_who_is_asking_is_not_taken_afresh_by_them(decider: Decider) -> None:
    events = [
        *start(profiles=("technician",)),
        found("main-limit", "stuck"),
        Halted("safety-does-not-open"),
        TakenAfresh.of(("main-limit", None)),
    ]
    assert next_of(decider, events).kind == "stop"
    events[0] = start()[0]
    assert next_of(decider, events).kind == "step"


def test_a_result_says_who_and_when() -> None:
    assert role("3") == "gas-utility" and role("fire s") == "fire-service"
    for typed in ("0", "13", "nobody", "gas", "fire service is gone, nobody", ""):
        with pytest.raises(NotAResult, match="Give a number from 1 to 12"):
            role(typed)
    now = datetime(2026, 11, 26, 9, 45)
    assert when_read("09:30", "2026-11-25 15:12", now) == "2026-11-26 09:30"
    assert when_read("2026-11-25 15:13", "2026-11-25 15:12", now) == "2026-11-25 15:13"
    for typed, words in (
        ("10:00", "still to come"),
        ("2026-11-25 15:12", "not after 2026-11-25 15:12"),
        ("yesterday", "of another day as 2026-11-26 09:45"),
    ):
        with pytest.raises(NotAResult, match=words):
            when_read(typed, "2026-11-25 15:12", now)


def test_a_second_danger_on_the_way_to_lifting_the_first_is_handed_over_too(
    decider: Decider,
) -> None:
    """Regression: lightning seen on the way to a fresh gas sweep did not stop the visit."""
    sweep: Spot = ("combustible-gas-sweep", None)
    lightning = StepDone("roof-conditions", ("lightning",))
    events = [
        *start(),
        found("combustible-gas-sweep", "leak"),
        Halted("gas-odour"),
        VisitEnded("stopped", "the gas utility, 9:00", "2026-11-25 09:02"),
        Reopened.on("gas-odour", RESULT, sweep),
        lightning,
    ]
    decision = next_of(decider, events)
    assert decision.kind == "stop" and decision.stop is not None
    assert decision.stop.hazard.id == "lightning"
    events += [
        Halted("lightning"),
        VisitEnded("stopped", "the supervisor, 9:20", "2026-11-25 09:21"),
        Reopened.on("lightning", RESULT, ("roof-conditions", None)),
    ]
    assert next_of(decider, events).test is decider.knowledge.tests["roof-conditions"]
    events.append(replace(lightning, outcomes=("safe",)))
    decision = next_of(decider, events)
    assert decision.kind == "stop" and decision.stop is not None
    assert decision.stop.hazard.id == "gas-odour"
    events.append(TakenAfresh.of(sweep))
    assert confirm_until(decider, events, sweep[0]) == ["gas-cock-look"]
