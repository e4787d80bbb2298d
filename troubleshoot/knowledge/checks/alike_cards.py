"""Two cards that say nearly the same.

What: a card grades exactly what another does, the calls among it, so that they differ in name only;
or most of what two cards grade is the same, and one does not name the other under `look-alikes`.
Why: no reading tells two such cards apart: each takes half of the other's chance, and both stay on
a shortlist that a technician cannot shorten.
Fix: where they are one fault, keep one card, and put the other name under its `words`. Where they
are two, grade the look or reading that tells them apart, and name each under the other's
`look-alikes`; a card of a site names the shipped one, which cannot name it.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations
from typing import Final

from troubleshoot.knowledge.model import Fault
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "alike-cards"

NEARLY: Final = 0.5
"""Of all that two cards grade, the share from which they are asked to name each other (common
practice, no source)."""


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for each card that another makes needless, or that hides its near twin."""
    graded = {fault.id: _graded(fault) for fault in base.knowledge.faults.values()}
    for first, second in combinations(base.knowledge.faults.values(), 2):
        one, other = graded[first.id], graded[second.id]
        shared = len(one & other)
        if not shared or shared < NEARLY * len(one | other):
            continue
        if _tells(first) == _tells(second):
            what = f"{second.id} differs from {first.id} only in name"
            instead = "keep one card, and put the other name under its words"
            yield base.problem(ID, ("fault", second.id), ("evidence",), what, instead)
            continue
        for own, twin in ((first, second), (second, first)):
            if twin.id not in own.look_alikes and not _is_of_an_earlier_folder(base, own, twin):
                percent = round(100 * shared / len(one | other))
                what = f"{percent} % of what {own.id} and {twin.id} grade is the same"
                instead = f"grade what tells them apart, and name {twin.id} under look-alikes"
                entry = ("fault", own.id)
                yield base.problem(ID, entry, ("look-alikes",), what, instead, "notice")


def _graded(fault: Fault) -> frozenset[tuple[str, str, str]]:
    """Each outcome that a card grades by itself, with its grade."""
    return frozenset(
        (item.grade, finding.test, outcome)
        for item in fault.evidence
        for finding in item.findings
        for outcome in finding.outcomes
    )


def _tells(fault: Fault) -> tuple[object, ...]:
    """All by which readings or calls could tell a card from another."""
    pictures = [
        (each.when, each.evidence, each.given) for each in (*fault.pictures, *fault.overrides)
    ]
    calls = sorted(fault.calls.items())
    return _graded(fault), fault.given, pictures, calls, fault.exists_when, fault.per


def _is_of_an_earlier_folder(base: RuleBase, own: Fault, twin: Fault) -> bool:
    """Whether a card is shipped, or of a folder before its twin's, and so cannot know of it."""
    cards = base.definitions.of("fault")
    return cards[own.id].file.folder < cards[twin.id].file.folder
