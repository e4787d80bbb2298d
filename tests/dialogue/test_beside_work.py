"""What is told beside the work is asked about where it may endanger hands, and let be elsewhere.

29 CFR 1910.333(b) and NFPA 70E 120.5, from memory: work stands on the lock and the test as shown.
The sentences are made up: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.dialogue.at_work import AtWork
from troubleshoot.dialogue.beside_work import (
    ask_if_all_stands,
    doubt_at,
    doubt_in,
    hands_may_be_in,
    told_at_work,
)
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.prompts import AskTest, AskWords, AtStop, Choose, DoStep, Prompt, Settled
from troubleshoot.dialogue.said import Refused, Voice
from troubleshoot.dialogue.talk import DangerCalled, Talk, ToldGone
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.gone import without
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.events import Noted
from troubleshoot.visit.state import VisitState

ASIDE = AskWords("What does the plate say?")
TOLD = "neon on the isolator is lit"
"""It tells that a state may have gone in words that no list holds."""
NUMBERS = (
    "reads 45 over 5", "it says 45 over 5", "shows 45", "about 45", "around 45", "45 by 5",
    "dunno 45", "i think 45", "maybe 45 uF", "12 V", "7,5", "45 mohm", "45 5",
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


@pytest.mark.parametrize(
    "said", [TOLD, "isolator neon", "2 men on the deck", "i guess it says over"]
)
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


@pytest.mark.parametrize("said", [TOLD, "my padlock hangs at my belt"])
def test_what_was_said_to_stand_is_not_asked_about_again(
    said: str, shipped: Knowledge, hands_in: VisitState
) -> None:
    voice = Voice()
    talk = doubt_in(shipped, voice, hands_in, Refused(said, ASIDE), [].append)
    assert talk is not None and next(talk)
    with pytest.raises(StopIteration):
        talk.send("y")
    assert voice.is_safe(said)


def test_words_of_the_question_tell_nothing(shipped: Knowledge, hands_in: VisitState) -> None:
    said, moved = "neon lens of the isolator", "it started"
    assert asked(shipped, hands_in, said) and not asked(shipped, hands_in, said, said)
    assert asked(shipped, hands_in, moved, moved), "but that something happened is told by them"


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
    gone = without(hands_in.work, STEPS, hands_in.at_work)
    assert not asked(shipped, replace(hands_in, work=gone), TOLD)


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


@pytest.mark.parametrize(
    ("place", "is_told"), [("live", True), ("in", True), ("lock-off", False), ("run", False)]
)
def test_who_else_is_at_the_unit_is_told_at_a_test_where_hands_may_be_in(
    place: str, is_told: bool, shipped: Knowledge
) -> None:
    """A step hears more than that; a unit that runs closed takes no hand."""
    visit = AtWork(shipped, place)
    assert isinstance(visit.prompt, AskTest | DoStep)
    told, nothing = "another crew works on the burner side", "the belt is worn"
    assert told_at_work(visit.book, visit.prompt.decision, told) is is_told
    assert not told_at_work(visit.book, visit.prompt.decision, nothing)


def asks_at(visit: AtWork, said: str, voice: Voice) -> Talk[None]:
    """The question whether all stands, of what was told where the visit stands."""
    assert isinstance(visit.prompt, AskTest | DoStep)
    listener = Listener(visit.book.knowledge, voice)
    return ask_if_all_stands(visit.book, listener, visit.prompt.decision, said)


def test_at_a_test_it_is_kept_and_asked_whether_all_stands(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    prompt = next(asks_at(visit, TOLD, Voice()))
    assert isinstance(prompt, Choose) and "does it all still stand?" in prompt.question
    assert visit.events == [Noted(f"told at a test: {TOLD}", time=visit.moment.isoformat())]


def test_a_step_a_hint_and_what_was_said_to_be_nothing_are_not_asked_about(
    shipped: Knowledge,
) -> None:
    safe = Voice()
    safe.take_as_safe(TOLD)
    for place, said, voice in (
        ("lock-off", TOLD, Voice()), ("in", "eyebrows are singed", Voice()), ("in", TOLD, safe),
        ("in", "reads 45 over 5", Voice()),
    ):  # fmt: skip
        visit = AtWork(shipped, place)
        assert list(asks_at(visit, said, voice)) == [] and not visit.events


def test_a_danger_in_those_words_is_called(shipped: Knowledge) -> None:
    visit = AtWork(shipped, "in")
    with pytest.raises(DangerCalled):
        next(asks_at(visit, "man down", Voice()))
    assert not visit.events


def test_a_yes_is_not_asked_again_and_a_no_voids_all_and_asks_whether_there_is_a_danger(
    shipped: Knowledge,
) -> None:
    visit, voice = AtWork(shipped, "in"), Voice()
    talk = asks_at(visit, TOLD, voice)
    next(talk)
    with pytest.raises(StopIteration):
        talk.send("y")
    assert voice.is_safe(TOLD) and voice.hinted is None
    voice = Voice()
    talk = asks_at(visit, TOLD, voice)
    next(talk)
    with pytest.raises(ToldGone) as gone:
        talk.send("n")
    assert {"lockout", "verified-dead", "capacitor-discharge"} <= {*gone.value.steps}
    assert voice.hinted is not None and voice.hinted.said == TOLD
