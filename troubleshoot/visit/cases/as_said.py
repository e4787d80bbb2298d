"""The test and the outcomes of a reading in a file, in ids: a person may write them as said.

Only whole names and words count, and only those of one thing alone; the rest is left as it is, to
be refused. Of a safety step no outcome is taken so: what confirms one is its own word.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.visit.cases.words import as_list


def in_ids(knowledge: Knowledge, entry: Mapping[str, object]) -> Mapping[str, object]:
    """The reading with the ids of its test and outcomes in place of what people call them."""
    said = str(entry.get("test"))
    name = said if said in knowledge.tests else _tests_by_name(knowledge).get(plain_words(said))
    test = knowledge.tests.get(name or said)
    if test is None:
        return entry
    found = {**entry, "test": test.id}
    if entry.get("outcome") is not None and test.kind != "step":
        found["outcome"] = [_outcome(test, word) for word in as_list(entry["outcome"])]
    return found


def _outcome(test: Test, said: object) -> object:
    """The id of the outcome that is so called; what was said where it is none's or two's."""
    if any(said == each.id for each in test.outcomes):
        return said
    called = ((name, o.id) for o in test.outcomes for name in (o.id, o.spoken, *o.words))
    return _of_one_alone(called).get(plain_words(str(said)), said)


@lru_cache(maxsize=2)
def _tests_by_name(knowledge: Knowledge) -> Mapping[str, str]:
    tests = knowledge.tests.values()
    return _of_one_alone((name, each.id) for each in tests for name in (each.name, *each.words))


def _of_one_alone(called: Iterable[tuple[str, str]]) -> Mapping[str, str]:
    """What each name means, without those that two things have."""
    meant: dict[str, set[str]] = {}
    for name, what in called:
        meant.setdefault(plain_words(name), set()).add(what)
    return {name: each for name, (each, *others) in meant.items() if not others}
