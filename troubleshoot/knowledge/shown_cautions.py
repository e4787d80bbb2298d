"""Which cautions a person sees before a test, whatever was found, said or done before."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import field

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import FactsNeeded, Knowledge, Test, Trigger


@frozen
class Shown:
    """A caution shown before a test: always, or on units and to people of a kind.

    `by_trigger`: the hazard calls itself up; else the test names it.
    """

    hazard: str
    on_units: FactsNeeded = field(default_factory=dict)
    profile: str | None = None
    by_trigger: bool = False

    def covers(self, other: Shown) -> bool:
        """Whether whoever sees `other` sees this one too."""
        return (
            self.hazard == other.hazard
            and self.profile in (None, other.profile)
            and all(
                set(other.on_units.get(fact, ("",))) <= set(words)
                for fact, words in self.on_units.items()
            )
        )


def cautions_of(knowledge: Knowledge, test: Test) -> Iterator[Shown]:
    """Yield every caution that comes before a test, those that it names first."""
    for hazard in test.hazards:
        yield Shown(hazard)
    for known in knowledge.hazards.values():
        for trigger in known.triggers:
            if calls_up(trigger, test):
                yield Shown(known.id, trigger.equipment, trigger.profile, by_trigger=True)


def calls_up(trigger: Trigger, test: Test) -> bool:
    """Whether a trigger speaks of the test alone, and holds of this one."""
    return (
        not (trigger.findings or trigger.complaint or trigger.fault)
        and trigger.test in (None, test.id)
        and trigger.work_state in (None, test.work_state)
        and trigger.exposes in (None, test.exposes)
    )


def hazards_shown(
    knowledge: Knowledge, test: Test, on_units: FactsNeeded | None = None
) -> frozenset[str]:
    """The hazards that are shown before a test to anybody, on any unit or on units of a kind."""
    return frozenset(
        shown.hazard
        for shown in cautions_of(knowledge, test)
        if shown.covers(Shown(shown.hazard, on_units or {}))
    )
