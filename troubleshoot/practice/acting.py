"""Doing something to a unit that moves, and what is remembered of it.

A deed needs what the reading needs that it is done by, and hands go in only where the work state
has what the repair wants. A part that is changed without a
reading that separates its fault from the rivals is remembered as changed on a guess.
"""

from __future__ import annotations

from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard
from troubleshoot.practice.answering import AnsweringUnit
from troubleshoot.practice.deeds import Acted, Deed
from troubleshoot.practice.moving import moved
from troubleshoot.practice.played import Stopped
from troubleshoot.practice.reasoned import is_reasoned
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.session import Session
from troubleshoot.practice.slips import GRAVE_NEEDS, Slip
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety import guards
from troubleshoot.safety.before_repair import caution_before, is_ours
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.guards import unmet
from troubleshoot.safety.needs import for_dead_work
from troubleshoot.safety.profiles import required
from troubleshoot.safety.profiles import spoken as spoken_profiles
from troubleshoot.visit.events import Repaired

LOCKED_OUT: Final = GRAVE_NEEDS[guards.power_is_locked_out]
"""What to read about, once hands went in without it."""


@frozen
class HandedOver:
    """A repair that nobody does on the roof: the unit is tagged out and handed over."""

    deed: Deed


def cautions_of_deed(session: Session, deed: Deed) -> tuple[tuple[Hazard, ...], str]:
    """What is said before a deed: the cautions of the reading it is done by, and what its repair
    wants, in a line that may be empty.
    """
    if deed.read_by is None:
        return (), caution_before(deed.fault)
    return cautions_before(session.knowledge, session.state, deed.read_by), ""


def who_does(deed: Deed) -> str:
    """Who alone may do a deed, as a phrase."""
    asked = {*deed.fault.repair.who} if deed.read_by is None else required(deed.read_by)
    return spoken_profiles(asked)


def _lacking(session: Session, deed: Deed, at: Place | None) -> Slip | None:
    """What the work state lacks for a deed: never less than for the reading it is done by."""
    if deed.read_by is not None:
        return session.lacking(deed.read_by, at, deed.said)
    work, unit = session.state.work, session.state.at_work
    words = caution_before(deed.fault, work, unit, spoken(at))
    missing = (words.removeprefix("WARNING - ").rstrip("."),) if words else ()
    if is_ours(deed.fault):
        missing = (*missing, *unmet(work, for_dead_work(unit)))
    return Slip(deed.said, missing, missing[0], LOCKED_OUT) if missing else None


def act(session: Session, deed: Deed, at: Place | None) -> Acted | Stopped | HandedOver:
    """Do a deed, or say what stops it; the unit answers as it then is."""
    stop = session.standing_stop()
    if stop is not None:
        return session.slipped(
            Slip(deed.said, (stop.hazard.what_to_do,), stop.hazard.what_to_do, stop.hazard.id, True)
        )
    if deed.fault.repair.hand_over:
        return HandedOver(deed)
    if (slip := _lacking(session, deed, at)) is not None:
        return session.slipped(slip)
    called = (TrueFault(deed.fault.id, at),)
    reasoner = session.decider.reasoner
    guessed = bool(deed.makes) or not is_reasoned(
        reasoner, session.start, session.conclusions, called, session.unit.scenario.truth.faults
    )
    before = session.unit.scenario
    after = moved(reasoner, before, deed, at)
    fewer = len(after.truth.faults) < len(before.truth.faults)
    done = Acted(deed, at, fewer and not deed.makes, guessed)
    session.acted(done, AnsweringUnit(reasoner, after))
    if deed.mends:
        session.add(Repaired(deed.mends))
    return done
