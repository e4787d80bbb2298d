"""What the readings of a play told, in numbers, in the lines of its debrief."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.practice.lessons import decided, invited_belief, told_by_readings
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.unit.places import Place, with_place
from troubleshoot.visit.telling.wording import counted, percent


def readings_told(session: Session) -> Iterator[str]:
    """What the kind of call invites, what each reading moved, and when the case was decided."""
    belief = invited_belief(session)
    if belief is not None:
        kind = session.knowledge.complaints[session.scenario.complaint].says
        first = f"{belief.fault.name} ({percent(belief.probability)})"
        yield f'Behind calls of the kind "{kind}", before a word more: {first}'
    yield from _moved(session)
    moment = decided(session)
    if moment is not None:
        name = _named(session, moment.done.test.per, moment.done.test.name, moment.done.at)
        after = counted(moment.tests_after, "test", "tests")
        yield f"Decided by {name}, at {moment.minutes:.0f} min; {after} after it."
    elif session.done and not session.stopped:
        yield "Nothing that you read had decided it."


def _moved(session: Session) -> Iterator[str]:
    """The chance of what is true, before and after each reading that moved it."""
    told = list(told_by_readings(session))
    moved = [each for each in told if each.much]
    if moved:
        yield "What your readings told, in the chance of what is true:"
    for each in moved:
        test = each.done.test
        name = _named(session, test.per, test.name, each.done.at)
        yield f"  {percent(each.before)} to {percent(each.after)}: {name}"
    if moved and len(moved) < len(told):
        yield f"  told nothing of it: {counted(len(told) - len(moved), 'test', 'tests')}"


def _named(session: Session, per: str | None, name: str, at: Place | str | None) -> str:
    where = session.scenario.unit.layout.shown(per, at if isinstance(at, Place) else None)
    return with_place(name, where)
