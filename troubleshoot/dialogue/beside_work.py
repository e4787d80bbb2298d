"""What is told at a test, beside the work, where hands may be in: it is asked about, or let be.

What is no answer there and more than a mistyped one may tell that a state has gone, or a danger, in
words that no list holds. So it is asked outright whether all still stands and nobody is in danger,
by a question to which an unread "n" is the safe answer.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.state_gone import stood_on
from troubleshoot.dialogue.talk import Talk, ToldGone
from troubleshoot.dialogue.yes_no import YesNo, answered_first
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.gone import without
from troubleshoot.safety.hearing.gone import something_happened, told_in_passing
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Noted
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.lapses import all_voided

LEAST_TOLD: Final = 2
"""Words that tell something at work, where none is of the question or its answers: power dipped."""


def told_at_work(book: VisitBook, decision: Decision, typed: str) -> bool:
    """Whether it tells what may endanger work though no state stands on it.

    Somebody else at the unit, a jumper left on, a start by itself.
    """
    told = hands_may_be_in(book, decision)
    return told and told_in_passing(book.knowledge, typed, book.state.name)


def tells_at_work(book: VisitBook, listener: Listener, decision: Decision, typed: str) -> bool:
    """Whether it tells something where hands may be in, in words that no list holds."""
    if not hands_may_be_in(book, decision) or _tries_a_number(typed):
        return False
    return listener.tells(typed, LEAST_TOLD) or something_happened(typed, book.state.name)


def ask_if_all_stands(
    book: VisitBook, listener: Listener, decision: Decision, typed: str
) -> Talk[bool]:
    """Ask of what was told at work whether all still stands; False where that is not asked.

    What hints at a danger, and what is told where nothing stands, is asked about as one. A no voids
    all that stands, and is asked of as a danger besides. Raises ToldGone, DangerCalled, Leave.
    """
    state, voice = book.state, listener.voice
    steps = stood_on(state, STEPS)
    tells = tells_at_work(book, listener, decision, typed)
    if not steps or not tells or voice.hints(typed, listener.own):
        return False
    if voice.is_safe(typed):
        return True
    listener.hear(typed)
    book.add(Noted(f"told at a test: {typed}"))
    if not (yield from answered_first(listener, _whether_all_stands(state, steps, typed))):
        voice.ask_about(book.knowledge, typed, is_told=True)
        raise ToldGone(typed, steps)
    voice.take_as_safe(typed)
    return True


def _whether_all_stands(state: VisitState, steps: tuple[str, ...], typed: str) -> YesNo:
    stands = ", ".join(all_voided(state.work, without(state.work, steps, state.at_work)))
    return YesNo(
        f'You typed "{typed}". Is nobody in danger, and does it all still stand? {stands}.'
    )


def _tries_a_number(typed: str) -> bool:
    """Whether it is a number, mistyped or of another unit: 7,5 or 12 V; two men are none."""
    words = raw_words(typed)
    said = [word for word in words if word.isalpha()]
    return len(said) < len(words) and all(map(is_unit, said))


def hands_may_be_in(book: VisitBook, decision: Decision) -> bool:
    """Whether it is a test at a unit that is open, or not known to be on."""
    work = book.state.work
    return decision.step is None and not (work.panels == "on" and work.power == "on")
