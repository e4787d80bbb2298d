"""One play of a scenario: the apprentice chooses, the unit answers, the guards watch."""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.model import Test
from troubleshoot.practice.answering import AnsweringUnit, times_done
from troubleshoot.practice.deeds import Acted
from troubleshoot.practice.expert import answer_of
from troubleshoot.practice.guarded import Guarded
from troubleshoot.practice.hinting import experts_next
from troubleshoot.practice.played import (
    Done,
    Moment,
    Partly,
    Result,
    Stopped,
    Unavailable,
    step_at,
    until_made_safe,
)
from troubleshoot.practice.scenario import Scenario, Shown
from troubleshoot.practice.slips import (
    GRAVE_STEPS,
    MAKES_SAFE,
    PROVES_DEAD,
    Slip,
    grave_kinds,
)
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.transitions import refusals
from troubleshoot.safety.work_state import WorkState, open_items
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import (
    Answered,
    MarkedInvalid,
    Skipped,
    StepDone,
    VisitEnded,
)
from troubleshoot.visit.state import VisitState

HINT_MINUTES = 5.0
LOOKED_IN_VAIN = 1.0
"""Minutes lost on a test that cannot be done, and on a STOP called where none stands."""


class Session(Guarded):
    """One play. Steps and tests are chosen one at a time; everything is kept for the debrief."""

    def __init__(self, reasoner: Reasoner, scenario: Scenario) -> None:
        super().__init__(reasoner, scenario)
        self.moments: list[Moment] = []
        self.slips: list[Slip] = []
        self.hints = 0
        self._hinted: VisitState | None = None
        self.extra_minutes = 0.0
        self.called_back = False
        self.deeds: list[Acted] = []
        self.before_deeds: list[Conclusions] = []

    @property
    def done(self) -> tuple[Done, ...]:
        """Every test and step done, in order."""
        return tuple(moment.done for moment in self.moments)

    @property
    def minutes(self) -> float:
        """What has been paid: tests and steps, hints and time lost."""
        return self.state.minutes + self.hints * HINT_MINUTES + self.extra_minutes

    @property
    def exposed_minutes(self) -> float:
        """Minutes with the hands near line voltage."""
        return sum(done.minutes for done in self.done if done.test.exposes == "line")

    @property
    def failed(self) -> bool:
        """Whether what could have hurt someone was tried again after it had been explained."""
        return any(times > 1 for times in grave_kinds(self.slips).values())

    @property
    def begun(self) -> bool:
        """Whether anything was done, tried or paid: from then on it is a play, however it ends."""
        return bool(self.done or self.slips or self.hints or self.extra_minutes or self.called_back)

    @property
    def left_open(self) -> tuple[str, ...]:
        """What would be left behind now that was not so at the start; nothing at a STOP obeyed,
        where the unit stays locked out for whoever takes over.
        """
        if self.stopped is not None:
            return ()
        found = open_items(WorkState())
        return tuple(item for item in open_items(self.state.work) if item not in found)

    def choose(self, test: Test, at: Place | None) -> Result:
        """Do a test; for a computed one, everything that has to be read for it."""
        stop = self.standing_stop()
        lifts = stop is not None and self._lifts(stop, test)
        if stop is not None and not lifts and not self._made_safe(stop, test):
            return self.slipped(self._missed_stop(stop, test))
        if stop is None and (slip := self._banned(test, at, test.name)) is not None:
            return self.slipped(slip)
        if test.id in self.scenario.unavailable:
            return self._unavailable(test, at, self.scenario.unavailable[test.id])
        gain = self.gain(test, at)
        shown: list[Shown] = []
        before = self.state.minutes
        for wanted, place in self.asked_for(test, at):
            missing = allowed(self.state.work, wanted, spoken(place), self.state.at_work)
            if missing and not lifts:
                if shown and self._gravest(wanted, place) is None:
                    done = Done(test, at, tuple(shown), self.state.minutes - before, gain)
                    return Partly(self._keep(done), wanted, missing)
                tried = test.name if wanted == test else f"{wanted.name} (for {test.name})"
                return self._not_yet(tried, wanted, place, missing)
            times = times_done(self.state.answers, wanted.id, place)
            found = self.unit.shows(wanted, place, times)
            if found is None:
                return self._unavailable(wanted, place, "it cannot be read on this unit")
            # Nobody is told that a reading misleads: that is for the apprentice to doubt.
            self.add(replace(Answered.by(answer_of(found)), valid=found.valid or None))
            shown.append(found)
        return self._keep(Done(test, at, tuple(shown), self.state.minutes - before, gain))

    def step(self, test: Test, place: str | None = None) -> Done | Stopped:
        """Do one safety step at one place."""
        step = step_at(test.id, place, self.state.work)
        stop = self.standing_stop()
        lifts = stop is not None and self._lifts(stop, test)
        safe = (
            MAKES_SAFE | PROVES_DEAD if stop is not None and until_made_safe(stop) else MAKES_SAFE
        )
        if stop is not None and not lifts and test.id not in safe:
            return self.slipped(self._missed_stop(stop, test))
        missing = refusals(self.state.work, step, self.state.at_work)
        if missing:
            gravest = missing[0] if test.id in GRAVE_STEPS else None
            return self.slipped(Slip(test.name, missing, gravest, self._hazard_of(test)))
        times = sum(asked.test == test.id for asked in self.state.asked)
        listed = self.unit.listed(test.id, None)
        shown = listed[min(times, len(listed) - 1)] if listed else Shown(test.id)
        outcomes = shown.outcomes or (CONFIRMED[test.id],)
        before = self.state.minutes
        self.add(StepDone.of(step, outcomes, shown.text))
        return self._keep(Done(test, place, (shown,), self.state.minutes - before, None))

    def doubt(self, reason: str) -> bool:
        """Mark the last reading as not counting; False where the last thing done was none."""
        if not self.state.answers or self.state.answers[-1].test in CONFIRMED:
            return False
        self.add(MarkedInvalid(reason))
        return True

    def hint(self) -> Decision:
        """What the expert would do next. It costs, once as long as nothing has been done since."""
        self.hints += self._hinted is not self.state
        self._hinted = self.state
        return experts_next(self.decider, self.scenario, self.state, self.conclusions)

    def declare_stop(self) -> FiredHazard | None:
        """Hand the job over. The STOP obeyed, or None where none stands, which costs a minute.

        To call somebody back who is about to reach in is right, and costs nothing.
        """
        stop = self.standing_stop()
        if stop is None and self.scenario.reaching_in:
            self.called_back = True
        elif stop is None:
            self.extra_minutes += LOOKED_IN_VAIN
        else:
            self.stopped = stop
            self.add(VisitEnded("stopped"))
        return stop

    def acted(self, done: Acted, unit: AnsweringUnit) -> None:
        """Something was done to the unit, which from now on is another one."""
        self.extra_minutes += done.deed.minutes
        self.deeds.append(done)
        self.before_deeds.append(self.conclusions)
        self.unit = unit

    def slipped(self, slip: Slip) -> Stopped:
        """Something that was stopped."""
        self.slips.append(slip)
        return Stopped(slip)

    def skip(self, test: Test, at: Place | None) -> None:
        """Go on without a test."""
        self.add(Skipped.over(test.id, at))

    def _keep(self, done: Done) -> Done:
        self.moments.append(Moment(done, self.minutes, self.conclusions))
        return done

    def _unavailable(self, test: Test, at: Place | None, why: str) -> Unavailable:
        self.extra_minutes += LOOKED_IN_VAIN
        self.skip(test, at)
        return Unavailable(test, why)

    def _not_yet(
        self, tried: str, test: Test, at: Place | None, missing: tuple[str, ...]
    ) -> Stopped:
        slip = self._slip(tried, test, at, missing)
        assert slip is not None
        return self.slipped(slip)
