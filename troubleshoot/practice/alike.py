"""Cases alike: those whose callers might have the same causes. They betray nothing by it."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.practice.scenario import Scenario

OFFERED: Final = 2


def cases_alike(
    knowledge: Knowledge, scenario: Scenario, others: Sequence[Scenario], played: Collection[str]
) -> tuple[Scenario, ...]:
    """The two cases whose complaints share most causes with this one's; unplayed ones first.

    Chosen by what is complained of, not by what is wrong: otherwise they would tell it.
    """
    own = _causes(knowledge, scenario)

    def nearness(other: Scenario) -> tuple[bool, float, str]:
        causes = _causes(knowledge, other)
        shared = len(own & causes) / max(len(own | causes), 1)
        return (other.id in played, -shared, other.id)

    found = sorted((other for other in others if other.id != scenario.id), key=nearness)
    return tuple(found[:OFFERED])


def _causes(knowledge: Knowledge, scenario: Scenario) -> frozenset[str]:
    complaint = knowledge.complaints[scenario.complaint]
    return frozenset((*complaint.faults, *complaint.also))
