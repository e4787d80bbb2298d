"""Small cases drawn from the rule base: some faults, and some tests taken as sound or not sound.

Small enough that the best way through them is found exactly.
"""

from __future__ import annotations

import math
import random
from collections.abc import Mapping, Sequence
from dataclasses import field

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.choosing.next_test import QUESTION_MINUTES
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, pattern_row
from troubleshoot.reasoning.readings.readings import report_error
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.route import steps_to, switch_minutes
from troubleshoot.safety.transitions import after_step
from troubleshoot.safety.unit_at_work import unit_at_work
from troubleshoot.safety.work_state import WorkState


@frozen
class Subset:
    """Priors of some faults, and for some tests the chance of "not sound" under each fault.

    `changes`: minutes from one work state to another; none where nothing has to be changed.
    """

    priors: tuple[float, ...]
    unsound: tuple[tuple[float, ...], ...]
    minutes: tuple[float, ...]
    states: tuple[str, ...]
    changes: Mapping[tuple[str, str], float] = field(default_factory=dict)


def draw_subset(hypotheses: Hypotheses, faults: int, tests: int, dice: random.Random) -> Subset:
    """Some faults of one neighbourhood, and the tests that speak most of them."""
    first = dice.choice(hypotheses.causes)
    near = [h for h in hypotheses.causes if set(h.picture.cells) & set(first.picture.cells)]
    chosen = dice.sample(near, min(faults, len(near)))
    spoken: dict[str, int] = {}
    for hypothesis in chosen:
        for test in hypothesis.picture.cells:
            spoken[test] = spoken.get(test, 0) + 1
    able = [t for t in spoken if hypotheses.knowledge.tests[t].healthy]
    names = sorted(able, key=lambda t: (-spoken[t], t))[:tests]
    total = math.fsum(h.prior for h in chosen)
    return Subset(
        tuple(h.prior / total for h in chosen),
        tuple(tuple(_unsound(hypotheses, h.picture, t) for h in chosen) for t in names),
        tuple(hypotheses.knowledge.tests[t].minutes + QUESTION_MINUTES for t in names),
        tuple(hypotheses.knowledge.tests[t].work_state for t in names),
        _changes(hypotheses, [hypotheses.knowledge.tests[t] for t in names]),
    )


def _changes(hypotheses: Hypotheses, tests: Sequence[Test]) -> Mapping[tuple[str, str], float]:
    """Minutes from the work state of one test to that of another, by the steps of a visit."""
    unit, rules = unit_at_work(hypotheses.unit), hypotheses.knowledge.tests
    needs = {test.work_state: needs_of(test, None, unit) for test in tests}
    reached = {"any": WorkState()}
    for name, wanted in needs.items():
        work = WorkState()
        for step in steps_to(work, wanted, unit):
            work = after_step(work, step, (CONFIRMED[step.id],), unit)
        reached[name] = work
    return {
        (now, then): switch_minutes(work, wanted, unit, rules)
        for now, work in reached.items()
        for then, wanted in needs.items()
        if then not in ("any", now)
    }


def _unsound(hypotheses: Hypotheses, picture: object, test: str) -> float:
    known = hypotheses.knowledge.tests[test]
    row = pattern_row(hypotheses.row(picture, test))  # type: ignore[arg-type]
    sound = math.fsum(p for o, p in row.items() if o in known.healthy or o == NONE_OF_THEM)
    error = report_error(known)
    return (1 - sound) * (1 - error) + sound * error
