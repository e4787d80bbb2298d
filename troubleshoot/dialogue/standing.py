"""STOPs that stand over a unit from earlier visits: they meet whoever names it next."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Final

from troubleshoot.dialogue.book import VisitBook
from troubleshoot.dialogue.hearing import Listener
from troubleshoot.dialogue.like_names import which_of_like_name
from troubleshoot.dialogue.said import StopElsewhere, Voice
from troubleshoot.dialogue.shelf import Shelf
from troubleshoot.dialogue.talk import Talk
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import LeftBefore
from troubleshoot.visit.kept.stopped import Standing, Stopped, stops_unit
from troubleshoot.visit.kept.unit_names import same_unit
from troubleshoot.visit.kept.unreadable import Unreadable

OPEN_ELSEWHERE: Final = (
    "Visit {visit} to this unit is open in another window: its work and its STOPs are of here too."
)
MET_ELSEWHERE: Final = "A STOP was met over this unit in another window, in visit {visit}."


def met_by(shelf: Shelf, voice: Voice, visit: str, unit: str) -> Standing | None:
    """The STOP of another visit to the unit of this one, told; none where there is none.

    A visit may have been begun before that STOP, or be named after its unit only later.
    """
    return _told_of_unit(voice, _over(unit, shelf.standing(but=visit)))


def met_meanwhile(shelf: Shelf, voice: Voice, book: VisitBook) -> bool:
    """Whether a STOP was met over the unit of this visit in another window, told here at once."""
    found = shelf.met_meanwhile(book.state.name, book.visit_id) if book.state.name else ()
    for each in found:
        voice.say(MET_ELSEWHERE.format(visit=each.visit), strong=True)
        if isinstance(each, Unreadable):
            _say_unreadable(voice, each)
        else:
            voice.tell(StopElsewhere(each))
    return bool(found)


def tell_unreadable(voice: Voice, standing: Iterable[Standing]) -> frozenset[str]:
    """Tell of every visit that cannot be read, by its name: a STOP may stand over it."""
    damaged = [each for each in standing if isinstance(each, Unreadable)]
    for each in damaged:
        _say_unreadable(voice, each)
    return frozenset(each.visit for each in damaged)


def tell_own(voice: Voice, standing: Iterable[Standing], visit: str) -> None:
    """Tell of the STOP that stands in a visit which is gone on with, before anything is asked."""
    for each in standing:
        if isinstance(each, Stopped) and each.visit == visit:
            voice.tell(StopElsewhere(each))


def tell_left_before(shelf: Shelf, voice: Voice, book: VisitBook, unit: str) -> None:
    """Tell what earlier visits left off on the unit, before any step, and put it on record.

    So it stands in this visit too, until it is read sound here. A visit to it that is open
    elsewhere is told of before.
    """
    for visit in shelf.elsewhere(unit, book.visit_id) if unit else ():
        voice.say(OPEN_ELSEWHERE.format(visit=visit), strong=True)
    before = shelf.left_before(unit, book.visit_id) if unit else None
    told = LeftBefore(())
    if before:
        told = LeftBefore(before.lines, before.dangers, before.cock, before.plugs)
    for line in told.lines:
        voice.say(line, strong=True)
    if (told.lines, told.dangers) != (book.state.left_before, book.state.left_on):
        book.add(told)


def tell_of_unit(shelf: Shelf, voice: Voice, book: VisitBook, unit: str) -> None:
    """Tell what stands over a unit and what was left off on it, where a visit is named late."""
    for each in _over(unit, shelf.standing(but=book.visit_id)):
        if isinstance(each, Stopped):
            _say_it_stops_too(voice, each)
            voice.tell(StopElsewhere(each))
        else:
            _say_unreadable(voice, each)
    tell_left_before(shelf, voice, book, unit)


def meet_standing(
    knowledge: Knowledge, voice: Voice, found: Iterable[Standing], unit: str
) -> Talk[Standing | None]:
    """The STOP that stands over this unit, told; none where it is another unit's or there is none.

    A name may be mistyped and a visit may have none, so whoever begins is told what stands, and
    asked about what may be meant. Raises Back, Leave, DangerCalled.
    """
    standing = tuple(filter(stops_unit, found))
    of_unit = _over(unit, standing)
    if of_unit:
        return _told_of_unit(voice, of_unit)
    if not standing:
        return None
    which = yield from which_of_like_name(Listener(knowledge, voice), standing, unit)
    return None if which is None else told(voice, which)


def _over(unit: str, standing: Iterable[Standing]) -> tuple[Standing, ...]:
    """Those of all that stand that stop this unit."""
    return tuple(each for each in standing if stops_unit(each) and same_unit(each.unit, unit))


def _say_it_stops_too(voice: Voice, standing: Standing) -> None:
    voice.say(f"Visit {standing.visit} stops it too: {standing.reason}.", strong=True)


def _told_of_unit(voice: Voice, standing: Sequence[Standing]) -> Standing | None:
    """Tell of what stands over one unit: the last visit's whole, of each other one a line."""
    if not standing:
        return None
    first, *others = standing
    for each in others:
        _say_it_stops_too(voice, each)
    return told(voice, first)


def goes_on(standing: Standing) -> bool:
    """Whether the visit of a STOP is gone on with: not where it was handed over or is damaged."""
    return not isinstance(standing, Unreadable) and not standing.over


def told(voice: Voice, standing: Standing) -> Standing:
    """Tell of a STOP that stands over a unit from an earlier visit, and how that visit goes on."""
    if isinstance(standing, Unreadable):
        voice.say("DANGER - STOP", strong=True)
        _say_unreadable(voice, standing)
        return standing
    voice.tell(StopElsewhere(standing))
    if standing.over:
        voice.say(
            f"Visit {standing.visit} was handed over at this STOP. Once it has been made safe it "
            f"goes on by: troubleshoot reopen {standing.visit}"
        )
    else:
        voice.say(f"Going on with visit {standing.visit}, where it stands.")
    return standing


def _say_unreadable(voice: Voice, standing: Unreadable) -> None:
    head, *more = standing.lines
    voice.say(head, strong=True)
    voice.say_all(more, 1)
