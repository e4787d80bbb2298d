"""What is told beside the work is asked about where it may endanger hands, and let be elsewhere.

29 CFR 1910.333(b) and NFPA 70E 120.5, from memory: work stands on the lock and the test as shown.
The sentences are made up: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.beside_work import doubt_at, doubt_in, hands_may_be_in
from troubleshoot.dialogue.prompts import AskWords, AtStop, Choose, Prompt, Settled
from troubleshoot.dialogue.said import Refused, Voice
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import Noted
from troubleshoot.visit.state import VisitState

ASIDE = AskWords("What does the plate say?")
TOLD = "neon on the isolator is lit"
"""It tells that a state may have gone in words that no list holds."""
NUMBERS = (
    "reads 45", "it says 45 over 5", "shows 45", "about 45", "around 45", "45 by 5", "dunno 45",
    "i think 45", "maybe 45 uF", "12 V", "7,5", "45 mohm", "45 5",
)  # fmt: skip


@pytest.fixture(scope="module")
def hands_in(shipped: Knowledge) -> VisitState:
    """A visit with hands in: locked out, proved dead, discharged, the panels off."""
    return AtWork(shipped, "in").book.state


def asked(
    knowledge: Knowledge, state: VisitState, said: str, *own: str, notes: list[Noted] | None = None
) -> str:
    """What is asked about words that no question in between takes; empty for nothing.

    `own`: what the question and its answers say; `notes`: what was kept is added to.
    """
    keep = (notes if notes is not None else []).append
    talk = doubt_in(knowledge, Voice(), state, Refused(said, ASIDE, own), keep)
    if talk is None:
        return ""
    prompt = next(talk)
    assert isinstance(prompt, Choose)
    return prompt.question


@pytest.mark.parametrize("said", [TOLD, "isolator neon", "2 men on the deck", "dunno 45 men"])
def test_what_tells_something_is_asked_about_and_kept(
    said: str, shipped: Knowledge, hands_in: VisitState
) -> None:
    notes: list[Noted] = []
    question = asked(shipped, hands_in, said, notes=notes)
    assert f'"{said}". Is nobody in danger, and does it all still stand?' in question
    assert "locked out" in question and "capacitors discharged" in question
    assert notes == [Noted(f"told at a question: {said}")]


@pytest.mark.parametrize(
    "said", [*NUMBERS, "flickered", "my lock is still on", "it is old", "what was that", "do neon"]
)
def test_what_tells_nothing_is_let_be(said: str, shipped: Knowledge, hands_in: VisitState) -> None:
    """A number, one word that nobody knows, what stands, a look, a question, a command."""
    notes: list[Noted] = []
    assert not asked(shipped, hands_in, said, notes=notes) and not notes


def test_what_speaks_of_a_steps_matter_is_asked_of_that(
    shipped: Knowledge, hands_in: VisitState
) -> None:
    notes: list[Noted] = []
    question = asked(shipped, hands_in, "my padlock hangs at my belt", notes=notes)
    assert "Does it still stand, as it was shown?" in question
    assert "Switch off, lock, tag and try: locked." in question
    assert notes == [Noted("told at a question: my padlock hangs at my belt")]


def test_words_of_the_question_tell_nothing(shipped: Knowledge, hands_in: VisitState) -> None:
    said = "neon lens of the isolator"
    assert asked(shipped, hands_in, said) and not asked(shipped, hands_in, said, said)


def test_it_is_asked_only_where_hands_may_be_in_and_something_stands(
    shipped: Knowledge, hands_in: VisitState
) -> None:
    running = WorkState(panels="on", power="on", roof="safe", area_clear=True)
    for work, may_be in (
        (hands_in.work, True),
        (replace(running, panels="off"), True),
        (replace(running, power="locked-out"), True),
        (running, False),
    ):
        state = replace(hands_in, work=work)
        assert hands_may_be_in(state) is may_be
        assert bool(asked(shipped, state, TOLD)) is may_be
    assert not asked(shipped, VisitState(work=WorkState()), TOLD)


def test_a_stop_a_test_a_step_and_an_ending_ask_for_themselves(shipped: Knowledge) -> None:
    visit, step = AtWork(shipped, "in"), AtWork(shipped, "lock-off")

    def is_asked(prompt: Prompt, *, stands: bool = False) -> bool:
        refused = Refused(TOLD, prompt)
        return doubt_at(visit.book, Voice(), lambda: stands, refused) is not None

    assert is_asked(ASIDE) and not is_asked(ASIDE, stands=True)
    at_a_stop = AtStop(None, ())  # type: ignore[arg-type] - which STOP it is does not matter
    ended = Settled(None, None)  # type: ignore[arg-type]
    for prompt in (visit.prompt, step.prompt, at_a_stop, ended):
        assert not is_asked(prompt)
