"""An event that speaks of what today's rules do not know is named by that, and any other passes.

What slips through has no test, fault or hazard behind it once the visit is read back.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import (
    Answered,
    DangerReported,
    Event,
    FindingsKept,
    Halted,
    Noted,
    Repaired,
    RoundBegun,
    RoundGoneOn,
    SearchBegun,
    Skipped,
    Started,
    StepDone,
)
from troubleshoot.visit.events.known import Unknown, check_known, in_todays_words
from troubleshoot.visit.events.on_round import FindingAt

TEST, STEP = "weather-pattern", "tester-proof"
DRY, GONE = FindingAt(TEST, None), FindingAt("crystal-ball", None)
OUTDOOR = "outdoor-temperature"


@pytest.mark.parametrize(
    "event",
    [
        Noted("hot roof"),
        Skipped(TEST),
        StepDone(STEP, ("proved",)),
        Answered(TEST, outcomes=("always",)),
        Answered("suction-pressure", text="118 psig"),
        Answered("suction-pressure", text="118 psig", conditions={OUTDOOR: "91 F"}),
        Answered(TEST, outcomes=("always",), text="in words of their own"),
        Halted("gas-odour"),
        DangerReported("gas-odour", "it smells", "combustible-gas-sweep"),
        Repaired("gas-valve-failed"),
        Started(conditions={OUTDOOR: "91 F"}),
        RoundBegun("fall"),
        RoundBegun("spring"),
        FindingsKept((DRY,)),
        SearchBegun((DRY,), (DRY,)),
        RoundGoneOn((DRY,)),
        RoundGoneOn(),
    ],
)
def test_what_speaks_of_nothing_unknown_passes(event: Event, shipped: Knowledge) -> None:
    check_known(shipped, event)


@pytest.mark.parametrize(
    ("event", "why"),
    [
        (Skipped("crystal-ball"), "the test crystal-ball is not in today's rules"),
        (StepDone("rub-the-lamp", ()), "the step rub-the-lamp is not in today's rules"),
        (Repaired("gremlins"), "the fault gremlins is not in today's rules"),
        (Halted("sea-monster"), "the hazard sea-monster is not in today's rules"),
        (DangerReported("sea-monster", "help"), "the hazard sea-monster is not in today's rules"),
        (RoundBegun("monsoon"), '"monsoon" is no season of a round'),
        (FindingsKept((DRY, GONE)), "the test crystal-ball is not in today's rules"),
        (SearchBegun((GONE,)), "the test crystal-ball is not in today's rules"),
        (SearchBegun((DRY,), (GONE,)), "the test crystal-ball is not in today's rules"),
        (RoundGoneOn((GONE,)), "the test crystal-ball is not in today's rules"),
        (Answered(TEST, outcomes=("purple",)),
         f"purple is no outcome of {TEST} in today's rules"),
        (Answered(TEST, outcomes=("always", "purple")),
         f"purple is no outcome of {TEST} in today's rules"),
        (StepDone(STEP, ("purple",)), f"purple is no outcome of {STEP} in today's rules"),
        (Answered("suction-pressure"), "it says nothing of suction-pressure"),
        (Answered(TEST, text="118 psig"), f"it says nothing of {TEST}"),
        (StepDone(STEP, ()), f"it says nothing of {STEP}"),
        (Answered("suction-pressure", text="cold"), '"cold" is no reading of suction-pressure'),
        (Answered(TEST, outcomes=("always",), conditions={"mood": "good"}),
         "the quantity mood is not in today's rules"),
        (Answered(TEST, outcomes=("always",), conditions={OUTDOOR: "hot"}),
         f'"hot" is no {OUTDOOR}'),
        (Started(conditions={OUTDOOR: "91 F", "mood": "good"}),
         "the quantity mood is not in today's rules"),
        (Started(conditions={OUTDOOR: "hot"}), f'"hot" is no {OUTDOOR}'),
    ],
)  # fmt: skip
def test_what_todays_rules_do_not_know_is_named(event: Event, why: str, shipped: Knowledge) -> None:
    with pytest.raises(Unknown) as unknown:
        check_known(shipped, event)
    assert str(unknown.value) == why


@pytest.mark.parametrize(
    ("written", "read"),
    [
        (("old",), ("always",)),
        (("always", "old"), ("always", "always")),
        (("moved",), ("moved",)),
        (("old", "moved"), ("old", "moved")),
        (("never-known",), ("never-known",)),
    ],
)
def test_an_outcome_that_was_renamed_is_read_under_its_name_of_today(
    written: tuple[str, ...], read: tuple[str, ...], shipped: Knowledge
) -> None:
    """What became an outcome of another test is left as it was written, and nothing of it is lost:
    that test was never done."""
    names = {
        (TEST, "old"): (TEST, "always"), (TEST, "moved"): ("heat-exchanger-look", "sound"),
        (STEP, "old"): (STEP, "always"), (STEP, "moved"): (TEST, "always"),
    }  # fmt: skip
    renamed = replace(shipped, aliases=names)
    answer, step = Answered(TEST, outcomes=written), StepDone(STEP, written, "here")
    assert in_todays_words(renamed, answer) == replace(answer, outcomes=read)
    assert in_todays_words(renamed, step) == replace(step, outcomes=read)
    assert in_todays_words(renamed, Noted("old")) == Noted("old")
