"""Which test to do next, and when to stop: expected information per minute.

The gain of a test is how much the ranking's doubt is expected to shrink (de Kleer and Williams
1987), reckoned with report errors; it is divided by the minutes the test and the change of work
state cost (Heckerman, Breese and Rommelse 1995). Cost grows with the number of graded findings,
since a hypothesis that does not mention a test shares the background row.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass

from troubleshoot.knowledge.model import Test
from troubleshoot.reasoning.hypotheses import FaultPicture, Hypotheses, pattern_row
from troubleshoot.reasoning.places import Place
from troubleshoot.reasoning.ranking import Ranking
from troubleshoot.reasoning.readings import report_error
from troubleshoot.reasoning.rows import Row, reported
from troubleshoot.reasoning.weighing import Seen

WRONG_REPAIR_MINUTES = 60.0
VALUE_OF_RIGHT = 3 * WRONG_REPAIR_MINUTES
NAMED = 0.9
"""A part is accused only at this chance or above."""
CLOSE_RATE = 0.9
"""Among tests within a tenth of the best rate, the less exposed one wins."""
TOO_UNLIKELY = 1e-5

_EXPOSURE = {"none": 0, "control": 1, "line": 2}
_STATE = {"any": 0, "running": 1, "locked-out": 2, "running-open": 3, "energised-open": 4}

SwitchMinutes = Callable[[Test, Place | None], float]


@dataclass(frozen=True, slots=True)
class Candidate:
    """A test that could be done next: expected bits, minutes, and bits per minute.

    `asks`: the tests that have to be asked for it, which for a computed test are its inputs.
    """

    test: Test
    at: Place | None
    gain: float
    minutes: float
    switch_minutes: float
    asks: tuple[str, ...]

    @property
    def rate(self) -> float:
        return self.gain / max(self.minutes + self.switch_minutes, 0.5)


def entropy(row: Iterable[float]) -> float:
    """Shannon entropy in bits."""
    return -math.fsum(p * math.log2(p) for p in row if p > 0)


def doubt(ranking: Ranking) -> float:
    """Entropy of the whole ranking in bits."""
    chances = [r.probability for r in ranking.hypotheses]
    return entropy([*chances, ranking.nothing_wrong, ranking.outside])


class Chooser:
    """Reckons the gain of every test on one unit; rows with report errors are made once."""

    def __init__(self, hypotheses: Hypotheses) -> None:
        self.hypotheses = hypotheses
        self._rows: dict[tuple[str, str, str], tuple[Row, float]] = {}
        self._usual: dict[str, tuple[Row, float]] = {}
        self._mentions: dict[str, list[int]] = {}
        for index, hypothesis in enumerate(hypotheses.causes):
            tests = dict.fromkeys(hypothesis.picture.cells)
            for group in hypothesis.picture.groups:
                tests.update(dict.fromkeys(group.tests))
            for test in tests:
                self._mentions.setdefault(test, []).append(index)

    def gain(
        self, ranking: Ranking, test: str, at: Place | None, seen: Mapping[str, Seen]
    ) -> float:
        """Expected bits from one test at one place, given what has been seen."""
        layout = self.hypotheses.unit.layout
        usual, usual_doubt = self._usual_row(test)
        mixed = dict.fromkeys(usual, 0.0)
        shared, inside = 1.0, 0.0
        chances = {id(r.hypothesis): r.probability for r in ranking.hypotheses}
        for index in self._mentions.get(test, ()):
            hypothesis = self.hypotheses.causes[index]
            chance = chances.get(id(hypothesis), 0.0)
            if chance < TOO_UNLIKELY or not layout.speaks_about(at, hypothesis.at):
                continue
            row, own_doubt = self._row(hypothesis.picture, test, seen)
            shared -= chance
            inside += chance * own_doubt
            for outcome, p in row.items():
                mixed[outcome] += chance * p
        for outcome, p in usual.items():
            mixed[outcome] += shared * p
        return max(0.0, entropy(mixed.values()) - inside - shared * usual_doubt)

    def _usual_row(self, test: str) -> tuple[Row, float]:
        if test not in self._usual:
            error = report_error(self.hypotheses.knowledge.tests[test])
            row = reported(pattern_row(self.hypotheses.background(test)), error)
            self._usual[test] = (row, entropy(row.values()))
        return self._usual[test]

    def _row(self, picture: FaultPicture, test: str, seen: Mapping[str, Seen]) -> tuple[Row, float]:
        group = picture.grouped(test)
        error = report_error(self.hypotheses.knowledge.tests[test])
        if group is not None:
            columns = {t: seen[t].column for t in group.tests if t in seen and t != test}
            row = reported(group.row_given(test, columns), error)
            return row, entropy(row.values())
        key = (picture.fault.id, picture.name, test)
        if key not in self._rows:
            row = reported(pattern_row(self.hypotheses.row(picture, test)), error)
            self._rows[key] = (row, entropy(row.values()))
        return self._rows[key]

    def candidates(
        self,
        ranking: Ranking,
        seen: Sequence[Seen],
        done: frozenset[tuple[str, Place | None]],
        asks: Callable[[Test, Place | None], tuple[Test, ...]],
        switch: SwitchMinutes,
    ) -> tuple[Candidate, ...]:
        """Every test worth a look, the best rate first.

        `done` holds what has been answered or skipped; `asks` says which tests have to be asked
        to know a test (itself, or the inputs of a computed one; none if it cannot be known).
        """
        by_test = {one.reading.test: one for one in seen}
        found = []
        for test in self.hypotheses.tests.values():
            if test.id not in self._mentions or test.kind in ("step", "input"):
                continue
            for place in self.hypotheses.unit.layout.places(test.per):
                if (test.id, place) in done or (test.id, None) in done:
                    continue
                asked = asks(test, place)
                gain = self.gain(ranking, test.id, place, by_test) if asked else 0.0
                if gain > 0:
                    minutes = math.fsum(t.minutes for t in asked)
                    switching = max(switch(t, place) for t in asked)
                    found.append(
                        Candidate(test, place, gain, minutes, switching, tuple(t.id for t in asked))
                    )
        return tuple(sorted(found, key=_order))


def _order(candidate: Candidate) -> tuple[float, float, int, str, str]:
    return (
        -candidate.rate,
        candidate.minutes,
        _STATE[candidate.test.work_state],
        candidate.test.id,
        str(candidate.at),
    )


def least_rate(ranking: Ranking) -> float:
    """The bits per minute below which a test does not pay, for what a wrong repair would cost."""
    best = max(ranking.best_cause, ranking.nothing_wrong, ranking.outside)
    return doubt(ranking) / (1.1 * VALUE_OF_RIGHT * max(1 - best, 1e-9))


def pays(candidate: Candidate, least: float) -> bool:
    """Whether a test still pays at a least rate.

    The change of work state is left out here: it is paid once and serves the tests after it, so
    charging it all to the first would end visits before the panels are off.
    """
    return candidate.gain / max(candidate.minutes, 0.5) > least


def choose(candidates: Sequence[Candidate], ranking: Ranking) -> Candidate | None:
    """The next test, or nothing when none pays."""
    least = least_rate(ranking)
    worth = [c for c in candidates if pays(c, least)]
    if not worth:
        return None
    near = [c for c in worth if c.rate >= CLOSE_RATE * worth[0].rate]
    return min(near, key=lambda c: (_EXPOSURE[c.test.exposes], *_order(c)))
