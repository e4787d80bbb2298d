"""Going on with a stopped visit, on the hand-over's result."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hand_over_result import Result, ask_result
from troubleshoot.dialogue.intake import ask_profiles
from troubleshoot.dialogue.reporting_danger import report_danger
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk, unless_back
from troubleshoot.dialogue.which_visit import NOTHING_YET
from troubleshoot.knowledge.model import Hazard
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.safety.profiles import APPRENTICE
from troubleshoot.safety.stops.lifting import conclude_visit
from troubleshoot.safety.stops.record import StopMet
from troubleshoot.safety.stops.reopening import still_waiting, what_stopped
from troubleshoot.visit.events import Reopened

NOT_BY_AN_APPRENTICE = (
    "The visit stays closed: an apprentice takes no hand-over back. Ask the supervising technician "
    "to reopen it."
)


def reopen(book: VisitBook, voice: Voice, reasoner: Reasoner) -> Talk[bool]:
    """Ask for the hand-over's result and reopen the visit; False where it stays closed.

    A danger that is told of meanwhile opens it again, and stops it. Raises NotReopened where
    nothing can reopen it.
    """
    knowledge, state = reasoner.knowledge, book.state
    hazard, spot = what_stopped(knowledge, state, conclude_visit(reasoner, state))
    _say_what_stopped(book, voice, hazard)
    met = StopMet(hazard.id, 0, spot)
    if state.stops:  # of all that stopped it the last was handed over
        last = state.stops[-1]
        since = last.first_time if last.hazard == hazard.id else ""
        met = replace(met, time=last.time, told=last.told, told_at=last.told_at, first_time=since)
    if waiting := still_waiting(knowledge, met, book.now()):
        voice.say(f"The visit stays closed: {waiting}")
        return False
    try:
        profiles = yield from unless_back(
            voice, NOTHING_YET, lambda: ask_profiles(knowledge, voice)
        )
        if APPRENTICE in profiles:
            voice.say(NOT_BY_AN_APPRENTICE)
            return False
        voice.say("What came of it? q leaves the visit closed.")
        result: Result | None = yield from ask_result(book, voice, met)
    except DangerCalled as called:
        yield from report_danger(book, voice, "", str(called))
        return True
    except Leave:
        result = None
    if result is None:
        voice.say(
            "The visit stays closed: it is reopened only with all of the hand-over's result. "
            f"What was given is kept. When you have the rest: troubleshoot reopen {book.visit_id}"
        )
        return False
    book.add(Reopened.on(hazard.id, result.told, spot, profiles, result.called, result.said_yes_to))
    voice.say(
        f"Reopened. The STOP still stands: {knowledge.tests[spot[0]].name} comes first and decides."
    )
    voice.say("States that others could have changed are asked again.")
    return True


def _say_what_stopped(book: VisitBook, voice: Voice, hazard: Hazard) -> None:
    name = f", {book.state.name}," if book.state.name else ""
    reason = hazard.spoken
    voice.say(f"Visit {book.visit_id}{name} was stopped: {reason}.", strong=True)
    voice.say(f"It was for: {hazard.defer_to}.", 1)
    for met in book.state.stops[-1:]:
        if met.told:
            voice.say(f"Told: {met.told}", 1)
