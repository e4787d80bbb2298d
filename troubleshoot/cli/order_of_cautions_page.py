"""The page of which caution is read first: every hazard in the order in which people meet them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby
from typing import Final

from troubleshoot.knowledge.gravity import gravest_first
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.knowledge.spoken import spoken

ORDER_OF_CAUTIONS: Final = "order-of-cautions"

_RULE: Final = (
    "Which caution is read first",
    "",
    "The graver signal word first, then the STOP that stops more. Of those that are as grave, the",
    "kind that stands first in rules/order-of-cautions.yaml; within a kind, the place in its file.",
    "A site's hazards follow the program's of the same kind; a kind of its own follows all others,",
    "and hazards of no kind are read last. Before a test its own cautions come first, as the test",
    "lists them, under the same signal word.",
)


def order_of_cautions_page(knowledge: Knowledge) -> Iterator[str]:
    """The rule of the order, the kinds in theirs, and every hazard under what makes it as grave."""
    yield from _RULE
    yield ""
    yield "The kinds, first to last:"
    for number, kind in enumerate(knowledge.hazard_kinds.values(), start=1):
        yield f"{number:>3}. {knowledge.spoken(kind.id)}: {kind.about}"
    for said, hazards in groupby(gravest_first(knowledge.hazards.values()), _gravity):
        yield ""
        yield f"{said}:"
        for kind, own in groupby(hazards, lambda hazard: hazard.kind):
            names = "; ".join(hazard.spoken for hazard in own)
            yield f"  {knowledge.spoken(kind) or 'no kind'}: {names}"


def _gravity(hazard: Hazard) -> str:
    """What hazards that are as grave have in common, in words."""
    stop = "no STOP" if hazard.stop is None else f"STOP, {spoken(hazard.stop.scope)}"
    return f"{hazard.signal}, {stop}"
