"""One play of a scenario: the apprentice chooses, the unit answers, the guards watch.

The visit inside is a visit like any other: the same events, work state, cautions and reasoning. So
a scenario played with the expert's choices comes to what the engine's own visit comes to.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from troubleshoot.dialogue.book import Forgotten, VisitBook
from troubleshoot.dialogue.driven import at_once
from troubleshoot.knowledge.model import Hazard, Test
from troubleshoot.practice.answering import AnsweringUnit, times_done
from troubleshoot.practice.deeds import Acted
from troubleshoot.practice.expert import answer_of, start_of
from troubleshoot.practice.hinting import experts_next
from troubleshoot.practice.played import (
    Done,
    Moment,
    Partly,
    Result,
    Stopped,
    Unavailable,
    like,
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
    gravest_need,
)
from troubleshoot.reasoning.choosing.asking import Asking
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.cautions import cautions_before
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.hazard_words import danger_gone
from troubleshoot.safety.profiles import hand_over
from troubleshoot.safety.steps import BLEED_DRIVE, FIRE_PANEL_BACK, TELL_FIRE_PANEL
from troubleshoot.safety.stops.lifting import conclude_visit, lifting_finding, standing_stop
from troubleshoot.safety.stops.parts import is_all_clear
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.safety.transitions import refusals
from troubleshoot.safety.work_state import WorkState, open_items
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Answered,
    Event,
    MarkedInvalid,
    Skipped,
    StepDone,
    VisitEnded,
)
from troubleshoot.visit.state import VisitState

HINT_MINUTES = 5.0
LOOKED_IN_VAIN = 1.0
"""Minutes lost on a test that cannot be done, and on a STOP called where none stands."""


class Session:
    """One play. Steps and tests are chosen one at a time; everything is kept for the debrief."""

    def __init__(self, reasoner: Reasoner, scenario: Scenario) -> None:
        self.knowledge = reasoner.knowledge
        self.scenario = scenario
        self.decider = Decider(reasoner.knowledge, reasoner)
        self.unit = AnsweringUnit(reasoner, scenario)
        self.book = VisitBook(self.knowledge, scenario.id, Forgotten(), at_once)
        self.moments: list[Moment] = []
        self.slips: list[Slip] = []
        self.hints = 0
        self._hinted: VisitState | None = None
        self.extra_minutes = 0.0
        self.stopped: FiredHazard | None = None
        self.called_back = False
        self.deeds: list[Acted] = []
        self.before_deeds: list[Conclusions] = []
        self.add(start_of(scenario))
        self.start = self.conclusions

    def add(self, event: Event) -> None:
        """Take an event, and draw the conclusions afresh."""
        self.book.add(event)
        self.conclusions: Conclusions = conclude_visit(self.decider.reasoner, self.state)

    @property
    def state(self) -> VisitState:
        return self.book.state

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

    def tests(self) -> tuple[Test, ...]:
        """Every test this unit offers, in the order of the rules; safety steps are apart."""
        return tuple(
            test
            for test in self.conclusions.hypotheses.tests.values()
            if (test.kind != "step" or test.id not in CONFIRMED) and not self._follows(test)
        )

    def _follows(self, test: Test) -> bool:
        """Inputs that nobody reads off a meter, since they follow from others."""
        read = test.reads[0].quantity if test.reads else ""
        return test.kind == "input" and bool(self.knowledge.quantities[read].computed)

    def steps(self) -> tuple[Test, ...]:
        """Every safety step there is on this unit."""
        at_work = self.state.at_work
        idle = set() if at_work.drives else {BLEED_DRIVE}
        if not at_work.fire_panel:
            idle |= {TELL_FIRE_PANEL, FIRE_PANEL_BACK}
        found = (self.knowledge.tests[name] for name in CONFIRMED if name not in idle)
        return tuple(test for test in found if self.scenario.unit.allows(test.exists_when))

    def places(self, test: Test) -> tuple[Place | None, ...]:
        return self.scenario.unit.layout.places(test.per) or (None,)

    def standing_stop(self) -> FiredHazard | None:
        """The STOP that stands now, unless it has been obeyed."""
        return None if self.stopped else standing_stop(self.knowledge, self.state, self.conclusions)

    def may(self, test: Test, at: Place | None) -> bool:
        """Whether a test can be begun as the unit stands: no STOP, no unmet need."""
        if self.standing_stop() is not None or test.id in self.scenario.unavailable:
            return False
        if self._forbidden(test, at) is not None:
            return False
        wanted, place = next(self.asked_for(test, at))
        return not allowed(self.state.work, wanted, spoken(place), self.state.at_work)

    def needs(self, test: Test, at: Place | None) -> tuple[str, ...]:
        """What is still lacking for a test as the unit stands, in the order of work."""
        work, unit = self.state.work, self.state.at_work
        asked = self.asked_for(test, at)
        found = (each for wanted, to in asked for each in allowed(work, wanted, spoken(to), unit))
        return tuple(dict.fromkeys(found))

    def _forbidden(self, test: Test, at: Place | None) -> Hazard | None:
        return Forbidden(self.conclusions).even_if_chosen(test, at)

    def lacking(self, test: Test, at: Place | None, tried: str) -> Slip | None:
        """What a test lacks, or what is done by it: no ban, somebody who may, every need met.

        A STOP is looked at before. None where nothing is lacking.
        """
        banned = self._banned(test, at, tried)
        if banned is not None:
            return banned
        work, unit = self.state.work, self.state.at_work
        missing = allowed(work, test, spoken(at), unit)
        who = hand_over(test, self.state.profiles)
        return self._slip(tried, test, at, (*((who,) if who else ()), *missing))

    def _banned(self, test: Test, at: Place | None, tried: str) -> Slip | None:
        hazard = self._forbidden(test, at)
        return Slip(tried, (danger_gone(hazard),), None, hazard.id) if hazard else None

    def choose(self, test: Test, at: Place | None) -> Result:
        """Do a test; for a computed one, everything that has to be read for it."""
        stop = self.standing_stop()
        lifts = stop is not None and self._lifts(stop, test)
        if stop is not None and not lifts and not self._made_safe(stop, test):
            return self._missed_stop(stop, test)
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

    def asked_for(self, test: Test, at: Place | None) -> Iterator[tuple[Test, Place | None]]:
        """The test itself, or the inputs that a computed one still lacks, with their places."""
        if test.kind != "computed" or self.unit.listed(test.id, at):
            yield test, at
            return
        asking = Asking(self.knowledge, self.state.unit, self.conclusions.hypotheses.tests.values())
        for wanted in asking.asks(test, at, self.conclusions.values):
            places = self.places(wanted)
            yield wanted, at if at in places else like(at, places)

    def gain(self, test: Test, at: Place | None) -> float:
        """Bits the test can be expected to tell now; for an input, what hangs on it."""
        found = self.conclusions
        if test.kind != "input":
            return found.chooser.gain(found.ranking, test.id, at, found.seen)
        gains = [
            found.chooser.gain(found.ranking, other.id, place, found.seen)
            for other in self.tests()
            if other.kind == "computed"
            for place in self.places(other)
            if test in [wanted for wanted, _ in self.asked_for(other, place)]
        ]
        return max(gains, default=0.0)

    def step(self, test: Test, place: str | None = None) -> Done | Stopped:
        """Do one safety step at one place."""
        step = step_at(test.id, place, self.state.work)
        stop = self.standing_stop()
        lifts = stop is not None and self._lifts(stop, test)
        safe = (
            MAKES_SAFE | PROVES_DEAD if stop is not None and until_made_safe(stop) else MAKES_SAFE
        )
        if stop is not None and not lifts and test.id not in safe:
            return self._missed_stop(stop, test)
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

    def _lifts(self, stop: FiredHazard, test: Test) -> bool:
        """Whether a test may lift a STOP: its finding, or the word of who cleared the place."""
        if is_all_clear(test):
            return True
        found = lifting_finding(self.knowledge, self.state, self.conclusions, stop)
        return found is not None and found[0] == test.id

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

    def _slip(
        self, tried: str, test: Test, at: Place | None, missing: tuple[str, ...]
    ) -> Slip | None:
        """A slip for what is missing, with the gravest of it; None where nothing is."""
        gravest, hazard = self._gravest(test, at) or (None, None)
        read = hazard or self._hazard_of(test)
        return Slip(tried, missing, gravest, read) if missing else None

    def _made_safe(self, stop: FiredHazard, test: Test) -> bool:
        """Whether a STOP until made safe leaves room for this: dead work on a unit proved dead."""
        dead = self.state.work.energy == "proved-dead" and test.work_state == "locked-out"
        return until_made_safe(stop) and dead

    def _gravest(self, test: Test, at: Place | None) -> tuple[str, str | None] | None:
        return gravest_need(self.state.work, test, spoken(at), self.state.at_work)

    def _missed_stop(self, stop: FiredHazard, test: Test) -> Stopped:
        asked = stop.hazard.what_to_do
        return self.slipped(Slip(test.name, (asked,), asked, stop.hazard.id, past_stop=True))

    def _hazard_of(self, test: Test) -> str | None:
        hazards = cautions_before(self.knowledge, self.state, test)
        return hazards[0].id if hazards else None
