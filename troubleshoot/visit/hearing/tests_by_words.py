"""Which tests a person means who asks for one in words: `do capacitance`."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.outside.text import plain_words
from troubleshoot.reasoning.unit.equipment import Unit


def find_tests(knowledge: Knowledge, unit: Unit, words: str) -> tuple[Test, ...]:
    """The test of this id or name, else every one on this unit with all of the words in its name.

    A safety step is none: its turn comes by itself.
    """
    tests = [t for t in knowledge.tests.values() if t.kind != "step" and unit.allows(t.exists_when)]
    said = plain_words(words).split()
    exact = [t for t in tests if said in (t.id.split("-"), _words(t.name))]
    if exact or not said:
        return tuple(exact)
    return tuple(t for t in tests if set(said) <= {*t.id.split("-"), *_words(t.name)})


def _words(name: str) -> list[str]:
    return plain_words(name.replace(",", " ")).split()
