"""The kinds of unit that conditions tell apart: every mix of the equipment facts they mention."""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping
from typing import Final

from troubleshoot.knowledge.model import FactsNeeded, Knowledge

MOST_VARIANTS: Final = 512

_KNOWN: Final = ("known", "not-known")

Variant = Mapping[str, str]
"""One word for each equipment fact that matters."""


def variants(
    knowledge: Knowledge, conditions: Iterable[FactsNeeded], on: Iterable[FactsNeeded] = ()
) -> Iterator[Variant]:
    """Yield each mix of the facts that `conditions` mention, on units where all of `on` holds.

    Of the values that no condition mentions the first stands for all. Yields nothing where the
    mixes are too many to walk.
    """
    narrowing = list(on)
    mentioned: dict[str, set[str]] = {}
    for condition in (*conditions, *narrowing):
        for fact, words in condition.items():
            mentioned.setdefault(fact, set()).update(words)
    facts = sorted(mentioned)
    choices = [_choices(knowledge, fact, mentioned[fact]) for fact in facts]
    count = 1
    for choice in choices:
        count *= len(choice)
    if count > MOST_VARIANTS:
        return
    for words in itertools.product(*choices):
        variant = dict(zip(facts, words, strict=True))
        if all(holds(condition, variant) for condition in narrowing):
            yield variant


def holds(condition: FactsNeeded, variant: Variant) -> bool:
    """Whether a condition holds on a kind of unit; a fact with a value counts as known."""
    for fact, words in condition.items():
        word = variant.get(fact)
        known = word is not None and word != "not-known"
        if word not in words and not (known and "known" in words):
            return False
    return True


def spoken(variant: Variant) -> str:
    """The mix as an author would say it, or nothing where no fact matters."""
    return ", ".join(f"{fact} {word}" for fact, word in sorted(variant.items()))


def _choices(knowledge: Knowledge, fact: str, mentioned: set[str]) -> tuple[str, ...]:
    known = knowledge.facts.get(fact)
    if known is None:
        return _KNOWN
    values = [value for value in known.values if value in mentioned]
    others = [value for value in known.values if value not in mentioned]
    return (*values, *others[:1], *(word for word in ("not-known",) if word in mentioned))
