"""Cases of readings put to the shipped rules, and what then stands and is proposed."""

from __future__ import annotations

from typing import Any

from troubleshoot.knowledge.load import load_shipped
from troubleshoot.reasoning.conclude import Case, Reasoner
from troubleshoot.reasoning.conclusions import Conclusions
from troubleshoot.safety.stops.standing import standing_hazards
from troubleshoot.visit.cases.assessment import candidates_for
from troubleshoot.visit.cases.file import read_case
from troubleshoot.visit.cases.nothing_lifts import conclude_file

KNOWLEDGE = load_shipped()
REASONER = Reasoner(KNOWLEDGE)


def concluded(readings: list[dict[str, Any]], **case: Any) -> Conclusions:
    """What a file comes to, in which nothing lifts a STOP."""
    return conclude_file(REASONER, _case(readings, case))


def in_a_visit(readings: list[dict[str, Any]], **case: Any) -> Conclusions:
    """What the same comes to in a visit, where the later reading counts."""
    return REASONER.conclude(_case(readings, case))


def _case(readings: list[dict[str, Any]], case: dict[str, Any]) -> Case:
    unit = {"refrigerant": "R-410A", "heat": "gas"}
    return read_case(KNOWLEDGE, {"unit": unit, "readings": readings, **case})


def standing(conclusions: Conclusions) -> list[str]:
    return [each.hazard.id for each in standing_hazards(conclusions)]


def proposed(conclusions: Conclusions) -> set[str]:
    """The tests that `assess` would still propose."""
    return {candidate.test.id for candidate in candidates_for(conclusions)}
