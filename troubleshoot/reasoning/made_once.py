"""What is made of a rule base, and of a unit under it: kept for all who reason over the same.

The chains take 10 ms to make and the hypotheses of a unit 20 ms; a visit that is gone on with is
reasoned over by four, one after the other. Kept by each thread for itself, since a chain is run by
one at a time, and by the very object of a rule base: two that are equal may differ in their order.
"""

from __future__ import annotations

import threading
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.chaining.chains import compile_chains
from troubleshoot.reasoning.chaining.engine import Chain
from troubleshoot.reasoning.choosing.next_test import Chooser
from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, hypotheses_for
from troubleshoot.reasoning.unit.equipment import Unit

MOST_BASES: Final = 2
MOST_UNITS: Final = 4


class MadeOnce:
    """The chains of one rule base, and the hypotheses of the units that were asked about last."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self.chain = Chain(compile_chains(knowledge))
        self._units: list[tuple[Unit, Hypotheses, Chooser]] = []

    def of_unit(self, unit: Unit) -> tuple[Hypotheses, Chooser]:
        """The hypotheses of a unit, and what chooses tests by them."""
        for number, (known, hypotheses, chooser) in enumerate(self._units):
            if known == unit:
                self._units.insert(0, self._units.pop(number))
                return hypotheses, chooser
        hypotheses = hypotheses_for(self.knowledge, unit)
        self._units.insert(0, (unit, hypotheses, Chooser(hypotheses)))
        del self._units[MOST_UNITS:]
        return self._units[0][1:]


def made_of(knowledge: Knowledge) -> MadeOnce:
    """What is made of a rule base, made now unless it has been."""
    kept = _KEPT.bases
    made = next((each for each in kept if each.knowledge is knowledge), None) or MadeOnce(knowledge)
    _KEPT.bases = (made, *(each for each in kept if each is not made))[:MOST_BASES]
    return made


class _Kept(threading.local):
    bases: tuple[MadeOnce, ...] = ()


_KEPT: Final = _Kept()
