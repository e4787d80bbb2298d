"""What comes next in a visit: a safety step, a test, a STOP, or an ending.

A pure function of the visit's state. The next test is the one that tells most per minute, unless a
rule puts another first; what it needs of the work state comes before it, step by step, cautioned.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.choosing.asking import Asking
from troubleshoot.reasoning.choosing.choice_of_test import choose
from troubleshoot.reasoning.choosing.look_again import worth_repeating
from troubleshoot.reasoning.choosing.looked_at_first import put_first
from troubleshoot.reasoning.choosing.next_test import Candidate
from troubleshoot.reasoning.choosing.stopping import least_rate_on
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.reasoning.evidence.surprise import SURPRISING
from troubleshoot.reasoning.unit.places import like
from troubleshoot.safety.closed_ways import closed, is_closed
from troubleshoot.safety.hazard_words import forbids
from troubleshoot.safety.reaching import beyond
from troubleshoot.safety.steps import Step
from troubleshoot.safety.stops.alone import nobody_comes
from troubleshoot.safety.stops.lifting import conclude_visit, standing_stop
from troubleshoot.safety.stops.record import Spot
from troubleshoot.safety.stops.standing import Forbidden
from troubleshoot.visit.deciding.candidates import asking, candidates_from, switch_from, unfit
from troubleshoot.visit.deciding.decision import Decision, nearer_to, to_do
from troubleshoot.visit.deciding.leaving import way_back
from troubleshoot.visit.deciding.lifting import towards_lifting
from troubleshoot.visit.deciding.locked_again import locked_again
from troubleshoot.visit.deciding.made_ready import made_ready
from troubleshoot.visit.deciding.on_round import hooked_up_once, left_to_take, new_findings
from troubleshoot.visit.deciding.proving import before_any_start, stopped_first, while_dead
from troubleshoot.visit.deciding.put_before import (
    cuts_power,
    first_look,
    read_or_skipped,
    to_save,
)
from troubleshoot.visit.deciding.read_first import read_first
from troubleshoot.visit.deciding.read_shut import (
    first_of,
    has_come,
    hooked_up_before,
)
from troubleshoot.visit.deciding.seen_first import sooner_than
from troubleshoot.visit.deciding.stop_now import stopped_now
from troubleshoot.visit.deciding.unlit import purged_first
from troubleshoot.visit.events.places import places_from
from troubleshoot.visit.state import VisitState
from troubleshoot.visit.telling.account import ending_of
from troubleshoot.visit.telling.why_next import separates

DOES_NOT_FIT = "it fits the other readings worst; a second look tells whether it was right"
TAKES_IT_AWAY = "only this, read afresh after the repair, takes the danger away"
MUCH_HANGS_ON_IT = "much hangs on this reading, and a second one costs little"


class Decider:
    """Decides for visits under one rule base; a reasoner that is there already may be shared.

    `holds`: whether a test was read already, as in a file: its place is before the power goes off.
    """

    def __init__(
        self,
        knowledge: Knowledge,
        reasoner: Reasoner | None = None,
        holds: Callable[[str], bool] = lambda _: False,
    ) -> None:
        self.knowledge = knowledge
        self.reasoner = reasoner or Reasoner(knowledge)
        self._holds = holds
        self._reckoned: tuple[VisitState, Conclusions, tuple[Candidate, ...]] | None = None

    def decide(self, state: VisitState, conclusions: Conclusions | None = None) -> Decision:
        """What comes next on this state. A STOP comes before everything, the way out included."""
        if state.ended == "closed":
            return Decision("ending", ending=state.ended)
        conclusions = conclusions or conclude_visit(self.reasoner, state)
        standing = standing_stop(self.knowledge, state, conclusions)
        if state.ended is not None:  # at a STOP: nothing leads on from it but a reopening
            over = Decision("ending", ending=state.ended)
            return over if standing is None else replace(over, kind="stop", stop=standing)
        if standing is not None:
            lifting = towards_lifting(self.knowledge, state, conclusions, standing)
            return lifting or Decision("stop", stop=standing, ending="stopped")
        if (purge := purged_first(self.knowledge, state)) is not None:
            return purge
        if state.closing:
            first = before_any_start(self.knowledge, state, conclusions)
            afresh = first or self._read_afresh(state, conclusions)
            if afresh is not None and afresh.step is not None:
                afresh = while_dead(self.knowledge, state) or afresh
            return afresh or way_back(self.knowledge, state, conclusions)
        if (now := stopped_now(self.knowledge, state, conclusions)) is not None:
            return now
        if state.repair_wanted is not None:
            ready = made_ready(self.knowledge, state)
            return ready or Decision("ending", ending=ending_of(conclusions))
        if (going_on := self.going_on(state, conclusions)) is not None:
            return going_on
        stop = stopped_first(self.knowledge, state, conclusions)
        if (afresh := stop or self._read_afresh(state, conclusions)) is not None:
            return afresh
        if conclusions.beyond:
            return Decision("ending", ending="outside")
        if state.walking is not None:
            return self._on_round(state, conclusions)
        return self._best(state, conclusions)

    def going_on(self, state: VisitState, conclusions: Conclusions) -> Decision | None:
        """The next thing on the way to what is aimed at; None where it has come, or no way is left.

        Whoever then goes another way aims anew: the one that tells most may change with each step.
        """
        if state.aim is None or has_come(self.knowledge, state, conclusions):
            return None
        if conclusions.beyond and not state.aim_chosen:
            return None
        return self._towards(state, conclusions, state.aim, state.aim_reason)

    def _best(self, state: VisitState, conclusions: Conclusions) -> Decision:
        """The test that tells most, or the step to it; the ending once none is left."""
        handed: list[tuple[str, str]] = []
        candidates = self.candidates(state, conclusions)
        while True:
            chosen, reason = self._choose(state, conclusions, candidates)
            if chosen is None:
                first = self._look_again(state, conclusions) or locked_again(self.knowledge, state)
                return first or Decision(
                    "ending",
                    ending=ending_of(conclusions),
                    handed_over=tuple(handed),
                    left_out=tuple(dict.fromkeys((*closed(state), *nobody_comes(conclusions)))),
                )
            phrase = self.handed_over(state, chosen)
            if phrase is None:
                aim = (chosen.test.id, chosen.at)
                decision = self._towards(state, conclusions, aim, reason)
                if decision is not None:
                    return replace(decision, handed_over=tuple(handed))
            else:
                handed.append((chosen.test.id, phrase))
            candidates = tuple(
                c for c in candidates if (c.test.id, c.at) != (chosen.test.id, chosen.at)
            )

    def _on_round(self, state: VisitState, conclusions: Conclusions) -> Decision:
        """What is not sound, then the next test of the round, then its ending."""
        found = new_findings(self.knowledge, state, conclusions)
        if found:
            return Decision("findings", findings=found)
        for spot, reason in left_to_take(self, state, conclusions):
            decision = self._towards(state, conclusions, spot, reason)
            if decision is not None:
                return decision
        return Decision("ending", ending="round")

    def candidates(self, state: VisitState, conclusions: Conclusions) -> tuple[Candidate, ...]:
        """Every test worth a look from here, the best rate first; none that is out of place.

        Asked for on one state by the choice and by what goes before it: reckoned once.
        """
        known = self._reckoned
        if known is None or known[0] is not state or known[1] is not conclusions:
            reckoned = candidates_from(self.knowledge, state, conclusions)
            known = self._reckoned = state, conclusions, reckoned
        return known[2]

    def asking(self, state: VisitState, conclusions: Conclusions) -> Asking:
        """What has to be asked for a test on this unit."""
        return asking(self.knowledge, state, conclusions)

    def _choose(
        self, state: VisitState, conclusions: Conclusions, candidates: tuple[Candidate, ...]
    ) -> tuple[Candidate | None, str]:
        """The next test and why: a rule that puts one first, or what it separates."""
        layout, dead = state.unit.layout, state.work.dead == "proved"
        rules, read = conclusions.procedures, conclusions.readings
        least = least_rate_on(conclusions.ranking)
        if first := put_first(rules, candidates, layout, read, dead=dead, least=least):
            return first[0], first[1].procedure.reason
        before = tuple(c for c in candidates if c.test.id in conclusions.before_others)
        best = choose(before, conclusions.ranking) or choose(
            candidates, conclusions.ranking, conclusions.first_tests
        )
        return best, separates(conclusions, best) if best else ""

    def _read_afresh(self, state: VisitState, conclusions: Conclusions) -> Decision | None:
        """After a repair, what had forbidden tests is read once more before anything else."""
        for test, at in read_first(self.knowledge, state, conclusions):
            if (test.id, at) in state.skipped or beyond(self.knowledge, state, (test,), at):
                continue
            found = self._towards(state, conclusions, (test.id, at), TAKES_IT_AWAY)
            if found is not None:
                return found
        return None

    def _look_again(self, state: VisitState, conclusions: Conclusions) -> Decision | None:
        """A reading to take once more before giving up: one slip must not decide a visit."""
        worth = worth_repeating(
            conclusions.hypotheses,
            conclusions.ranking,
            conclusions.seen,
            switch_from(self.knowledge, state),
        )
        surprising = conclusions.misfit.z > SURPRISING
        worst = {(r.test, r.at) for r in conclusions.misfit.worst} if surprising else set()
        is_unfit = unfit(state, conclusions)
        for again in worth:
            spot = (again.test.id, again.at)
            if spot in state.skipped or is_unfit(again.test, again.at):
                continue
            if self.handed_over(state, again) is not None:
                continue
            reason = DOES_NOT_FIT if spot in worst else MUCH_HANGS_ON_IT
            decision = self._towards(state, conclusions, spot, reason)
            if decision is not None:
                return decision
        return None

    def handed_over(self, state: VisitState, candidate: Candidate) -> str | None:
        """To whom a test, or a step on the way to it, has to be handed over; None if to nobody."""
        asked = (self.knowledge.tests[name] for name in candidate.asks)
        return beyond(self.knowledge, state, asked, candidate.at)

    def beyond(self, state: VisitState, test: str, at: str | None) -> str | None:
        """To whom a test that somebody chose has to be handed over; None if to nobody."""
        chosen = self.knowledge.tests[test]
        place = places_from(at, chosen.per, state.unit)[0]
        return beyond(self.knowledge, state, (chosen,), place)

    def forbidden(self, conclusions: Conclusions, test: str, at: str | None) -> str | None:
        """Why a test that somebody chose may not be done while a hazard stands; None if it may."""
        chosen, unit = self.knowledge.tests[test], conclusions.case.unit
        forbidden = Forbidden(conclusions)
        for place in places_from(at, chosen.per, unit):
            hazard = forbidden.even_if_chosen(chosen, place)
            if hazard is not None:
                return forbids(hazard)
        return None

    def _towards(
        self, state: VisitState, conclusions: Conclusions, aim: Spot, reason: str
    ) -> Decision | None:
        """The next thing on the way to a test: a step, an input it needs, or the test itself.

        Nothing where no safe way leads there, the guards have the last word over the planner, and
        nothing where whoever is asking now may not go: somebody else may have aimed there.
        """
        test = self.knowledge.tests[aim[0]]
        asked = self.asking(state, conclusions).asks(test, aim[1], conclusions.values)
        wanted = first_of(state, asked) or test
        at = like(aim[1], state.unit.layout.places(wanted.per))
        forbidden = Forbidden(conclusions)
        if any(forbidden.even_if_chosen(*spot) for spot in ((test, aim[1]), (wanted, at))):
            return None
        if beyond(self.knowledge, state, (wanted,), at) is not None:
            return None
        if is_closed(state, wanted, at) and not (state.aim_chosen and state.aim == aim):
            return None
        wanted = hooked_up_once(self, state, conclusions, wanted)
        wanted = hooked_up_before(self.knowledge, state, wanted, at, asked)
        found = nearer_to(self.knowledge, state, wanted, at)
        if found is None:
            return None
        sooner = sooner_than(self, state, conclusions, found, wanted)
        if isinstance(sooner, Step):
            return replace(to_do(self.knowledge, state, sooner), aim=aim, reason=reason)
        if sooner is not None:
            spot = (sooner.test.id, sooner.at)
            return self._towards(state, conclusions, spot, separates(conclusions, sooner))
        before = self._put_before(state, conclusions, found, wanted)
        return before or replace(found, aim=aim, reason=reason)

    def _put_before(
        self, state: VisitState, conclusions: Conclusions, found: Decision, wanted: Test
    ) -> Decision | None:
        """What a rule puts before the next thing on the way, where this person may do it.

        Before the power goes off only what would still tell something, and is at hand: no panel is
        opened live and no call made for it.
        """
        done = read_or_skipped(state, conclusions)
        look = first_look(self.knowledge, state, conclusions, done, wanted)
        # A round opens no panel live, and has an order of its own.
        saves = state.walking is None and cuts_power(state, found.step, wanted)
        if look is not None or not saves:
            return look
        candidates = self.candidates(state, conclusions)
        for candidate, reason in to_save(state, conclusions, candidates, wanted, self._holds):
            if self.handed_over(state, candidate) is None:
                spot = (candidate.test.id, candidate.at)
                if (saving := self._towards(state, conclusions, spot, reason)) is not None:
                    return saving
        return None
