"""A wait that protects a life is over when it is over, whatever is typed."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from troubleshoot.dialogue.answering import step_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declaration import Moment, SafetyStep
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.steps import Step
from troubleshoot.visit.events import StepDone, after
from troubleshoot.visit.state import VisitState

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
WAITS = [step for step in STEPS.values() if step.waits_from]
SINCE: dict[Moment, str] = {"lock-on": "the lock went on", "cock-shut": "the gas cock was shut"}


def done(shipped: Knowledge, name: str, typed: str, state: VisitState) -> tuple[str, ...]:
    at = "blower drive" if name == "drive-discharge" else None
    return step_event_from(shipped, state, shipped.tests[name], Step(name, at), typed, NOW).outcomes


def begun(moment: Moment, minutes_ago: float) -> VisitState:
    """A visit in which what a wait is counted from was so long ago."""
    time = (NOW - timedelta(minutes=minutes_ago)).isoformat()
    if moment == "lock-on":
        return VisitState(power_off_time=time)
    return VisitState(gas_shut_time=time)


def test_the_drive_waits_from_the_lock_and_the_purge_from_the_cock(shipped: Knowledge) -> None:
    """Regression: "waited" was taken a second after the purge was asked for."""
    found = {step.id: (step.waits_from, shipped.tests[step.id].wait_minutes) for step in WAITS}
    assert found == {"drive-discharge": ("lock-on", 5), "purge-wait": ("cock-shut", 5)}


@pytest.mark.parametrize("step", WAITS, ids=lambda step: step.id)
def test_no_word_confirms_it_before_it_is_over(step: SafetyStep, shipped: Knowledge) -> None:
    test, moment = shipped.tests[step.id], step.waits_from
    assert moment is not None
    own = next(o for o in test.outcomes if o.id == step.sound)
    other = next(o for o in test.outcomes if o.id != step.sound)
    elsewhere = next(each for each in SINCE if each != moment)
    instead = "Wait, or meter it and type the volts." if test.reads else "Wait."
    early = ((0, 5), (1.5, 4), (4, 1), (4.99, 1))
    states = [(begun(moment, ago), left) for ago, left in early]
    for state, left in (*states, (VisitState(), 5), (begun(elsewhere, 60), 5)):
        for typed in (own.spoken, *own.words):
            with pytest.raises(NotAnAnswer) as refused:
                done(shipped, step.id, typed, state)
            verb = "is" if left == 1 else "are"
            still = f"{left} min of the wait {verb} still to come since {SINCE[moment]}."
            assert str(refused.value) == f"{still} {instead}"
        assert done(shipped, step.id, other.spoken, state) == (other.id,)
    over = begun(moment, 5)
    assert done(shipped, step.id, own.spoken, over) == (step.sound,)


def test_a_cock_that_was_opened_and_shut_again_is_waited_for_anew(shipped: Knowledge) -> None:
    state = VisitState()
    done_before = [
        ("roof-conditions", "safe", 30),
        ("gas-cock-shut", "shut", 30),
        ("gas-cock-look", "open", 20),
        ("gas-cock-shut", "shut", 2),
    ]
    for name, word, ago in done_before:
        time = (NOW - timedelta(minutes=ago)).isoformat()
        state = after(shipped, state, StepDone(name, (word,), time=time))
    with pytest.raises(NotAnAnswer, match=r"^3 min of the wait"):
        done(shipped, "purge-wait", "waited", state)
