"""The expert's visit to a scenario's unit: an old hand's way, or the engine's own.

It is the scripted visit that `diagnose --answers` runs, with two differences: what no file would
answer, the unit does, and where a scenario has a way written down, its tests are chosen one after
the other. The steps between them, and what a rule puts before them, are those of any visit. Every
decision is kept with its reason.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from typing import Final

from troubleshoot.dialogue.prompts import AskTest, DoStep, Prompt, Settled
from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.dialogue.talk import Reply
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard
from troubleshoot.practice.answering import AnsweringUnit, times_done
from troubleshoot.practice.scenario import Scenario, Shown
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.places import Place, spoken
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.guards import allowed
from troubleshoot.safety.route import steps_to_leave
from troubleshoot.safety.steps import Step, minutes_of
from troubleshoot.visit.cases.alarming import Alarming
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Aimed, Answered, Event, Started, StepDone
from troubleshoot.visit.telling.account import TECHNICIAN, Plain
from troubleshoot.visit.telling.why_next import NARROWS, separates

MOST_AIMS: Final = 3
"""A step that fails leads away from a test; after so many times there is no way to it."""


@frozen
class Move:
    """One decision of the expert: what was done, where, why, and the cautions before it."""

    test: str
    at: Place | str | None
    reason: str
    minutes: float
    is_step: bool
    cautions: tuple[Hazard, ...] = ()
    skipped: bool = False


@frozen
class ExpertPath:
    """The whole visit: its moves, its account for scripts, and what it came to.

    `minutes`: until the cause is found. `back`: the steps that then put the unit back, which take
    `back_minutes`; none at a STOP, where it stays as it is for whoever takes over.
    """

    moves: tuple[Move, ...]
    account: Plain
    conclusions: Conclusions
    minutes: float
    back: tuple[Step, ...] = ()
    back_minutes: float = 0.0

    @property
    def tests(self) -> tuple[Move, ...]:
        """The tests done; safety steps and what could not be done are left out."""
        return tuple(move for move in self.moves if not move.is_step and not move.skipped)

    @property
    def whole_minutes(self) -> float:
        """Until the unit is put back."""
        return self.minutes + self.back_minutes

    @property
    def ending(self) -> str:
        return str(self.account["ending"])


class NoWayThere(ValueError):
    """A test of a written way that cannot be come to; the message names it."""


class ExpertVisit(ScriptedVisit):
    """A scripted visit that the scenario's unit answers, and whose steps are done."""

    said_by = TECHNICIAN

    def __init__(self, reasoner: Reasoner, scenario: Scenario, unit: AnsweringUnit) -> None:
        self.unit = unit
        self.moves: list[Move] = []
        self.asking = ""
        self.way = list(scenario.way)
        self.has_way = bool(scenario.way)
        self.aims: Counter[tuple[str, Place | None]] = Counter()
        super().__init__(reasoner, scenario.case, start_of(scenario))

    def alarming_in(self, case: Case) -> Alarming:
        """A unit says nothing that it is not asked for."""
        return Alarming()

    def reply(self, prompt: Prompt) -> Reply | None:
        """The next test of the way, towards it, or what the engine asks for where none is written.

        A visit with a way ends with it.
        """
        if not self.has_way or not isinstance(prompt, Settled | DoStep | AskTest):
            return super().reply(prompt)
        conclusions = self.concluded()
        read = {(reading.test, reading.at) for reading in conclusions.readings}
        while self.way and self.way[0] in read:
            self.way.pop(0)
        if not self.way:
            return None
        name, at = self.way[0]
        if self.state.aim != (name, at) or not self.state.aim_chosen:
            self.aims[(name, at)] += 1
            if self.aims[(name, at)] > MOST_AIMS:
                raise NoWayThere(f"no safe way leads to {name}")
            return Aimed(name, spoken(at), self._why(conclusions, name, at), chosen=True)
        return super().reply(prompt)

    def _why(self, conclusions: Conclusions, name: str, at: Place | None) -> str:
        """What a test of the way tells apart, as it stands then."""
        candidates = self.decider.candidates(self.state, conclusions)
        found = (each for each in candidates if each.test.id == name and each.at == at)
        chosen = next(found, None)
        return NARROWS if chosen is None else separates(conclusions, chosen)

    def take(self, decision: Decision) -> Event | None:
        """Answer one decision from the unit, and keep it with its reason."""
        self.asking = "" if decision.test is None else decision.test.id
        event = super().take(decision)
        if event is not None:
            self._keep(decision, event)
        return event

    def _keep(self, decision: Decision, event: Event) -> None:
        assert decision.test is not None
        name, minutes, skipped = decision.test.id, 0.0, False
        if isinstance(event, Answered):
            name, minutes = event.test, self.knowledge.tests[event.test].minutes
        elif isinstance(event, StepDone):
            done = self.knowledge.tests[event.step]
            name, minutes = done.id, done.minutes + done.wait_minutes
        else:
            skipped = True
        at = decision.at if decision.step is None else decision.step.place
        is_step = decision.step is not None
        self.moves.append(
            Move(name, at, decision.reason, minutes, is_step, decision.cautions, skipped)
        )

    def unsaid(self, step: Step) -> Event:
        """What no scenario lists goes well."""
        return StepDone.of(step, (CONFIRMED[step.id],))

    def holds(self, test: str) -> bool:
        """The unit answers whatever can be done on it."""
        return test not in self.unit.scenario.unavailable

    def _from_file(self, decision: Decision) -> Answer | None:
        """The reading that is asked for; that for whose sake it is asked once it may be taken."""
        if decision.aim is not None and decision.step is None:
            name, at = decision.aim
            aim = self.knowledge.tests[name]
            if allowed(self.state.work, aim, spoken(at), self.state.at_work):
                decision = replace(decision, aim=None)
        return super()._from_file(decision)

    def _next(self, test: str, at: Place | str | None) -> Answer | None:
        """The scenario's reading, or what the unit shows; a computed test waits for its inputs."""
        if test in self.unit.scenario.unavailable:
            return None
        found = super()._next(test, at)
        wanted = self.knowledge.tests[test]
        if found is not None or (wanted.kind == "computed" and test != self.asking):
            return found
        place = at if isinstance(at, Place) else None
        times = times_done(self.state.answers, test, place)
        shown = self.unit.shows(wanted, place, times)
        return None if shown is None else answer_of(shown)


def expert_path(reasoner: Reasoner, scenario: Scenario, unit: AnsweringUnit) -> ExpertPath:
    """The expert's visit to a scenario's unit, from the call to its ending."""
    visit = ExpertVisit(reasoner, scenario, unit)
    account = visit.run()
    conclusions = reasoner.conclude(visit.state.case)
    found = ExpertPath(tuple(visit.moves), account, conclusions, visit.state.minutes)
    if found.ending == "stopped":
        return found
    back = steps_to_leave(visit.state.work, visit.state.at_work)
    return replace(found, back=back, back_minutes=minutes_of(back, reasoner.knowledge.tests))


def start_of(scenario: Scenario) -> Started:
    """The first event of a visit to a scenario's unit."""
    return start_event(scenario.case, scenario.plain)


def answer_of(shown: Shown) -> Answer:
    """What a unit shows, as an answer."""
    return Answer(
        shown.test,
        shown.outcomes,
        shown.text,
        shown.places,
        shown.shared,
        shown.valid,
        shown.instrument,
        conditions=shown.conditions,
    )
