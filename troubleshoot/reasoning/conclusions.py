"""What follows from a case: readings judged, causes ranked, hazards called up, standing STOPs."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint, Fault, Hazard
from troubleshoot.knowledge.vocabulary import StopScope
from troubleshoot.reasoning.choosing.next_test import NAMED, Asks, Candidate, Chooser, SwitchMinutes
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses
from troubleshoot.reasoning.evidence.ranking import Cause, Ranking
from troubleshoot.reasoning.evidence.reading_evidence import Seen
from troubleshoot.reasoning.evidence.said_along import as_said
from troubleshoot.reasoning.evidence.surprise import Misfit
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.reasoning.readings.not_judged import NotJudged, not_judged
from troubleshoot.reasoning.readings.readings import Reading
from troubleshoot.reasoning.readings.validity import FiredProcedure
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.equipment import beyond
from troubleshoot.reasoning.unit.places import Place


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
        knowledge = self.hypotheses.knowledge
        complaint = knowledge.complaints.get(self.case.complaint or "")
        return None if complaint is None else as_said(knowledge, complaint, self.case.words)

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
