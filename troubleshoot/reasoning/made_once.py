"""What is made of a rule base, and of a unit under it: kept for all who reason over the same.

The chains take 10 ms to make and the hypotheses of a unit 20 ms; a visit that is gone on with is
reasoned over by four, one after the other. Units of one kind have the same. Kept by each thread for
itself, since a chain is run by one at a time, and by the very object of a rule base: two that are
equal may differ in their order.
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
from troubleshoot.reasoning.unit.places import Layout, Place

MOST_BASES: Final = 2
MOST_KINDS: Final = 24
"""Kinds of units whose hypotheses are kept, of about 1 MB each: a visit needs one, a table of the
readings of a fleet meets all its kinds again and again."""

Kind = tuple[tuple[tuple[str, str], ...], Layout, frozenset[tuple[str, Place | None]]]


class MadeOnce:
    """The chains of one rule base, and the hypotheses of the kinds of units asked about last."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self.chain = Chain(compile_chains(knowledge))
        self._kinds: dict[Kind, tuple[Hypotheses, Chooser]] = {}

    def of_unit(self, unit: Unit) -> tuple[Hypotheses, Chooser]:
        """The hypotheses of a unit, and what chooses tests by them."""
        kind = _kind(unit)
        made = self._kinds.pop(kind, None)
        if made is None:
            hypotheses = hypotheses_for(self.knowledge, unit)
            made = hypotheses, Chooser(hypotheses)
        self._kinds[kind] = made  # the last in order is the last that was asked about
        if len(self._kinds) > MOST_KINDS:
            del self._kinds[next(iter(self._kinds))]
        return made


def _kind(unit: Unit) -> Kind:
    """What the hypotheses of a unit hang on: its facts, its places, which plate values are known.

    What these values are, the readings are judged by, and nothing else.
    """
    return tuple(sorted(unit.facts.items())), unit.layout, frozenset(unit.plate)


def made_of(knowledge: Knowledge) -> MadeOnce:
    """What is made of a rule base, made now unless it has been."""
    kept = _KEPT.bases
    made = next((each for each in kept if each.knowledge is knowledge), None) or MadeOnce(knowledge)
    _KEPT.bases = (made, *(each for each in kept if each is not made))[:MOST_BASES]
    return made


class _Kept(threading.local):
    bases: tuple[MadeOnce, ...] = ()


_KEPT: Final = _Kept()
