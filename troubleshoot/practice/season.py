"""In which season a call comes, from the day's outdoor temperature: all that a list tells of it."""

from __future__ import annotations

from typing import Final, Literal

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.scenario import Scenario
from troubleshoot.reasoning.readings.readings import take_readings

Season = Literal["summer", "winter", "spring or fall", "any season"]

WARM: Final = 75.0
"""Outdoors, F, from which a call belongs to the cooling season (common practice, no source)."""
COLD: Final = 50.0
"""Outdoors, F, under which it belongs to the heating season (common practice, no source)."""


def season_of(knowledge: Knowledge, scenario: Scenario) -> Season:
    """The season of a scenario's day; any where its outdoor temperature is not said."""
    _, values = take_readings(knowledge, scenario.case)
    outdoor = values.get("outdoor-temperature", None)
    if outdoor is None:
        return "any season"
    if outdoor.number >= WARM:
        return "summer"
    return "winter" if outdoor.number < COLD else "spring or fall"
