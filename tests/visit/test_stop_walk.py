"""No sequence of events, reopening and undo among them, goes on past a STOP that stands.

Whole visits on the shipped rules, led at random: steps answered in every way, findings that call up
STOPs, undo, half an hour away, hand-over, reopening. Who judges is the officer of
`stop_officer.py`, who knows nothing of the code. The order of work is that of
29 CFR 1910.333(b)(2), 29 CFR 1910.147(d) and (f)(3) (whoever goes on after others verifies afresh).
"""

from __future__ import annotations

import random
from collections import Counter

from tests.visit.stop_officer import StopOfficer, halting
from troubleshoot.knowledge.load import load_shipped
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.stops.lifting import finding_of, lifting_finding
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.deciding.next import Decider
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    Event,
    Halted,
    HourPassed,
    Reopened,
    Resumed,
    Skipped,
    Started,
    StepDone,
    TakenAfresh,
    Undone,
    VisitEnded,
    after,
    replay,
)
from troubleshoot.visit.events.codec import record_of
from troubleshoot.visit.events.undoing import taken_back
from troubleshoot.visit.state import VisitState

KNOWLEDGE = load_shipped()
DECIDER = Decider(KNOWLEDGE)
HALTING = halting(KNOWLEDGE)
HALTING_TESTS = sorted({test for test, _ in HALTING})
UNIT = {
    "refrigerant": "R-410A",
    "heat": "gas",
    "circuits": 1,
    "duct-smoke-detector": "not-fitted",
    "variable-speed-drive": "fitted",
}
RESULT = HandOverResult(
    "gas-utility", "tightened the union", "0 % at every joint", "2026-11-26 9:00"
)
MET: Counter[str] = Counter()


class Walk:
    """One visit, led by numbers."""

    def __init__(self, complaint: str) -> None:
        self.events: list[Event] = []
        self.officer = StopOfficer(KNOWLEDGE, HALTING)
        self.state = self.before = VisitState()
        self.add(Started(complaint=complaint, unit=UNIT))

    def add(self, event: Event) -> None:
        self.events.append(event)
        self.officer.watch(record_of(event))
        undo = isinstance(event, Undone)
        self.before = self.state
        self.state = replay(KNOWLEDGE, self.events) if undo else after(KNOWLEDGE, self.state, event)

    def decide(self) -> Decision:
        return DECIDER.decide(self.state)

    def go(self, choice: int) -> None:
        """One thing happens."""
        decision = self.decide()
        objection = self.officer.objection(self.state, decision)
        assert not objection, f"{objection} after {self.events[-6:]}"
        if self.state.ended is not None:
            self._ended(choice)
        elif decision.kind == "stop":
            self._stopped(decision, choice)
        elif choice % 11 == 0 and taken_back(self.events) is not None:
            MET["undo"] += 1
            self.add(Undone())
        elif choice % 23 == 0:
            self.add(Resumed(45, True))
        elif decision.kind == "step":
            self._step(decision, choice)
        elif decision.kind == "ask":
            self._ask(decision, choice)
        elif self.state.closing:
            self.add(VisitEnded("closed"))
        else:
            self.add(Closing())

    def _ended(self, choice: int) -> None:
        if self.state.ended != "stopped" or choice % 3 == 0:
            self.add(Undone())
            return
        found = DECIDER.reasoner.conclude(self.state.case)
        standing = DECIDER.decide(self.before).stop
        if standing is None:
            return
        spot = finding_of(KNOWLEDGE, self.state, found, standing)
        assert spot is not None
        MET["reopened"] += 1
        self.add(Reopened.on(standing.hazard.id, RESULT, spot))

    def _stopped(self, decision: Decision, choice: int) -> None:
        assert decision.stop is not None
        self.add(Halted(decision.stop.hazard.id))
        found = DECIDER.reasoner.conclude(self.state.case)
        spot = lifting_finding(KNOWLEDGE, self.state, found, decision.stop)
        MET["stop"] += 1
        if choice % 5 == 0:
            self.add(Undone())
        elif choice % 5 == 1:
            self.add(Resumed(45, True))
        elif spot is not None and choice % 5 == 2:
            self.add(TakenAfresh.of(spot))
        else:
            self.add(VisitEnded("stopped", "the utility", "2026-11-25 16:00"))

    def _step(self, decision: Decision, choice: int) -> None:
        assert decision.step is not None and decision.test is not None
        outcomes = [o.id for o in decision.test.outcomes]
        sure = choice % 8 > 0
        outcome = CONFIRMED[decision.step.id] if sure else outcomes[choice // 8 % len(outcomes)]
        self.add(StepDone.of(decision.step, (outcome,)))

    def _ask(self, decision: Decision, choice: int) -> None:
        test = decision.test
        assert test is not None
        if decision.stop is not None:
            MET["taken afresh"] += 1
        if choice % 7 == 1 or not test.outcomes:
            self.add(Skipped.over(test.id, decision.at))
        elif self.state.aim is None and decision.stop is None and choice % 7 < 5:
            self._aim(choice)
        else:
            bad = [o.id for o in test.outcomes if (test.id, o.id) in HALTING]
            outcomes = [*test.healthy, *bad, *(o.id for o in test.outcomes)]
            outcome = outcomes[choice // 7 % len(outcomes)]
            at = None if decision.at is None else str(decision.at)
            self.add(Answered(test.id, at, (outcome,)))

    def _aim(self, choice: int) -> None:
        """Somebody chooses a test that may call up a STOP."""
        test = KNOWLEDGE.tests[HALTING_TESTS[choice // 7 % len(HALTING_TESTS)]]
        places = self.state.unit.layout.places(test.per)
        if test.kind == "step" or test.kind == "computed" or not places:
            self.add(HourPassed())
            return
        at = None if places[0] is None else str(places[0])
        self.add(Aimed(test.id, at, chosen=True))


def test_no_visit_goes_on_past_a_stop() -> None:
    for seed in range(40):
        choose = random.Random(seed)
        walk = Walk(("no-heat", "gas-smell")[seed % 2])
        for _ in range(90):
            walk.go(choose.choice((choose.randrange(10**6), choose.randrange(60), 0)))
    assert all(MET[what] >= 8 for what in ("stop", "reopened", "taken afresh", "undo")), MET
