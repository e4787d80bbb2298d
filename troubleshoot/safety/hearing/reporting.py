"""Which hazard somebody means who says that their words are a danger.

What no hazard's words name is the one that a hint speaks of, else the one nearest to what was said,
else the hazard that stands for all others.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from typing import Final

from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.safety.hearing.dangers import ANY_DANGER, named, phrases, used
from troubleshoot.safety.hearing.hinting import hinted
from troubleshoot.safety.hearing.mending import mender_of
from troubleshoot.safety.hearing.vocabulary import DENYING, NEUTRAL
from troubleshoot.safety.hearing.words import clauses, telling

_NEAR_ENOUGH: Final = 0.5
"""Of the likeness of the nearest: so much lets a hazard for the whole job be taken before it."""

_LEAST_SHARED: Final = 2
"""Telling words that what was said has to share with a hazard to be taken for it by a guess."""


def reported(knowledge: Knowledge, words: str) -> tuple[Hazard, ...]:
    """The hazards that somebody means who says that these words are a danger, the gravest first."""
    return named(knowledge, words) or _hinted(knowledge, words) or (_nearest(knowledge, words),)


def _hinted(knowledge: Knowledge, words: str) -> tuple[Hazard, ...]:
    ids = hinted(words)
    return gravest_first(hazard for name, hazard in knowledge.hazards.items() if name in ids)


def _nearest(knowledge: Knowledge, words: str) -> Hazard:
    """The hazard most of whose words were said; a word that few hazards use tells more.

    One for the whole job is taken before a lesser one, but not where a mere word of it was said.
    Where most of what was said is in none of them it is unknown, and counts as the worst.
    """
    typed = telling(tuple(w for said in clauses(words, mender_of(knowledge)) for w in said))
    said = [(hazard, telling(phrase)) for hazard, phrase in phrases(knowledge)]
    users = Counter(w for h in {h.id: h for h, _ in said}.values() for w in used(h))
    near: dict[str, float] = {}
    for hazard, phrase in said:
        shared = typed & phrase - DENYING - NEUTRAL
        if len(shared) < _LEAST_SHARED or 2 * len(shared) < len(typed):
            continue
        near[hazard.id] = max(near.get(hazard.id, 0.0), _likeness(typed, phrase, users))
    least = max(near.values(), default=0.0) * _NEAR_ENOUGH
    found = [knowledge.hazards[name] for name in near]
    final = [hazard for hazard in found if hazard.stops_the_job and near[hazard.id] >= least]
    nearest = max(final or found, key=lambda h: near[h.id], default=None)
    return nearest or knowledge.hazards[ANY_DANGER]


def _likeness(typed: frozenset[str], phrase: frozenset[str], users: Mapping[str, int]) -> float:
    """The telling weight of the words that a phrase shares, times how much of it was typed."""
    common = sorted(typed & phrase)
    return sum(1 / users[word] for word in common) * len(common) / len(phrase)
