"""Everything that follows from a case: a pure function of the answers, replayed in full each time.

Readings are judged, the chain is run, readings that do not count are set aside, causes are ranked,
and the chain goes on from the likely ones to their hazards.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.reasoning.chaining import chains
from troubleshoot.reasoning.chaining.clearing import cleared_complaint, has_happened, was_found
from troubleshoot.reasoning.chaining.engine import Conclusion
from troubleshoot.reasoning.chaining.known import atoms
from troubleshoot.reasoning.chaining.on_record import ON_RECORD, stopping
from troubleshoot.reasoning.choosing.next_test import Chooser
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.evidence.cleared import cleared
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses
from troubleshoot.reasoning.evidence.ranking import Cause, rank, rank_effects
from troubleshoot.reasoning.evidence.reading_evidence import Seen, as_seen
from troubleshoot.reasoning.evidence.said_along import as_said
from troubleshoot.reasoning.evidence.sought import sought
from troubleshoot.reasoning.evidence.surprise import misfit, unexplained
from troubleshoot.reasoning.made_once import made_of
from troubleshoot.reasoning.readings.answers import Case
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


class Reasoner:
    """The reasoning over one rule base, in one thread: it runs the chaining engine."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self._made = made_of(knowledge)
        self._chain = self._made.chain
        self._last: Conclusions | None = None

    def hypotheses(self, unit: Unit) -> tuple[Hypotheses, Chooser]:
        """The hypotheses of a unit; the last kinds' are kept, as a visit asks again and again."""
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
