"""A STOP in a visit: take the finding afresh where that may lift it, else hand over."""

from __future__ import annotations

from troubleshoot.dialogue.asked_outright import is_said_yes_to
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hand_over_result import ask_remedy
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.intake import ask_profiles
from troubleshoot.dialogue.naming import ask_name
from troubleshoot.dialogue.prompts import AskWords, AtStop, Ended
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.dialogue.standing import tell_of_unit
from troubleshoot.dialogue.talk import Back, Talk, unless_back
from troubleshoot.dialogue.who_was_told import ask_told
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.safety.hazard_words import also_stands
from troubleshoot.safety.stops.afresh import taken_by
from troubleshoot.safety.stops.lifting import finding_of, lifting_finding
from troubleshoot.safety.stops.outright import asked_of_what_was_done
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.stops.reopening import minute, still_waiting
from troubleshoot.safety.stops.standing import beside
from troubleshoot.safety.stops.tags import tag_lines
from troubleshoot.safety.work_state import open_items
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import (
    Halted,
    Named,
    Reopened,
    Resumed,
    TakenAfresh,
    VisitEnded,
)

WHAT_WAS_DONE = "What was done to make it safe?"
WHICH_UNIT = "Which unit is it? Its name meets whoever comes next"

NO_UNDO = "Undo never reaches past a STOP."
NO_WAY_BACK = f"{NO_UNDO} Give the name, or Enter for none."


def stopped(
    book: VisitBook,
    voice: Voice,
    decision: Decision,
    conclusions: Conclusions,
    shelf: Shelf | None = None,
) -> Talk[Ended | None]:
    """Tell of a STOP and take what is done about it; None where the visit goes on.

    `shelf`: where the unit's other visits are kept, if anywhere.
    """
    fired = decision.stop
    assert fired is not None
    keep_stop(book, conclusions, fired)
    prompt, spot = _prompt(book, voice, conclusions, fired)
    standing = {stop.hazard.id for stop in conclusions.standing_stops}
    listener = Listener(book.knowledge, voice, standing)
    while True:
        typed = yield prompt
        book.watch_the_clock()
        if not isinstance(typed, str):
            book.add(typed)
            return None
        word = typed.lower()
        reply = "again, over, or q." if spot is not None else "over, or q."
        try:
            if word == "over":
                return (yield from _hand_over(book, voice, listener, prompt, shelf))
            if word == "again" and spot is not None:
                if (yield from _again(book, listener, spot)):
                    return None
            elif word in ("u", "undo"):
                voice.say(f"{NO_UNDO} {reply}")
            else:
                listener.not_understood(typed, reply)
        except Back:
            voice.say(reply)


def _again(book: VisitBook, listener: Listener, spot: Spot) -> Talk[bool]:
    """Take the finding afresh, once it is said what was done; False where it has to wait.

    Nor is it taken where a safety device is not in place. Of what was handed over all that has been
    told by whoever brings it back. Who it is is asked where the danger came before that question.
    Raises Back, Leave, DangerCalled.
    """
    met = book.state.stops[-1]
    if waiting := still_waiting(book.knowledge, met, book.now()):
        listener.voice.say(waiting)
        return False
    hazard = book.knowledge.hazards[met.hazard]
    if not _who_was_asked(book):
        book.resume((yield from ask_profiles(book.knowledge, listener.voice)))
        if taken_by(book.knowledge, book.state, spot):
            return True
    done, asked = "", None
    if not met.reopened:
        if not (done := (yield from ask_remedy(listener, WHAT_WAS_DONE, hazard))):
            return False
        asked = asked_of_what_was_done(hazard)
    if asked is not None and not (yield from is_said_yes_to(listener, asked)):
        return False
    book.add(TakenAfresh.of(spot, done, () if asked is None else (asked.question,)))
    return True


def _who_was_asked(book: VisitBook) -> bool:
    """Whether it is known who this is: not where a danger was told before anybody was asked."""
    later = (e for e in book.events if isinstance(e, Resumed | Reopened))
    return book.state.complaint is not None or any(e.profiles is not None for e in later)


def keep_stop(book: VisitBook, conclusions: Conclusions, fired: FiredHazard) -> None:
    """A STOP is kept when it is first met, and when something has been answered since.

    One that was reopened and broke off on the way to what lifts it is no new one.
    """
    met = book.state.stops[-1:]
    is_reopened = met and met[0].reopened and met[0].hazard == fired.hazard.id
    if is_reopened and lifting_finding(book.knowledge, book.state, conclusions, fired) is not None:
        return
    if not met or (met[0].hazard, met[0].answers) != (fired.hazard.id, len(book.state.answers)):
        spot = finding_of(book.knowledge, book.state, conclusions, fired)
        book.add(Halted.over(fired.hazard.id, spot))


def _prompt(
    book: VisitBook, voice: Voice, conclusions: Conclusions, fired: FiredHazard
) -> tuple[AtStop, Spot | None]:
    """The STOP as it is told, and the finding that this person may take afresh."""
    gone, voice.gone_with_it = voice.gone_with_it, ()
    knowledge, state = book.knowledge, book.state
    tag = tag_lines(knowledge, state, conclusions, fired)
    others = tuple(map(also_stands, beside(conclusions, fired)))
    spot = lifting_finding(knowledge, state, conclusions, fired)
    if spot is None:
        return AtStop(fired, tag, others, gone=gone), None
    name = knowledge.tests[spot[0]].name
    beyond = taken_by(knowledge, state, spot)
    return AtStop(fired, tag, others, name, beyond, gone), None if beyond else spot


def _hand_over(
    book: VisitBook, voice: Voice, listener: Listener, stop: AtStop, shelf: Shelf | None
) -> Talk[Ended]:
    """Ask who was told, and close the visit. Raises Back, Leave, DangerCalled.

    Until somebody is told the visit stays open, its STOP standing.
    """
    if not book.state.name:
        prompt = AskWords(WHICH_UNIT, repeated=True)
        name = yield from unless_back(voice, NO_WAY_BACK, lambda: ask_name(listener, prompt))
        if name:
            book.add(Named(name))
            if shelf is not None:
                tell_of_unit(shelf, voice, book, name)
    told = yield from ask_told(book, listener, stop.fired.hazard)
    book.add(VisitEnded("stopped", told, minute(book.now())))
    voice.say("The visit is closed as stopped.")
    for line in stop.others:
        voice.say(line, strong=True)
    for item in open_items(book.state.work):
        voice.say(f"Still open on the unit: {item}", 1)
    voice.say(
        "When whoever took it over has made it safe, go on with: "
        f"troubleshoot reopen {book.visit_id}"
    )
    return Ended("handed-over")
