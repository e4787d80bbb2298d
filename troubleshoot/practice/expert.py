"""The expert's visit to a scenario's unit: the engine's own, answered by the unit.

It is the scripted visit that `diagnose --answers` runs, with one difference: what no file would
answer, the unit does. Every decision is kept with its reason.
"""

from __future__ import annotations

from troubleshoot.dialogue.scripted import ScriptedVisit, start_event
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard
from troubleshoot.practice.answering import AnsweringUnit, times_done
from troubleshoot.practice.scenario import Scenario, Shown
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import Step
from troubleshoot.visit.cases.alarming import Alarming
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.events import Answered, Event, Started, StepDone
from troubleshoot.visit.telling.account import TECHNICIAN, Plain


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
    """The whole visit: its moves, its account for scripts, and what it came to."""

    moves: tuple[Move, ...]
    account: Plain
    conclusions: Conclusions
    minutes: float

    @property
    def tests(self) -> tuple[Move, ...]:
        """The tests done; safety steps and what could not be done are left out."""
        return tuple(move for move in self.moves if not move.is_step and not move.skipped)

    @property
    def ending(self) -> str:
        return str(self.account["ending"])


class ExpertVisit(ScriptedVisit):
    """A scripted visit that the scenario's unit answers, and whose steps are done."""

    said_by = TECHNICIAN

    def __init__(self, reasoner: Reasoner, scenario: Scenario, unit: AnsweringUnit) -> None:
        self.unit = unit
        self.moves: list[Move] = []
        self.asking = ""
        super().__init__(reasoner, scenario.case, start_of(scenario))

    def alarming_in(self, case: Case) -> Alarming:
        """A unit says nothing that it is not asked for."""
        return Alarming()

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
    return ExpertPath(tuple(visit.moves), account, conclusions, visit.state.minutes)


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
