"""A bad-looking reading that turned out to be badly taken is a finding of its own.

The number weighs nothing. That it was wrong does: somebody may have built a diagnosis on it. Where
nobody has answered the test for it, a measurement that was said to be invalid and would have
called the unit unsound answers it.
"""

from __future__ import annotations

from collections.abc import Iterable

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.answers import Answer

REPEAT = "repeat-reading"
DIFFERS = "differs"
MEASURED = frozenset({"measurement", "computed"})


def repeats(knowledge: Knowledge, answers: Iterable[Answer]) -> tuple[Answer, ...]:
    """The answers, with "repeated, it differs" where one of them was a reading taken wrong."""
    given = tuple(answers)
    if REPEAT not in knowledge.tests or any(a.test == REPEAT for a in given):
        return given
    wrong = any(_is_misreading(knowledge, answer) for answer in given)
    return (*given, Answer(REPEAT, (DIFFERS,))) if wrong else given


def _is_misreading(knowledge: Knowledge, answer: Answer) -> bool:
    test = knowledge.tests[answer.test]
    unsound = bool(answer.outcomes) and not set(answer.outcomes) <= set(test.healthy)
    return answer.valid is False and test.kind in MEASURED and unsound
