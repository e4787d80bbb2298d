"""Dangers in the free words of a file: they are heard as at a prompt."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.reasoning.readings.answers import Case
from troubleshoot.safety.hearing.dangers import spoken_of


def dangers_told(knowledge: Knowledge, case: Case) -> Iterator[tuple[Hazard, str]]:
    """Each danger that halts a visit, once, with the words that tell of it.

    Words beside a stated outcome are a person's own; without one they are a reading.
    """
    told: set[str] = set()
    for answer in case.answers:
        free = answer.text if answer.outcomes and answer.text else ""
        for hazard in spoken_of(knowledge, free):
            halts = hazard.stop is not None and hazard.stop.scope != "this-step"
            if halts and hazard.id not in told:
                told.add(hazard.id)
                yield hazard, free
