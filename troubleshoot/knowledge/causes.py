"""Problems under their cause: what would go once something else is put right is told with it.

A misspelt id makes every place that names it a problem; they are one, and its cause is the file
that was meant to define it, where one is called so, or else the first place that says it.
"""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.problems import Problem


@frozen
class Cause:
    """A problem to put right, and those that go with it."""

    problem: Problem
    follow: tuple[Problem, ...] = ()


def by_cause(problems: Iterable[Problem]) -> tuple[Cause, ...]:
    """The problems in order, each that follows from another with it.

    Those `about` one missing name are one: it is put right where it should be defined, else where
    it is named first.
    """
    told = sorted(problems)
    first: dict[str, Problem] = {}
    for problem in sorted(told, key=lambda each: each.check == NAMED):
        if problem.about:
            first.setdefault(problem.about, problem)
    follow: dict[Problem, list[Problem]] = {}
    for problem in told:
        follow.setdefault(first.get(problem.about, problem), []).append(problem)
    return tuple(
        Cause(problem, tuple(each for each in follow[problem] if each is not problem))
        for problem in told
        if problem in follow
    )


NAMED = "unknown-names"
"""The check of names that nothing defines: what it finds may follow from what another found."""
