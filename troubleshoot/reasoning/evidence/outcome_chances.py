"""Rows: the chance of each outcome of a test under one hypothesis, from the grade words.

The background row is what a unit without the fault shows. A hypothesis that does not mention a
test has exactly the background row, so its weight is exactly 0. A test with `choose: several` has
a row over sets of signs, in which each sign is its own seen / not-seen finding.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Collection, Iterable, Mapping, Sequence
from types import MappingProxyType

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Evidence, Test
from troubleshoot.knowledge.vocabulary import MOST_OF_A_ROW, PROBABILITY
from troubleshoot.reasoning.evidence.grades import HEALTHY_SHARE

Row = Mapping[str, float]
Cell = tuple[frozenset[str], float]
"""A set of outcomes and the total chance that a card gives the set."""

RARER = 0.1
"""An outcome that a card calls never is at most this share of what is usual of it (common practice,
no source)."""
DEFINING = 0.001
"""An outcome as rare as this on any unit is a fault seen with one's own eyes: nobody writes it down
by a slip more often than it is there, and it speaks for nothing unknown (common practice, no
source)."""
NONE_OF_THEM = "(none of them)"
"""The healthy outcome of a test of signs that names none; no id can look like this."""


def background(test: Test, outcomes: Sequence[str]) -> Row:
    """The chance of each outcome without the fault: healthy 0.90 and the rest even.

    For a test of signs: the chance that each sign is seen; together they leave the healthy
    outcome its share. A test may state its own: of a bad outcome, or of the healthy one where a
    sound unit practically always shows it.
    """
    if test.choose == "several":
        return _sign_background(test, outcomes)
    stated = {o: p for o, p in test.background.items() if o in outcomes}
    rest = [o for o in outcomes if o not in stated]
    healthy = [o for o in rest if o in test.healthy]
    left = max(1 - math.fsum(stated.values()), 1 - MOST_OF_A_ROW if rest else 0.0)
    row = dict(stated)
    if healthy and len(healthy) < len(rest):
        share = left * HEALTHY_SHARE
        row |= {o: share / len(healthy) for o in healthy}
        others = [o for o in rest if o not in healthy]
        row |= {o: (left - share) / len(others) for o in others}
    else:
        row |= {o: left / len(rest) for o in rest}
    total = math.fsum(row.values())
    return {o: row[o] / total for o in outcomes}


def _sign_background(test: Test, outcomes: Sequence[str]) -> Row:
    signs = [o for o in outcomes if o not in test.healthy]
    healthy = [o for o in outcomes if o in test.healthy]
    if healthy:
        share = test.background.get(healthy[0], HEALTHY_SHARE)
        usual = 1 - math.pow(share, 1 / len(signs)) if signs else 0.0
    else:
        usual = 1 / len(signs)
    return {o: test.background.get(o, usual) for o in signs}


def cells_of(test: Test, evidence: Iterable[Evidence], outcomes: Sequence[str]) -> list[Cell]:
    """What a card says of one test: sets of outcomes with the chance of the set.

    Outcomes this equipment cannot show are dropped first.
    """
    here = frozenset(outcomes)
    cells = []
    for item in evidence:
        if len(item.findings) == 1 and item.findings[0].test == test.id:
            named = frozenset(item.findings[0].outcomes) & here
            if named:
                cells.append((named, PROBABILITY[item.grade]))
    return cells


def row(test: Test, cells: Sequence[Cell], q: Row) -> Row:
    """The row of a pick-one test under a hypothesis whose card holds these cells.

    `q`: the background row, over the outcomes that this equipment can show.
    """
    cells = [widened(test, cell, cells, q) for cell in cells]
    cells = [(named, _usual(named, chance, test, q)) for named, chance in cells]
    graded = _disjoint(cells, q)
    total = math.fsum(chance for _, chance in graded)
    rest = [o for o in q if not any(o in named for named, _ in graded)]
    most = MOST_OF_A_ROW if rest else 1.0
    scale = most / total if total > most or (not rest and total > 0) else 1.0
    result: dict[str, float] = {}
    for named, chance in graded:
        inside = math.fsum(q[o] for o in sorted(named))
        for outcome in sorted(named):
            result[outcome] = chance * scale * q[outcome] / inside
    left = 1 - math.fsum(result.values())
    outside = math.fsum(q[o] for o in rest)
    for outcome in rest:
        result[outcome] = left * q[outcome] / outside
    return {o: result[o] for o in q}


def _usual(named: frozenset[str], chance: float, test: Test, q: Row) -> float:
    """A grade against what is usual of a set of outcomes.

    On the healthy outcome it means "reads as usual": only seldom and never lower it.
    """
    usual = math.fsum(q[o] for o in sorted(named))
    if named <= frozenset(test.healthy) and chance > PROBABILITY["seldom"]:
        return max(chance, usual)
    return _never_speaks_for(chance, usual)


def _never_speaks_for(chance: float, usual: float) -> float:
    """ "Never" is rarer than usual, however rare an outcome is to begin with."""
    return min(chance, usual * RARER) if chance <= PROBABILITY["never"] else chance


def widened(test: Test, cell: Cell, cells: Sequence[Cell], outcomes: Collection[str]) -> Cell:
    """A grade on the milder of two bad outcomes belongs to the set with the worse ones.

    It reaches up to the next worse outcome that has a grade of its own.
    """
    named, chance = cell
    if named & frozenset(test.healthy):
        return cell
    spoken_of = frozenset().union(*(each for each, _ in cells))
    worse: set[str] = set()
    for chain in test.severity:
        worst_named = max((i for i, o in enumerate(chain) if o in named), default=None)
        if worst_named is not None:
            beyond = (o for o in chain[worst_named + 1 :] if o in outcomes)
            worse.update(itertools.takewhile(lambda o: o not in spoken_of, beyond))
    return named | frozenset(worse), chance


def _disjoint(cells: Sequence[Cell], q: Row) -> list[Cell]:
    """Cells that share outcomes: the later takes only what the earlier did not name."""
    taken: set[str] = set()
    result = []
    for named, chance in cells:
        free = named - taken
        if free:
            whole = math.fsum(q[o] for o in sorted(named))
            part = math.fsum(q[o] for o in sorted(free))
            result.append((frozenset(free), chance * part / whole))
            taken |= free
    return result


@frozen
class Signs:
    """The row of a test of signs: the chance of each sign, and of none of them."""

    signs: Row
    none: float

    def chance(self, seen: frozenset[str]) -> float:
        """The chance of exactly this set of signs (the rest looked for and not seen)."""
        if not seen:
            return self.none
        by_chance = math.prod(p if s in seen else 1 - p for s, p in self.signs.items())
        some = 1 - math.prod(1 - p for p in self.signs.values())
        return by_chance * (1 - self.none) / some

    def chance_within(self, least: frozenset[str], most: frozenset[str]) -> float:
        """The chance of a set that holds `least` and lies in `most`: what is between may be."""
        between = sorted(most - least)
        sets = (
            least.union(more)
            for size in range(len(between) + 1)
            for more in itertools.combinations(between, size)
        )
        return math.fsum(self.chance(each) for each in sets)

    def patterns(self) -> Row:
        """None, and each sign alone, scaled to 1: what the gain of looking is reckoned on."""
        odds = {s: p / (1 - p) for s, p in self.signs.items()}
        total = math.fsum(odds.values())
        scale = (1 - self.none) / total if total > 0 else 0.0
        return {NONE_OF_THEM: self.none, **{s: p * scale for s, p in odds.items()}}


def pattern_row(made: Row | Signs) -> Row:
    """A row over single outcomes: for a test of signs, none and each sign alone."""
    return made.patterns() if isinstance(made, Signs) else made


def sign_row(test: Test, cells: Sequence[Cell], q: Row) -> Signs:
    """The row of a test of signs under a hypothesis whose card holds these cells.

    `q`: the background chance of each sign.
    """
    signs = dict(q)
    none: float | None = None
    usual = math.prod(1 - p for p in q.values())
    for named, chance in cells:
        bad = sorted(named - frozenset(test.healthy))
        if len(bad) < len(named):
            low = chance <= PROBABILITY["seldom"]
            none = chance if low else max(chance, usual)
        if not bad:
            continue
        chance = _never_speaks_for(chance, 1 - math.prod(1 - q[s] for s in bad))
        for sign in bad:
            signs[sign] = _share_of_any(chance, q[sign], [q[s] for s in bad])
    by_chance = math.prod(1 - p for p in signs.values())
    return Signs({s: signs[s] for s in q}, by_chance if none is None else none)


def _share_of_any(chance: float, own: float, all_own: Sequence[float]) -> float:
    """The chance of one sign when "at least one of them" has the given chance.

    The signs keep their background proportions on the scale of -log(1 - p).
    """
    total = math.fsum(-math.log1p(-p) for p in all_own)
    share = -math.log1p(-own) / total if total > 0 else 1 / len(all_own)
    return 1 - math.pow(1 - chance, share)


def chance_of_any(test: Test, made: Row | Signs, named: frozenset[str]) -> float:
    """The chance that a row gives at least one of these outcomes."""
    if not isinstance(made, Signs):
        return math.fsum(made[o] for o in sorted(named & made.keys()))
    others = frozenset(made.signs) - named
    sound = made.none if named & frozenset(test.healthy) else 0.0
    return sound + 1 - made.chance_within(frozenset(), others)


def reported(row_: Row, error: float) -> Row:
    """The chance of each report, when a report is wrong with chance `error`, any way alike."""
    k = len(row_)
    if k < 2:
        return row_
    return {o: (1 - error) * p + error * (1 - p) / (k - 1) for o, p in row_.items()}


def report_column(
    outcomes: Iterable[str],
    chances: Mapping[str, float],
    error: float,
    usual: Mapping[str, float] = MappingProxyType({}),
) -> Row:
    """The chance of a report per true outcome: what was seen, blurred by report error.

    A hard report of r gives 1 - e on r and e / (K - 1) elsewhere; a soft one mixes such columns.
    Of an outcome that defines its fault, by its background in `usual`, at most that elsewhere.
    """
    names = list(outcomes)
    k = len(names)
    if k < 2:
        return dict.fromkeys(names, 1.0)
    total = math.fsum(chances.values()) or 1.0
    slips = {
        o: min(error / (k - 1), q) if (q := usual.get(o, 1.0)) <= DEFINING else error / (k - 1)
        for o in names
    }
    miss = math.fsum(slips[o] * chances.get(o, 0.0) for o in names) / total
    hits = {o: (1 - error - slips[o]) * chances.get(o, 0.0) / total for o in names}
    return {o: miss + hits[o] for o in names}
