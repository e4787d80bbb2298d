"""What is offered at a call: repairs and proofs of the called cause and of its neighbors.

The neighbors are near misses: cards of the same part, of what comes of the cause and of what is
taken for it, those first whose words are most like its own. What can lie behind it is none: to put
that right, and to prove it, may be called for too. Which they are follows from the call and the
unit alone, so that no list betrays what is true.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Iterator, Sequence
from typing import Final, Literal

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Fault, Knowledge
from troubleshoot.practice.scenario import Scenario

MOST_OFFERED: Final = 4
PROOFS_SAID: Final = 2
THE_SAME: Final = 0.4
"""Texts that share so many of their words ask for nearly the same: to pick one of them is luck."""
Part = Literal["repair", "proof"]


@frozen
class Offer:
    """A repair or a proof in words, and the fault whose card it is from."""

    text: str
    fault: str


def offers(knowledge: Knowledge, scenario: Scenario, called: Fault, part: Part) -> list[Offer]:
    """The called cause's own repair or proof among those of its neighbors, four at most.

    A text that several cards share is the called cause's own.
    """
    own = text_of(called, part)
    texts = {own: called.id} if own else {}
    for fault in _nearest(knowledge, scenario, called, part):
        if len(texts) < MOST_OFFERED:
            texts.setdefault(text_of(fault, part), fault.id)
    by_fault = {fault: text for text, fault in texts.items()}
    return [Offer(by_fault[name], name) for name in mixed(scenario, [*by_fault])]


def text_of(card: Fault, part: Part) -> str:
    """A card's repair, or its proof as far as it is said at a call; may be empty."""
    if part == "repair":
        return card.repair.what
    return "; ".join(proof.text for proof in card.proof[:PROOFS_SAID])


def mixed(scenario: Scenario, names: Sequence[str]) -> list[str]:
    """Four at most of the names, in an order that tells nothing and is always the same."""
    chosen = list(dict.fromkeys(names))[:MOST_OFFERED]

    def place(name: str) -> str:
        return hashlib.sha256(f"{scenario.id} {name}".encode()).hexdigest()

    return sorted(chosen, key=place)


def near_miss(knowledge: Knowledge, true: Fault, chosen: str) -> str:
    """How the fault whose repair or proof was chosen is near the true one; "" where it is not."""
    other = knowledge.faults[chosen]
    if true.id in other.behind:
        return f"it is of {other.name}, which can come of it"
    if chosen in true.look_alikes or true.id in other.look_alikes:
        return f"it is of {other.name}, which is easily taken for it"
    return ""


def _nearest(
    knowledge: Knowledge, scenario: Scenario, called: Fault, part: Part
) -> Iterator[Fault]:
    """The neighbors that this unit can have: one near miss, then those of the likest words, of
    the same part before any other. None asks the same.
    """
    own = text_of(called, part)

    def unlike(fault: Fault) -> tuple[float, str]:
        other = f"{fault.name} {text_of(fault, part)}"
        return -_likeness(f"{called.name} {own}", other), fault.id

    def is_near(fault: Fault) -> bool:
        return bool(near_miss(knowledge, called, fault.id))

    found = [
        fault
        for fault in knowledge.faults.values()
        if fault.id not in (called.id, *called.behind)
        and text_of(fault, part)
        and scenario.unit.allows(fault.exists_when)
        and not _asks_the_same(called, fault, part)
    ]
    found.sort(key=unlike)
    related = [each for each in found if is_near(each) or each.subsystem == called.subsystem]
    yield from (*[each for each in related if is_near(each)][:1], *related, *found)


def _asks_the_same(called: Fault, other: Fault, part: Part) -> bool:
    """Whether a card asks for what the called one does: in its words, or by its first reading."""
    if _likeness(text_of(called, part), text_of(other, part)) >= THE_SAME:
        return True
    wanted = other.proof[0].finding if part == "proof" else None
    return wanted is not None and wanted in [proof.finding for proof in called.proof]


def _likeness(one: str, other: str) -> float:
    """The share of their words of four letters or more that two texts have in common."""
    words, others = (frozenset(re.findall(r"[a-z]{4,}", text.lower())) for text in (one, other))
    return len(words & others) / max(len(words | others), 1)
