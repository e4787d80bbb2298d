"""Which tests a person means who asks for one in words: `do capacitance`."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.unit.equipment import Unit


def find_tests(knowledge: Knowledge, unit: Unit, words: str) -> tuple[Test, ...]:
    """The test of this id or name, else every one on this unit with all of the words in its name.

    A safety step is none: its turn comes by itself.
    """
    tests = _asked_for(knowledge, unit)
    said = plain_words(words).split()
    exact = [t for t in tests if said in (t.id.split("-"), _words(t.name))]
    if exact or not said:
        return tuple(exact)
    return tuple(t for t in tests if set(said) <= {*t.id.split("-"), *_words(t.name)})


def titled_so(knowledge: Knowledge, unit: Unit, words: str) -> Test | None:
    """The test whose exact title it is, though there be words in it that could name a place."""
    said = _words(words)
    titled = [test for test in _asked_for(knowledge, unit) if _words(test.name) == said]
    return titled[0] if len(titled) == 1 else None


def _asked_for(knowledge: Knowledge, unit: Unit) -> list[Test]:
    return [t for t in knowledge.tests.values() if t.kind != "step" and unit.allows(t.exists_when)]


def _words(name: str) -> list[str]:
    return plain_words(name.replace(",", " ")).split()
