"""What may be typed at a question, and what is no answer there."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from typing import Any

import pytest

from tests.building import base, test_of
from troubleshoot.dialogue.answering import answer_event_from
from troubleshoot.dialogue.by_word import NotAnAnswer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.events import Answered

NOW = datetime.fromisoformat("2026-11-26T12:00:00+00:00")
SAID = {"bad-wiring": "bad wiring", "bad-fuse": "bad fuse"}
BARE = test_of("look", "bad-wiring", "bad-fuse", "wet")
LOOK = replace(BARE, outcomes=tuple(replace(o, spoken=SAID.get(o.id, o.id)) for o in BARE.outcomes))
WORDS = ("normal", "bad-wiring", "bad-fuse", "wet")
MANY = replace(LOOK, choose="several")
KNOWLEDGE = base([LOOK])


def outcomes(test: Any, typed: str) -> list[str]:
    event = answer_event_from(KNOWLEDGE, test, None, typed, WORDS)
    assert event == Answered("look", outcomes=event.outcomes)
    return list(event.outcomes)


def refused(test: Any, typed: str) -> str:
    with pytest.raises(NotAnAnswer) as error:
        answer_event_from(KNOWLEDGE, test, None, typed, WORDS)
    return str(error.value)


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("1", "normal"), ("4", "wet"), ("normal", "normal"), ("NORM", "normal"),
        ("bad wiring", "bad-wiring"), ("bad-f", "bad-fuse"), ("w", "wet"),
    ],
)  # fmt: skip
def test_a_number_a_word_or_its_beginning_is_an_outcome(typed: str, named: str) -> None:
    assert outcomes(LOOK, typed) == [named]
    assert outcomes(MANY, typed) == [named]


@pytest.mark.parametrize("typed", ["0", "5", "1 2", "bad", "x", ",", " ", "-1", "1 wet"])
def test_what_names_no_single_outcome_is_refused_with_what_would_do(typed: str) -> None:
    assert refused(LOOK, typed) == ("Give a number, or one of: normal, bad wiring, bad fuse, wet.")


def test_nothing_typed_is_no_answer() -> None:
    assert refused(LOOK, "") == "Type an answer, s to skip it, or help."


@pytest.mark.parametrize(
    ("typed", "named"),
    [
        ("2 3", ["bad-wiring", "bad-fuse"]), ("3, 2", ["bad-fuse", "bad-wiring"]),
        ("wet, bad f", ["wet", "bad-fuse"]), ("wet, wet", ["wet"]),
    ],
)  # fmt: skip
def test_several_are_given_together_where_the_test_takes_several(
    typed: str, named: list[str]
) -> None:
    assert outcomes(MANY, typed) == named
    if typed != "wet, wet":
        assert refused(LOOK, typed)


@pytest.mark.parametrize("typed", [",", "wet,", "wet, x", "bad, wet", "2 9", "1 x"])
def test_among_several_each_must_be_one(typed: str) -> None:
    assert refused(MANY, typed).startswith("Give a number, or one of")


@pytest.mark.parametrize("typed", ["1 2", "normal, wet"])
def test_sound_and_unsound_together_are_refused(typed: str) -> None:
    assert refused(MANY, typed).startswith("The sound outcome cannot be true together")


def test_the_place_stands_in_the_answer() -> None:
    event = answer_event_from(KNOWLEDGE, LOOK, Place("circuit", 2), "wet", WORDS)
    assert event.at == ("circuit 2",)


def test_a_reading_is_kept_as_typed_or_as_the_word_for_it(shipped: Knowledge) -> None:
    test = shipped.tests["suction-pressure"]
    words = tuple(o.id for o in test.outcomes)

    def answer(typed: str) -> Answered:
        return answer_event_from(shipped, test, Place("circuit", 1), typed, words)

    assert answer("128 psig") == Answered(test.id, ("circuit 1",), text="128 psig")  # fmt: skip
    assert answer(words[0]).outcomes == (words[0],)
    with pytest.raises(NotAnAnswer, match=r".+; .+\."):
        answer("128 furlongs")


ALIKE = test_of("look", "bad", "bad-fuse")


def test_a_whole_word_is_that_outcome_though_another_begins_with_it() -> None:
    event = answer_event_from(KNOWLEDGE, ALIKE, None, "bad", ("normal", "bad-fuse", "bad"))
    assert event.outcomes == ("bad",)
    alone = answer_event_from(KNOWLEDGE, ALIKE, None, "bad", ("bad",))
    assert alone.outcomes == ("bad",)


def test_nothing_between_commas_is_no_outcome_though_there_is_only_one() -> None:
    for typed in (",", "wet,", " "):
        with pytest.raises(NotAnAnswer):
            answer_event_from(KNOWLEDGE, MANY, None, typed, ("wet",))


def test_a_reading_of_several_words_is_one_answer_and_keeps_its_test(shipped: Knowledge) -> None:
    test = shipped.tests["suction-pressure"]
    first, second, *_ = (o.id for o in test.outcomes)
    event = answer_event_from(shipped, test, None, first, (first, second))
    assert event == Answered(test.id, outcomes=(first,))
    with pytest.raises(NotAnAnswer):
        answer_event_from(shipped, test, None, f"{first}, {second}", (first, second))
