"""What is taken of words that answer nothing as typed, what is asked, and in which order.

The look at a belt is invented; how people put it is common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.dialogue.told_otherwise import BELT, SMOKE, STANDS, Told
from troubleshoot.dialogue.talk import DangerCalled, Leave
from troubleshoot.knowledge.model import Finding, Outcome, Trigger
from troubleshoot.visit.events import Noted

SEVERAL = replace(BELT, choose="several")


@pytest.mark.parametrize(
    "typed", ["torn", "torn wide", "torn wide on the left side", "torn at the end"]
)
def test_where_all_other_words_tell_where_or_how_much_it_is_taken(
    typed: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = Told(monkeypatch, seen=1)
    assert told.types(typed) and not told.asked
    assert told.log == ['Taken as "torn".', "<torn>"]


@pytest.mark.parametrize("agreed", [True, False])
def test_where_other_words_tell_something_else_it_is_asked(
    agreed: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = Told(monkeypatch, answer=agreed)
    assert told.types("torn open") is agreed
    assert told.asked == [('You typed "torn open". Is "torn" meant?', "torn")]
    assert told.log == (["<torn>"] if agreed else [(STANDS, "torn open")])


@pytest.mark.parametrize(("index", "answer"), [(0, "edge-cut"), (1, "rib-cut"), (None, "")])
def test_where_one_of_several_may_be_meant_it_is_asked_which(
    index: int | None, answer: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = Told(monkeypatch, answer=index)
    assert told.types("cut") is bool(answer)
    assert told.asked == [("Which of these is meant?", ["edge-cut", "rib-cut"])]
    assert told.log == ([f"<{answer}>"] if answer else [(STANDS, "cut")])


def test_several_that_are_all_told_are_taken_together(monkeypatch: pytest.MonkeyPatch) -> None:
    told = Told(monkeypatch, test=SEVERAL)
    assert told.types("torn wide, glazed")
    assert told.log == ['Taken as "torn, glazed".', "<torn, glazed>"]


@pytest.mark.parametrize(
    "typed",
    ["torn 3 times", "torn, fire", "torn, dizzy", "torn, smoke", "long day", "its black and shiny"],
)
def test_of_a_danger_a_number_or_small_talk_nothing_is_meant(
    typed: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = Told(monkeypatch, answer=True)
    assert not told.types(typed) and not told.asked
    assert told.log == [(STANDS, typed)]


@pytest.mark.parametrize("typed", ["torn 3 times", "torn, fire", "torn, dizzy", "torn, smoke"])
def test_nor_is_another_look_told_of_so(typed: str, monkeypatch: pytest.MonkeyPatch) -> None:
    told = Told(monkeypatch, seen=1)
    assert not told.types(typed) and told.log == [(STANDS, typed)]


@pytest.mark.parametrize("given", [{"step": "lockout"}, {"test": None}])
def test_at_a_step_and_where_nothing_is_asked_nothing_is_found(
    given: dict[str, Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    told = Told(monkeypatch, answer=True, **given)
    assert not told.types("torn wide") and not told.asked
    assert told.log == [(STANDS, "torn wide")]


def test_what_is_sound_is_asked_unless_the_words_speak_against_it_or_it_clears_a_danger(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    assert Told(monkeypatch, answer=True).types("snug all over")
    told = Told(monkeypatch, answer=False)
    assert not told.types("snug wide") and len(told.asked) == 1
    told = Told(monkeypatch, answer=True)
    assert not told.types("snug rotten") and not told.asked
    told = Told(monkeypatch, answer=True, hazards=[replace(SMOKE, all_clear="belt")])
    assert not told.types("snug wide") and not told.asked
    assert told.types("torn wide") and not told.asked


def test_what_stops_the_work_is_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    stops = replace(SMOKE, triggers=(Trigger((Finding("belt", ("torn",)),)),))
    told = Told(monkeypatch, answer=True, hazards=[stops])
    assert told.types("torn wide") and len(told.asked) == 1 and told.log == ["<torn>"]


@pytest.mark.parametrize("typed", ["torn, the hat is red", "torn, the hat blew away"])
def test_where_something_else_is_told_it_is_asked_first_whether_all_stands(
    typed: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """What was found is taken then, unasked."""
    told = Told(monkeypatch, answer=True)
    assert told.types(typed) and not told.asked
    assert told.log == [(STANDS, typed), 'Taken as "torn".', "<torn>"]


def test_what_may_name_a_state_is_asked_about_though_all_stands(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    told = Told(monkeypatch, answer=True)
    assert told.types("torn lid") and len(told.asked) == 1
    assert told.log == [(STANDS, "torn lid"), "<torn>"]
    told = Told(monkeypatch, answer=0)
    assert told.types("cut, the hat blew away") and len(told.asked) == 1
    assert told.log == [(STANDS, "cut, the hat blew away"), "<edge-cut>"]


def test_what_happened_is_asked_of_first(monkeypatch: pytest.MonkeyPatch) -> None:
    told = Told(monkeypatch, seen=1)
    assert told.types("mice chewed the wiring")
    assert told.log == [(STANDS, "mice chewed the wiring"), ("elsewhere", ("seen",))]


def test_a_part_that_only_one_outcome_names_is_asked_about(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """It may be told of whatever is looked at."""
    blade = replace(BELT, outcomes=(*BELT.outcomes[:3], Outcome("blade-cut"), Outcome("edge-cut")))
    told = Told(monkeypatch, test=blade, answer=None)
    told.prompt.outcomes = tuple(outcome.id for outcome in blade.outcomes)
    assert not told.types("blade cut") and len(told.asked) == 1


def test_once_all_is_said_to_stand_it_is_not_asked_again(monkeypatch: pytest.MonkeyPatch) -> None:
    told = Told(monkeypatch, answer=True)
    assert told.types("torn, the hat blew away", stands=True)
    assert told.log == ['Taken as "torn".', "<torn>"]
    assert not told.types("hello", stands=True) and len(told.log) == 2


@pytest.mark.parametrize(
    ("typed", "seen", "taken"),
    [
        ("fan is black", 1, True), ("fans are black", 2, False), ("fans are loose", 2, True),
        ("long day", 2, False), ("hello there", 1, True), ("fans are black", 0, False),
    ],
)  # fmt: skip
def test_another_look_is_taken_where_it_is_one_or_more_than_its_looks_is_told(
    typed: str, seen: int, taken: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = Told(monkeypatch, seen=seen)
    assert told.types(typed) is taken
    assert told.log == [("elsewhere", ("seen",) * seen) if taken else (STANDS, typed)]


def test_its_age_is_no_happening_of_now(monkeypatch: pytest.MonkeyPatch) -> None:
    told = Told(monkeypatch)
    assert told.types("torn, Put In Last Year") and told.log == ["<torn>"]
    told = Told(monkeypatch)
    assert told.types("torn wide, put in last year")
    assert told.log == ['Taken as "torn".', "<torn>"]
    for typed, given in (("torn, put in last year", {"step": "lockout"}), ("fire, put in", {})):
        told = Told(monkeypatch, **given)  # type: ignore[arg-type]
        assert not told.types(typed) and told.log == [(STANDS, typed)]


def test_a_danger_beside_its_age_answers_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    told = Told(monkeypatch)
    told.stub.speaks_of_danger = lambda typed: True
    assert not told.types("torn, put in last year")
    assert told.log == [(STANDS, "torn, put in last year")]


@pytest.mark.parametrize("left", [Leave(), DangerCalled("smoke")])
def test_who_leaves_meanwhile_leaves_what_was_typed_as_a_note(
    left: Exception, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = Told(monkeypatch, answer=left)
    with pytest.raises(type(left)):
        told.types("torn open")
    assert told.log == [Noted("typed, and not confirmed: torn open")]
