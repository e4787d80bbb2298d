"""What time alone, or what nobody understands, changes of a visit: this, and nothing else."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from tests.visit.events.effects import DEAD, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.transitions import expire
from troubleshoot.visit.events import HourPassed, NotUnderstood, Resumed
from troubleshoot.visit.state import VisitState


@pytest.mark.parametrize(("minutes", "voids"), [(5, False), (45, True)])
def test_whoever_goes_on_takes_nothing_afresh_and_a_long_absence_voids(
    minutes: int, voids: bool, shipped: Knowledge, visit: VisitState
) -> None:
    """What somebody chose stays on the way; what the program chose is chosen afresh."""
    event = Resumed(minutes, True)
    away: dict[str, Any] = {"fresh": None, "fresh_read": False}
    if voids:
        away |= {"work": expire(visit.work, "resumed"), "failed_steps": ()}
        ours = replace(visit, aim_chosen=False)
        changed(shipped, ours, event, **away, aim=None)
    changed(shipped, visit, event, **away)
    someone = replace(event, profiles=("technician",))
    changed(shipped, visit, someone, profiles=frozenset({"technician"}), **away)


def test_an_hour_voids_the_roof(shipped: Knowledge, visit: VisitState) -> None:
    state = replace(visit, work=DEAD)
    changed(shipped, state, HourPassed(), work=replace(DEAD, roof="not-checked"))


def test_what_nobody_understands_is_as_an_absence_and_takes_nothing_afresh(
    shipped: Knowledge, visit: VisitState
) -> None:
    event = NotUnderstood({"event": "nothing of today"})
    work = expire(visit.work, "resumed")
    changed(shipped, visit, event, work=work, aim=None, fresh=None, fresh_read=False)
