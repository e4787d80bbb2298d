"""What comes next in a visit: a safety step, a test, a STOP, or an ending.

A pure function of the visit's state. The next test is the one that tells most per minute, unless
a rule puts another first; whatever it needs of the work state comes before it, step by step, each
with its cautions.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from troubleshoot.knowledge.model import Hazard, Knowledge, Test
from troubleshoot.reasoning.asking import Asking
from troubleshoot.reasoning.conclude import Conclusions, FiredHazard, Reasoner
from troubleshoot.reasoning.fit import SURPRISING
from troubleshoot.reasoning.look_again import worth_repeating
from troubleshoot.reasoning.next_test import Candidate, SwitchMinutes, choose
from troubleshoot.reasoning.places import Place, spoken
from troubleshoot.reasoning.withdrawal import WITHDRAWN
from troubleshoot.visit.account import ending_of
from troubleshoot.visit.cautions import cautions_before
from troubleshoot.visit.guards import unmet
from troubleshoot.visit.needs import needs_of
from troubleshoot.visit.profiles import hand_over, hand_over_on_the_way
from troubleshoot.visit.route import steps_to, steps_to_leave, switch_minutes
from troubleshoot.visit.steps import Step
from troubleshoot.visit.visit_state import Spot, VisitState

DOES_NOT_FIT = "it fits the other readings worst; a second look tells whether it was right"
MUCH_HANGS_ON_IT = "much hangs on this reading, and a second one costs little"


@dataclass(frozen=True, slots=True)
class Decision:
    """What comes next.

    `step`, `ask`: a safety step or a test at a place, with the cautions that come before it.
    `aim`: the test that all this is for, where it is another. `stop`: a STOP stands; with
    `until-made-safe` the test that found it may be taken again once the danger is gone. `ending`:
    no test pays any more, or the STOP is final.
    """

    kind: Literal["step", "ask", "stop", "ending"]
    test: Test | None = None
    at: Place | None = None
    step: Step | None = None
    cautions: tuple[Hazard, ...] = ()
    reason: str = ""
    aim: Spot | None = None
    stop: FiredHazard | None = None
    ending: str = ""
    handed_over: tuple[tuple[str, str], ...] = ()


class Decider:
    """Decides for visits under one rule base; keeps the reasoner."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self.reasoner = Reasoner(knowledge)

    def decide(self, state: VisitState, conclusions: Conclusions | None = None) -> Decision:
        """What comes next on this state."""
        if state.closing or state.ended is not None:
            return self._leave(state)
        conclusions = conclusions or self.reasoner.conclude(state.case)
        standing = standing_stop(self.knowledge, conclusions)
        if standing is not None:
            return Decision("stop", stop=standing, ending="stopped")
        if state.aim is not None:
            going_on = self._towards(state, conclusions, state.aim, state.aim_reason)
            if going_on is not None:
                return going_on
        handed: list[tuple[str, str]] = []
        candidates = self.candidates(state, conclusions)
        while True:
            chosen, reason = self._choose(conclusions, candidates)
            if chosen is None:
                return self._look_again(state, conclusions) or Decision(
                    "ending", ending=ending_of(conclusions), handed_over=tuple(handed)
                )
            phrase = self.handed_over(state, chosen)
            if phrase is None:
                aim = (chosen.test.id, chosen.at)
                decision = self._towards(state, conclusions, aim, reason)
                if decision is not None:
                    return replace(decision, handed_over=tuple(handed))
            else:
                handed.append((chosen.test.id, phrase))
            candidates = tuple(c for c in candidates if c is not chosen)

    def candidates(self, state: VisitState, conclusions: Conclusions) -> tuple[Candidate, ...]:
        """Every test worth a look from here, the best rate first."""
        asking = self._asking(state, conclusions)
        taken = (r for r in conclusions.readings if r.why_invalid != WITHDRAWN)
        done = frozenset((r.test, r.at) for r in taken) | state.skipped
        skipped = {test for test, _ in state.skipped}

        def asks(test: Test, place: Place | None) -> tuple[Test, ...]:
            asked = asking.asks(test, place, conclusions.values)
            given_up = any(t.id in skipped and t.id != test.id for t in asked)
            blocked = any(self._is_blocked(state, t, place) for t in asked)
            return () if given_up or blocked else asked

        return conclusions.candidates(done, asks, self._switch(state))

    def _switch(self, state: VisitState) -> SwitchMinutes:
        """The minutes to the work state of a test from where the unit stands."""

        def switch(test: Test, place: Place | None) -> float:
            needs = needs_of(test, spoken(place), state.at_work)
            return switch_minutes(state.work, needs, state.at_work, self.knowledge.tests)

        return switch

    def _is_blocked(self, state: VisitState, test: Test, at: Place | None) -> bool:
        """Whether no step leads nearer to a test and the guards still refuse it."""
        needs = needs_of(test, spoken(at), state.at_work)
        return not steps_to(state.work, needs, state.at_work) and bool(unmet(state.work, needs))

    def _asking(self, state: VisitState, conclusions: Conclusions) -> Asking:
        return Asking(self.knowledge, state.unit, conclusions.hypotheses.tests.values())

    def _choose(
        self, conclusions: Conclusions, candidates: tuple[Candidate, ...]
    ) -> tuple[Candidate | None, str]:
        """The next test and why: a rule that puts one first, or what it separates."""
        for fired in conclusions.procedures:
            for name in fired.procedure.look_first:
                for candidate in candidates:
                    if candidate.test.id == name:
                        return candidate, fired.procedure.reason
        chosen = choose(candidates, conclusions.ranking)
        return chosen, "" if chosen is None else separates(conclusions, chosen)

    def _look_again(self, state: VisitState, conclusions: Conclusions) -> Decision | None:
        """A reading to take once more before giving up: one slip must not decide a visit."""
        worth = worth_repeating(
            conclusions.hypotheses, conclusions.ranking, conclusions.seen, self._switch(state)
        )
        surprising = conclusions.misfit.z > SURPRISING
        worst = {(r.test, r.at) for r in conclusions.misfit.worst} if surprising else set()
        for again in worth:
            spot = (again.test.id, again.at)
            if spot in state.skipped or self.handed_over(state, again) is not None:
                continue
            reason = DOES_NOT_FIT if spot in worst else MUCH_HANGS_ON_IT
            decision = self._towards(state, conclusions, spot, reason)
            if decision is not None:
                return decision
        return None

    def handed_over(self, state: VisitState, candidate: Candidate) -> str | None:
        """To whom a test, or a step on the way to it, has to be handed over; None if to nobody."""
        for name in candidate.asks:
            test = self.knowledge.tests[name]
            phrase = hand_over(test, state.profiles)
            if phrase is None:
                needs = needs_of(test, spoken(candidate.at), state.at_work)
                steps = steps_to(state.work, needs, state.at_work)
                phrase = hand_over_on_the_way(steps, self.knowledge.tests, state.profiles)
            if phrase is not None:
                return phrase
        return None

    def _towards(
        self, state: VisitState, conclusions: Conclusions, aim: Spot, reason: str
    ) -> Decision | None:
        """The next thing on the way to a test: a step, an input it needs, or the test itself.

        Nothing where no safe way leads there: the guards have the last word over the planner.
        """
        test = self.knowledge.tests[aim[0]]
        asked = self._asking(state, conclusions).asks(test, aim[1], conclusions.values)
        wanted = next((t for t in asked if (t.id, None) not in state.skipped), test)
        places = state.unit.layout.places(wanted.per)
        at = aim[1] if aim[1] in places else _like(aim[1], places)
        needs = needs_of(wanted, spoken(at), state.at_work)
        steps = steps_to(state.work, needs, state.at_work)
        if steps:
            of_step = self.knowledge.tests[steps[0].id]
            return Decision(
                "step",
                of_step,
                step=steps[0],
                aim=aim,
                reason=reason,
                cautions=cautions_before(self.knowledge, state, of_step),
            )
        if unmet(state.work, needs):
            return None
        return Decision(
            "ask",
            wanted,
            at,
            aim=aim,
            reason=reason,
            cautions=cautions_before(self.knowledge, state, wanted),
        )

    def _leave(self, state: VisitState) -> Decision:
        """The way back: leads on, panels on, clear, lock off, watch the start."""
        steps = steps_to_leave(state.work, state.at_work)
        if not steps:
            return Decision("ending", ending=state.ended or "")
        test = self.knowledge.tests[steps[0].id]
        return Decision(
            "step", test, step=steps[0], cautions=cautions_before(self.knowledge, state, test)
        )


def standing_stop(knowledge: Knowledge, conclusions: Conclusions) -> FiredHazard | None:
    """The STOP that stands: the widest scope first; one for a single step does not end anything."""
    for scope in ("whole-job", "until-made-safe"):
        for fired in conclusions.hazards:
            if fired.stops and fired.hazard.stop and fired.hazard.stop.scope == scope:
                return fired
    return None


def lifting_test(knowledge: Knowledge, state: VisitState, fired: FiredHazard) -> Test | None:
    """The test whose fresh reading may lift a STOP: what found it, or the complaint's all-clear.

    One for the whole job that was found, rather than complained of, is not lifted on this visit.
    """
    complaint = knowledge.complaints.get(state.complaint or "")
    found = [atom.split(":")[1] for atom in fired.because if atom.startswith("possible:")]
    if found:
        final = fired.hazard.stop is not None and fired.hazard.stop.scope == "whole-job"
        return None if final else knowledge.tests[found[0]]
    if complaint is not None and complaint.all_clear is not None:
        return knowledge.tests[complaint.all_clear]
    return None


def separates(conclusions: Conclusions, candidate: Candidate) -> str:
    """Why a test is next: the leading causes whose rows differ most on it."""
    names = list(dict.fromkeys(_told_apart(conclusions, candidate)))
    if len(names) >= 2:
        return f"it tells {names[0]} from {names[1]}"
    if names:
        return f"it speaks for or against {names[0]}"
    return "it narrows the causes"


def _told_apart(conclusions: Conclusions, candidate: Candidate) -> Iterator[str]:
    """The likeliest cause that the test speaks about, and the likeliest it does not favour."""
    mentions = [
        c
        for c in conclusions.causes[:8]
        if any(
            h.fault.id == c.fault.id and candidate.test.id in h.picture.cells
            for h in conclusions.hypotheses.causes
        )
    ]
    for cause in mentions[:1]:
        yield cause.fault.name
    for cause in conclusions.causes[:3]:
        if not mentions or cause.fault.id != mentions[0].fault.id:
            yield cause.fault.name


def _like(place: Place | None, places: tuple[Place | None, ...]) -> Place | None:
    """The place of another kind that goes with this one: same number, else the only one."""
    if place is not None:
        for other in places:
            if other is not None and other.number == place.number:
                return other
    return places[0] if len(places) == 1 else None
