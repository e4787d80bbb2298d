"""The table of figures that `rules measure` prints and DEVELOPERS.md keeps."""

from __future__ import annotations

import random
from collections.abc import Iterator, Mapping, Sequence
from statistics import fmean, median

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.measure.calibration import (
    brier_score,
    calibration_error,
    calibration_error_by_luck,
)
from troubleshoot.measure.faulty_unit import draw
from troubleshoot.measure.isolation import Isolation, isolation
from troubleshoot.measure.optimum import costs_of, together
from troubleshoot.measure.policies import ENGINE, PLAINER
from troubleshoot.measure.simulated import CheckedVisit, SimulatedVisit, Visit
from troubleshoot.measure.subset import draw_subset
from troubleshoot.reasoning.choosing.next_test import NAMED
from troubleshoot.reasoning.conclude import Reasoner
from troubleshoot.reasoning.unit.equipment import Unit, read_unit

SUBSET_FAULTS, SUBSET_TESTS = 12, 7


@frozen
class Searched:
    """What a way of choosing tests came to over many visits."""

    minutes_mean: float
    minutes_median: float
    stopped: float
    wrong: float
    sure: float
    wrong_when_sure: float
    calibration: float
    calibration_by_luck: float
    brier: float


def searched(visits: Sequence[Visit]) -> Searched:
    """The figures of many visits."""
    called = [v for v in visits if not v.stopped]
    sure = [v for v in called if v.chance >= NAMED]
    return Searched(
        fmean(v.minutes for v in visits),
        median(v.minutes for v in visits),
        1 - len(called) / len(visits),
        fmean(not v.right for v in called),
        len(sure) / len(called),
        fmean(not v.right for v in sure) if sure else 0.0,
        calibration_error(called),
        calibration_error_by_luck(called),
        brier_score(called),
    )


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

    def of(kind: type[SimulatedVisit]) -> Searched:
        return searched(
            [
                kind(reasoner, facts, truth, complaint, random.Random(number)).visit()
                for number, (truth, complaint) in enumerate(drawn)
            ]
        )

    led, listed = of(SimulatedVisit), of(CheckedVisit)
    yield ""
    yield f"| {visits} simulated visits | engine | fixed checklist |"
    yield "| --- | --- | --- |"
    yield f"| minutes, mean | {led.minutes_mean:.0f} | {listed.minutes_mean:.0f} |"
    yield f"| minutes, median | {led.minutes_median:.0f} | {listed.minutes_median:.0f} |"
    yield f"| ended by a STOP | {led.stopped:.0%} | {listed.stopped:.0%} |"
    yield f"| first call wrong | {led.wrong:.0%} | {listed.wrong:.0%} |"
    yield f"| says 0.9 or more | {led.sure:.0%} | {listed.sure:.0%} |"
    yield f"| wrong when it says so | {led.wrong_when_sure:.0%} | {listed.wrong_when_sure:.0%} |"
    yield f"| calibration error | {led.calibration:.3f} | {listed.calibration:.3f} |"
    by_luck, listed_by_luck = led.calibration_by_luck, listed.calibration_by_luck
    yield f"| of which luck alone gives | {by_luck:.3f} | {listed_by_luck:.3f} |"
    yield f"| Brier score | {led.brier:.3f} | {listed.brier:.3f} |"
    yield ""


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
