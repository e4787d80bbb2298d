"""Everything that follows from a case: a pure function of the answers, replayed in full each time.

Readings are judged, the chain is run, readings that do not count are set aside, causes are ranked,
and the chain goes on from the likely ones to their hazards.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Complaint, Fault, Hazard, Knowledge
from troubleshoot.knowledge.vocabulary import StopScope
from troubleshoot.reasoning.chaining import chains
from troubleshoot.reasoning.chaining.clearing import cleared_complaint, has_happened, was_found
from troubleshoot.reasoning.chaining.engine import Conclusion
from troubleshoot.reasoning.chaining.known import atoms
from troubleshoot.reasoning.chaining.on_record import ON_RECORD, stopping
from troubleshoot.reasoning.choosing.next_test import NAMED, Asks, Candidate, Chooser, SwitchMinutes
from troubleshoot.reasoning.evidence.cleared import cleared
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses
from troubleshoot.reasoning.evidence.ranking import Cause, Ranking, rank, rank_effects
from troubleshoot.reasoning.evidence.reading_evidence import Seen, as_seen
from troubleshoot.reasoning.evidence.said_along import as_said
from troubleshoot.reasoning.evidence.sought import sought
from troubleshoot.reasoning.evidence.surprise import Misfit, misfit, unexplained
from troubleshoot.reasoning.made_once import made_of
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.readings.not_judged import NotJudged, not_judged
from troubleshoot.reasoning.readings.readings import Reading, take_readings
from troubleshoot.reasoning.readings.validity import (
    FiredProcedure,
    circuits,
    set_aside,
)
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import Unit, beyond
from troubleshoot.reasoning.unit.places import Place

SHOWN_AS_LIKELY = 0.3
"""A fault at this chance or above brings up its hazards and the causes behind it."""
EFFECT_SHOWN = 0.5


@frozen
class FiredHazard:
    """A hazard called up by what is known, at which circuits, and by which atoms.

    `found`: it stands now, since a finding or the complaint called it up; otherwise the unit's kind
    or a likely fault did.
    """

    hazard: Hazard
    circuits: tuple[int, ...]
    because: tuple[str, ...]
    found: bool

    @property
    def stops(self) -> bool:
        """Whether a STOP of its own stands."""
        return self.found and self.hazard.stop is not None


@frozen
class Conclusions:
    """What follows from a case."""

    case: Case
    hypotheses: Hypotheses
    chooser: Chooser
    readings: tuple[Reading, ...]
    values: Values
    seen: tuple[Seen, ...]
    ranking: Ranking
    causes: tuple[Cause, ...]
    effects: tuple[Cause, ...]
    hazards: tuple[FiredHazard, ...]
    procedures: tuple[FiredProcedure, ...]
    behind: tuple[Fault, ...]
    misfit: Misfit
    unexplained: tuple[Reading, ...]

    @property
    def beyond(self) -> tuple[str, ...]:
        """What is told of this kind of unit where the rules know nothing of it."""
        return beyond(self.hypotheses.knowledge, self.case.unit)

    @property
    def named(self) -> Cause | None:
        """The cause a part may be accused for: the first, at 0.9 or above."""
        return self.causes[0] if self.causes and self.causes[0].probability >= NAMED else None

    @property
    def not_judged(self) -> tuple[NotJudged, ...]:
        """The readings that came to nothing, and what they lack."""
        return not_judged(self.readings, self.values)

    def candidates(
        self, done: frozenset[tuple[str, Place | None]], asks: Asks, switch: SwitchMinutes
    ) -> tuple[Candidate, ...]:
        """Every test worth a look from here, the best rate first; none that the call rules out.

        None at all on a unit that the rules know nothing of.
        """
        if self.beyond:
            return ()
        done |= {(test, None) for test in self._pointless} | self.withheld
        return self.chooser.candidates(self.ranking, self.seen, done, asks, switch)

    @property
    def withheld(self) -> frozenset[tuple[str, Place | None]]:
        """The tests, with their places, that a rule withholds: what is read now would not count."""
        layout, tests = self.case.unit.layout, self.hypotheses.knowledge.tests
        return frozenset(
            (test, place)
            for fired in self.procedures
            if fired.procedure.void is not None and fired.procedure.void.withheld
            for test in fired.procedure.void.tests
            for place in layout.places(tests[test].per)
            if fired.circuit in layout.circuits_of(place)
        )

    @property
    def first_tests(self) -> tuple[str, ...]:
        """What is looked at first on such a call."""
        return () if self._complaint is None else self._complaint.first_tests

    @property
    def before_others(self) -> tuple[str, ...]:
        """What is looked at before anything else on such a call, whatever it costs."""
        return () if self._complaint is None else self._complaint.before_others

    @property
    def _pointless(self) -> Iterator[str]:
        """The tests that mean nothing on such a call; none of a subsystem that was read into."""
        if self._complaint is None:
            return
        yield from self._complaint.pointless_tests
        tests = self.hypotheses.knowledge.tests
        read = {tests[reading.test].subsystem for reading in self.readings}
        for test in self.hypotheses.tests.values():
            areas = {test.area, test.subsystem}
            if test.subsystem not in read and areas & set(self._complaint.pointless_areas):
                yield test.id

    @property
    def _complaint(self) -> Complaint | None:
        return self.hypotheses.knowledge.complaints.get(self.case.complaint or "")

    @property
    def standing_stops(self) -> tuple[FiredHazard, ...]:
        """The STOPs that halt a visit, the widest first; one for a single step halts nothing."""
        return (*self._standing("whole-job"), *self._standing("until-made-safe"))

    @property
    def stop(self) -> FiredHazard | None:
        """The standing STOP of the widest scope that ends the diagnosis."""
        return next(self._standing("whole-job"), None)

    def _standing(self, scope: StopScope) -> Iterator[FiredHazard]:
        for fired in self.hazards:
            if fired.stops and fired.hazard.stop and fired.hazard.stop.scope == scope:
                yield fired


class Reasoner:
    """The reasoning over one rule base, in one thread: it runs the chaining engine."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self._made = made_of(knowledge)
        self._chain = self._made.chain
        self._last: Conclusions | None = None

    def hypotheses(self, unit: Unit) -> tuple[Hypotheses, Chooser]:
        """The hypotheses of a unit; the last units' are kept, as a visit asks again and again."""
        return self._made.of_unit(unit)

    def conclude(self, case: Case) -> Conclusions:
        """Everything that follows from the case; the last case's is kept.

        A visit asks twice for the same case: to say what an answer means, and to choose what comes
        next. Choices, plates and notes between answers leave the case as it is.
        """
        if self._last is None or self._last.case != case:
            self._last = self._conclude(case)
        return self._last

    def _conclude(self, case: Case) -> Conclusions:
        hypotheses, chooser = self.hypotheses(case.unit)
        taken, values = take_readings(self.knowledge, case)
        procedures = self._chained(case, taken, values)
        readings, void_for = set_aside(self.knowledge, case, taken, values, procedures)
        if readings != taken:
            voiding = [fired for fired in procedures if fired.procedure.void is not None]
            others = self._chained(case, readings, values)
            procedures = (*voiding, *(fired for fired in others if fired not in voiding))
        seen = _seen(hypotheses, case, readings, void_for)
        complaint = self.knowledge.complaints.get(case.complaint or "")
        if complaint is not None:
            complaint = as_said(self.knowledge, complaint, case.words)
        among = sought(hypotheses, seen, case.search) if case.search else None
        ranking = rank(
            hypotheses, seen, complaint, case.repaired, case.routine, case.told_repaired, among,
            cleared(
                [fired.procedure for fired in procedures], seen, self.knowledge.faults.values()
            ),
        )  # fmt: skip
        causes = ranking.causes()
        effects = tuple(e for e in rank_effects(hypotheses, seen) if e.probability >= EFFECT_SHOWN)
        shown = [c for c in causes if c.probability >= SHOWN_AS_LIKELY]
        self._chain.add(
            (chains.likely(c.fault.id), circuit)
            for c in (*shown, *effects)
            for circuit in circuits(case.unit.layout, c.at)
        )
        accepted = shown or list(causes[:1])
        if beyond(self.knowledge, case.unit):
            # The dangers of what is likely stay, and nothing is named.
            shown, causes, effects = [], (), ()
        return Conclusions(
            case,
            hypotheses,
            chooser,
            readings,
            values,
            seen,
            ranking,
            causes,
            effects,
            tuple(self._fired_hazards(case, readings, [each.fault for each in effects])),
            procedures,
            tuple(self._behind(case.unit, shown)),
            misfit(hypotheses, ranking, seen),
            unexplained(hypotheses, seen, accepted, effects, ranking.present),
        )

    def _chained(
        self, case: Case, readings: tuple[Reading, ...], values: Values
    ) -> tuple[FiredProcedure, ...]:
        """Chain from these readings; the procedure rules that hold, in the rules' order."""
        self._chain.start(atoms(self.knowledge, case, readings, values))
        order = list(self.knowledge.procedures)
        concluded = sorted(self._concluded("procedure"), key=lambda each: order.index(each[0]))
        return tuple(
            FiredProcedure(self.knowledge.procedures[name], conclusion.at, conclusion.because)
            for name, conclusion in concluded
        )

    def _concluded(self, kind: str) -> Iterator[tuple[str, Conclusion]]:
        for conclusion in self._chain.concluded:
            head, _, name = conclusion.atom.partition(":")
            if head == kind:
                yield name, conclusion

    def _fired_hazards(
        self, case: Case, readings: tuple[Reading, ...], happened: Collection[Fault]
    ) -> Iterator[FiredHazard]:
        """Each hazard once, by those of its triggers that were found, else by all of them.

        The gravest first, and of those as grave the one that the rules have first.
        """
        cleared = cleared_complaint(self.knowledge, case, readings)
        called: dict[str, list[Conclusion]] = {}
        for name, conclusion in self._concluded("hazard"):
            called.setdefault(name.partition(":")[0], []).append(conclusion)
        for hazard in gravest_first(h for h in self.knowledge.hazards.values() if h.id in called):
            ways = called[hazard.id]
            found = [
                way
                for way in ways
                if was_found(way.because, cleared)
                or has_happened(hazard, way.because, happened, case.repaired)
            ]
            counting = found or ways
            at = tuple(sorted({way.at for way in counting}))
            yield FiredHazard(hazard, at, counting[0].because, bool(found))
        for name in case.stops:
            yield FiredHazard(stopping(self.knowledge, name), (), (ON_RECORD,), found=True)

    def _behind(self, unit: Unit, shown: list[Cause]) -> Iterator[Fault]:
        """Causes behind the likely ones that can exist on this unit, in the cards' order."""
        for name in dict.fromkeys(name for cause in shown for name in cause.fault.behind):
            fault = self.knowledge.faults[name]
            if unit.allows(fault.exists_when):
                yield fault


def _seen(
    hypotheses: Hypotheses,
    case: Case,
    readings: tuple[Reading, ...],
    void_for: Mapping[tuple[str, Place | None], frozenset[str]],
) -> tuple[Seen, ...]:
    """The readings that tell causes apart, each without the causes for which it does not count."""
    return tuple(
        as_seen(hypotheses, reading, void_for.get((reading.test, reading.at), frozenset()))
        for reading in readings
        if reading.valid
        and (reading.test, reading.at) not in case.apart
        and reading.test in hypotheses.tests
        and any(o in hypotheses.outcomes(reading.test) for o in reading.seen)
    )
