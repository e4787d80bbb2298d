"""Which STOPs stand over a visit, from its events alone.

A STOP stands from a bad finding, a complaint or a report in words until its finding, taken afresh,
is sound; one for the whole job only after it was handed over and came back, and where a look or a
word called it up and an instrument shows that the danger has gone, with that reading sound too. A
sound finding that is taken back or declared invalid is none.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any

from tests.edge.walk.what_halts import (
    DEAD,
    HALTS,
    METER_PROOF,
    UNTIL_SAFE,
    WHOLE_JOB,
    halting,
    says,
    scope_of,
)
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.reasoning.readings.answers import Answer, Case
from troubleshoot.reasoning.readings.readings import take_readings
from troubleshoot.reasoning.unit.equipment import Unit

if TYPE_CHECKING:
    from tests.edge.walk.job import Said

Spot = tuple[str, str | None]
UNNAMED = "danger danger-reported"
"""Why a STOP stands after a call that named nothing."""
GOOD_ENOUGH = {"roof-conditions": {"edge-6-to-15-ft", "edge-under-6-ft"}}
"""An edge is no weather: rails and harness are asked for instead."""


@dataclass
class Bad:
    """A STOP. `lifted`: the finding that lifted it, while that counts.

    `meters`: the tests that have to be sound beside it -> their last sound answer; `absent`: those
    that this unit is told not to have. `held`: part of that is older than another STOP or a
    reopening, so that the program may want it once more.
    """

    spot: Spot | None
    scope: str
    why: str
    back: bool = False
    lifted: Said | None = None
    held: bool = False
    meters: dict[str, Said | None] = field(default_factory=dict)
    absent: frozenset[str] = frozenset()

    @property
    def stands(self) -> bool:
        needed = (self.lifted, *(said for name, said in self.meters.items() if self.reads(name)))
        return not all(map(_counts, needed))

    def reads(self, test: str) -> bool:
        """Whether a test has to be sound beside it on this unit."""
        return test in self.meters and test not in self.absent

    def wants(self, going_for: Spot | None) -> bool:
        """Whether it is this finding, or a reading beside it, that may lift the STOP."""
        return going_for is not None and (
            self.spot == going_for or (self.reads(going_for[0]) and going_for[1] is None)
        )

    @property
    def final(self) -> bool:
        """Whether others have to make it safe first."""
        return self.scope == WHOLE_JOB and not self.back


@dataclass
class Stops:
    """The STOPs of one visit. `going_for`: the finding that is being taken afresh."""

    knowledge: Knowledge
    bad: list[Bad] = field(default_factory=list)
    going_for: Spot | None = None
    stopped_at: str = ""

    def __post_init__(self) -> None:
        self._halting = halting(self.knowledge)

    def standing(self) -> list[Bad]:
        return [bad for bad in self.bad if bad.stands]

    def leads_on(self) -> bool:
        """Whether what is taken afresh lifts a STOP that stands, or may be held to stand."""
        return any(bad.wants(self.going_for) for bad in self._open())

    def _open(self) -> list[Bad]:
        return [bad for bad in self.bad if bad.stands or bad.held]

    def watch(self, event: dict[str, Any], said: Said, unit: Unit) -> None:
        kind = event["event"]
        if kind in ("stop", "danger", "reopened"):
            self._hold()
        if kind == "start":
            self._complained(event.get("complaint"), unit)
        elif kind in ("stop", "danger"):
            self.going_for, self.stopped_at = None, event["time"]
            self._met(event, unit)
        elif kind == "danger-taken-back":
            self.bad = [b for b in self.bad if b is not self.bad[-1] or b.why != UNNAMED]
        elif kind in ("take-afresh", "reopened"):
            self.going_for = (event["test"], event["at"])
            for bad in self.standing() if kind == "reopened" else ():
                bad.back = True
                bad.meters |= dict.fromkeys(self._meters_of(event["hazard"], bad, unit))
                if bad.spot and self.knowledge.tests[bad.spot[0]].kind != "step":
                    bad.lifted = None  # read in part before; a word is renewed by the hand-over
        elif kind == "resumed":
            self.going_for = None
        elif kind in ("answer", "step"):
            self._found(event, said, unit)
        elif kind == "fact":
            tests = self.knowledge.tests
            for bad in self.bad:
                bad.absent = frozenset(
                    meter for meter in bad.meters if not unit.allows(tests[meter].exists_when)
                )

    def _hold(self) -> None:
        """What was read or said so far may be held to be too old for a STOP of the whole job."""
        for bad in self.bad:
            bad.held |= bad.scope == WHOLE_JOB and any((bad.lifted, *bad.meters.values()))

    def _complained(self, complaint: str | None, unit: Unit) -> None:
        call = self.knowledge.complaints.get(complaint or "")
        if call is None or call.all_clear is None:
            return
        hazards = [
            h for h in self.knowledge.hazards.values()
            if h.stop and any(t.complaint == complaint for t in h.triggers)
        ]  # fmt: skip
        scopes = {h.stop.scope for h in hazards if h.stop}
        scope = WHOLE_JOB if WHOLE_JOB in scopes else UNTIL_SAFE
        bad = Bad((call.all_clear, None), scope, f"the call: {complaint}")
        bad.meters = self._meters(hazards, call.all_clear, unit)
        self.bad.append(bad)

    def _meters(self, hazards: Iterable[Hazard], test: str, unit: Unit) -> dict[str, Said | None]:
        """What an instrument has to show beside another finding, for STOPs of the whole job."""
        tests = self.knowledge.tests
        clear = {h.all_clear for h in hazards if scope_of(h) == WHOLE_JOB and h.all_clear}
        metered = (name for name in sorted(clear - {test}) if tests[name].kind == "measurement")
        return {name: None for name in metered if unit.allows(tests[name].exists_when)}

    def _meters_of(self, hazard: str, bad: Bad, unit: Unit) -> dict[str, Said | None]:
        """What is read for one of the dangers that a finding called up; others keep theirs."""
        own = self._meters([self.knowledge.hazards[hazard]], bad.spot[0], unit) if bad.spot else {}
        return {meter: None for meter in own if meter in bad.meters}

    def _met(self, event: dict[str, Any], unit: Unit) -> None:
        """The program stopped, or a person reported a danger."""
        hazard = self.knowledge.hazards[event["hazard"]]
        if event.get("names_the_last") and says(event["words"], hazard):
            self.bad = [b for b in self.bad if b is not self.bad[-1] or b.why != UNNAMED]
        spot = (event["test"], event.get("at")) if event.get("test") else None
        scope = WHOLE_JOB if scope_of(hazard) == WHOLE_JOB else UNTIL_SAFE
        meters = self._meters([hazard], spot[0], unit) if spot else {}
        same = [bad for bad in self.standing() if bad.spot == spot and event["event"] == "stop"]
        if same:  # of a finding and a report of it the graver is the one that is met again
            bad = next((bad for bad in same if bad.scope == WHOLE_JOB), same[0])
            bad.meters = meters | bad.meters
            if scope == WHOLE_JOB and bad.scope != WHOLE_JOB:
                bad.scope, bad.back = scope, False
            return
        self.bad.append(Bad(spot, scope, f"{event['event']} {hazard.id}", meters=meters))

    def _found(self, event: dict[str, Any], said: Said, unit: Unit) -> None:
        test = event.get("step") or event["test"]
        spot = (test, _place(event, unit))
        outcomes = calling = set(event.get("outcomes") or ())
        if not outcomes:
            outcomes, calling = self._read(event, unit)
        if self.going_for is not None and self.going_for[0] == test:
            said.went_for, self.going_for = self.going_for, None
        scopes = {self._halting.get((test, outcome)) for outcome in calling}
        worst = next((scope for scope in HALTS if scope in scopes), None)
        mine = [bad for bad in self.standing() if bad.spot in (spot, (test, None))]
        if mine and outcomes & self._names_none(test):
            # an all-clear that is not given calls up the danger it was asked for, and no second one
            worst = next(scope for scope in HALTS if any(bad.scope == scope for bad in mine))
        if worst is not None:
            for bad in mine:
                bad.back = False
                bad.meters = dict.fromkeys(bad.meters)
            if not any(bad.scope == worst for bad in mine):
                self.bad.append(Bad(spot, worst, f"{test} found {sorted(outcomes)}"))
            return
        sound = set(self.knowledge.tests[test].healthy) | GOOD_ENOUGH.get(test, set())
        is_sound = bool(outcomes) and outcomes <= sound
        if test == METER_PROOF and is_sound:
            for bad in self.bad:
                bad.held &= bad.spot is None or bad.spot[0] != DEAD or bad.scope == WHOLE_JOB
        for bad in self._open():
            if bad.final:
                continue
            if is_sound and bad.spot in (spot, (test, None)):
                bad.lifted = said
                bad.held |= test == DEAD  # until the meter has been proved after it
            if test in bad.meters:
                bad.meters[test] = said if is_sound else None
        self._go_on_for(said, test)

    def _go_on_for(self, said: Said, test: str) -> None:
        """What is read sound for a STOP leads on to the rest that has to be sound for it."""
        for bad in sorted(self._open(), key=lambda bad: bad.stands):
            parts = {(bad.spot or ("", None))[0]: bad.lifted, **bad.meters}
            if said.went_for is None or bad.final or parts.get(test) is not said:
                continue
            rest = [
                (name, None) for name, sound in bad.meters.items()
                if bad.reads(name) and (not _counts(sound) or (bad.held and name != test))
            ]  # fmt: skip
            self.going_for = next(iter(rest), None) if _counts(bad.lifted) else bad.spot

    def _names_none(self, test: str) -> set[str]:
        """The outcomes of a test that say that a danger is there, and not which."""
        triggers = self.knowledge.hazards[UNNAMED.split()[1]].triggers
        found = (finding for trigger in triggers for finding in trigger.findings)
        return {outcome for each in found if each.test == test for outcome in each.outcomes}

    def _read(self, event: dict[str, Any], unit: Unit) -> tuple[set[str], set[str]]:
        """What a typed number may mean, and what of it calls a hazard up."""
        if event["test"] not in {test for test, _ in self._halting}:
            return set(), set()
        answer = Answer(event["test"], (), event["text"], (_spot_place(event, unit),))
        readings = take_readings(self.knowledge, Case(unit=unit, answers=(answer,)))[0]
        own = [r for r in readings if r.test == event["test"]]
        return {o for r in own for o in r.possible}, {o for r in own for o in r.calls_up}

    def reopening_too_soon(self, event: dict[str, Any], ended: str | None) -> str:
        if event["event"] != "reopened":
            return ""
        if ended != "stopped":
            return "reopened without having been handed over"
        if "apprentice" in event.get("profiles", ()):
            return "reopened by an apprentice"
        result = event["result"]
        if result["when"] < self.stopped_at[:16].replace("T", " "):
            return f"reopened on a reading of {result['when']}, before the STOP"
        return "" if all(result.values()) else f"reopened on half a result: {result}"


def _counts(said: Said | None) -> bool:
    """Whether something was said, and was neither taken back nor declared invalid."""
    return said is not None and not said.undone and not said.invalid


def _spot_place(event: dict[str, Any], unit: Unit) -> Any:
    """The place of an event as the unit's own tree has it."""
    at = event.get("at", event.get("place"))
    at = at[0] if isinstance(at, list) and at else at
    for kind, _ in unit.layout.counts:
        for place in unit.layout.places(kind):
            if place is not None and str(place) == at:
                return place
    return None


def _place(event: dict[str, Any], unit: Unit) -> str | None:
    place = _spot_place(event, unit)
    return None if place is None else str(place)
