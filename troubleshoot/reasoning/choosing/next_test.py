"""Which test to do next: expected information per minute.

The gain of a test is how much the ranking's doubt is expected to shrink (de Kleer and Williams
1987), reckoned with report errors; it is divided by the minutes the test and the change of work
state cost (Heckerman, Breese and Rommelse 1995). Cost grows with the number of graded findings,
since a hypothesis that does not mention a test shares the background row.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.knowledge.vocabulary import Need
from troubleshoot.reasoning.choosing.stopping import entropy, pays
from troubleshoot.reasoning.choosing.told_apart import Reports
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses
from troubleshoot.reasoning.evidence.outcome_chances import Row, pattern_row, reported
from troubleshoot.reasoning.evidence.ranking import Ranking
from troubleshoot.reasoning.evidence.reading_evidence import Seen, SeenByTest, by_test, members_at
from troubleshoot.reasoning.evidence.weighing import outside_row, row_alone
from troubleshoot.reasoning.readings.readings import report_error
from troubleshoot.reasoning.unit.places import Place

NAMED = 0.9
"""A part is accused only at this chance or above."""
TOO_UNLIKELY = 1e-5
QUESTION_MINUTES = 1.0
"""What any test takes besides its own minutes (common practice, no source)."""

_AT_PORTS: Final[Need] = "at-ports"
_STATE = {
    "any": 0, "running": 1, "locked-closed": 2, "locked-out": 3, "running-open": 4,
    "energised-open": 5,
}  # fmt: skip

SwitchMinutes = Callable[[Test, Place | None], float]
Asks = Callable[[Test, Place | None], tuple[Test, ...]]


@frozen
class Candidate:
    """A test that could be done next: expected bits, minutes, and bits per minute.

    `surer`: how much likelier the best call is expected to be right after it, 0 to 1. `asks`: the
    tests that have to be asked for it, which for a computed test are its inputs. `share`: how much
    of the change of work state it bears, where the same change serves other places too.
    """

    test: Test
    at: Place | None
    gain: float
    surer: float
    minutes: float
    switch_minutes: float
    asks: tuple[str, ...]
    share: float = 1.0

    @property
    def cost(self) -> float:
        """Minutes with its change of work state, and with reading the question and answering it."""
        return self.minutes + self.share * self.switch_minutes + QUESTION_MINUTES

    @property
    def rate(self) -> float:
        return self.gain / self.cost

    def pays(self, least: float) -> bool:
        """Whether it pays, at a least rate."""
        return pays(self.gain, self.surer, self.cost, least)


@frozen
class _Blurred:
    """The chance of each report, wrong reports included, and its entropy in bits."""

    row: Row
    doubt: float


@frozen
class _Standing:
    """How the causes stand: the chance of each by index, and their indexes, the likeliest first.

    `seen` holds the readings that count: after a repair, only those taken since.
    """

    chances: Sequence[float]
    order: Sequence[int]
    nothing_wrong: float
    outside: float
    seen: SeenByTest

    @property
    def best(self) -> float:
        """The chance that the best call would be right now."""
        return max(self.best_but(()), self.nothing_wrong, self.outside)

    def best_but(self, some: Collection[int]) -> float:
        """The chance of the likeliest cause that is not one of these."""
        return next((self.chances[index] for index in self.order if index not in some), 0.0)


class Chooser:
    """Reckons the gain of every test on one unit; rows with report errors are made once."""

    def __init__(self, hypotheses: Hypotheses) -> None:
        self.hypotheses = hypotheses
        self._rows: dict[tuple[str, str, str], _Blurred] = {}
        self._ungrouped: dict[str, dict[int, _Blurred]] = defaultdict(dict)
        """The rows that hang on nothing else that was seen, by test and index of the cause."""
        self._usual: dict[str, tuple[_Blurred, _Blurred]] = {}
        self._spoken: dict[tuple[str, Place | None], tuple[int, ...]] = {}
        self._mentions: dict[str, list[int]] = {}
        for index, hypothesis in enumerate(hypotheses.causes):
            tests = dict.fromkeys(hypothesis.picture.cells)
            for group in hypothesis.picture.groups:
                tests.update(dict.fromkeys(group.tests))
            for test in tests:
                self._mentions.setdefault(test, []).append(index)

    def gain(self, ranking: Ranking, test: str, at: Place | None, seen: Sequence[Seen]) -> float:
        """Expected bits from one test at one place, given what has been seen."""
        return self._told(self._standing(ranking, seen), test, at)[0]

    def expected(
        self, ranking: Ranking, seen: Sequence[Seen], test: str, at: Place | None
    ) -> tuple[Reports, ...]:
        """What a test would report under each cause that it speaks of, the likeliest first.

        Last the likeliest cause of which it does not speak: all of these report alike.
        """
        standing = self._standing(ranking, seen)
        speaking = frozenset(self._speaking(test, at))
        order = [index for index in standing.order if standing.chances[index] >= TOO_UNLIKELY]
        spoken = [index for index in order if index in speaking]
        silent = [index for index in order if index not in speaking][:1]
        rows = [self._row(index, test, at, standing.seen).row for index in spoken]
        rows += [self._usual_rows(test)[0].row for _ in silent]
        return tuple(
            Reports(self.hypotheses.causes[index].fault, standing.chances[index], row)
            for index, row in zip((*spoken, *silent), rows, strict=True)
        )

    def _standing(self, ranking: Ranking, seen: Sequence[Seen]) -> _Standing:
        """A repaired cause has no chance any more."""
        known = {id(r.hypothesis): r.probability for r in ranking.hypotheses}
        chances = [known.get(id(hypothesis), 0.0) for hypothesis in self.hypotheses.causes]
        order = sorted(range(len(chances)), key=lambda index: -chances[index])
        counting = [one for one in seen if one.reading.after_repair or not ranking.present]
        return _Standing(chances, order, ranking.nothing_wrong, ranking.outside, by_test(counting))

    def _told(self, standing: _Standing, test: str, at: Place | None) -> tuple[float, float]:
        """What a test is expected to tell: bits, and how much surer the best call becomes."""
        usual, beyond = self._usual_rows(test)
        outside = standing.outside
        mixed = {outcome: outside * p for outcome, p in beyond.row.items()}
        best = dict(mixed)
        shared, inside = 1.0 - outside, outside * beyond.doubt
        speaking, alone = self._speaking(test, at), self._ungrouped[test]
        for index in speaking:
            chance = standing.chances[index]
            if chance < TOO_UNLIKELY:
                continue
            made = alone.get(index) or self._row(index, test, at, standing.seen)
            shared -= chance
            inside += chance * made.doubt
            for outcome, p in made.row.items():
                joint = chance * p
                mixed[outcome] += joint
                if joint > best[outcome]:
                    best[outcome] = joint
        silent = max(standing.best_but(speaking), standing.nothing_wrong)
        for outcome, p in usual.row.items():
            mixed[outcome] += shared * p
            best[outcome] = max(best[outcome], silent * p)
        gain = entropy(mixed.values()) - inside - shared * usual.doubt
        return max(0.0, gain), max(0.0, math.fsum(best.values()) - standing.best)

    def _speaking(self, test: str, at: Place | None) -> tuple[int, ...]:
        """The causes that mention a test and are spoken about at a place, by their index."""
        key = (test, at)
        if key not in self._spoken:
            layout, causes = self.hypotheses.unit.layout, self.hypotheses.causes
            self._spoken[key] = tuple(
                index
                for index in self._mentions.get(test, ())
                if layout.speaks_about(at, causes[index].at)
            )
        return self._spoken[key]

    def _usual_rows(self, test: str) -> tuple[_Blurred, _Blurred]:
        """The reports without any fault, and with something outside the rules."""
        if test not in self._usual:
            usual = self.hypotheses.usual(test)
            beyond = outside_row(self.hypotheses, test)
            self._usual[test] = (self._blurred(test, usual), self._blurred(test, beyond))
        return self._usual[test]

    def _row(self, index: int, test: str, at: Place | None, tests: SeenByTest) -> _Blurred:
        hypothesis = self.hypotheses.causes[index]
        picture = hypothesis.picture
        group = picture.grouped(test)
        if group is not None:
            others = members_at(self.hypotheses, hypothesis, group, test, at, tests)
            if others:
                return self._blurred(test, group.row_given(test, others))
        key = (picture.fault.id, picture.name, test)
        if key not in self._rows:
            row = pattern_row(row_alone(self.hypotheses, hypothesis, test))
            self._rows[key] = self._blurred(test, row)
        if group is None:
            self._ungrouped[test][index] = self._rows[key]
        return self._rows[key]

    def _blurred(self, test: str, row: Row) -> _Blurred:
        blurred = reported(row, report_error(self.hypotheses.knowledge.tests[test]))
        return _Blurred(blurred, entropy(blurred.values()))

    def candidates(
        self,
        ranking: Ranking,
        seen: Sequence[Seen],
        done: frozenset[tuple[str, Place | None]],
        asks: Asks,
        switch: SwitchMinutes,
    ) -> tuple[Candidate, ...]:
        """Every test worth a look, the best rate first.

        `done` holds what has been answered or skipped; `asks` says which tests have to be asked
        to know a test (itself, or the inputs of a computed one; none if it cannot be known).
        """
        standing = self._standing(ranking, seen)
        found: list[Candidate] = []
        for test in self.hypotheses.tests.values():
            if test.id not in self._mentions or test.kind in ("step", "input"):
                continue
            places = [
                place
                for place in self.hypotheses.unit.layout.places(test.per)
                if (test.id, place) not in done and (test.id, None) not in done
            ]
            told = [self._candidate(standing, test, place, asks, switch) for place in places]
            found += _shared([each for each in told if each is not None], switch)
        return tuple(sorted(_hooked_up_together(found, self.hypotheses), key=in_order))

    def _candidate(
        self,
        standing: _Standing,
        test: Test,
        place: Place | None,
        asks: Asks,
        switch: SwitchMinutes,
    ) -> Candidate | None:
        """A test at one place, where it tells something and can be known."""
        asked = asks(test, place)
        if not asked:
            return None
        gain, surer = self._told(standing, test.id, place)
        if gain <= 0:
            return None
        minutes = minutes_to_know(asked)
        switching = max(switch(t, place) for t in asked)
        names = tuple(t.id for t in asked)
        return Candidate(test, place, gain, surer, minutes, switching, names)


def minutes_to_know(asked: Iterable[Test]) -> float:
    """The minutes of the tests that have to be asked to know one, without what leads to them."""
    return math.fsum(test.minutes for test in asked)


def _shared(places: Sequence[Candidate], switch: SwitchMinutes) -> Sequence[Candidate]:
    """One test at its places, each bearing its share of one change of work state for all of them.

    Whoever opens up and hooks on reads every circuit then: charged in full to each, and its gain
    counted at each alone, a test at several places would be put off for as many times as it has
    places. What one of them tells decides its share, so that a place of no interest bears none.
    """
    if len(places) < 2:
        return places
    change, gain = switch(places[0].test, None), math.fsum(each.gain for each in places)
    return [
        replace(each, share=min(1.0, change * each.gain / gain / each.switch_minutes))
        if each.switch_minutes > 0
        else each
        for each in places
    ]


def _hooked_up_together(found: Iterable[Candidate], known: Hypotheses) -> Iterator[Candidate]:
    """The candidates, of which those read with gauges and probes at one circuit share a change.

    Whoever has hooked up there reads pressures and pipes in one go, and what follows from them.
    """
    at: dict[Place | None, list[Candidate]] = defaultdict(list)
    for each in found:
        is_there = any(_AT_PORTS in known.tests[name].needs_state for name in each.asks)
        if is_there and each.switch_minutes > 0:
            at[each.at].append(each)
        else:
            yield each
    for same in at.values():
        change, gain = max(c.switch_minutes for c in same), math.fsum(c.gain for c in same)
        for each in same:
            share = change * each.gain / gain / each.switch_minutes
            yield replace(each, share=min(each.share, share))


def in_order(candidate: Candidate) -> tuple[float, float, int, str, str]:
    """The best rate first; ties by fewer minutes, the safer state, the name and the place."""
    return (
        -candidate.rate,
        candidate.minutes,
        _STATE[candidate.test.work_state],
        candidate.test.id,
        str(candidate.at),
    )
