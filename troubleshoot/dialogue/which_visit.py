"""Which visit is held: an open one that is gone on with, or a new one of a unit that is named."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.naming import ask_name
from troubleshoot.dialogue.not_kept import danger_first
from troubleshoot.dialogue.open_visits import (
    open_on,
    say_left_open,
    whether_to_go_on,
    which_open,
)
from troubleshoot.dialogue.prompts import AskWords
from troubleshoot.dialogue.said import Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.dialogue.standing import (
    goes_on,
    meet_standing,
    met_by,
    tell_own,
    tell_unreadable,
)
from troubleshoot.dialogue.talk import Back, DangerCalled, Leave, Talk, unless_back
from troubleshoot.dialogue.told_before import heard_in_open
from troubleshoot.frozen import frozen
from troubleshoot.visit.events import Named, VisitEnded
from troubleshoot.visit.kept.stopped import Standing, Stopped
from troubleshoot.visit.kept.unit_names import same_unit
from troubleshoot.visit.telling.lapses import before_going_on

WELCOME: Final = (
    "A visit to a rooftop unit. At any question: ? for how, w for why, help for the rest.",
    "Local codes, the unit's own instructions and licensed practice come first.",
)
WHICH_UNIT: Final = AskWords(
    "Which unit? A name for the record, or Enter for none.",
    why="What a visit leaves off or stopped meets whoever names the unit next.",
)
NOTHING_YET: Final = "Nothing has been answered yet that could be taken back."
NAMED_AT_THE_START: Final = (
    "The unit was named when this was started: q, and start again with another."
)


@frozen
class Opened:
    """A book to go on in. `danger`: what was reported before there was one.

    `left`: whoever named the unit has left before the first question.
    """

    book: VisitBook
    unit: str = ""
    danger: str | None = None
    left: bool = False


def open_visit(shelf: Shelf, voice: Voice, unit: str) -> Talk[Opened | None]:
    """The book of the visit that is gone on with, or of a new one.

    None where a STOP stands over the unit and waits for its hand-over's result.
    """
    standing = tuple(shelf.standing())
    damaged = tell_unreadable(voice, standing)
    voice.say_all(shelf.not_read())
    waiting = [visit for visit in shelf.waiting() if visit not in damaged]
    if unit:  # what is open on the unit that was named comes first
        waiting.sort(key=lambda visit: not same_unit(shelf.state_of(visit).name, unit))
    choosing = _chosen(shelf, voice, standing, unit, waiting)
    return (yield from heard_in_open(shelf, voice, waiting, choosing))


def _chosen(
    shelf: Shelf, voice: Voice, standing: Sequence[Standing], unit: str, waiting: Sequence[str]
) -> Talk[Opened | None]:
    """One that is open and gone on with, or else a new one. Raises Leave."""
    while True:
        opened = yield from _go_on(shelf, voice, standing, waiting)
        if opened is not None and opened.danger is not None:
            return opened
        try:
            if opened is not None:
                return (yield from _gone_on(shelf, voice, standing, opened.book, unit))
            return (yield from _begun(shelf, voice, standing, unit, waiting))
        except Back:
            continue


def _gone_on(
    shelf: Shelf, voice: Voice, standing: Sequence[Standing], book: VisitBook, unit: str
) -> Talk[Opened | None]:
    """A visit that is gone on with, unless a STOP of another visit to its unit comes first.

    Where it broke off before it began, whoever goes on is shown what stands, as at a beginning.
    Raises Back, Leave.
    """
    name = book.state.name or unit
    stopped = met_by(shelf, voice, book.visit_id, name)
    if stopped is None and not book.begun:
        try:
            stopped = yield from meet_standing(shelf.knowledge, voice, standing, name)
        except DangerCalled as called:
            return Opened(book, name, str(called))
        except Back:
            book.close()
            raise
    if stopped is None:
        tell_own(voice, standing, book.visit_id)
        return Opened(book, name)
    book.close()
    return _at_the_stop(shelf, stopped, name)


def _begun(
    shelf: Shelf, voice: Voice, standing: Sequence[Standing], unit: str, waiting: Sequence[str]
) -> Talk[Opened | None]:
    """A new visit of a unit that is asked for, or the one that is open on it.

    Raises Back, where there is a question before.
    """
    voice.say_all(WELCOME)
    voice.say("")
    while True:
        name = unit
        try:
            if not name:
                name = yield from ask_name(Listener(shelf.knowledge, voice), WHICH_UNIT)
        except DangerCalled as called:
            return in_danger(shelf, voice, shelf.new, name, str(called))
        except Back:
            if waiting:
                raise
            voice.say(NOTHING_YET)
            continue
        try:
            stopped = yield from meet_standing(shelf.knowledge, voice, standing, name)
        except DangerCalled as called:
            return in_danger(shelf, voice, shelf.new, name, str(called))
        except Leave:
            if not name:
                raise
            return Opened(shelf.new(), name, left=True)
        except Back:
            if unit:
                voice.say(NAMED_AT_THE_START)
            continue
        if stopped is not None:
            return _at_the_stop(shelf, stopped, name)
        of_unit = "" if unit else open_on(shelf, waiting, name)
        try:
            if of_unit and (yield from whether_to_go_on(shelf, voice, of_unit)):
                return (yield from _gone_on(shelf, voice, standing, shelf.go_on(of_unit), name))
        except DangerCalled as called:
            return in_danger(shelf, voice, partial(shelf.go_on, of_unit), name, str(called))
        except Back:
            continue
        return Opened(shelf.new(), name)


def in_danger(
    shelf: Shelf, voice: Voice, opens: Callable[[], VisitBook], unit: str, said: str
) -> Opened:
    """The book to which a danger goes; where there can be none its STOP is said all the same."""
    with danger_first(shelf.knowledge, voice, unit, said):
        return Opened(opens(), unit, said)


def name_anew(shelf: Shelf, voice: Voice, book: VisitBook) -> Talk[Opened | None]:
    """The unit's name, taken back and asked for again; a STOP over the unit so named comes first.

    Raises Leave, DangerCalled.
    """
    listener = Listener(shelf.knowledge, voice)
    name = yield from unless_back(voice, NOTHING_YET, lambda: ask_name(listener, WHICH_UNIT))
    stopped = met_by(shelf, voice, book.visit_id, name)
    if stopped is None:
        book.add(Named(name))
        return Opened(book, name)
    book.add(VisitEnded("closed"))
    book.close()
    return _at_the_stop(shelf, stopped, name)


def _at_the_stop(shelf: Shelf, stopped: Standing, unit: str) -> Opened | None:
    return Opened(shelf.go_on(stopped.visit), unit) if goes_on(stopped) else None


def _go_on(
    shelf: Shelf, voice: Voice, standing: Sequence[Standing], waiting: Sequence[str]
) -> Talk[Opened | None]:
    """The open visit that the person wants to go on with, by y or its unit's name; None for none.

    A danger that is told of here belongs to the visit that is asked about.
    """
    for visit in waiting[:1]:
        state = shelf.state_of(visit)
        for line in before_going_on(state.name, state.work):
            voice.say(line, strong=True)
        for each in standing:
            if isinstance(each, Stopped) and each.visit == visit:
                voice.say(f"A STOP stands over it: {each.reason}.", strong=True)
        try:
            wanted = yield from unless_back(
                voice, NOTHING_YET, lambda: which_open(shelf, voice, waiting)
            )
        except DangerCalled as called:
            return in_danger(shelf, voice, partial(shelf.go_on, visit), "", str(called))
        if wanted:
            return Opened(shelf.go_on(wanted))
    for visit in waiting:
        say_left_open(shelf, voice, visit)
    return None
