"""Which grades of a card could change and none of its examples would notice.

Each grade is moved one word, as a slip of the pen would, and the card's examples are tried again.
Where all still hold, an example is made that would not: of the call and what is graded alone, or of
the card's first example with it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import Final

from troubleshoot.authoring.trial import Trial, try_example
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Evidence, Example, Fault, Knowledge
from troubleshoot.knowledge.vocabulary import GRADES, Grade
from troubleshoot.reasoning.conclude import Reasoner

LEAST_ASKED, MOST_ASKED = 0.5, 0.99
"""What `at-least` may ask for."""
MOVED: Final[dict[Grade, Grade]] = {**dict(pairwise(GRADES)), "never": "sometimes"}
"""What becomes of each word: the next below it; of a contradiction something that may be."""


@frozen
class Unnoticed:
    """A grade that could change: what it is of, what it would become, and what would notice.

    `example`: one that holds on the card as it is, and would fail; None where none was found.
    """

    item: Evidence
    becomes: Grade
    example: Example | None


def unnoticed(knowledge: Knowledge, fault: Fault) -> Iterator[Unnoticed]:
    """Every grade of a card's own that its examples do not hold in its place."""
    if fault.is_effect:
        return
    now = Reasoner(knowledge)
    holding = [each for each in fault.examples if not try_example(now, fault, each).failure]
    for number, item in enumerate(fault.evidence):
        changed = with_grade(fault, number, MOVED[item.grade])
        then = Reasoner(with_card(knowledge, changed))
        if not any(try_example(then, changed, each).failure for each in holding):
            noticing = _noticing(now, then, fault, changed, item)
            yield Unnoticed(item, MOVED[item.grade], next(noticing, None))


def _noticing(
    now: Reasoner, then: Reasoner, fault: Fault, changed: Fault, item: Evidence
) -> Iterator[Example]:
    """Examples that hold now and fail once the grade has changed, the shortest first."""
    for story in (each for each in fault.examples if each.names_it):
        for example in _with_reading(story, item):
            before, after = try_example(now, fault, example), try_example(then, changed, example)
            if not before.failure and (share := _between(before, after)) is not None:
                yield replace(example, at_least=share)
            elif before.failure and before.own is not None and not after.failure:
                yield replace(example, names_it=False)


def _with_reading(story: Example, item: Evidence) -> Iterator[Example]:
    """The call with what is graded alone, then the whole example with it."""
    finding = item.findings[0]
    reading = {"test": finding.test, "outcome": finding.outcomes[0]}
    others = tuple(row for row in story.readings if row["test"] != finding.test)
    for number in range(len(others) + 1):
        name = f"holds the grade of {finding.test}: {finding.outcomes[0]}"
        yield replace(story, name=name, readings=(*others[:number], reading), at_least=None)


def _between(before: Trial, after: Trial) -> float | None:
    """A share that the card comes to as it is, and no more once the grade has changed."""
    if before.own is None or after.own is None:
        return None
    asked = min(math.floor(100 * before.own.probability) / 100, MOST_ASKED)
    return asked if asked >= LEAST_ASKED and after.own.probability < asked else None


def with_grade(fault: Fault, number: int, grade: Grade) -> Fault:
    """A card with another word for one of what it grades, by its number."""
    evidence = list(fault.evidence)
    evidence[number] = replace(evidence[number], grade=grade)
    return replace(fault, evidence=tuple(evidence))


def with_card(knowledge: Knowledge, fault: Fault) -> Knowledge:
    """The rules with a card changed."""
    faults = {**knowledge.faults, fault.id: fault}
    graded = [(item.grade, item.findings) for item in fault.evidence]
    return replace(knowledge, faults=faults, digest=f"{knowledge.digest} {graded}")
