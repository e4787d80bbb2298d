"""A reading taken wrong weighs nothing, but that it was wrong is a finding."""

from __future__ import annotations

import pytest

from tests.building import base, case, fault, measured, test_of
from troubleshoot.knowledge.model import Knowledge, Quantity, Read
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.readings.answers import Answer
from troubleshoot.reasoning.readings.misreadings import repeats

HEAT = measured("heat", {"normal": {"at_most": 25}, "high": {"above": 25}}, reads=(Read("heat"),))
REPEAT = test_of("repeat-reading", "agrees", "differs", healthy=None)
KNOWLEDGE = base(
    [HEAT, REPEAT, test_of("look", "bad")],
    [fault("misread", {"almost-always": [{"repeat-reading": "differs"}]}), fault("other")],
    quantities=[Quantity("heat", "F", "heat")],
)


@pytest.mark.parametrize(
    ("answer", "found"),
    [
        (Answer("heat", ("high",), valid=False), True),
        (Answer("heat", ("high",)), False),
        (Answer("heat", ("normal",), valid=False), False),
        (Answer("look", ("bad",), valid=False), False),
    ],
)
def test_only_a_bad_looking_measurement_said_to_be_invalid_counts(
    answer: Answer, found: bool
) -> None:
    assert (len(repeats(KNOWLEDGE, [answer])) == 2) == found


def test_what_somebody_answered_about_it_stands() -> None:
    answers = (Answer("heat", ("high",), valid=False), Answer("repeat-reading", ("agrees",)))
    assert repeats(KNOWLEDGE, answers) == answers


def test_a_base_that_knows_no_such_test_is_left_alone() -> None:
    bare: Knowledge = base([HEAT])
    answers = (Answer("heat", ("high",), valid=False),)
    assert repeats(bare, answers) == answers


def test_the_mistake_is_named_rather_than_what_the_wrong_number_says() -> None:
    found = Reasoner(KNOWLEDGE).conclude(case(KNOWLEDGE, Answer("heat", ("high",), valid=False)))
    assert found.causes[0].fault.id == "misread"
