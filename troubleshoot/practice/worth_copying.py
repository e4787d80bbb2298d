"""Whether the expert of a scenario is worth copying: short, sure, and true to its own lesson."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.expert import ExpertPath
from troubleshoot.practice.reasoned import chance_of, is_one_of
from troubleshoot.practice.scenario import Scenario
from troubleshoot.reasoning.choosing.next_test import NAMED

MOST_TESTS: Final = 15
MOST_MINUTES: Final = 90.0
"""More than this nobody goes through to learn one thing (common practice, no source)."""


@frozen
class Unworthy:
    """What is wrong with an expert's way, what to do about it, and the key it is about."""

    what: str
    instead: str
    key: str = "way"


def unworthy(knowledge: Knowledge, scenario: Scenario, expert: ExpertPath) -> Iterator[Unworthy]:
    """Yield what makes an expert a poor example."""
    shorter = "write a shorter way, or readings that decide sooner"
    if len(expert.tests) > MOST_TESTS:
        yield Unworthy(f"the expert takes {len(expert.tests)} tests, over {MOST_TESTS}", shorter)
    if expert.minutes > MOST_MINUTES:
        what = f"the expert takes {expert.minutes:.0f} minutes, over {MOST_MINUTES:.0f}"
        yield Unworthy(what, shorter)
    if not _finds_it(scenario, expert):
        first = expert.conclusions.causes[0]
        what = f"the expert ends {expert.ending}, with {first.fault.id} first"
        yield Unworthy(what, "take the tests that separate what is true from it")
    known = {reading.test for reading in expert.conclusions.readings}
    for name in scenario.taught_by:
        if name not in known:
            what = f"the lesson rests on {knowledge.tests[name].name}, and the expert does without"
            yield Unworthy(what, "put it on the way, or teach another thing", "taught-by")


def too_long(expert: ExpertPath) -> bool:
    """Whether nobody would go through it to learn one thing."""
    return len(expert.tests) > MOST_TESTS or expert.minutes > MOST_MINUTES


def _finds_it(scenario: Scenario, expert: ExpertPath) -> bool:
    """Whether the way ends with what is true: the STOP, nothing wrong, or the true fault named.

    Two faults that are both there may share what one of them would be named at.
    """
    truth = scenario.truth
    if truth.stop is not None or truth.nothing_wrong:
        return expert.ending == ("stopped" if truth.stop is not None else "nothing-wrong")
    found = expert.conclusions
    first = max(chance_of(found, (fault,)) for fault in truth.faults)
    together = sum(chance_of(found, (fault,)) for fault in truth.faults)
    rival = max((c.probability for c in found.causes if not is_one_of(c, truth.faults)), default=0)
    return together >= NAMED and first > rival
