"""The book of one visit: its events, the state they add up to, and the journal that keeps them.

An event is in the journal before it counts. Of a kept visit only those events count that today's
rules understand.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from typing import Final, Protocol

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import InputRefused, meant
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.work_state import WorkState
from troubleshoot.visit.absence import hour_passed, resumed, silence, stamp
from troubleshoot.visit.events import (
    Closing,
    Event,
    FactTold,
    HourPassed,
    MarkedInvalid,
    Repaired,
    RepairedBefore,
    Resumed,
    Skipped,
    Started,
    StateGone,
    Undone,
    Weighed,
    after,
    replay,
)
from troubleshoot.visit.events.codec import record_of
from troubleshoot.visit.events.undoing import taken_back
from troubleshoot.visit.kept.lines import Record
from troubleshoot.visit.kept.understanding import understood
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.lapses import lapsed
from troubleshoot.visit.telling.said_before import in_words_again

OF_THE_UNIT: Final = (FactTold, RepairedBefore, Closing, Weighed)
"""What is said and no hands have done: the work goes on as it was once it is taken back."""
WORK_GOES_ON: Final = "The work state goes on from the more careful of the two."
WITHOUT_WORK: Final = (FactTold, Repaired, RepairedBefore, Skipped, StateGone)
"""Reports that answer no test or step: no work that was asked for explains the silence before."""


class Keeper(Protocol):
    """Where the records of events are kept for good; those that belong together at once.

    `confirm` raises where what was kept is not where it will be looked up.
    """

    def append(self, *events: Record) -> None: ...

    def confirm(self) -> None: ...

    def close(self) -> None: ...


class Forgotten:
    """Keeps nothing: for visits that are played, not made."""

    def append(self, *events: Record) -> None:
        pass

    def confirm(self) -> None:
        pass

    def close(self) -> None:
        pass


@frozen
class Unkept:
    """Events that could not be kept, and the state that they would have added up to."""

    events: tuple[Event, ...]
    state: VisitState


class VisitBook:
    """One visit's events. `changed` tells a caller whether a command altered the visit.

    `unkept`: what could not be kept, once the keeper has failed. `now`: the time by the clock of
    whoever is there. `notices`: what of a kept visit is not understood, to be said before it goes
    on.
    """

    def __init__(
        self,
        knowledge: Knowledge,
        visit_id: str,
        keeper: Keeper,
        now: Callable[[], datetime],
        records: Sequence[Record] = (),
        notices: tuple[str, ...] = (),
    ) -> None:
        self.knowledge = knowledge
        self.visit_id = visit_id
        self.now = now
        self.changed = False
        self.unkept: Unkept | None = None
        self._keeper = keeper
        self._before_break: WorkState | None = None
        understanding = understood(knowledge, records)
        self.notices = (*notices, *understanding.notices)
        self.events = list(understanding.events)
        self.state: VisitState = replay(knowledge, self.events)

    @property
    def begun(self) -> bool:
        """Whether it is known who is asking, and so what the visit starts from."""
        return any(isinstance(event, Started) for event in self.events)

    def add(self, *events: Event) -> None:
        """Keep an event with its time, once it is known that it can be taken; several at once.

        A report ends a silence, so what the silence has voided is told before it.
        """
        if isinstance(events[0], WITHOUT_WORK):
            self.watch_the_clock()
        now = stamp(self.now())
        stamped = tuple(replace(event, time=now) for event in events)
        state = self.state
        for event in stamped:
            state = after(self.knowledge, state, event)
        self._keep(stamped, state)

    def confirm_kept(self) -> None:
        """Before it is said that the visit is kept. Raises what the keeper raises."""
        try:
            self._keeper.confirm()
        except Exception:
            self.unkept = Unkept((), self.state)
            raise

    def close(self) -> None:
        """Give the visit free for whoever else may go on with it."""
        self._keeper.close()

    def _keep(self, events: tuple[Event, ...], state: VisitState) -> None:
        """Put events into the journal; only then do they count, and the state is what they make it.

        Raises what the keeper raises.
        """
        try:
            self._keeper.append(*map(record_of, events))
        except Exception:
            self.unkept = Unkept(events, state)
            raise
        self.events.extend(events)
        self.state = state
        self.changed = True

    def watch_the_clock(self, work_minutes: float = 0.0) -> bool:
        """Void what has expired by now; True where that was anything but the look at the roof.

        `work_minutes`: how long what was asked for takes by itself.
        """
        if not self.begun:
            return False
        now = self.now()
        away = silence(self.state, now, work_minutes)
        if away is not None:
            self._add_break(away)
        elif hour_passed(self.state, now):
            self._add_break(HourPassed())
        return away is not None

    def resume(self, profiles: tuple[str, ...]) -> None:
        """Go on after an absence, as whoever is asking now."""
        self._add_break(resumed(self.state, self.now(), profiles))

    def hand_on(self, profiles: tuple[str, ...]) -> None:
        """Another person goes on, as if nobody knew how long the unit was left alone."""
        self._add_break(Resumed(None, same_day=False, profiles=tuple(sorted(profiles)) or None))

    def _add_break(self, event: Event) -> None:
        before = self.state.work
        self.add(event)
        self._before_break = self._before_break or before

    def lapsed(self) -> tuple[str, ...]:
        """What breaks have voided since this was last asked, in words that come first."""
        before, self._before_break = self._before_break, None
        return () if before is None else lapsed(before, self.state.work)

    def try_fact(
        self, name: str, value: object, also: Mapping[str, str] | None = None
    ) -> str | None:
        """Keep an equipment fact or plate value; returns what is wrong with it, or nothing.

        A fact is kept as the value that its words mean. `also`: other facts that the same answer
        named.
        """
        fact = self.knowledge.facts.get(name)
        if fact is not None and not fact.counts and isinstance(value, str):
            value = meant(fact, value) or value
        try:
            self.add(FactTold(name, value, also or {}))
        except InputRefused as error:
            return "; ".join(f"{r.problem}; {r.instead}" for r in error.refusals) + "."
        return None

    def undo(self, refused: Callable[[VisitState], str] = lambda then: "") -> str:
        """Take the last answer back; the words, not what hands have done.

        `refused`: says why the visit may not become what it would; empty where it may.
        """
        gone = taken_back(self.events)
        if gone is None:
            return "There is nothing to take back."
        said = self.events[gone]
        what = in_words_again(self.knowledge, said) or "what is not understood"
        event = Undone(time=stamp(self.now()))
        then = replay(self.knowledge, [*self.events, event])
        if why_not := refused(then):
            return why_not
        self._keep((event,), then)
        return f"Taken back: {what}.{'' if isinstance(said, OF_THE_UNIT) else f' {WORK_GOES_ON}'}"

    def mark_last_invalid(self, reason: str) -> str:
        """The last reading is kept but weighs nothing, with the reason."""
        if not self.state.answers:
            return "There is no reading to mark."
        if not reason:
            return "Say why: invalid REASON."
        self.add(MarkedInvalid(reason))
        last = self.state.answers[-1].test
        name = self.knowledge.tests[last].name
        if last in CONFIRMED:
            return f"Kept as failed: {name}. It is asked again, and whatever rested on it."
        return f"Kept as not counting: {name}."
