"""One question to answer after a debrief: what a test would have shown, had it been another cause.

It takes the test by which that cause and the true one differ most on this unit, as the cards say.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Fault, Test
from troubleshoot.practice.scenario import TrueFault
from troubleshoot.practice.session import Session
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import NONE_OF_THEM, Row, pattern_row

LIKELY: Final = 0.5
"""An answer is asked for where the card gives one outcome at least this chance."""


@frozen
class Question:
    """What `test` would show if it were `rival`; `answer` is one of its outcomes."""

    rival: Fault
    test: Test
    outcomes: tuple[str, ...]
    answer: str


def question_of(session: Session, called: Sequence[TrueFault]) -> Question | None:
    """The question of a play: about what was wrongly called, or about the true fault's neighbors.

    None where no card tells the two apart by one test. What is there as well is no rival.
    """
    truth = session.scenario.truth.faults
    if not truth:
        return None
    found = session.start.hypotheses
    (true, *_) = [*_pictures(found, truth[0].fault), None]
    if true is None:
        return None
    there = {fault.fault for fault in truth} | {*session.scenario.truth.behind}
    missed = [cause.fault for cause in called]
    for name in (name for name in (*missed, *true.fault.look_alikes) if name not in there):
        asked = max(_asked(found, true, name), key=lambda each: each[0], default=None)
        if asked is not None:
            return asked[1]
    return None


def _asked(found: Hypotheses, true: Hypothesis, name: str) -> Iterator[tuple[float, Question]]:
    """Each test by which the two differ, with by how much."""
    for rival in _pictures(found, name)[:1]:
        for test_id in sorted(rival.picture.cells):
            test = found.tests.get(test_id)
            if test is None or test.kind in ("step", "input"):
                continue
            row, other = _row(found, rival, test_id), _row(found, true, test_id)
            outcome = max(row, key=lambda each: (row[each], each))
            apart = row[outcome] - other.get(outcome, 0.0)
            if outcome != NONE_OF_THEM and row[outcome] >= LIKELY and apart >= LIKELY / 2:
                outcomes = tuple(each for each in row if each != NONE_OF_THEM)
                yield apart, Question(rival.fault, test, outcomes, outcome)


def _pictures(found: Hypotheses, fault: str) -> list[Hypothesis]:
    return [h for h in (*found.causes, *found.effects) if h.fault.id == fault]


def _row(found: Hypotheses, hypothesis: Hypothesis, test: str) -> Row:
    if test in hypothesis.picture.cells:
        return pattern_row(found.row(hypothesis.picture, test))
    return pattern_row(found.background(test))
