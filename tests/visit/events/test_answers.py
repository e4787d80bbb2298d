"""What an answer, a step or what turns out to be none changes: this, and nothing else."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.visit.events.effects import AIM, DEAD, FRESH, ONE, THEN, TWO, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.safety.steps import Step
from troubleshoot.safety.transitions import after_step, after_test, failed
from troubleshoot.visit.events import Answered, MarkedInvalid, SaysNothing, StepDone, after
from troubleshoot.visit.state import Asked, VisitState


def test_an_answer_is_kept_with_all_that_is_known_of_it(
    shipped: Knowledge, visit: VisitState
) -> None:
    test = shipped.tests["suction-pressure"]
    event = Answered(
        test.id,
        ("circuit 2",),
        text="128 psig",
        instrument="gauge",
        why_invalid="",
        conditions={"a": "b"},
    )
    answer = Answer(test.id, (), "128 psig", (TWO,), instrument="gauge", conditions={"a": "b"})
    record = Asked(test.id, TWO, None, "128 psig", True, test.minutes, test.work_state, time=THEN)
    changed(
        shipped, visit, event, answers=(*visit.answers, answer), asked=(*visit.asked, record),
        work=after_test(visit.work, test, "circuit 2", (), visit.at_work), work_before=visit.work,
        aim=None,
    )  # fmt: skip
    mended = after(shipped, replace(visit, mended_here=2), event)
    assert mended.answers[-1].repairs == 2


def test_a_shared_answer_has_no_place_of_its_own(shipped: Knowledge, visit: VisitState) -> None:
    event = Answered("suction-pressure", ("circuit 1", "circuit 2"), text="128 psig", shared=True)
    state = after(shipped, visit, event)
    assert state.answers[-1].shared and state.answers[-1].places == (ONE, TWO)
    assert state.asked[-1].at is None
    told_apart = after(shipped, visit, replace(event, shared=False))
    assert not told_apart.answers[-1].shared and told_apart.asked[-1].at == ONE


def test_what_is_aimed_at_is_reached_by_its_own_answer_only(
    shipped: Knowledge, visit: VisitState
) -> None:
    other = Answered("weather-pattern", outcomes=("always",))
    state = after(shipped, visit, other)
    assert (state.aim, state.fresh) == (AIM, FRESH)
    assert state.asked[-1].outcome == "always"
    reached = after(shipped, visit, Answered(FRESH[0], outcomes=("sound",)))
    assert (reached.aim, reached.fresh) == (AIM, None)
    assert after(shipped, replace(visit, aim=None, fresh=None), other).aim is None
    unbidden = after(shipped, replace(visit, aim_chosen=False), other)
    assert (unbidden.aim, unbidden.fresh) == (None, FRESH), "what tells most is chosen afresh"


@pytest.mark.parametrize(
    "said", [{}, {"outcomes": ()}, {"text": ""}, {"outcomes": (), "text": None}]
)
def test_an_answer_that_says_nothing_is_none(
    said: dict[str, Any], shipped: Knowledge, visit: VisitState
) -> None:
    with pytest.raises(SaysNothing, match="weather-pattern names no outcome"):
        after(shipped, visit, Answered("weather-pattern", **said))


@pytest.mark.parametrize("valid", [None, True, False])
def test_an_answer_stated_invalid_changes_the_work_as_one_that_says_nothing(
    valid: bool | None, shipped: Knowledge, visit: VisitState
) -> None:
    sweep = shipped.tests["combustible-gas-sweep"]
    swept = replace(visit, work=replace(DEAD, clear=frozenset({sweep.id})))
    event = Answered(sweep.id, outcomes=("none",), valid=valid)
    state = after(shipped, swept, event)
    assert (sweep.id in state.work.clear) is (valid is not False)
    assert state.asked[-1].valid is (valid is not False)
    assert state.answers[-1].valid is valid and state.answers[-1].outcomes == ("none",)


def test_a_step_is_asked_answered_and_done(shipped: Knowledge, visit: VisitState) -> None:
    test = shipped.tests["drive-discharge"]
    state = replace(visit, work=DEAD)
    event = StepDone(test.id, ("discharged",), "blower drive", True, text="0 V")
    record = Asked(test.id, None, "discharged", "0 V", True, test.minutes + test.wait_minutes,
                   test.work_state, "blower drive", time=THEN)  # fmt: skip
    step = Step(test.id, "blower drive", again=True)
    changed(
        shipped, state, event, work=after_step(DEAD, step, ("discharged",), state.at_work),
        work_before=DEAD, asked=(*state.asked, record),
        answers=(*state.answers, Answer(test.id, ("discharged",), "0 V", (None,))),
    )  # fmt: skip
    assert test.wait_minutes > 0


@pytest.mark.parametrize(
    ("outcomes", "valid", "goes_on"),
    [
        (("proved",), None, True), (("proved",), True, True), (("failed",), None, False),
        (("proved",), False, False), (("proved", "failed"), None, False),
    ],
)  # fmt: skip
def test_only_a_step_that_counts_and_is_confirmed_leads_on_to_what_is_aimed_at(
    outcomes: tuple[str, ...],
    valid: bool | None,
    goes_on: bool,
    shipped: Knowledge,
    visit: VisitState,
) -> None:
    event = StepDone("tester-proof", outcomes, valid=valid)
    state = after(shipped, replace(visit, work=DEAD), event)
    assert state.aim == (AIM if goes_on else None)
    assert state.work.meter == ("proved" if goes_on else "failed")
    assert state.asked[-1].valid is (valid is not False)
    assert state.answers[-1].valid is (False if valid is False else None)


def test_a_step_that_is_the_fresh_finding_is_reached(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(visit, fresh=("roof-conditions", None))
    roof = StepDone("roof-conditions", ("safe",))
    assert after(shipped, state, roof).fresh is None
    told = StepDone("tell-occupants", ("told",))
    assert after(shipped, state, told).fresh == ("roof-conditions", None)


def test_an_invalid_reading_stays_and_an_invalid_proof_has_failed(
    shipped: Knowledge, visit: VisitState
) -> None:
    reason = MarkedInvalid("wrong leads")
    reading = Answered("weather-pattern", outcomes=("always",))
    before = after(shipped, visit, replace(reading, time=THEN))
    voided = replace(before.answers[-1], valid=False, why_invalid="wrong leads")
    changed(shipped, before, reason, answers=(*visit.answers, voided))
    proof = StepDone("capacitor-discharge", ("discharged",), "capacitor blower", time=THEN)
    before = after(shipped, replace(visit, work=DEAD), proof)
    assert before.aim == AIM
    step = Step("capacitor-discharge", "capacitor blower")
    voided = replace(before.answers[-1], valid=False, why_invalid="wrong leads")
    changed(
        shipped, before, reason, answers=(*visit.answers, voided),
        asked=(*visit.asked, replace(before.asked[-1], valid=False)),
        work=failed(DEAD, before.work, step, visit.at_work),
    )  # fmt: skip
    assert after(shipped, before, reason).work.discharged == frozenset()


@pytest.mark.parametrize("place", ["capacitor blower", "blower drive"])
@pytest.mark.parametrize("kind", ["step", "answer"])
def test_a_proof_declared_invalid_fails_where_it_was(
    kind: str, place: str, shipped: Knowledge, visit: VisitState
) -> None:
    """The place of a step stands in its words, that of an answer in the unit's tree."""
    test = "capacitor-discharge" if place.startswith("capacitor") else "drive-discharge"
    if kind == "answer" and test == "drive-discharge":
        return  # an answer names no place that is none of the tree
    bled = ("discharged",)
    event = StepDone(test, bled, place) if kind == "step" else Answered(test, place, bled)
    others = replace(DEAD, discharged=frozenset({place, "another"}))
    done = after(shipped, replace(visit, work=others), event)
    assert place in done.work.discharged
    voided = after(shipped, done, MarkedInvalid("x"))
    assert voided.work.discharged == {"another"}


@pytest.mark.parametrize(("found", "open_way"), [("clean", True), ("gas-odour", False)])
@pytest.mark.parametrize("read", [True, False])
def test_only_what_is_read_sound_leads_on_to_the_rest_of_a_stop(
    found: str, open_way: bool, read: bool, shipped: Knowledge, visit: VisitState
) -> None:
    """Found by the long walk: after "still there" the look was shown as if all had been sound."""
    fresh = replace(visit, fresh=("walk-round", None), fresh_read=read)
    assert after(shipped, fresh, Answered("walk-round", outcomes=(found,))).fresh_read is open_way
    other = Answered("weather-pattern", outcomes=("always",))
    assert after(shipped, fresh, other).fresh_read is read


@pytest.mark.parametrize(
    ("sweep", "text", "is_clear"),
    [
        ("combustible-gas-sweep", "0 % LEL", True), ("combustible-gas-sweep", "4 % LEL", False),
        ("combustible-gas-sweep", "40 % LEL", False), ("room-carbon-monoxide", "2 ppm", True),
        ("room-carbon-monoxide", "60 ppm", False), ("combustible-gas-sweep", "none", False),
    ],
)  # fmt: skip
def test_a_sweep_read_off_a_detector_counts_as_what_the_number_shows(
    sweep: str, text: str, is_clear: bool, shipped: Knowledge, visit: VisitState
) -> None:
    """Regression: after 0 % LEL the sweep had failed, and was asked for once more."""
    state = after(shipped, replace(visit, work=DEAD), Answered(sweep, text=text))
    assert (sweep in state.work.clear) is is_clear
    assert (Step(sweep) in state.failed_steps) is not is_clear
    assert state.answers[-1].outcomes == () and state.answers[-1].text == text
    unread = after(shipped, visit, Answered(sweep, text=text, valid=False))
    assert sweep not in unread.work.clear and Step(sweep) in unread.failed_steps


def test_what_the_reasoning_takes_for_an_answer_is_written_down_whole() -> None:
    given = Answer("suction-pressure", ("low",), "60 psig", (TWO, ONE), True, False, "gauge",
                   "wrong hose", {"a": "b"})  # fmt: skip
    assert Answered.by(given) == Answered(
        "suction-pressure", ("circuit 2", "circuit 1"), ("low",), "60 psig", False, True, "gauge",
        "wrong hose", {"a": "b"},
    )  # fmt: skip
    assert Answered.by(replace(given, places=(None,))).at is None


@pytest.mark.parametrize(("outcome", "is_clear"), [("leak", False), ("none", True)])
@pytest.mark.parametrize("text", ["0 % LEL", "40 % LEL"])
def test_what_was_said_of_a_sweep_goes_before_its_number(
    outcome: str, text: str, is_clear: bool, shipped: Knowledge, visit: VisitState
) -> None:
    """Which number takes which word back was settled where it was typed."""
    event = Answered("combustible-gas-sweep", outcomes=(outcome,), text=text)
    state = after(shipped, replace(visit, work=DEAD), event)
    assert ("combustible-gas-sweep" in state.work.clear) is is_clear


@pytest.mark.parametrize(("outcome", "bled"), [("discharged", True), ("holds-charge", False)])
def test_what_is_said_of_several_places_shows_the_first_alone(
    outcome: str, bled: bool, shipped: Knowledge, visit: VisitState
) -> None:
    """One word for two capacitors does not show that a hand was at both."""
    first, second = map(str, visit.unit.layout.places("capacitor")[:2])
    event = Answered("capacitor-discharge", (first, second), (outcome,))
    state = after(shipped, replace(visit, work=replace(DEAD, discharged=frozenset())), event)
    assert state.work.discharged == ({first} if bled else set())
    assert (Step("capacitor-discharge", first) in state.failed_steps) is not bled
