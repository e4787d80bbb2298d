"""How a visit is begun, gone on with or reopened: from the first prompt to its turns."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.breaks import tell_break
from troubleshoot.dialogue.hearing import Listener, report_danger
from troubleshoot.dialogue.intake import ask_profiles, begin
from troubleshoot.dialogue.naming import ask_name
from troubleshoot.dialogue.prompts import AskWords, Ended
from troubleshoot.dialogue.said import CallCautions, Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.dialogue.standing import (
    goes_on,
    meet_standing,
    met_by,
    tell_own,
    tell_unreadable,
)
from troubleshoot.dialogue.talk import DangerCalled, Leave, Talk
from troubleshoot.dialogue.yes_no import YesNo, yes_no_or
from troubleshoot.outside.text import MOST_NAME
from troubleshoot.visit.events import Named
from troubleshoot.visit.kept.stopped import same_unit

if TYPE_CHECKING:
    from troubleshoot.visit.deciding.next import Decider

WELCOME = (
    "A visit to a rooftop unit. At any question: ? for how, w for why, help for the rest.",
    "Local codes, the unit's own instructions and licensed practice come first.",
)
VISIT_IS_KEPT = "The visit is kept. Start again to go on from here."
NOTHING_BEGUN = "No visit was begun."
WHICH_UNIT = AskWords("Which unit? A name for the record, or Enter for none.", MOST_NAME)


@dataclass(frozen=True, slots=True)
class Visitor:
    """What is known of a visit before anything is asked. `profiles`: empty where not said."""

    unit: str = ""
    profiles: tuple[str, ...] = ()
    routine: bool = False


def visit(shelf: Shelf, voice: Voice, visitor: Visitor) -> Talk[Ended]:
    """Go on with the open visit, or begin one."""
    book: VisitBook | None = None
    try:
        opened = yield from _opened(shelf, voice, visitor.unit)
        if opened is None:
            return Ended("kept")
        book, unit = opened.book, opened.unit
        try:
            if opened.danger is not None:
                raise DangerCalled(opened.danger)
            voice.say_all(book.notices)
            if book.begun:
                yield from _resume(book, voice, visitor.profiles)
            else:
                if unit and not book.state.name:
                    book.add(Named(unit))
                yield from begin(book, voice, unit, visitor.profiles, visitor.routine)
        except DangerCalled as called:
            yield from report_danger(book, voice, unit, str(called))
    except Leave:
        voice.say(NOTHING_BEGUN if book is None else VISIT_IS_KEPT)
        return Ended("kept")
    return (yield from turns(book, voice, shelf))


def turns(
    book: VisitBook, voice: Voice, shelf: Shelf | None = None, decider: Decider | None = None
) -> Talk[Ended]:
    """The turns of a visit that has begun. A `decider` that is there already may be shared."""
    # All that reasons is imported here: the first prompts need none of it.
    from troubleshoot.dialogue.turns import Turns
    from troubleshoot.safety.work_state import open_items
    from troubleshoot.visit.deciding.next import Decider

    decides = decider or Decider(book.knowledge)
    try:
        return (yield from Turns(book, voice, decides, shelf).run())
    except Leave:
        voice.say(VISIT_IS_KEPT)
        for item in open_items(book.state.work):
            voice.say(f"Still open on the unit: {item}", 1)
        return Ended("kept")


def reopened(book: VisitBook, voice: Voice, shelf: Shelf | None = None) -> Talk[Ended]:
    """Reopen a stopped visit on the hand-over's result, and go on. Raises NotReopened."""
    from troubleshoot.dialogue.reopening import reopen
    from troubleshoot.reasoning.conclude import Reasoner

    voice.say_all(book.notices)
    try:
        is_open = yield from reopen(book, voice, Reasoner(book.knowledge))
    except Leave:
        voice.say(VISIT_IS_KEPT)
        return Ended("kept")
    return (yield from turns(book, voice, shelf)) if is_open else Ended("kept")


@dataclass(frozen=True, slots=True)
class _Opened:
    """A book to go on in. `danger`: what was reported before there was one."""

    book: VisitBook
    unit: str = ""
    danger: str | None = None


def _opened(shelf: Shelf, voice: Voice, unit: str) -> Talk[_Opened | None]:
    """The book of the visit that is gone on with, or of a new one.

    None where a STOP stands over the unit and waits for its hand-over's result.
    """
    standing = tuple(shelf.standing())
    damaged = tell_unreadable(voice, standing)
    waiting = [visit for visit in shelf.waiting() if visit not in damaged]
    opened = yield from _go_on(shelf, voice, waiting)
    if opened is not None and opened.danger is not None:
        return opened
    book = None if opened is None else opened.book
    try:
        if book is None:
            voice.say_all(WELCOME)
            voice.say("")
            unit = unit or (yield from ask_name(Listener(shelf.knowledge, voice), WHICH_UNIT))
            stopped = yield from meet_standing(shelf.knowledge, voice, standing, unit)
        else:
            unit = book.state.name or unit
            stopped = met_by(shelf, voice, book.visit_id, unit)
    except DangerCalled as called:
        return _Opened(shelf.new(), unit, str(called))
    if stopped is not None:
        if book is not None:
            book.close()
        return _Opened(shelf.go_on(stopped.visit), unit) if goes_on(stopped) else None
    if book is not None:
        tell_own(voice, standing, book.visit_id)
    return _Opened(book or shelf.new(), unit)


def _go_on(shelf: Shelf, voice: Voice, waiting: Sequence[str]) -> Talk[_Opened | None]:
    """The open visit that the person wants to go on with, by y or its unit's name; None for none.

    A danger that is told of here belongs to the visit that is asked about.
    """
    for visit in waiting[:1]:
        try:
            wanted = yield from _which_open(shelf, voice, waiting)
        except DangerCalled as called:
            return _Opened(shelf.go_on(visit), danger=str(called))
        if wanted:
            return _Opened(shelf.go_on(wanted))
    for visit in waiting:
        _say_left_open(shelf, voice, visit)
    return None


def _which_open(shelf: Shelf, voice: Voice, waiting: Sequence[str]) -> Talk[str]:
    """The open visit that is gone on with; empty for none. Raises DangerCalled."""
    question = YesNo(
        f"Visit {waiting[0]} is open. Go on with it?",
        enter=True,
        besides="the name of a unit whose visit is open",
    )

    def named(typed: str) -> str | None:
        of_unit = (v for v in waiting if same_unit(shelf.state_of(v).name, typed))
        return next(of_unit, None)

    wanted = yield from yes_no_or(Listener(shelf.knowledge, voice), question, named)
    if isinstance(wanted, str):
        return wanted
    return waiting[0] if wanted else ""


def _say_left_open(shelf: Shelf, voice: Voice, visit: str) -> None:
    """What a visit that is not gone on with has left on its unit, in one line; else nothing."""
    from troubleshoot.safety.work_state import open_items

    state = shelf.state_of(visit)
    left = open_items(state.work)
    if left:
        unit = f", {state.name}" if state.name else ""
        voice.say(f"Visit {visit}{unit}, stays open. Left there: {'; '.join(left)}.")


def _resume(book: VisitBook, voice: Voice, profiles: tuple[str, ...]) -> Talk[None]:
    """Whoever goes on says who they are; what others could have changed since is asked again."""
    book.watch_the_clock()
    tell_break(book, voice)
    book.resume(profiles or (yield from ask_profiles(book.knowledge, voice)))
    voice.say("Going on. States that others could have changed are asked again.")
    call = book.knowledge.complaints.get(book.state.complaint or "")
    if not book.state.closing and call is not None:
        voice.tell(CallCautions(call))
