"""What confirms a safety step beside its bare word, and what is said where a number is none."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

import pytest

from troubleshoot.dialogue.answering import answer_event_from, answers, step_event_from
from troubleshoot.dialogue.by_word import NearlyAnAnswer, NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import read_unit
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import DEAD_TEST, ROOF, Step
from troubleshoot.visit.state import VisitState

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
TOLD_TO_SOMEBODY = ("fire-panel-back", "tell-fire-panel", "tell-occupants")


def done(shipped: Knowledge, name: str, typed: str) -> tuple[str, ...]:
    test = shipped.tests[name]
    state = VisitState(unit=read_unit(shipped, {}))
    return step_event_from(shipped, state, test, Step(name), typed, NOW).outcomes


def test_who_was_told_and_when_may_stand_where_the_step_is_to_tell_somebody(
    shipped: Knowledge,
) -> None:
    """Their screens ask for both; at any other step a time may be that of something else."""
    taken = []
    for name, word in CONFIRMED.items():
        spoken = shipped.tests[name].spoken(word)
        try:
            found = done(shipped, name, f"{spoken}, with security at 14:10")
        except NotAnAnswer:
            continue
        taken += [name] * (found == (word,))
    assert sorted(taken) == sorted(TOLD_TO_SOMEBODY)


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("15 A safe", '"15 A safe" holds no unit I know'), ("xyz", "Say in words what came of it"),
        ("safe or not", "Say in words what came of it"),
    ],
)  # fmt: skip
def test_why_it_is_no_answer_at_the_roof_is_said_of_what_was_typed(
    typed: str, said: str, shipped: Knowledge
) -> None:
    """Of words it is not said that they are no number, of a number not that it is no words."""
    with pytest.raises(NotAnAnswer) as refused:
        done(shipped, ROOF, typed)
    assert str(refused.value).startswith(said)


def test_the_number_of_a_line_is_a_whole_answer_however_it_is_set_off(shipped: Knowledge) -> None:
    """Only words can be shortened too far."""
    sweep = shipped.tests["refrigerant-sweep-a2l"]
    words = tuple(outcome.id for outcome in sweep.outcomes)
    for typed in ("1", "1,", " 1 ,"):
        assert answer_event_from(shipped, sweep, None, typed, words).outcomes == words[:1]


def test_no_number_of_a_line_says_that_a_danger_has_gone(shipped: Knowledge) -> None:
    """Its word is wanted, as of a step; that it has not gone is taken as it comes."""
    words_of_somebody = [
        test for name, test in shipped.tests.items()
        if test.kind == "step" and name not in CONFIRMED and not test.reads
    ]  # fmt: skip
    assert {"all-clear", "made-safe", "thunder-waited-out"} <= {t.id for t in words_of_somebody}
    for test in words_of_somebody:
        words = tuple(outcome.id for outcome in test.outcomes)
        for number, word in enumerate(words, 1):
            if word in test.healthy:
                with pytest.raises(NearlyAnAnswer, match=f'"{test.spoken(word)}" meant'):
                    answer_event_from(shipped, test, None, str(number), words)
            else:
                event = answer_event_from(shipped, test, None, str(number), words)
                assert event.outcomes == (word,)


def test_what_may_be_typed_is_every_word_of_the_outcomes_that_this_unit_has(
    shipped: Knowledge,
) -> None:
    limit = shipped.tests["main-limit"]
    first, second = limit.outcomes[0], replace(limit.outcomes[1], words=("open",))
    test = replace(limit, outcomes=(first, second, *limit.outcomes[2:]))
    assert answers(test, {second.id}) == (second.spoken, "open")
    both = answers(test, [first.id, second.id])
    assert both == (first.spoken, *first.words, second.spoken, "open")


def test_two_findings_in_one_line_are_both_heard_and_of_two_that_exclude_each_other_the_worse(
    shipped: Knowledge,
) -> None:
    near_and_storm = ("edge-under-6-ft", "lightning")
    assert done(shipped, ROOF, "edge under 6 ft, lightning") == near_and_storm
    assert done(shipped, DEAD_TEST, "dead, live") == ("live",)
