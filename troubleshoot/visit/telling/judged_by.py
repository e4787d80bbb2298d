"""What a number is judged by that nobody has told, and how it is told."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.visit.deciding.nameplate import plate_to_ask


def judged_by(knowledge: Knowledge, unit: Unit, test: Test, at: Place | None) -> str:
    """A sentence on the first value that judging a reading lacks; empty where it lacks none."""
    for plate in plate_to_ask(knowledge, unit, test, at, frozenset()):
        where = "" if at is None or not plate.per else f" at {at}"
        name = knowledge.spoken(plate.id)
        return f"It is judged by the {plate.meaning}: unit {name} VALUE{where} tells it."
    return ""
