"""All refrigerant that a visit moved, by its steps and tests and as it was told."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.outside.text import begun
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.steps import RECHARGE, RECOVER
from troubleshoot.visit.hearing.weighed import NotWeighed, weighing_behind
from troubleshoot.visit.state import Asked, VisitState
from troubleshoot.visit.weighing import ADDED, RECOVERED, Weighing
from troubleshoot.visit.weights import WEIGHED, cylinder_says, scale_of, weighing_words

STEPS_WEIGHED: Final[Mapping[str, str]] = MappingProxyType({RECOVER: RECOVERED, RECHARGE: ADDED})
"""The steps that move refrigerant, and which way."""
_FIRST: Final = "circuit 1"


def refrigerant_lines(knowledge: Knowledge, state: VisitState) -> tuple[str, ...]:
    """What a visit moved in sentences, with what of a cylinder's weights does not fit."""
    scale = scale_of(state.meters)
    return tuple(
        line
        for each in weighings_of(knowledge, state)
        for line in (begun(weighing_words(knowledge, each)), *cylinder_says(knowledge, each, scale))
    )


def weighings_of(knowledge: Knowledge, state: VisitState) -> tuple[Weighing, ...]:
    """All refrigerant that a visit moved, in order: by its steps and tests, then as it was told.

    One whose weight was not told is among them, unless it was told at a prompt for itself.
    """
    asked = [each for one in state.asked for each in _of_asked(knowledge, state, one)]
    told = {(each.way, each.circuit) for each in state.weighed}
    kept = (each for each in asked if each.weight or (each.way, each.circuit) not in told)
    return (*kept, *state.weighed)


def _of_asked(knowledge: Knowledge, state: VisitState, asked: Asked) -> Iterator[Weighing]:
    """The weighing that a step or a test was, if it was one."""
    if not asked.valid or asked.nobody:
        return
    circuit = str(asked.at) if asked.at is not None else asked.place or _FIRST
    way = STEPS_WEIGHED.get(asked.test)
    if way is not None and asked.outcome == CONFIRMED[asked.test]:
        yield _weighed_at(knowledge, state, Weighing(way, circuit), asked.text)
    reads = (each.quantity for each in knowledge.tests[asked.test].reads)
    if way is None and WEIGHED in reads:
        yield Weighing(RECOVERED, circuit, asked.text or "")


def _weighed_at(
    knowledge: Knowledge, state: VisitState, blank: Weighing, text: str | None
) -> Weighing:
    """What was weighed at a step, by what was told with its word; blank where nothing was."""
    if not text:
        return blank
    try:
        return weighing_behind(knowledge, state.unit.layout, blank.way, text, circuit=blank.circuit)
    except NotWeighed:  # a step of before, or under other rules
        return blank
