"""How the work stands in a practice: which steps still hold, which have expired, what dead lacks.

Read off the declarations of the steps, as the guards do, so that it never says another thing.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.practice.session import Session
from troubleshoot.safety.declaration import EVENT_WORDS, Event
from troubleshoot.safety.declared import STEPS
from troubleshoot.safety.needs import for_dead_work
from troubleshoot.safety.route import steps_to
from troubleshoot.safety.steps import Step
from troubleshoot.safety.work_state import WHOLE_UNIT

AWAY: Final[frozenset[Event]] = frozenset({"hour-passed", "resumed", "reopened"})
"""What can end a step elsewhere, and in no play: its clock stands still, and nobody leaves it."""


@frozen
class Held:
    """A step that was done: whether it still holds, and by what it ends, in words."""

    step: Step
    holds: bool
    ends: tuple[str, ...]


def held_steps(session: Session) -> tuple[Held, ...]:
    """Every step that was done, once for each place, in the order of its first time."""
    done = dict.fromkeys(Step(name, place) for name, place in _done(session))
    return tuple(
        Held(step, _holds(session, step), tuple(_ends(step)))
        for step in done
        if STEPS[step.id].brings
    )


def lacking_for_dead(session: Session) -> tuple[Step, ...]:
    """What is still to do, in order, before hands may go in."""
    unit = session.state.at_work
    return steps_to(session.state.work, for_dead_work(unit), unit)


def _ends(step: Step) -> Iterator[str]:
    """By what it ends, of what can happen in a play."""
    yield from (EVENT_WORDS[event] for event in STEPS[step.id].lost if event not in AWAY)


def _holds(session: Session, step: Step) -> bool:
    where = step.place or WHOLE_UNIT
    work, unit = session.state.work, session.state.at_work
    return all(guard.stands(work, where, unit) for guard in STEPS[step.id].brings)


def _done(session: Session) -> Iterator[tuple[str, str | None]]:
    for done in session.done:
        if done.gain is None:
            yield done.test.id, None if done.at is None else str(done.at)
