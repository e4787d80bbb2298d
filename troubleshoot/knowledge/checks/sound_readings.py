"""A reading of which nobody said what a sound unit shows.

What: a test reads a quantity that sound-unit.yaml leaves out; a sound number is reckoned from
itself, or from something that no rule says.
Why: the apprentice would get a word where a meter shows a number, and a drawn case could not show
this fault.
Fix: add the quantity to sound-unit.yaml with what it reads, or say under none-because why no
number can be said.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.checks.known_quantities import knowable_quantities
from troubleshoot.knowledge.model import Knowledge, SoundReading
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "sound-readings"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every quantity without a word, and every sound number without an end."""
    knowledge = base.knowledge
    if not knowledge.sound:
        return  # a base without practice
    for test in knowledge.tests.values():
        if test.reads and test.kind == "measurement":
            quantity = test.reads[0].quantity
            if quantity not in knowledge.sound and not knowledge.quantities[quantity].computed:
                what = f"what does {quantity} read on a sound unit"
                instead = f"add {quantity} to sound-unit.yaml, or say there under none-because why"
                yield base.problem(ID, ("test", test.id), ("reads",), what, instead)
    for reading in knowledge.sound.values():
        entry = ("sound reading", reading.id)
        if reading.id in _behind(knowledge, reading):
            what = f"{reading.id} is reckoned from itself"
            yield base.problem(ID, entry, ("reads",), what, "say one of them as a plain number")
        if reading.none_because and reading.ways:
            what = f"{reading.id} has a sound number, and a reason why it has none"
            yield base.problem(ID, entry, ("none-because",), what, "keep one of the two")
    yield from _unsaid(base)


def _inputs(reading: SoundReading) -> Iterator[str]:
    for way in reading.ways:
        if way.number is not None:
            yield from way.number.inputs


def _behind(knowledge: Knowledge, reading: SoundReading) -> frozenset[str]:
    """Everything that a sound number is reckoned from."""
    found: set[str] = set()
    new = set(_inputs(reading))
    while new:
        found |= new
        known = (knowledge.sound[name] for name in new if name in knowledge.sound)
        new = {name for each in known for name in _inputs(each)} - found
    return frozenset(found)


def _unsaid(base: RuleBase) -> Iterator[Problem]:
    """Inputs that neither a reading nor a plate nor the file itself can say."""
    knowable = knowable_quantities(base.knowledge) | frozenset(base.knowledge.sound)
    for reading in base.knowledge.sound.values():
        for name in _inputs(reading):
            if name not in knowable:
                what = f"{reading.id} is reckoned from {name}, of which nothing is known"
                instead = f"say what {name} reads on a sound unit"
                entry = ("sound reading", reading.id)
                yield base.problem(ID, entry, ("reads",), what, instead)
