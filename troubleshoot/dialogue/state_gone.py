"""That a state has gone on which the work stands is heard at every prompt, and voids it at once.

What answers the question in hand is an answer, and so is what a step tells that is asked about just
that. Where a STOP stands nothing but what it asks for is done, so that words there are its answers.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import Final

from troubleshoot.dialogue.asides import noted
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener, hear, hear_among
from troubleshoot.dialogue.mistyped import meant_by
from troubleshoot.dialogue.prompts import AskTest, AskWords, Choose, DoStep, Prompt, Settled
from troubleshoot.dialogue.reporting_danger import report_danger
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.taking_up import is_answer
from troubleshoot.dialogue.talk import DangerCalled, Talk, ToldGone
from troubleshoot.dialogue.yes_no import YesNo, answered_first
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import plain_words
from troubleshoot.safety.declared import CONFIRMED, STEPS
from troubleshoot.safety.gone import contradicted, is_charge_at_hand, without
from troubleshoot.safety.hearing.gone import hinted_gone, told_gone
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.safety.steps import LOCKOUT
from troubleshoot.visit.events import Noted, StateGone
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.lapses import CAN_WAIT, said_gone

_BACK: Final = frozenset({"back", "restored", "returned"})
"""What power is that was off for a while."""


def gone_at(
    book: VisitBook, stop_stands: Callable[[], bool], prompt: Prompt, typed: str
) -> ToldGone | None:
    """What breaks in on a prompt where these words say that a state has gone; None where none."""
    if _chooses_a_test(book, typed):
        return None
    said = noted(typed) or typed
    steps = told_in(book.knowledge, book.state, said)
    if not steps or (isinstance(prompt, AskWords | Choose) and stop_stands()):
        return None
    if isinstance(prompt, AskTest | DoStep):
        steps = _not_asked_here(prompt, steps)
        if said == typed and _answers(book, prompt, typed) and not _put_back(steps, typed):
            return None
    return ToldGone(typed, steps) if steps else None


def _answers(book: VisitBook, prompt: AskTest | DoStep, typed: str) -> bool:
    """Whether it is an answer to what is asked, or one with a typing error in it."""
    test = prompt.decision.test
    assert test is not None
    mistyped = meant_by(book.knowledge, test, typed, (o.id for o in test.outcomes))
    return is_answer(book, prompt, typed) or mistyped is not None


def _put_back(steps: tuple[str, ...], typed: str) -> bool:
    """Whether the power is told to have been put back, which is no reading of what is still fed."""
    said = {*raw_words(typed)}
    return LOCKOUT in steps and "still" not in said and not _BACK.isdisjoint(said)


def _chooses_a_test(book: VisitBook, typed: str) -> bool:
    """Whether a line is do and just a test's name: coil volts at contactor 1 tells of no volts."""
    said = plain_words(typed.partition(" at ")[0])
    name = said.removeprefix("do ")
    return name != said and any(
        name in (plain_words(test.id), plain_words(test.name))
        for test in book.knowledge.tests.values()
    )


def ask_if_gone(
    book: VisitBook, listener: Listener, prompt: AskTest | DoStep | Settled, typed: str
) -> Talk[bool]:
    """Ask, where words are no answer that may say so, whether all still stands; False if not asked.

    Raises ToldGone, DangerCalled, Leave.
    """
    steps = _not_asked_here(prompt, hinted_in(book.knowledge, book.state, typed))
    if not steps:
        return False
    listener.hear(typed)
    if not isinstance(prompt, Settled):
        at = "a safety step" if isinstance(prompt, DoStep) else "a test"
        book.add(Noted(f"told at {at}: {typed}"))
    yield from whether_it_stands(listener, typed, steps)
    return True


def whether_it_stands(listener: Listener, typed: str, steps: tuple[str, ...]) -> Talk[None]:
    """Ask whether what these steps confirmed still stands. Raises ToldGone, DangerCalled, Leave."""
    tests = (listener.knowledge.tests[step] for step in steps)
    stands = "; ".join(f"{test.name}: {test.spoken(CONFIRMED[test.id])}" for test in tests)
    question = YesNo(f'You typed "{typed}". Does it still stand, as it was shown? {stands}.')
    if not (yield from answered_first(listener, question)):
        raise ToldGone(typed, steps)


def _not_asked_here(prompt: AskTest | DoStep | Settled, steps: tuple[str, ...]) -> tuple[str, ...]:
    """Without the step in hand, and those of which its own answers tell."""
    own = prompt.decision.step
    if own is None:
        return steps
    return tuple(s for s in steps if s != own.id and s not in STEPS[own.id].in_other_words)


def void(book: VisitBook, voice: Voice, told: ToldGone) -> Talk[None]:
    """Void what is told as gone, and hear the danger that the same words may tell. Raises Leave."""
    try:
        keep_told(book, voice, told.steps, str(told))
    except DangerCalled as called:
        yield from report_danger(book, voice, "", str(called))


def void_if_gone(book: VisitBook, voice: Voice, said: str) -> None:
    """Void what a danger tells as gone besides: it stays void once the danger has gone."""
    if steps := told_in(book.knowledge, book.state, said):
        _void(book, voice, steps, said, in_danger=True)


def told_in(knowledge: Knowledge, state: VisitState, said: str) -> tuple[str, ...]:
    """The steps of which words say that what they confirmed in this visit has gone.

    A charge behind a lock is one, whether or not it was ever bled.
    """
    told = told_gone(knowledge, said, state.name)
    stood = stood_on(state, told)
    return tuple(step for step in told if step in stood or is_charge_at_hand(state.work, step))


def hinted_in(knowledge: Knowledge, state: VisitState, said: str) -> tuple[str, ...]:
    """The steps of which it is to be asked whether what they confirmed still stands."""
    return stood_on(state, hinted_gone(knowledge, said, state.name))


def stood_on(state: VisitState, steps: Iterable[str]) -> tuple[str, ...]:
    """Those of the steps on which something stands in this visit that has then gone."""
    return contradicted(state.work, steps, state.at_work)


def keep_told(book: VisitBook, voice: Voice, steps: tuple[str, ...], typed: str) -> None:
    """Keep what has gone; raises DangerCalled once it is kept, where the words tell a danger."""
    note = noted(typed)
    try:
        if note:
            hear_among(book.knowledge, note)
        else:
            hear(book.knowledge, typed)
    except DangerCalled:
        _void(book, voice, steps, note or typed, in_danger=True)
        raise
    _void(book, voice, steps, note or typed)
    voice.ask_about(book.knowledge, note or typed)


def _void(
    book: VisitBook, voice: Voice, steps: tuple[str, ...], said: str, *, in_danger: bool = False
) -> None:
    """Say what to do before it is kept, so that nothing that fails hides it.

    `in_danger`: a danger is told in the same words. Before its STOP stands only what takes hands
    out of harm's way; the rest waits behind it.
    """
    state = book.state
    voice.told_whole.clear()
    first, *others = said_gone(state.work, without(state.work, steps, state.at_work))
    waits = in_danger and first in CAN_WAIT
    if not waits:
        voice.say(first, strong=True)
    if in_danger:
        voice.gone_with_it = (*((first,) if waits else ()), *others)
    else:
        voice.say_all(others)
    book.add(StateGone(steps, said))
