"""What lies behind a fault that has been repaired, where the complaint has stayed.

The card of a fault names the causes behind it. When its repair did not help, those are likelier
than they were; and what the card told of them in passing (a damper stuck open: sometimes a dead
actuator) is evidence for them, not something that the repaired fault explains.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from dataclasses import replace

from troubleshoot.reasoning.evidence.hypotheses import Hypotheses, Hypothesis
from troubleshoot.reasoning.evidence.outcome_chances import Cell

LIKELIER_BEHIND = 8.0
"""How much likelier what lies behind becomes: two in five such calls come to that (common practice,
no source)."""


def priors(
    live: Iterable[Hypothesis], repaired: Iterable[Hypothesis]
) -> Iterator[tuple[Hypothesis, float]]:
    """Each hypothesis with how common it is, when these have been repaired in vain."""
    behind = {name for each in repaired for name in each.fault.behind}
    for h in live:
        yield h, h.prior * LIKELIER_BEHIND if h.fault.id in behind else h.prior


def alone(hypotheses: Hypotheses, repaired: Hypothesis) -> Hypothesis:
    """A repaired fault with only the evidence that no cause behind it speaks of more strongly."""
    causes = [h for h in hypotheses.causes if h.fault.id in repaired.fault.behind]
    picture = repaired.picture
    cells = {
        test: tuple(cell for cell in known if not _spoken_for(cell, test, causes))
        for test, known in picture.cells.items()
    }
    if cells == picture.cells:
        return repaired
    bare = {test: known for test, known in cells.items() if known}
    return replace(
        repaired, picture=replace(picture, name=f"{picture.name} alone".strip(), cells=bare)
    )


def _spoken_for(cell: Cell, test: str, causes: Collection[Hypothesis]) -> bool:
    outcomes, chance = cell
    return any(
        not outcomes.isdisjoint(theirs) and stronger > chance
        for cause in causes
        for theirs, stronger in cause.picture.cells.get(test, ())
    )
