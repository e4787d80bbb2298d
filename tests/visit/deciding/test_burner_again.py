"""A burner that was mended, or is called for after a STOP: what comes before it is lit again."""

from __future__ import annotations

import pytest

from tests.cli.lines import book_of
from troubleshoot.dialogue.closing import close
from troubleshoot.dialogue.repairing import repaired
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.staying_off import StayingOff
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import (
    COCK_LOOK,
    GAS_OPEN,
    GAS_SHUT,
    GAS_SWEEP,
    LOCK_OFF,
    PURGE_WAIT,
    RESTART,
    TELL_OCCUPANTS,
)
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.deciding.next import TAKES_IT_AWAY, Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    DangerReported,
    Event,
    Reopened,
    Repaired,
    Started,
    StepDone,
    VisitEnded,
    replay,
)

UNIT = {"heat": "gas", "fuel": "natural-gas", "ignition": "spark", "circuits": 1}
START: Event = Started(complaint="no-heat", unit=UNIT)
FAULT = "flame-rod-dirty"
TRIALS, ROD = "ignition-trials", "flame-rod"


@pytest.fixture(scope="module")
def decider(shipped: Knowledge) -> Decider:
    return Decider(shipped)


def way(decider: Decider, events: list[Event], last: str, most: int = 60) -> list[str]:
    """What is asked up to a step or test, each done and sound; the events are added."""
    asked: list[str] = []
    while last not in asked:
        decision = decider.decide(replay(decider.knowledge, events))
        test = decision.test
        assert test is not None and len(asked) < most, asked
        asked.append(test.id)
        if test.id == last:
            break
        if decision.step is not None:
            events.append(StepDone.of(decision.step, (CONFIRMED[test.id],)))
        else:
            events.append(Answered(test.id, spoken(decision.at), (str(test.healthy),)))
    return asked


def failed_then_locked_out(decider: Decider) -> list[Event]:
    """Lights that failed, the rod looked at with the cock shut, and mended."""
    events = [START, Aimed(TRIALS, chosen=True)]
    way(decider, events, TRIALS)
    events += [Answered(TRIALS, None, ("locks-out",)), Aimed(ROD, chosen=True)]
    way(decider, events, ROD)
    return [*events, Answered(ROD, None, ("coated",))]


def test_after_lights_that_failed_no_other_comes_before_shut_wait_and_sweep(
    decider: Decider,
) -> None:
    events = [START, Aimed(TRIALS, chosen=True)]
    way(decider, events, TRIALS)
    events += [Answered(TRIALS, None, ("locks-out",)), Aimed("flame-current", chosen=True)]
    asked = way(decider, events, RESTART)
    order = [GAS_SHUT, PURGE_WAIT, GAS_SWEEP, GAS_OPEN, GAS_SWEEP, RESTART]
    assert [each for each in asked if each in order] == order


def test_a_mended_burner_is_proved_only_once_what_keeps_it_off_was_read_afresh(
    decider: Decider,
) -> None:
    events = [*failed_then_locked_out(decider), Repaired(FAULT), Closing()]
    asked = way(decider, events, TRIALS)
    assert decider.decide(replay(decider.knowledge, events)).reason == TAKES_IT_AWAY
    order = [GAS_OPEN, GAS_SWEEP, LOCK_OFF, RESTART, TRIALS]
    assert [each for each in asked if each in order][-5:] == order
    events.append(Answered(TRIALS, None, ("lights-first-try",)))
    end = decider.decide(replay(decider.knowledge, events))
    assert end.reason != TAKES_IT_AWAY


def test_what_stands_over_a_repair_is_told_before_its_proofs(decider: Decider) -> None:
    book = book_of(
        decider.knowledge, [*failed_then_locked_out(decider), Repaired(FAULT), Closing()]
    )
    conclusions = conclude_visit(decider.reasoner, book.state)
    voice = Voice()
    telling = StayingOff(book, voice)
    decision = decider.decide(book.state, conclusions)
    telling.tell(decision, conclusions)
    telling.tell(decision, conclusions)
    said = str(voice.heard())
    assert said.count("Over the repair still stands: failed lights.") == 1
    assert "Watch the ignition trials. Read afresh and sound, it takes that away." in said
    assert "The heat stays off" not in said


def test_no_proof_of_a_burner_is_asked_for_with_its_cock_shut(decider: Decider) -> None:
    """Regression: a report said both "proved by what was read" and "heat stays off"."""
    book, voice = book_of(decider.knowledge, failed_then_locked_out(decider)), Voice()
    repaired(book, voice, decider.knowledge.faults[FAULT])
    assert "Still to come" in str(voice.heard()) and book.state.work.gas != "on"
    found = conclude_visit(decider.reasoner, book.state)
    assert decider.decide(book.state, found).kind == "step"
    close(book, voice, decider.decide(book.state, found), found)
    assert "The repair is not proved, for want of a sound reading: Flame current" in str(
        voice.heard()
    )


def reopened_after_gas(decider: Decider) -> list[Event]:
    told = "Gas utility dispatcher, just now"
    result = HandOverResult(
        "gas-fitter", "union replaced, joints tested", "0 %LEL at the valve", ""
    )
    spot = (GAS_SWEEP, None)
    return [
        START,
        DangerReported.of(decider.knowledge.hazards["gas-odour"], "gas smell at the valve"),
        VisitEnded("stopped", told),
        Reopened.on("gas-odour", result, spot),
    ]


def test_after_a_gas_stop_the_cock_is_looked_at_and_swept_again_before_a_light(
    decider: Decider,
) -> None:
    """Regression: the burner was lit on a sweep that may have been of a dead pipe."""
    events = reopened_after_gas(decider)
    assert COCK_LOOK in way(decider, events, GAS_SWEEP)
    events.append(StepDone(GAS_SWEEP, ("none",)))
    events.append(Aimed(TRIALS, chosen=True))
    asked = way(decider, events, TRIALS)
    assert COCK_LOOK not in asked
    assert asked.index("walk-round") < asked.index(RESTART)


def test_a_start_that_fails_does_not_drop_the_test_that_was_chosen(decider: Decider) -> None:
    events: list[Event] = [START, Aimed("flame-current", chosen=True)]
    way(decider, events, RESTART)
    tried = replay(decider.knowledge, [*events, StepDone(RESTART, ("does-not-start",))])
    assert tried.aim == ("flame-current", None) and tried.aim_chosen
    untold = replay(decider.knowledge, [*events, StepDone(TELL_OCCUPANTS, ("not-agreed",))])
    assert untold.aim is None
