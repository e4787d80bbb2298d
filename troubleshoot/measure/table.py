"""The table of figures that `rules measure` prints and DEVELOPERS.md keeps."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping
from statistics import fmean

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure.faulty_unit import draw
from troubleshoot.measure.isolation import Isolation, isolation
from troubleshoot.measure.optimum import costs_of, together
from troubleshoot.measure.policies import ENGINE, PLAINER
from troubleshoot.measure.searched import Searched, searched, visits_of
from troubleshoot.measure.simulated import CheckedVisit, SimulatedVisit
from troubleshoot.measure.subset import draw_subset
from troubleshoot.measure.trust import trust_lines
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import Unit, read_unit

SUBSET_FAULTS, SUBSET_TESTS = 12, 7


def measure(knowledge: Knowledge, visits: int, subsets: int, seed: int) -> Iterator[str]:
    """The lines of the table, a section a unit."""
    reasoner = Reasoner(knowledge)
    for typical in knowledge.typical_units.values():
        if typical.serves != "measuring":
            continue
        unit = read_unit(knowledge, typical.unit)
        yield f"### {typical.about}"
        yield ""
        yield from _isolation_lines(isolation(reasoner, unit))
        yield from _visit_lines(reasoner, typical.unit, visits, seed)
        yield from _optimum_lines(reasoner, unit, subsets, seed)
        yield ""
    yield from trust_lines(knowledge)


def _isolation_lines(found: Isolation) -> Iterator[str]:
    yield f"- causes that can exist: {found.faults}"
    yield f"- isolated to one (IEEE 1522): {found.to_one:.0%}; to three: {found.to_three:.0%}"
    for ambiguity in found.ambiguities:
        others = [name for name in ambiguity.together if name != ambiguity.fault]
        split = f"split by {ambiguity.split_by}" if ambiguity.split_by else "no test splits them"
        more = f" and {len(others) - 3} more" if len(others) > 3 else ""
        yield f"  - {ambiguity.fault} beside {', '.join(others[:3])}{more}: {split}"


def _visit_lines(
    reasoner: Reasoner, facts: Mapping[str, object], visits: int, seed: int
) -> Iterator[str]:
    drawn = list(draw(reasoner, read_unit(reasoner.knowledge, facts), visits, seed))
    kinds = (SimulatedVisit, CheckedVisit)
    columns = (_of(searched(visits_of(kind, reasoner, facts, drawn))) for kind in kinds)
    yield ""
    yield f"| {visits} simulated visits | engine | fixed checklist |"
    yield "| --- | --- | --- |"
    for (name, led), (_, listed) in zip(*columns, strict=True):
        yield f"| {name} | {led} | {listed} |"
    yield ""


def _of(found: Searched) -> Iterator[tuple[str, str]]:
    """The rows of one way of choosing."""
    yield "minutes, mean", f"{found.minutes_mean:.0f}"
    yield "minutes, median", f"{found.minutes_median:.0f}"
    yield "ended by a STOP", f"{found.stopped:.0%}"
    yield "first call wrong", f"{found.wrong:.0%}"
    yield "of which named", f"{found.named_and_wrong:.0%}"
    yield "a shortlist, the fault second or third", f"{found.truth_further_down:.0%}"
    yield "a shortlist without the fault", f"{found.truth_not_listed:.0%}"
    yield "says 0.9 or more", f"{found.sure:.0%}"
    yield "wrong when it says so", f"{found.wrong_when_sure:.0%}"
    yield "calibration error", f"{found.calibration:.3f}"
    yield "of which luck alone gives", f"{found.calibration_by_luck:.3f}"
    yield "Brier score", f"{found.brier:.3f}"


def _optimum_lines(reasoner: Reasoner, unit: Unit, subsets: int, seed: int) -> Iterator[str]:
    dice = random.Random(seed)
    hypotheses, _ = reasoner.hypotheses(unit)
    drawn = [draw_subset(hypotheses, SUBSET_FAULTS, SUBSET_TESTS, dice) for _ in range(subsets)]
    if not drawn:
        return
    policies = {"engine": ENGINE, **PLAINER}
    costs = [costs_of(subset, tuple(policies.values())) for subset in drawn]
    yield (
        f"| {subsets} subsets of {SUBSET_FAULTS} faults x {SUBSET_TESTS} tests "
        "| saving lost, mean | most | of all subsets together | cost over the exact optimum, mean "
        "| most |"
    )
    yield "| --- | --- | --- | --- | --- | --- |"
    for name, own in zip(policies, zip(*costs, strict=True), strict=True):
        lost = [cost.lost for cost in own if cost.lost is not None]
        shares = (fmean(lost), max(lost), together(own).lost or 0.0) if lost else ()
        shown = " | ".join(f"{share:.1%}" for share in shares) or "- | - | -"
        ratios = [cost.ratio for cost in own]
        yield f"| {name} | {shown} | {fmean(ratios):.3f} | {max(ratios):.3f} |"
