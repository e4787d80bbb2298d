"""Grades beside counts: how often a finding showed, or a call came, where a cause was the truth.

What a card says of a test is a row of chances over its outcomes, and what visits read is counts of
them; so a row counts as AS_MANY visits that went by the card, and the visits are added: the mean of
the Dirichlet distribution that the row began (Gelman et al., Bayesian Data Analysis, 3rd ed.,
section 3.4; from memory). Of outcomes that a grade names together it is the sum of theirs. The same
is done for the calls of a cause, and for the causes of a call.

Visits are no sample: a test was read because the rules led to it, and a cause believed because they
named it. So a grade that they bear out proves little, and one that they gainsay is worth a look.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Complaint, Evidence, Fault, Knowledge
from troubleshoot.knowledge.vocabulary import BANDS, GRADES, PROBABILITY, Grade
from troubleshoot.measure.closed.ended import EndedIn
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses
from troubleshoot.reasoning.evidence.outcome_chances import chance_of_any, widened
from troubleshoot.reasoning.evidence.weighing import row_alone

AS_MANY: Final = 20
"""As many visits a card counts for (common practice, no source)."""
FEWEST: Final = 5
"""With fewer visits no word is spoken against (common practice, no source)."""
FEWEST_AGAINST: Final = 2
"""One visit may be a slip, or a wrong cause (common practice, no source)."""


@frozen
class Counted:
    """One grade beside what visits showed.

    `about`: what it grades, a finding or a call; `visits`: on which that could show, of which it
    `showed` on so many; `said`: the chance that the card gives it, `together`: with the visits.
    """

    fault: Fault
    about: Evidence | Complaint
    grade: Grade
    visits: int
    showed: int
    said: float
    together: float

    @property
    def becomes(self) -> Grade:
        """The word for it with the visits; the card's own where they do not gainsay it enough."""
        against = self.showed if self.together > self.said else self.visits - self.showed
        if self.visits < FEWEST or against < FEWEST_AGAINST:
            return self.grade
        moved = word_for(self.together)
        return self.grade if moved == word_for(self.said) else moved


@frozen
class CauseOfCall:
    """How often a cause ended a call: of `visits` on it `ended`; the shares as in `Counted`."""

    call: Complaint
    fault: Fault
    visits: int
    ended: int
    said: float
    together: float


def word_for(chance: float) -> Grade:
    """The word whose band a chance lies in; on the border of two the greater."""
    return max((grade for grade in GRADES if chance >= BANDS[grade][0]), key=BANDS.__getitem__)


def with_visits(said: float, showed: int, visits: int) -> float:
    """The mean of the Dirichlet: the card as AS_MANY visits, and these."""
    return (AS_MANY * said + showed) / (AS_MANY + visits)


def findings_counted(knowledge: Knowledge, every: Sequence[EndedIn]) -> Iterator[Counted]:
    """Each finding that a card grades by itself, and that was looked for where it was the truth.

    None of a test of which the card says otherwise for some picture or kind of unit, since its own
    grade does not hold there alone.
    """
    for fault, visits in _by_fault(knowledge, every):
        for item in _graded_alone(fault):
            looks = [look for ended in visits if (look := _looked(ended, item)) is not None]
            if looks:
                said = math.fsum(chance for chance, _ in looks) / len(looks)
                showed = sum(shown for _, shown in looks)
                together = with_visits(said, showed, len(looks))
                yield Counted(fault, item, item.grade, len(looks), showed, said, together)


def calls_counted(knowledge: Knowledge, every: Sequence[EndedIn]) -> Iterator[Counted]:
    """Each call that a card grades, where visits ended in its cause.

    A visit has one call, so the grades are scaled to come to one among all calls, and back.
    """
    calls = knowledge.complaints.values()
    for fault, visits in _by_fault(knowledge, every):
        whole = math.fsum(brought(call, fault) for call in calls)
        for call in (call for call in calls if fault.id in call.brought_by):
            said = brought(call, fault)
            showed = sum(ended.call.id == call.id for ended in visits)
            share = with_visits(said / whole, showed, len(visits))
            together = min(whole * share, 1.0)
            grade = call.brought_by[fault.id]
            yield Counted(fault, call, grade, len(visits), showed, said, together)


def causes_counted(every: Sequence[EndedIn]) -> Iterator[CauseOfCall]:
    """How often each cause ended each call, the commonest first, beside what the rules say."""
    by_call: dict[str, list[EndedIn]] = {}
    for ended in every:
        by_call.setdefault(ended.call.id, []).append(ended)
    for _, visits in sorted(by_call.items(), key=lambda each: (-len(each[1]), each[0])):
        counts = Counter(ended.fault.id for ended in visits)
        faults = {ended.fault.id: ended.fault for ended in visits}
        said = [_shares(ended.hypotheses, ended.call) for ended in visits]
        for name, number in sorted(counts.items(), key=lambda each: (-each[1], each[0])):
            share = math.fsum(each.get(name, 0.0) for each in said) / len(said)
            together = with_visits(share, number, len(visits))
            yield CauseOfCall(visits[0].call, faults[name], len(visits), number, share, together)


def brought(call: Complaint, fault: Fault) -> float:
    """How often a cause brings a call, by its card."""
    return PROBABILITY[call.brought_by.get(fault.id, call.unlisted)]


def _shares(hypotheses: Hypotheses, call: Complaint) -> Mapping[str, float]:
    """The share of a call's visits that each cause of a unit ends, by the rules."""
    shares: dict[str, float] = {}
    for each in hypotheses.causes:
        chance = each.prior * brought(call, each.fault)
        shares[each.fault.id] = shares.get(each.fault.id, 0.0) + chance
    whole = math.fsum(shares.values())
    return {name: share / whole for name, share in shares.items()}


def _by_fault(
    knowledge: Knowledge, every: Sequence[EndedIn]
) -> Iterator[tuple[Fault, list[EndedIn]]]:
    """Each cause in which visits ended, with these, by its id."""
    found: dict[str, list[EndedIn]] = {}
    for ended in every:
        found.setdefault(ended.fault.id, []).append(ended)
    return ((knowledge.faults[name], found[name]) for name in sorted(found))


def _graded_alone(fault: Fault) -> Iterator[Evidence]:
    """What a card grades itself, a finding at a time, for each picture and kind of unit."""
    layers = (*fault.overrides, *fault.pictures)
    elsewhere = set(_tests(item for layer in layers for item in layer.evidence))
    for item in fault.evidence:
        if len(item.findings) == 1 and item.findings[0].test not in elsewhere:
            yield item


def _tests(evidence: Iterable[Evidence]) -> Iterator[str]:
    return (finding.test for item in evidence for finding in item.findings)


def _looked(ended: EndedIn, item: Evidence) -> tuple[float, bool] | None:
    """The chance that the card gives a finding on a visit's unit, and whether it showed there.

    None where it was not looked for, or could not show.
    """
    finding = item.findings[0]
    hypotheses, picture = ended.hypotheses, ended.truth.picture
    here = frozenset(finding.outcomes) & frozenset(hypotheses.outcomes(finding.test))
    seen = ended.seen.get(finding.test)
    if seen is None or not here:
        return None
    test, usual = hypotheses.knowledge.tests[finding.test], hypotheses.usual(finding.test)
    cell = here, PROBABILITY[item.grade]
    named, _ = widened(test, cell, picture.cells.get(test.id, ()), usual)
    row = row_alone(hypotheses, ended.truth, test.id)
    return chance_of_any(test, row, named), not named.isdisjoint(seen)
