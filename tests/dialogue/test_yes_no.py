"""Questions of yes or no: what Enter means is said, and what fits neither gets one sentence."""

from __future__ import annotations

import pytest

from tests.cli.lines import Lines, held
from tests.dialogue.mended import at_the_open_unit, mended
from troubleshoot.dialogue.closing import STILL_THERE
from troubleshoot.dialogue.complaint import IT_IS_A_STOP
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.talk import DangerCalled
from troubleshoot.dialogue.yes_no import YesNo, yes_or_no
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Started

GO_ON = YesNo("Go on?", enter=True)


def answered(shipped: Knowledge, question: YesNo, *typed: str) -> tuple[bool, Lines]:
    terminal = Lines(*typed)
    said = held(shipped, terminal, lambda voice: yes_or_no(Listener(shipped, voice), question))
    assert not terminal.typed
    return said, terminal


@pytest.mark.parametrize("question", [IT_IS_A_STOP, STILL_THERE, GO_ON])
@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("y", True),
        ("Yes", True),
        ("yep.", True),
        ("n", False),
        ("NO", False),
        ("nope", False),
        ("no, it runs", False),
        ("yes. still hot", True),
    ],
)
def test_yes_and_no_are_understood(
    question: YesNo, typed: str, meant: bool, shipped: Knowledge
) -> None:
    assert answered(shipped, question, typed)[0] is meant


@pytest.mark.parametrize("question", [IT_IS_A_STOP, STILL_THERE, GO_ON])
@pytest.mark.parametrize("typed", ["maybe", "2", "still there", "y n", ",", "ok"])
def test_what_is_neither_is_asked_again_with_a_sentence(
    question: YesNo, typed: str, shipped: Knowledge
) -> None:
    meant, terminal = answered(shipped, question, typed, "n")
    assert not meant and "y or n." in terminal.text
    assert len(terminal.asked) == 2


def test_enter_means_what_the_question_says(shipped: Knowledge) -> None:
    meant, terminal = answered(shipped, GO_ON, "")
    assert meant and "(y/n, Enter is y)" in terminal.asked[0]
    _, terminal = answered(shipped, STILL_THERE, "", "y")
    assert "y or n." in terminal.text and "Enter" not in terminal.asked[0]


@pytest.mark.parametrize("question", [IT_IS_A_STOP, STILL_THERE, GO_ON])
@pytest.mark.parametrize("typed", ["i smell gas", "yes, and i smell gas"])
def test_a_danger_is_heard(question: YesNo, typed: str, shipped: Knowledge) -> None:
    with pytest.raises(DangerCalled):
        answered(shipped, question, typed)


def test_what_is_no_answer_calls_no_repair_a_cure(shipped: Knowledge) -> None:
    """Regression: "it is still there" closed the visit as cured, since it begins with no y."""
    start = Started(complaint="no-heat", profiles=("technician",))
    book = at_the_open_unit(shipped, start, test="hot-surface-igniter-glow")
    fault = shipped.faults["fan-set-to-run-constantly"]
    terminal = Lines(*["72 F"] * 2 * len(fault.proof), "it is still there", "y")
    held(shipped, terminal, lambda voice: mended(book, voice, fault))
    assert not book.state.closing and book.state.repairs[-1].still == "y"
