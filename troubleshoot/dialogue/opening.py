"""How a visit is begun, gone on with or reopened: from the first prompt to its turns."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

from troubleshoot.dialogue.asides import holds_notes, takes_notes
from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.breaks import tell_break
from troubleshoot.dialogue.intake import ask_of_the_round, ask_profiles, begin
from troubleshoot.dialogue.not_kept import dangers_first, say_it_is_kept
from troubleshoot.dialogue.on_record import tell_on_record
from troubleshoot.dialogue.prompts import Ended
from troubleshoot.dialogue.reporting_danger import report_danger
from troubleshoot.dialogue.said import CallCautions, Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.dialogue.standing import tell_left_before
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk, unless_back
from troubleshoot.dialogue.told_before import heard_in_book
from troubleshoot.dialogue.which_visit import (
    NAMED_AT_THE_START,
    NOTHING_YET,
    Opened,
    in_danger,
    name_anew,
    open_visit,
)
from troubleshoot.frozen import frozen
from troubleshoot.visit.events import (
    FromRegister,
    InstrumentsListed,
    LeftBefore,
    Named,
    Noted,
    StateGone,
    VisitEnded,
    replay,
)
from troubleshoot.visit.kept.broken_off import words_of_danger
from troubleshoot.visit.telling.lapses import all_voided

if TYPE_CHECKING:
    from troubleshoot.visit.deciding.next import Decider

NOTHING_BEGUN = "No visit was begun."
ASKED_AGAIN = "States that others could have changed are asked again."
STILL_COUNTS = "You were not away for long: what was done and proved still counts."
TOLD_AS_GONE = "Told as gone, and asked again"
OF_RECORDS = (Named, LeftBefore, FromRegister, InstrumentsListed)
"""What is kept of a visit before anybody has told anything but the unit's name."""


@frozen
class Visitor:
    """What is known of a visit before anything is asked. `profiles`: empty where not said."""

    unit: str = ""
    profiles: tuple[str, ...] = ()
    routine: bool = False


def visit(shelf: Shelf, voice: Voice, visitor: Visitor) -> Talk[Ended]:
    """Go on with the open visit, or begin one."""
    opened: Opened | None = None
    notes = holds_notes(shelf.knowledge, voice)
    try:
        opened = yield from open_visit(shelf, voice, visitor.unit)
        book = None
        if opened is not None:
            book = yield from _led_in(shelf, voice, opened, visitor, notes)
    except Leave:
        kept = None if opened is None else opened.book
        if kept is None and notes:
            kept = shelf.new()
            _keep_told(kept, "", notes)
        if opened is not None and not opened.left and _holds_nothing(opened.book):
            opened.book.add(VisitEnded("closed"))
            kept = None
        if kept is None:
            voice.say(NOTHING_BEGUN)
        else:
            say_it_is_kept(kept, voice)
        return Ended("kept")
    return Ended("kept") if book is None else (yield from turns(book, voice, shelf))


def begun_in_danger(shelf: Shelf, voice: Voice, unit: str, said: str) -> Talk[Ended]:
    """A visit that begins with a danger which was told where no visit was held."""
    opened = in_danger(shelf, voice, shelf.new, unit, said)
    try:
        book = yield from _led_in(shelf, voice, opened, Visitor(unit))
    except Leave:
        say_it_is_kept(opened.book, voice)
        return Ended("kept")
    return Ended("kept") if book is None else (yield from turns(book, voice, shelf))


def _holds_nothing(book: VisitBook) -> bool:
    """Whether a book has no more than its unit's name: nobody wants to go on with that."""
    return all(isinstance(event, OF_RECORDS) for event in book.events)


def _keep_told(book: VisitBook, unit: str, notes: Sequence[str]) -> None:
    """Put into a book what was told before there was one: the unit's name, and notes."""
    for note in notes:
        book.add(Noted(note))
    if unit and not book.state.name:
        book.add(Named(unit))


def _led_in(
    shelf: Shelf, voice: Voice, opened: Opened, visitor: Visitor, notes: Sequence[str] = ()
) -> Talk[VisitBook | None]:
    """From a book to its turns, or those of another visit where the name is taken back.

    `notes`: given before there was a book. None where a STOP of another visit comes first. Raises
    Leave.
    """
    with dangers_first(opened.book, voice):
        return (yield from _to_its_turns(shelf, voice, opened, visitor, notes))


def _to_its_turns(
    shelf: Shelf, voice: Voice, opened: Opened, visitor: Visitor, notes: Sequence[str]
) -> Talk[VisitBook | None]:
    book, unit = opened.book, opened.unit
    takes_notes(book, voice)
    voice.commands = partial(_serve_before, book, voice)
    _keep_told(book, "" if book.begun else unit, notes)
    if opened.left:
        raise Leave
    try:
        if opened.danger is not None:
            raise DangerCalled(opened.danger)
        voice.say_all(book.notices)
        if book.begun:
            tell_left_before(shelf, voice, book, unit)
            yield from heard_in_book(book, voice, _resume(book, voice, visitor.profiles))
            return book
        if danger := words_of_danger(book.knowledge, tuple(book.events)):
            raise DangerCalled(danger)
        if words := book.state.words:
            voice.say(f'Before it broke off, the caller\'s words were: "{words}"')
        while True:
            tell_left_before(shelf, voice, book, unit)
            tell_on_record(shelf, voice, book, unit)
            try:
                yield from begin(book, voice, unit, visitor.profiles, visitor.routine, words)
                return book
            except Back:
                if visitor.unit:
                    voice.say(NAMED_AT_THE_START)
                    continue
            another = yield from name_anew(shelf, voice, book)
            if another is None:
                return None
            if another.book is not book:
                return (yield from _led_in(shelf, voice, another, visitor))
            unit = another.unit
    except DangerCalled as called:
        yield from report_danger(book, voice, unit, str(called))
        return book


def _serve_before(book: VisitBook, voice: Voice, typed: str) -> Talk[bool]:
    """Serve a command at the first questions, once a visit has begun; False before."""
    if not book.begun:
        return False
    from troubleshoot.dialogue.commands import Commands
    from troubleshoot.visit.deciding.next import Decider

    return (yield from Commands(book, voice, Decider(book.knowledge)).serve_beside(typed))


def turns(
    book: VisitBook, voice: Voice, shelf: Shelf | None = None, decider: Decider | None = None
) -> Talk[Ended]:
    """The turns of a visit that has begun. A `decider` that is there already may be shared."""
    # All that reasons is imported here: the first prompts need none of it.
    from troubleshoot.dialogue.turns import Turns
    from troubleshoot.safety.work_state import open_items
    from troubleshoot.visit.deciding.next import Decider

    decides = decider or Decider(book.knowledge)
    takes_notes(book, voice)
    try:
        with dangers_first(book, voice):
            return (yield from Turns(book, voice, decides, shelf).run())
    except Leave:
        say_it_is_kept(book, voice)
        for item in open_items(book.state.work):
            voice.say(f"Still open on the unit: {item}", 1)
        return Ended("kept")


def reopened(book: VisitBook, voice: Voice, shelf: Shelf | None = None) -> Talk[Ended]:
    """Reopen a stopped visit on the hand-over's result, and go on. Raises NotReopened."""
    from troubleshoot.dialogue.reopening import reopen
    from troubleshoot.reasoning.conclude import Reasoner

    voice.say_all(book.notices)
    takes_notes(book, voice)
    try:
        with dangers_first(book, voice):
            is_open = yield from reopen(book, voice, Reasoner(book.knowledge))
    except Leave:
        say_it_is_kept(book, voice)
        return Ended("kept")
    if not is_open:
        return Ended("kept")
    if shelf is not None:
        tell_left_before(shelf, voice, book, book.state.name)
    return (yield from turns(book, voice, shelf))


def _told_last(book: VisitBook) -> int:
    """From which of its events on nothing is kept but what was told as gone, and notes."""
    at = len(book.events)
    while at and isinstance(book.events[at - 1], StateGone | Noted):
        at -= 1
    return at


def _told_as_gone(book: VisitBook, told_from: int) -> str:
    """What counts no more since a state was told as gone there; empty where none was."""
    if not any(isinstance(event, StateGone) for event in book.events[told_from:]):
        return ""
    before = replay(book.knowledge, book.events[:told_from])
    return f"{TOLD_AS_GONE}: {', '.join(all_voided(before.work, book.state.work))}."


def _resume(book: VisitBook, voice: Voice, profiles: tuple[str, ...]) -> Talk[None]:
    """Whoever goes on says who they are; what others could have changed since is asked again."""
    before = book.state.work
    told_from = _told_last(book)
    book.watch_the_clock()
    tell_break(book, voice)
    asked = unless_back(voice, NOTHING_YET, lambda: ask_profiles(book.knowledge, voice))
    book.resume(profiles or (yield from asked))
    told = _told_as_gone(book, told_from)
    voided = book.state.work != before
    voice.say(f"Going on. {told or (ASKED_AGAIN if voided else STILL_COUNTS)}")
    state = book.state
    call = book.knowledge.complaints.get(state.complaint or "")
    if not state.closing and call is not None:
        voice.tell(CallCautions(call))
    if state.routine and not (state.asked or state.stops or state.closing):
        yield from unless_back(voice, NOTHING_YET, lambda: ask_of_the_round(book, voice))
