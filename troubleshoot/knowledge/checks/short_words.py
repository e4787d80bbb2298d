"""Short words that nobody could type for a reading, or that would be taken for another.

What: short-words of a test that reads no number, or is a safety step; words with capitals or signs,
or that are all number; words twice in one test; words that are the name of another test, which has
them not itself; words that more than five tests share; two numbers of which one test is both, or
whose first has no words of its own.
Why: a reading is taken by these words at any question. What nobody can type is idle, and what means
something else to everybody else is kept as the wrong reading.
Fix: take the words away, or add them to the test that they name as well: then it is asked which is
meant, where unit and number do not tell.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Knowledge, ShortWords, Test
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.quantities.spoken_numbers import in_figures

ID: Final = "short-words"

MOST_TESTS: Final = 5
"""So many readings of one word a person may be asked to choose among."""
_TYPED: Final = re.compile(r"(?=.*[a-z])[a-z0-9][a-z0-9' -]*")


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for short words that cannot be read, or are another's."""
    tests = base.knowledge.tests.values()
    names = {test.name.lower(): test for test in tests}
    shared = Counter(word for test in tests for word in {*_words(test)})
    for test in tests:
        for number, short in enumerate(test.short_words):
            for what, instead in (
                *_of_the_test(test),
                *_of_two(base.knowledge, test, short),
                *_of_words(test, short, names, shared),
            ):
                steps = ("short-words", number)
                yield base.problem(ID, ("test", test.id), steps, what, instead)


def _words(test: Test) -> Iterator[str]:
    for short in test.short_words:
        yield from short.words


def _of_the_test(test: Test) -> Iterator[tuple[str, str]]:
    if not test.reads:
        yield f"{test.id} reads no number", "say what it reads, or take the short words away"
    if test.kind == "step":
        yield f"{test.id} is a safety step", "take them away: a step is read when it is done"


def _of_two(knowledge: Knowledge, test: Test, short: ShortWords) -> Iterator[tuple[str, str]]:
    second = short.over or short.out
    if second is None:
        if not short.words:
            yield "there are no words", "write words, or over, or out"
        return
    if second == test.id:
        yield f"both numbers are of {test.id}", "name the test of the second number"
    for each in (test, knowledge.tests[second]):
        if all(own.over or own.out for own in each.short_words):
            yield f"{each.id} has no short words of its own", "add them, for one number alone"


def _of_words(
    test: Test, short: ShortWords, names: dict[str, Test], shared: Counter[str]
) -> Iterator[tuple[str, str]]:
    own = [*_words(test)]
    for word in short.words:
        if not _TYPED.fullmatch(word) or in_figures(word) != word:
            yield f'"{word}" is not read as words', "write small letters, and no number"
        if own.count(word) > 1:
            yield f'"{word}" stands twice in {test.id}', "keep one"
        named = names.get(word)
        if named is not None and named is not test and word not in _words(named):
            yield f'"{word}" is the name of {named.id}', f"add it to {named.id}, or take it away"
        if shared[word] > MOST_TESTS:
            yield f'"{word}" may be any of {shared[word]} tests', "use a longer word"
