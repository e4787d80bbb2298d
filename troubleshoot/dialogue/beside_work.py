"""What is told beside the work, where hands may be in: it is asked about, or let be.

What is no answer, at a test or at a question in between, and more than a mistyped one may tell that
a state has gone, or a danger, in words that no list holds. So it is asked outright whether all
still stands and nobody is in danger, by a question to which an unread "n" is the safe answer.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.command_words import is_command
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.hedged import HEDGES
from troubleshoot.dialogue.prompts import AskTest, AtStop, DoStep, Settled
from troubleshoot.dialogue.said import Refused, Voice
from troubleshoot.dialogue.state_gone import hinted_in, stood_on, whether_it_stands
from troubleshoot.dialogue.talk import Talk, ToldGone
from troubleshoot.dialogue.yes_no import YesNo, answered_first
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.quantities.typed_units import is_unit
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.gone import without
from troubleshoot.safety.hearing.findings import tells_a_finding
from troubleshoot.safety.hearing.gone import something_happened, told_in_passing
from troubleshoot.safety.hearing.good_answers import tells_it_stands
from troubleshoot.safety.hearing.words import raw_words
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Noted
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.lapses import all_voided

LEAST_TOLD: Final = 2
"""Words that tell something at work, where none is of the question or its answers: power dipped."""

_AROUND: Final = (
    HEDGES
    | {"about", "around", "by", "dunno", "over", "reads", "says", "shows"}
    | {"all", "both", "each", "even", "good", "on", "pairs", "three"}
)
"""Words around a number that tell nothing besides: it says 45 over 5; .9 all three."""


def told_at_work(book: VisitBook, decision: Decision, typed: str) -> bool:
    """Whether it tells what may endanger work though no state stands on it.

    Somebody else at the unit, a jumper left on, a start by itself.
    """
    told = decision.step is None and hands_may_be_in(book.state)
    return told and told_in_passing(book.knowledge, typed, book.state.name)


def ask_if_all_stands(
    book: VisitBook, listener: Listener, decision: Decision, typed: str
) -> Talk[None]:
    """Ask of what was told at a test whether all still stands, where it may tell that it does not.

    What hints at a danger, and what is told where nothing stands, is asked about as one. A no voids
    all that stands, and is asked of as a danger besides. Raises ToldGone, DangerCalled, Leave.
    """
    state, voice = book.state, listener.voice
    if decision.step is not None or voice.hints(typed, listener.own) or voice.is_safe(typed):
        return
    if not _tells_at_work(state, listener, typed):
        return
    listener.hear(typed)
    book.add(Noted(f"told at a test: {typed}"))
    yield from _whether_all_stands(state, listener, typed)


def doubt_in(
    knowledge: Knowledge,
    voice: Voice,
    state: VisitState,
    refused: Refused,
    keep: Callable[[Noted], None],
) -> Talk[None] | None:
    """The question whether all of a visit still stands, of what no question in between takes.

    None where it tells nothing, or nothing stands. `keep`: takes it as a note of that visit. What
    speaks of one step's matter is asked of that. Raises ToldGone, DangerCalled, Leave.
    """
    typed = refused.said
    if is_command(typed):
        return None
    listener = Listener(knowledge, voice, own=refused.own)
    note = Noted(f"told at a question: {typed}")
    if steps := hinted_in(knowledge, state, typed):
        keep(note)
        return _whether_these_stand(listener, typed, steps)
    if not _tells_at_work(state, listener, typed):
        return None
    keep(note)
    return _whether_all_stands(state, listener, typed)


def doubt_at(
    book: VisitBook,
    voice: Voice,
    stop_stands: Callable[[], bool],
    refused: Refused,
) -> Talk[None] | None:
    """The same of what is refused in a turn: a test, a step and an ending ask for themselves."""
    if stop_stands() or isinstance(refused.at, AskTest | DoStep | Settled | AtStop):
        return None
    return doubt_in(book.knowledge, voice, book.state, refused, book.add)


def _tells_at_work(state: VisitState, listener: Listener, typed: str) -> bool:
    """Whether it tells something where hands may be in and something stands, in whatever words."""
    if not hands_may_be_in(state) or not _standing(state):
        return False
    if _tries_a_number(typed) or tells_it_stands(typed) or tells_a_finding(typed):
        return False
    return listener.tells(typed, LEAST_TOLD) or something_happened(typed, state.name)


def _standing(state: VisitState) -> tuple[str, ...]:
    """What stands in a visit and would be voided, as it is told; empty where nothing is."""
    steps = stood_on(state, STEPS)
    return tuple(all_voided(state.work, without(state.work, steps, state.at_work)))


def _whether_these_stand(listener: Listener, typed: str, steps: tuple[str, ...]) -> Talk[None]:
    yield from whether_it_stands(listener, typed, steps)
    listener.voice.take_as_safe(typed)


def _whether_all_stands(state: VisitState, listener: Listener, typed: str) -> Talk[None]:
    steps, voice = stood_on(state, STEPS), listener.voice
    stands = ", ".join(_standing(state))
    question = YesNo(
        f'You typed "{typed}". Is nobody in danger, and does it all still stand? {stands}.'
    )
    if not (yield from answered_first(listener, question)):
        voice.ask_about(listener.knowledge, typed, is_told=True)
        raise ToldGone(typed, steps)
    voice.take_as_safe(typed)


def _tries_a_number(typed: str) -> bool:
    """Whether it is a number, mistyped or of another unit: 7,5 or 12 V; two men are none."""
    words = raw_words(typed)
    said = [word for word in words if word.isalpha()]
    return len(said) < len(words) and all(is_unit(word) or word in _AROUND for word in said)


def hands_may_be_in(state: VisitState) -> bool:
    """Whether the unit is open, or not known to be on."""
    return not (state.work.panels == "on" and state.work.power == "on")
