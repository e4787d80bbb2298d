"""A safety officer for whole visits: which STOPs stand, from the events alone, and who may go on.

Kept apart from the code that it judges. A bad finding stands, whatever is taken back afterwards,
until the same finding is good; one for the whole job only if that good finding is the first since
the job came back from whoever it was handed over to. A good finding that is taken back is no good.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from tests.safety import work_state_account as account
from tests.safety.work_state_account import World
from tests.safety.work_state_officer import Officer
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.steps import Step
from troubleshoot.visit.deciding.decision import Decision
from troubleshoot.visit.state import VisitState

Spot = tuple[str, str | None]
HALTS = ("whole-job", "until-made-safe")
TAKES_BACK = ("answer", "step", "skip")
NO_WAY_BACK = ("stop", "end", "reopened")


def halting(knowledge: Knowledge) -> dict[tuple[str, str], str]:
    """(test, outcome) -> the widest scope of the STOPs that it calls up by itself."""
    found: dict[tuple[str, str], str] = {}
    for hazard in knowledge.hazards.values():
        for trigger in hazard.triggers if hazard.stop and hazard.stop.scope in HALTS else ():
            if len(trigger.findings) == 1 and hazard.stop is not None:
                finding = trigger.findings[0]
                for outcome in finding.outcomes:
                    known = found.get((finding.test, outcome))
                    scopes = {hazard.stop.scope, known} - {None}
                    widest = next(s for s in HALTS if s in scopes)
                    found[finding.test, outcome] = widest
    return found


@dataclass
class StopOfficer:
    """Watches one visit. `worlds`: what the hands may have done, after every undoing."""

    knowledge: Knowledge
    halting: Mapping[tuple[str, str], str]
    events: list[tuple[dict[str, Any], bool]] = field(default_factory=list)
    worlds: set[World] = field(default_factory=lambda: {frozenset()})
    before: list[set[World]] = field(default_factory=list)

    def watch(self, event: dict[str, Any]) -> None:
        """Something happened."""
        self.before.append(set(self.worlds))
        if event["event"] == "undo":
            self._taken_back()
        self.events.append((event, False))
        self.worlds = {self._world_after(world, event) for world in self.worlds}

    def _taken_back(self) -> None:
        for index in range(len(self.events) - 1, -1, -1):
            event, undone = self.events[index]
            if event["event"] in NO_WAY_BACK:
                return
            if event["event"] in TAKES_BACK and not undone:
                self.events[index] = (event, True)
                self.worlds |= self.before[index]
                return

    def _world_after(self, world: World, event: dict[str, Any]) -> World:
        if event["event"] == "step":
            step = Step(event["step"], event["place"], event["again"])
            return account.after_step(world, step, tuple(event["outcomes"]))
        if event["event"] == "answer":
            test = self.knowledge.tests[event["test"]]
            if (test.id == "roof-conditions") or test.id in account.SWEEPS:
                return account.after_step(world, Step(test.id), tuple(event["outcomes"]))
            return account.after_test(world, test, event["at"], tuple(event["outcomes"]))
        if event["event"] in ("resumed", "reopened", "hour-passed"):
            return account.after_event(world, event["event"])
        return world

    def standing(self) -> dict[Spot, str]:
        """The findings over which a STOP stands, each with `hand over` or `take afresh`."""
        bad: dict[Spot, str] = {}
        back: set[Spot] = set()
        for event, undone in self.events:
            if event["event"] == "start" and event["complaint"] in self._complaints():
                bad[self._complaints()[event["complaint"]], None] = "until-made-safe"
            elif event["event"] == "reopened":
                back = set(bad)
            elif event["event"] in ("answer", "step"):
                spot = (event.get("test") or event["step"], event.get("at", event.get("place")))
                self._found(event, undone, spot, bad, back)
        return {
            spot: "take afresh" if scope == "until-made-safe" or spot in back else "hand over"
            for spot, scope in bad.items()
        }

    def _found(
        self,
        event: dict[str, Any],
        undone: bool,
        spot: Spot,
        bad: dict[Spot, str],
        back: set[Spot],
    ) -> None:
        scopes = {self.halting.get((spot[0], outcome)) for outcome in event["outcomes"]}
        worst = next((scope for scope in HALTS if scope in scopes), None)
        if worst is not None:
            bad[spot] = worst
            back.discard(spot)
        elif undone or spot not in bad or self._not_cleared(spot, event):
            return
        elif bad[spot] == "until-made-safe" or spot in back:
            del bad[spot]

    def _complaints(self) -> dict[str, str]:
        return {c.id: c.all_clear for c in self.knowledge.complaints.values() if c.all_clear}

    def _not_cleared(self, spot: Spot, event: dict[str, Any]) -> bool:
        healthy = set(self.knowledge.tests[spot[0]].healthy)
        return spot[0] in self._complaints().values() and not set(event["outcomes"]) <= healthy

    def objection(self, state: VisitState, decision: Decision) -> str:
        """What is wrong with showing this now; empty where nothing is."""
        standing = self.standing()
        step = decision.kind == "step" and decision.test and (decision.test.id, None)
        itself = (
            step and standing.get(step) == "take afresh"
        )  # on the way to another STOP's finding
        if decision.kind in ("step", "ask") and standing and not itself:
            aim = decision.aim and (decision.aim[0], _at(self.events, decision.aim))
            if decision.stop is None or aim not in standing:
                return f"{decision.test and decision.test.id} while a STOP stands: {standing}"
            if standing[aim] != "take afresh":
                return f"{aim} before the job came back"
            if decision.kind == "ask" and decision.test and decision.test.id != aim[0]:
                return f"{decision.test.id} is not what lifts the STOP"
        if decision.kind == "ask" and decision.test is not None:
            officer = Officer(state.at_work)
            at = None if decision.at is None else str(decision.at)
            for world in self.worlds:
                if words := officer.objection(world, decision.test, at):
                    return f"{decision.test.id}: {words}"
        return ""


def _at(events: Sequence[tuple[dict[str, Any], bool]], aim: tuple[str, Any]) -> str | None:
    """The place of a finding as its event has it; a step's place need not be in the unit's tree."""
    if aim[1] is not None:
        return str(aim[1])
    named = [e.get("place") for e, _ in events if e["event"] == "step" and e["step"] == aim[0]]
    return named[-1] if named else None
