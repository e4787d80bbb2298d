"""Bad advice in a scenario: what an apprentice reads is scanned as the texts of the rules are."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.knowledge.checks.safe_advice import problem_with
from troubleshoot.knowledge.nodes import Located, LocatedValue
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.shapes import Text
from troubleshoot.knowledge.walking import text_of, walk
from troubleshoot.practice.form import SCENARIO_FILE


def advice_problems(root: Located, path: str) -> Iterator[Problem]:
    """Yield a problem for every text of a scenario that advises what must not be done."""
    for step in walk(SCENARIO_FILE, root):
        text = text_of(step.node) if isinstance(step.shape, Text) else None
        if text is not None and isinstance(step.node, LocatedValue):
            yield from problem_with(path, text, step.node)
