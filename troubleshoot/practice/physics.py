"""What no unit shows on any day, in the readings of one case: a sentence with the numbers of it."""

from __future__ import annotations

from collections.abc import Iterator

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.texts import typed
from troubleshoot.reasoning.readings.relations import broken_relations
from troubleshoot.reasoning.readings.values import Values
from troubleshoot.reasoning.unit.places import Place


def physical_problems(knowledge: Knowledge, values: Values) -> Iterator[str]:
    """What cannot be so, one sentence each, with the numbers that say it."""
    for broken in broken_relations(knowledge, values):
        where = "" if broken.at is None else f"{broken.at}: "
        numbers = ", ".join(_number(knowledge, name, broken.at, values) for name in broken.read)
        yield f"{where}{broken.relation.says} ({numbers})"


def _number(knowledge: Knowledge, name: str, place: Place | None, values: Values) -> str:
    if name in knowledge.facts:
        return f"{name} {values.unit.facts.get(name, 'not known')}"
    value = values.get(name, place)
    known = knowledge.quantities.get(name) or knowledge.plate_values[name]
    return f"{name} {'not known' if value is None else typed(value.number, known.unit)}"
