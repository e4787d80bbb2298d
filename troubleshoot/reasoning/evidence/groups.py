"""Evidence groups: tests that a card joins by `given` or `any-of`, with one joint table.

Two readings that together mean another thing must not be counted twice. The tests that a card
joins form a group of at most four; its table starts as the product of the single rows, and each
stated cell is imposed by iterative proportional fitting (Deming and Stephan 1940). Members that
have not been answered are summed out.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Mapping, Sequence

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.evidence.outcome_chances import Row

MOST_TESTS = 4
ROUNDS = 60
CLOSE_ENOUGH = 1e-6


class InfeasibleGroup(ValueError):
    """The statements of a group contradict one another."""


@frozen
class Statement:
    """A stated cell: the chance of `target` inside `condition`.

    Both say, by test, which outcomes count. With `any_of`, the target is "at least one of these
    tests shows one of its outcomes"; otherwise every test named must.
    """

    chance: float
    target: Mapping[str, frozenset[str]]
    condition: Mapping[str, frozenset[str]]
    any_of: bool = False


@frozen
class Group:
    """A joint table over the outcomes of several tests under one hypothesis."""

    tests: tuple[str, ...]
    table: Mapping[tuple[str, ...], float]

    def likelihood(self, reports: Mapping[str, Row]) -> float:
        """Chance of the reports; `reports` gives, by test, the chance of the report per outcome."""
        columns = [reports.get(test) for test in self.tests]
        terms = []
        for cell, chance in self.table.items():
            term = chance
            for outcome, column in zip(cell, columns, strict=True):
                if column is not None:
                    term *= column.get(outcome, 0.0)
            terms.append(term)
        return math.fsum(terms)

    def row_given(self, test: str, reports: Mapping[str, Row]) -> Row:
        """The row of one member, given what the other members read."""
        index = self.tests.index(test)
        others = [None if t == test else reports.get(t) for t in self.tests]
        sums: dict[str, float] = {}
        for cell, chance in self.table.items():
            for outcome, column in zip(cell, others, strict=True):
                if column is not None:
                    chance *= column.get(outcome, 0.0)
            sums[cell[index]] = sums.get(cell[index], 0.0) + chance
        total = math.fsum(sums.values())
        return {outcome: p / total for outcome, p in sums.items()}


def joint(rows: Mapping[str, Row], statements: Sequence[Statement]) -> Group:
    """The table that keeps every stated cell and otherwise stays nearest the product of the rows.

    Raises InfeasibleGroup where no table can hold all statements.
    """
    tests = tuple(rows)
    table = {
        cell: math.prod(rows[t][o] for t, o in zip(tests, cell, strict=True))
        for cell in itertools.product(*(tuple(rows[t]) for t in tests))
    }
    masks = [_masks(statement, tests, table) for statement in statements]
    for _ in range(ROUNDS):
        worst = 0.0
        for statement, (inside, hit) in zip(statements, masks, strict=True):
            worst = max(worst, _impose(table, inside, hit, statement.chance))
        if worst < CLOSE_ENOUGH:
            return Group(tests, table)
    raise InfeasibleGroup("the statements about " + ", ".join(tests) + " contradict one another")


def _masks(
    statement: Statement, tests: tuple[str, ...], table: Mapping[tuple[str, ...], float]
) -> tuple[list[tuple[str, ...]], frozenset[tuple[str, ...]]]:
    """The cells inside the condition, and those of them that hit the target."""
    inside, hit = [], []
    for cell in table:
        shown = dict(zip(tests, cell, strict=True))
        if all(shown[t] in outcomes for t, outcomes in statement.condition.items()):
            inside.append(cell)
            hits = [shown[t] in outcomes for t, outcomes in statement.target.items()]
            if any(hits) if statement.any_of else all(hits):
                hit.append(cell)
    return inside, frozenset(hit)


def _impose(
    table: dict[tuple[str, ...], float],
    inside: list[tuple[str, ...]],
    hit: frozenset[tuple[str, ...]],
    chance: float,
) -> float:
    """Scale the cells so that the statement holds; returns how far off it was."""
    total = math.fsum(table[cell] for cell in inside)
    hits = math.fsum(table[cell] for cell in inside if cell in hit)
    misses = total - hits
    if total <= 0 or hits <= 0 or misses <= 0:
        raise InfeasibleGroup("a statement speaks of outcomes that cannot be seen")
    up, down = chance * total / hits, (1 - chance) * total / misses
    for cell in inside:
        table[cell] *= up if cell in hit else down
    return abs(hits / total - chance)
