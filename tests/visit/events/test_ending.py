"""What is written down on the way out changes this, and nothing else."""

from __future__ import annotations

from dataclasses import replace

from tests.visit.events.effects import THEN, changed
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import Closing, Named, Noted, Repaired
from troubleshoot.visit.state import RepairSaid, VisitState


def test_notes_names_repairs_and_the_way_out(shipped: Knowledge, visit: VisitState) -> None:
    changed(shipped, visit, Noted("b"), notes=("a", "b"))
    changed(shipped, visit, Named("RTU-7"), name="RTU-7")
    said = RepairSaid("g", THEN, answers=1)
    changed(shipped, visit, Repaired("g"), repaired=("f", "g"),
            repairs=(said,), mended_here=True, closing=False)  # fmt: skip
    changed(shipped, visit, Closing(cured=True), cured=True, aim=None)
    changed(shipped, replace(visit, closing=False, cured=True), Closing(), closing=True,
            cured=False, aim=None)  # fmt: skip
