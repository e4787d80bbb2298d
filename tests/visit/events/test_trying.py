"""A call that gave no flame: what is read while the burner tries, and when that is over.

What is read in the trial alone is shown once with its gas still unburnt.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.visit.events.effects import DEAD, ONE
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.steps import NO_FLAME, RESTART
from troubleshoot.safety.stops.record import Spot
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Event,
    FactTold,
    MarkedInvalid,
    Noted,
    Repaired,
    Resumed,
    Skipped,
    Started,
    StepDone,
    Undone,
    after,
    replay,
)
from troubleshoot.visit.state import VisitState

GAS_UNIT = Started(complaint="no-heat", unit={"heat": "gas", "circuits": 1})
CALLED = StepDone(RESTART, (NO_FLAME,))
IN_TRIAL, AT_REST = ("flame-current", None), ("weather-pattern", None)
OTHER = Answered("weather-pattern", outcomes=("always",))


@pytest.mark.parametrize(
    ("event", "tries"),
    [
        (CALLED, True),
        (replace(CALLED, valid=True), True),
        (replace(CALLED, valid=False), False),
        (StepDone(RESTART, ("runs",)), False),
        (StepDone(RESTART, ("does-not-start",)), False),
        (StepDone(RESTART, (NO_FLAME, "struggles")), False),
        (StepDone(RESTART, ()), False),
        (StepDone("tell-occupants", ("told",)), False),
        (StepDone("roof-conditions", ()), False),
    ],
)
@pytest.mark.parametrize("before", [True, False])
def test_a_burner_tries_just_after_a_call_that_gave_no_flame(
    event: StepDone, tries: bool, before: bool, shipped: Knowledge, visit: VisitState
) -> None:
    state = replace(visit, work=DEAD, trying=before)
    assert after(shipped, state, event).trying is tries


@pytest.mark.parametrize(
    ("event", "tries"),
    [
        (Answered("flame-current", text="0 uA"), False),
        (OTHER, False),
        (MarkedInvalid("it was not called for"), False),
        (Resumed(45, True), False),
        (Resumed(5, True), False),
        (Skipped("weather-pattern"), False),
        (Repaired("flame-rod-dirty"), False),
        (Aimed("flame-current"), True),
        (Noted("it clicks"), True),
    ],
)
def test_the_trial_is_over_with_whatever_is_read_left_or_mended_and_after_any_absence(
    event: Event, tries: bool, shipped: Knowledge
) -> None:
    """Else the next reading of a trial would be shown before its gas was waited out."""
    state = replay(shipped, [GAS_UNIT, CALLED])
    assert state.trying and state.work.unburnt
    assert after(shipped, state, event).trying is tries


def test_the_trial_is_over_when_anything_said_since_is_taken_back(shipped: Knowledge) -> None:
    told = [GAS_UNIT, CALLED, FactTold("fuel", "propane")]
    assert replay(shipped, told).trying
    undone = replay(shipped, [*told, Undone()])
    assert not undone.trying and undone.work.unburnt


@pytest.mark.parametrize(
    ("event", "aim", "goes_on"),
    [
        (CALLED, IN_TRIAL, True),
        (replace(CALLED, valid=False), IN_TRIAL, False),
        (CALLED, AT_REST, False),
        (CALLED, ("suction-pressure", ONE), False),
        (CALLED, None, False),
        (StepDone(RESTART, ("does-not-start",)), IN_TRIAL, False),
        (StepDone(RESTART, (NO_FLAME, "struggles")), IN_TRIAL, False),
        (StepDone(RESTART, ()), IN_TRIAL, False),
        (StepDone("tester-proof", ("failed",)), IN_TRIAL, False),
        (StepDone("tester-proof", ("failed",)), None, False),
    ],
)
def test_a_call_without_a_flame_leads_on_to_what_is_read_in_the_trial_alone(
    event: StepDone, aim: Spot | None, goes_on: bool, shipped: Knowledge, visit: VisitState
) -> None:
    """What the program aimed at is still what it was called for; anything else is chosen anew."""
    state = replace(visit, work=DEAD, aim=aim, aim_chosen=False)
    assert after(shipped, state, event).aim == (aim if goes_on else None)
