"""A caution, need or work state that a test implies and does not have.

What: an insulation tester without lock-out, discharged capacitors and its hazards; gauges,
nitrogen, a vacuum, a torch, a gas train, burners that run, an analyzer, live or turning parts, a
smoke detector, a ladder or a skylight without the caution or need that goes with it.
Why: the program shows only the cautions that a test names or triggers, and makes only the needs
true that it names; a test that lost them would lead a person in without a word.
Fix: add what is named to `hazards`, `needs-state` or `who`, or write the work state that is named.
The reason and its source stand in the message.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.checks.implied import IMPLICATIONS, Implication
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.shown_cautions import hazards_shown

ID: Final = "implied-cautions"

_MANY: Final = 5
_SENTENCE: Final = re.compile(r"(?<=[.;:])\s+")
_FORBIDS: Final = re.compile(r"\b(?:never|not|no|without|instead of)\b", re.IGNORECASE)


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for everything that a test implies and does not have.

    What every test of a kind lacks has one cause, such as a trigger that is gone: it is told once.
    """
    for implied in IMPLICATIONS:
        tests = [test for test in base.knowledge.tests.values() if holds(implied, test)]
        lacking: dict[tuple[str, str, str], list[Test]] = {}
        for test in tests:
            for lack in missing(base.knowledge, implied, test):
                lacking.setdefault(lack, []).append(test)
        for (key, what, instead), those in lacking.items():
            one_cause = len(those) == len(tests) >= _MANY
            for test in those[:1] if one_cause else those:
                others = f" (and so do {len(those) - 1} others)" if one_cause else ""
                said = f"{test.id} {what}{others}, which {implied.of} implies: {implied.why}"
                said = f"{said} ({implied.source})"
                yield base.problem(ID, ("test", test.id), (key,), said, instead)


def holds(implied: Implication, test: Test) -> bool:
    """Whether a test is of the kind that the implication speaks of."""
    if test.kind == "step" and not implied.steps:
        return False
    return (
        _by_instrument(implied, test)
        and _among(test.area, implied.areas)
        and _among(test.work_state, implied.states)
        and _among(test.exposes, implied.exposes)
        and (not implied.needs or not set(implied.needs).isdisjoint(test.needs_state))
        and (implied.fact is None or test.exists_when.get(implied.fact[0]) == implied.fact[1:])
    )


def missing(
    knowledge: Knowledge, implied: Implication, test: Test
) -> Iterator[tuple[str, str, str]]:
    """Yield (key of the test, what is wrong, what to write) for what the test lacks of it."""
    shown = hazards_shown(knowledge, test, implied.on_units)
    yield from _lacking("hazards", implied.hazards, shown)
    yield from _lacking("needs-state", implied.needs_state, frozenset(test.needs_state))
    yield from _lacking("who", implied.who, frozenset(test.who))
    one_of = implied.one_need_of
    if one_of and set(one_of).isdisjoint(test.needs_state):
        yield "needs-state", f"needs neither {' nor '.join(one_of)}", f"write {' or '.join(one_of)}"
    if implied.work_states and test.work_state not in implied.work_states:
        wanted = " or ".join(implied.work_states)
        yield "work-state", f"is not {wanted} work", f"write work-state: {wanted}"


def _lacking(
    key: str, wanted: tuple[str, ...], has: frozenset[str]
) -> Iterator[tuple[str, str, str]]:
    lacks = [word for word in wanted if word not in has]
    if lacks:
        yield key, f"lacks {', '.join(lacks)} under {key}", f"add {', '.join(lacks)}"


def _among(word: str, words: tuple[str, ...]) -> bool:
    return not words or word in words


def _by_instrument(implied: Implication, test: Test) -> bool:
    """Whether the test is done with it; an instrument that a step forbids is not used."""
    ways = (implied.instrument, implied.words)
    if ways == (None, None) and not implied.meters:
        return True
    steps = (part for step in (test.name, *test.how) for part in _SENTENCE.split(step))
    told = [part for part in steps if not _FORBIDS.search(part)]
    return (
        test.meter in implied.meters
        or any(way is not None and way.search(test.instrument) is not None for way in ways)
        or any(implied.words is not None and implied.words.search(part) for part in told)
    )
