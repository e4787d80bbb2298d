"""A visit that broke off behind the words of its call, before anything was made of them.

A danger that they tell stands, though its record was never written: whoever goes on, lists what is
kept or names the unit takes it from here.
"""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.hearing.dangers import spoken_of
from troubleshoot.safety.hearing.reporting import reported
from troubleshoot.visit.events import Called, DangerReported, Event, Started, after
from troubleshoot.visit.state import VisitState


def words_of_danger(knowledge: Knowledge, events: tuple[Event, ...]) -> str:
    """The words of such a call where they tell a danger; empty where they do not, or it began."""
    if any(isinstance(event, Started | DangerReported) for event in events):
        return ""
    words = next((event.words for event in reversed(events) if isinstance(event, Called)), "")
    return words if spoken_of(knowledge, words) else ""


def with_danger_told(
    knowledge: Knowledge, state: VisitState, events: tuple[Event, ...]
) -> VisitState:
    """The state of such a visit with the danger that its words tell."""
    words = words_of_danger(knowledge, events)
    for danger in danger_told(knowledge, words) if words else ():
        state = after(knowledge, state, danger)
    return state


def danger_told(knowledge: Knowledge, said: str) -> tuple[Event, ...]:
    """A danger as it is put into a book: of several the gravest last, which is told of first.

    One that was called without a word is one too.
    """
    found = reversed(reported(knowledge, said))
    return tuple(DangerReported.of(hazard, said) for hazard in found)
