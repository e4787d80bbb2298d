"""An event that cannot be kept: what it stops or warns of is said before that it failed.

A full disk, a full journal or a folder taken away ends the visit, and hides no danger.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Final

from troubleshoot.dialogue.book import Unkept, VisitBook
from troubleshoot.dialogue.reporting_danger import NOT_ON_RECORD, begun_in_danger
from troubleshoot.dialogue.said import Danger, StopNow, Voice
from troubleshoot.visit.events import Called, DangerReported, Noted, after
from troubleshoot.visit.kept.broken_off import danger_told
from troubleshoot.visit.kept.journal import JournalGone
from troubleshoot.visit.state import VisitState

if TYPE_CHECKING:  # what reasons is imported once something has failed: no start needs it
    from troubleshoot.knowledge.model import Hazard, Knowledge

VISIT_IS_KEPT: Final = "The visit is kept. Start again to go on from here."
WARNING_NOT_ON_RECORD: Final = "This is not on record: tell whoever comes next in person."


@contextmanager
def dangers_first(book: VisitBook, voice: Voice) -> Iterator[None]:
    """Say what an event that cannot be kept would have stopped or warned of; the failure goes on.

    Raises what the storage raises.
    """
    try:
        yield
    except Exception as error:
        if book.unkept is not None:
            kept = VisitState() if isinstance(error, JournalGone) else book.state
            _tell(book.knowledge, voice, kept, _as_told(book.knowledge, book.unkept))
        raise


def say_it_is_kept(book: VisitBook, voice: Voice) -> None:
    """Say so to whoever leaves, once it is seen to be so. Raises what the storage raises."""
    with dangers_first(book, voice):
        book.confirm_kept()
    voice.say(VISIT_IS_KEPT)


@contextmanager
def danger_first(knowledge: Knowledge, voice: Voice, name: str, said: str) -> Iterator[None]:
    """The same for a danger that somebody tells before there is a visit to keep it in."""
    try:
        yield
    except Exception:
        state = VisitState()
        for event in (*begun_in_danger(name), *danger_told(knowledge, said)):
            state = after(knowledge, state, event)
        _tell(knowledge, voice, VisitState(), state)
        raise


def _tell(knowledge: Knowledge, voice: Voice, before: VisitState, state: VisitState) -> None:
    """The STOP that stands, or else the cautions that are new, and what is left open.

    `before`: the visit as far as it is kept.
    """
    from troubleshoot.reasoning.conclude import Reasoner
    from troubleshoot.safety.stops.lifting import conclude_visit, standing_stop
    from troubleshoot.safety.stops.standing import beside, called_up
    from troubleshoot.safety.stops.tags import tag_lines
    from troubleshoot.safety.work_state import open_items

    reasoner = Reasoner(knowledge)
    kept, found = conclude_visit(reasoner, before), conclude_visit(reasoner, state)
    fired = standing_stop(knowledge, state, found)
    if fired is not None:
        tag = tag_lines(knowledge, state, found, fired)
        voice.tell(StopNow(fired, tag, beside(found, fired)))
        on_record = {each.hazard.id for each in kept.standing_stops}
        if fired.hazard.id not in on_record:
            voice.say(NOT_ON_RECORD, strong=True)
    else:
        known = {each.hazard.id for each in kept.hazards}
        new = [each for each in found.hazards if each.hazard.id not in known]
        for each in new:
            voice.tell(Danger(called_up(found, each)))
        if new:
            voice.say(WARNING_NOT_ON_RECORD, strong=True)
    for item in open_items(state.work):
        voice.say(f"Still open on the unit: {item}", 1)


def _as_told(knowledge: Knowledge, unkept: Unkept) -> VisitState:
    """What the visit would have come to, with the dangers that the words themselves tell."""
    from troubleshoot.safety.hearing.among_words import told_among
    from troubleshoot.safety.hearing.dangers import spoken_of

    state = unkept.state
    for event in unkept.events:
        heard: tuple[Hazard, ...] = ()
        if isinstance(event, Called):
            heard, words = spoken_of(knowledge, event.words), event.words
        elif isinstance(event, Noted):
            told, words = told_among(knowledge, event.text), event.text
            heard = tuple(hazard for hazard in told if hazard.stops_the_job)
        for hazard in reversed(heard):
            state = after(knowledge, state, DangerReported.of(hazard, words))
    return state
