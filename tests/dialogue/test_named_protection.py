"""Near an edge the work goes on once its protection is named, and under 6 ft only behind a rail.

29 CFR 1910.28(b)(13): under 6 ft from the edge a guard rail, a net or being tied off.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest

from troubleshoot.dialogue.answering import step_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.steps import EDGE_PROTECTION, LOCKOUT, ROOF, Step
from troubleshoot.visit.events import Event, Started, StepDone, replay
from troubleshoot.visit.state import VisitState

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
FAR, NEAR = (StepDone(ROOF, (found,)) for found in ("edge-6-to-15-ft", "edge-under-6-ft"))
NEAR_AND_ICE = StepDone(ROOF, ("edge-under-6-ft", "unsafe-surface"))
LOCKED = StepDone(LOCKOUT, ("locked",))
WEAK = ("warning line", "second person", "somebody watches")


def after(shipped: Knowledge, *looks: Event) -> VisitState:
    return replay(shipped, [Started(complaint="no-cooling"), *looks])


def done(shipped: Knowledge, typed: str, *looks: Event) -> tuple[str, ...]:
    test, state = shipped.tests[EDGE_PROTECTION], after(shipped, *looks)
    return step_event_from(shipped, state, test, Step(EDGE_PROTECTION), typed, NOW).outcomes


@pytest.mark.parametrize(
    ("looks", "under_6"),
    [
        ((FAR,), False), ((NEAR,), True), ((NEAR, FAR), False), ((FAR, NEAR), True),
        ((NEAR, LOCKED), True), ((FAR, LOCKED), False), ((NEAR_AND_ICE,), True), ((), True),
    ],
)  # fmt: skip
def test_the_last_look_at_the_roof_says_how_near_it_is(
    looks: tuple[Event, ...], under_6: bool, shipped: Knowledge
) -> None:
    """Where nobody has looked it may be under 6 ft."""
    for typed in WEAK:
        if under_6:
            with pytest.raises(NotAnAnswer, match=r"^Under 6 ft from the edge only a guard rail"):
                done(shipped, typed, *looks)
        else:
            assert done(shipped, typed, *looks) == ("on",)


def test_every_word_for_it_is_a_rail_a_rope_or_a_line_and_a_watcher(shipped: Knowledge) -> None:
    """A word for the weaker ones alone is refused under 6 ft, whatever is added to the rules."""
    own = next(o for o in shipped.tests[EDGE_PROTECTION].outcomes if o.id == "on")
    refused = []
    for word in own.words:
        assert done(shipped, word, FAR) == ("on",)
        try:
            assert done(shipped, word, NEAR) == ("on",)
        except NotAnAnswer:
            refused.append(word)
    assert refused == ["warning line", "second person", "second person watches", "somebody watches"]


def test_that_there_is_none_is_an_answer_at_any_distance(shipped: Knowledge) -> None:
    for look in (FAR, NEAR):
        assert done(shipped, "cannot", look) == ("cannot",)


@pytest.mark.parametrize("turned", [False, True])
def test_the_bare_word_is_asked_what_it_is(turned: bool, shipped: Knowledge) -> None:
    """In whatever order the rules hold them, what protects is named, and not what is missing."""
    test = shipped.tests[EDGE_PROTECTION]
    if turned:
        test = replace(test, outcomes=test.outcomes[::-1])
    means = next(outcome.means for outcome in test.outcomes if outcome.id == "on")
    with pytest.raises(NotAnAnswer) as refused:
        step_event_from(shipped, after(shipped, FAR), test, Step(EDGE_PROTECTION), "on", NOW)
    assert str(refused.value) == f"Say what protects you: {means}." and "tied off" in means
