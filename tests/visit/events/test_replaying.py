"""A visit as events: replay is the state, and undo takes back words but not what hands did."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety import reaching
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    DangerReported,
    Event,
    FactTold,
    Halted,
    HourPassed,
    MarkedInvalid,
    Noted,
    Reopened,
    Resumed,
    Skipped,
    Started,
    StepDone,
    Undone,
    VisitEnded,
    after,
    replay,
)
from troubleshoot.visit.events.undoing import taken_back
from troubleshoot.visit.state import VisitState

UNIT = {"circuits": 2, "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
RESULT = HandOverResult("gas-utility", "union tightened", "0 %", "2026-11-26 9:00")
START = Started(complaint="no-cooling", unit=UNIT)
ANSWER = Answered("condenser-fan-turning", outcomes=("stopped",))


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    return load_shipped()


@pytest.fixture(scope="module")
def decider(knowledge: Knowledge) -> Decider:
    return Decider(knowledge)


def test_replaying_all_events_gives_the_state_they_were_added_to(knowledge: Knowledge) -> None:
    events = [START, ANSWER, Noted("hot roof")]
    state = VisitState()
    for event in events:
        state = after(knowledge, state, event)
    assert replay(knowledge, events) == state
    assert state.notes == ("hot roof",)


def test_undo_takes_back_the_last_answer_and_keeps_earlier_ones(knowledge: Knowledge) -> None:
    other = Answered("weather-pattern", outcomes=("always",))
    state = replay(knowledge, [START, other, ANSWER, Undone()])
    assert [answer.test for answer in state.answers] == ["weather-pattern"]
    state = replay(knowledge, [START, other, ANSWER, Undone(), Undone()])
    assert state.answers == ()


def test_an_undone_lock_out_still_counts_as_power_perhaps_on(knowledge: Knowledge) -> None:
    steps = [
        ("roof-conditions", "safe"),
        ("tell-occupants", "told"),
        ("tester-proof", "proved"),
        ("stop-by-controls", "stopped"),
        ("lockout", "locked"),
    ]
    events: list[Event] = [START]
    events += [StepDone(s, (o,)) for s, o in steps]
    assert replay(knowledge, events).work.power == "locked-out"
    assert replay(knowledge, [*events, Undone()]).work.power != "locked-out"


def test_what_hands_may_have_done_is_not_forgotten_by_a_second_undo(knowledge: Knowledge) -> None:
    def said(step: str, outcome: str) -> Event:
        return StepDone(step, (outcome,))

    undo = Undone()
    steps = [said("roof-conditions", "safe"), said("tell-occupants", "told")]
    steps += [said("combustible-gas-sweep", "none"), said("stop-by-controls", "stopped")]
    steps += [said("arc-clothing-on", "dressed"), said("panels-off-energised", "open")]
    # The panels may have been put on, whatever was said of it, and may not have come off again.
    again = [said("panels-on", "on"), undo, said("panels-off-energised", "open")]
    assert replay(knowledge, [START, *steps, *again]).work.panels == "off"
    assert replay(knowledge, [START, *steps, *again, undo]).work.panels == "unsure"


def test_there_is_nothing_to_undo_before_the_first_answer() -> None:
    assert taken_back([START]) is None
    assert taken_back([START, ANSWER]) == 1
    assert taken_back([START, ANSWER, Undone()]) is None
    assert taken_back([START, ANSWER, Undone(), Undone()]) is None


@pytest.mark.parametrize(
    "wall",
    [Halted("h"), DangerReported("h"), VisitEnded("stopped"), Reopened("h", RESULT, "a", None)],
)
def test_no_undo_reaches_past_a_stop(wall: Event) -> None:
    assert taken_back([START, ANSWER, wall]) is None
    assert taken_back([START, ANSWER, wall, ANSWER]) == 3


def test_an_invalid_reading_is_kept_but_says_nothing(
    knowledge: Knowledge, decider: Decider
) -> None:
    voided = replay(knowledge, [START, ANSWER, MarkedInvalid("wrong fan")])
    without = replay(knowledge, [START])
    assert voided.answers[-1].why_invalid == "wrong fan"
    one = decider.reasoner.conclude(voided.case)
    other = decider.reasoner.conclude(without.case)
    assert [c.probability for c in one.causes] == [c.probability for c in other.causes]


def test_resuming_after_half_an_hour_asks_again_what_others_could_have_changed(
    knowledge: Knowledge,
) -> None:
    events: list[Event] = [
        START,
        StepDone("roof-conditions", ("safe",)),
    ]
    short = [*events, Resumed(5, True)]
    long = [*events, Resumed(31, True)]
    assert replay(knowledge, short).work.roof == "go"
    assert replay(knowledge, long).work.roof == "not-checked"


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(0, 9), min_size=1, max_size=25))
def test_no_sequence_of_answers_skips_and_undos_breaks_a_visit(choices: list[int]) -> None:
    knowledge = load_shipped()
    decider = Decider(knowledge)
    events: list[Event] = [START]
    state = replay(knowledge, events)
    for choice in choices:
        decision = decider.decide(state)
        if decision.kind in ("ending", "stop"):
            break
        assert decision.test is not None
        at = None if decision.at is None else (str(decision.at),)
        event: Event
        if choice == 9 and taken_back(events) is not None:
            event = Undone()
        elif decision.step is not None:
            step = decision.step
            outcome = CONFIRMED[step.id]
            event = StepDone(step.id, (outcome,), step.place, step.again)
        elif choice == 8 or not decision.test.outcomes:
            event = Skipped(decision.test.id, at)
        else:
            outcomes = decider.reasoner.hypotheses(state.unit)[0].outcomes(decision.test.id)
            outcome = outcomes[choice % len(outcomes)]
            event = Answered(decision.test.id, at, (outcome,))
        events.append(event)
        state = replay(knowledge, events)
        total = sum(c.probability for c in decider.reasoner.conclude(state.case).causes)
        assert 0 <= total <= 1


FAN_CAPACITOR = "capacitor condenser fan 1"
LEADS_LIFTED = "capacitance-out-of-circuit"


def with_leads_lifted(knowledge: Knowledge, decider: Decider) -> list[Event]:
    """A visit in which a test with the leads lifted is on the screen."""
    events: list[Event] = [START, Skipped("walk-round"), Aimed(LEADS_LIFTED, FAN_CAPACITOR)]
    for _ in range(40):
        decision = decider.decide(replay(knowledge, events))
        if decision.kind == "ask":
            break
        assert decision.step is not None
        step = decision.step
        events.append(StepDone(step.id, (CONFIRMED[step.id],), step.place, step.again))
    assert decision.test is not None and decision.test.id == LEADS_LIFTED
    return events


@pytest.mark.parametrize(
    "given_up",
    [
        [Skipped(LEADS_LIFTED, (FAN_CAPACITOR,))],
        [Undone()],
        [HourPassed(), Resumed(64.0, True)],
    ],
    ids=["skipped", "after an undo", "an hour and a break"],
)
def test_leads_taken_off_before_a_test_was_given_up_have_to_go_back(
    given_up: list[Event], knowledge: Knowledge, decider: Decider
) -> None:
    """The last two found by the long walk: nothing asked for the leads before power went back."""
    events = [*with_leads_lifted(knowledge, decider), *given_up]
    assert replay(knowledge, events).work.leads_off == frozenset({FAN_CAPACITOR})


def test_a_place_that_a_fact_takes_away_is_aimed_at_no_more(knowledge: Knowledge) -> None:
    """Found by the long walk: skipping the test there was a traceback."""
    aimed: list[Event] = [START, Aimed(LEADS_LIFTED, FAN_CAPACITOR)]
    assert replay(knowledge, aimed).aim is not None
    three = [*aimed, FactTold("condenser-fan-phase", "three")]
    assert replay(knowledge, three).aim is None
    assert replay(knowledge, [*aimed, FactTold("circuits", 1)]).aim is not None


def test_the_guards_have_the_last_word_over_the_planner(
    knowledge: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(reaching, "steps_to", lambda *_: ())
    decider = Decider(knowledge)
    state = replay(knowledge, [START])
    for _ in range(5):
        decision = decider.decide(state)
        if decision.test is None:
            break
        assert decision.test.work_state in ("any", "running") and not decision.test.needs_state
        at = None if decision.at is None else (str(decision.at),)
        state = after(knowledge, state, Skipped(decision.test.id, at))


def test_a_reading_withdrawn_with_its_meter_is_offered_again(
    knowledge: Knowledge, decider: Decider
) -> None:
    events: list[Event] = [
        START,
        Answered("tester-proof", outcomes=("proved",)),
        Answered("transformer-secondary-volts", text="0 V"),
    ]

    def offered(more: list[Event]) -> set[str]:
        state = replay(knowledge, [*events, *more])
        found = decider.candidates(state, decider.reasoner.conclude(state.case))
        return {candidate.test.id for candidate in found}

    failed = Answered("tester-proof", outcomes=("failed",))
    assert "transformer-secondary-volts" not in offered([])
    assert "transformer-secondary-volts" in offered([failed])


def test_what_an_undo_leaves_standing_is_gone_over_once(
    knowledge: Knowledge, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A visit with many undos is read back in about the time of one without."""
    gone_over: list[Event] = []

    def noted(knowledge: Knowledge, state: VisitState, event: Event) -> VisitState:
        gone_over.append(event)
        return after(knowledge, state, event)

    monkeypatch.setattr("troubleshoot.visit.events.replaying.after", noted)
    other = Answered("weather-pattern", outcomes=("always",))
    replay(knowledge, [START, Noted("hot roof"), *[ANSWER, Undone()] * 3, other])
    assert gone_over == [START, Noted("hot roof"), *[ANSWER] * 3, other]
