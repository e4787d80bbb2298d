"""A visit answered from a file: the same decisions as with a person, no questions asked.

What the file does not answer is skipped. Safety steps that it does not mention are taken as done so
that the account can go on, and the account says of each that nobody said so.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.answers import Answer, Case
from troubleshoot.reasoning.conclude import Conclusions
from troubleshoot.reasoning.places import Place, spoken
from troubleshoot.visit.account import FILE, Plain, ending_of
from troubleshoot.visit.decide import Decider
from troubleshoot.visit.decision import Decision, like
from troubleshoot.visit.event_shapes import (
    Event,
    answer_event,
    assumed_event,
    skip_event,
    step_event,
    stop_event,
)
from troubleshoot.visit.events import after
from troubleshoot.visit.metered import metered
from troubleshoot.visit.profiles import FULLY_QUALIFIED
from troubleshoot.visit.steps import CONFIRMED, Step
from troubleshoot.visit.stops import conclude_visit, finding_of, lifting_finding
from troubleshoot.visit.visit_account import visit_account
from troubleshoot.visit.visit_state import VisitState

CERTIFIES = (
    "This account certifies no safety work that the file does not hold: what it marks as not in "
    "the file was only taken as done to go on, and nobody has said that it was."
)
LONGEST_VISIT = 600
"""More events than any visit has; a run that reaches it is a defect, not a long day."""


class ScriptedVisit:
    """Runs one visit to its ending on the answers of a case."""

    def __init__(self, knowledge: Knowledge, case: Case, start: Event) -> None:
        self.knowledge = knowledge
        self.decider = Decider(knowledge)
        self.unused: dict[str, list[Answer]] = {}
        for answer in case.answers:
            self.unused.setdefault(answer.test, []).append(answer)
        self.failed: set[tuple[str, str | None]] = set()
        self.events: list[Event] = []
        self.state = VisitState()
        self.add(start)

    def add(self, event: Event) -> None:
        self.events.append(event)
        self.state = after(self.knowledge, self.state, event)

    def run(self) -> Plain:
        """Play the visit; returns its account."""
        for _ in range(LONGEST_VISIT):
            conclusions = conclude_visit(self.decider.reasoner, self.state)
            decision = self.decider.decide(self.state, conclusions)
            if decision.kind == "ending" and self._offer_more(conclusions):
                continue
            if decision.kind == "ending" and self._say_failed():
                continue
            if decision.kind == "ending" or not self.take(decision, conclusions):
                return self._account(conclusions, decision)
        raise RuntimeError("a scripted visit did not come to an end")

    def _offer_more(self, conclusions: Conclusions) -> bool:
        """Go on to a test that the file answers although none pays by itself any more.

        A technician may choose any worthwhile test; a file of readings chooses those it holds.
        """
        if conclusions.named is not None:
            return False
        asking = self.decider.asking(self.state, conclusions)
        for candidate in self.decider.candidates(self.state, conclusions):
            ways = asking.ways(candidate.test, candidate.at, conclusions.values)
            direct = any(self.unused.get(test) for test in (candidate.test.id, *candidate.asks))
            held = direct or self._held(ways)
            if held and self.decider.handed_over(self.state, candidate) is None:
                at = spoken(candidate.at)
                self.add({"event": "aim", "test": candidate.test.id, "at": at})
                return True
        return False

    def _say_failed(self) -> bool:
        """Put in what the file says has failed and the visit had no need to ask: a meter's proof.

        What was read with it does not count, whether or not the proof would have been asked for.
        """
        for name, outcome in CONFIRMED.items():
            for answer in self.unused.get(name, ()):
                place = spoken(answer.places[0])
                step = Step(name, place)
                outcomes = self._outcomes(step, answer)
                if answer.valid is not False and outcomes == (outcome,):
                    continue
                self.unused[name].remove(answer)
                self._put_step(step, answer, outcomes)
                return True
        return False

    def _held(self, ways: Iterable[tuple[Test, ...]]) -> tuple[Test, ...]:
        """The first of these sets of tests that the file answers whole; empty if it does none."""
        return next((way for way in ways if all(self.unused.get(t.id) for t in way)), ())

    def take(self, decision: Decision, conclusions: Conclusions) -> bool:
        """Answer one decision from the file; False where the visit ends with it."""
        if decision.kind == "stop":
            return self._made_safe(decision)
        if decision.saving and decision.aim is not None and not self.holds(decision.aim[0]):
            self.add(skip_event(*decision.aim))
            return True
        assert decision.test is not None
        answer = self._from_file(decision)
        if decision.kind == "step":
            return self._step_done(decision, answer)
        if answer is not None:
            self.add(answer_event(answer))
        else:
            self._go_round(decision.test, decision.at, conclusions)
        return True

    def holds(self, test: str) -> bool:
        """Whether there is an answer to a test at all: the way to one that has none is not gone."""
        return bool(self.unused.get(test))

    def _go_round(self, test: Test, at: Place | None, conclusions: Conclusions) -> None:
        """Towards what the file holds in a test's stead, or past the test."""
        asking = self.decider.asking(self.state, conclusions)
        inputs = self._held(asking.ways(test, at, conclusions.values))
        if inputs:
            where = like(at, self.state.unit.layout.places(inputs[0].per))
            self.add({"event": "aim", "test": inputs[0].id, "at": spoken(where)})
        else:
            self.add(skip_event(test.id, at))

    def _from_file(self, decision: Decision) -> Answer | None:
        """The file's next answer for the test asked, or for the test it is asked for."""
        assert decision.test is not None
        at = decision.at
        if decision.kind == "step" and decision.step is not None:
            return self._next(decision.test.id, decision.step.place)
        if decision.aim is not None and decision.aim[0] != decision.test.id:
            direct = self._next(decision.aim[0], decision.aim[1])
            if direct is not None:
                return direct
        return self._next(decision.test.id, at)

    def _next(self, test: str, at: Place | str | None) -> Answer | None:
        waiting = self.unused.get(test, [])
        for index, answer in enumerate(waiting):
            where = {spoken(place) for place in answer.places}
            if at is None or str(at) in where or None in where:
                return waiting.pop(index)
        return None

    def _step_done(self, decision: Decision, answer: Answer | None) -> bool:
        """A step as the file tells it; False where the visit cannot go on without it.

        What the file says has failed is never taken as done.
        """
        step = decision.step
        assert step is not None
        if answer is not None:
            self._put_step(step, answer, self._outcomes(step, answer))
        elif (step.id, step.place) not in self.failed:
            self.add(assumed_event(step, CONFIRMED[step.id]))
        elif decision.aim is not None:
            self.add(skip_event(*decision.aim))
        else:
            return False
        return True

    def _outcomes(self, step: Step, answer: Answer) -> tuple[str, ...]:
        return answer.outcomes or metered(self.knowledge, self.state, step, answer.text or "")

    def _put_step(self, step: Step, answer: Answer, outcomes: tuple[str, ...]) -> None:
        """A step as the file tells it."""
        if answer.valid is False or outcomes != (CONFIRMED[step.id],):
            self.failed.add((step.id, step.place))
        event = step_event(step, outcomes, answer.text)
        self.add(event if answer.valid is not False else {**event, "valid": False})

    def _made_safe(self, decision: Decision) -> bool:
        """A STOP is lifted as in any visit: by a fresh, sound reading of what called it up."""
        fired = decision.stop
        assert fired is not None
        conclusions = conclude_visit(self.decider.reasoner, self.state)
        if self.state.met(fired.hazard.id) is None:
            spot = finding_of(self.knowledge, self.state, conclusions, fired)
            self.add(stop_event(fired.hazard.id, spot))
            conclusions = conclude_visit(self.decider.reasoner, self.state)
        spot = lifting_finding(self.knowledge, self.state, conclusions, fired)
        if spot is None or not self.unused.get(spot[0]):
            return False
        self.add(answer_event(self.unused[spot[0]].pop(0)))
        return True

    def _account(self, conclusions: Conclusions, decision: Decision) -> Plain:
        ending = "stopped" if decision.kind == "stop" else ending_of(conclusions)
        candidates = (
            self.decider.candidates(self.state, conclusions) if ending == "shortlist" else ()
        )
        plain = visit_account(
            self.knowledge,
            self.state,
            conclusions,
            ending=ending,
            stop=decision.stop,
            candidates=candidates,
            said_by=FILE,
        )
        return {"certifies": CERTIFIES, **plain}


def start_event(
    case: Case, data: Mapping[str, Any], profiles: Iterator[str] | None = None
) -> Event:
    """The first event of a visit on a case file's plain data."""
    return {
        "event": "start",
        "unit": dict(data.get("unit") or {}),
        "own_record": dict(data.get("own-record") or {}),
        "counts": {k: n for k, n in case.unit.layout.counts if k in ("circuit", "condenser-fan")},
        "complaint": case.complaint,
        "conditions": dict(case.conditions),
        "repaired": list(case.repaired),
        "routine": case.routine,
        "profiles": sorted(profiles or FULLY_QUALIFIED),
    }
