"""One visit as an officer keeps account of it: from its events and the clock, nothing else.

What hands have done is kept as worlds (`work_state_account`): after an undo or a reading declared
invalid it may have been so or so, and every world counts.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import datetime
from typing import Any

from tests.edge.walk.calls import Calls
from tests.edge.walk.order_of_work import beyond, objection_to
from tests.edge.walk.stops_on_record import Stops
from tests.edge.walk.times import Times
from tests.edge.walk.unit_on_record import KnownUnit, Units, facts_on_record
from tests.safety import work_state_account as account
from tests.safety.work_state_account import SWEEPS, World
from troubleshoot.knowledge.model import Knowledge, Test
from troubleshoot.safety.steps import Step

Event = dict[str, Any]
FROM_THE_UNIT = frozenset({
    "start", "fact", "answer", "step", "skip", "repaired", "reopened", "state-gone",
})  # fmt: skip
TAKEN_BACK = frozenset({
    "answer", "step", "skip", "fact", "invalid", "proof", "repaired", "kept-for-the-end", "search",
    "repaired-before", "withdrawn", "state-gone",
    "round-goes-on",
})  # fmt: skip
NO_WAY_BACK = frozenset({"stop", "danger", "end", "reopened"})
LEAVES_IN_HAND = frozenset({"aim", "closing", "danger", "state-gone"})
READ_AS_IT_TRIES = frozenset({
    "ignition-trials", "ignition-spark", "hot-surface-igniter-glow", "flame-current",
    "flame-picture",
    "gas-valve-volts",
})  # fmt: skip
"""What is read while a burner tries: after a call that ended without a flame the control tries
again by itself, behind a purge of its own. Whatever else comes waits for the gas to be gone."""
OUTDOOR_AIR_PPM = 9.0
"""Carbon monoxide over eight hours (40 CFR 50.8)."""


@dataclass(eq=False)
class Said:
    """An event, the worlds before it, and whether it was taken back or declared invalid."""

    event: Event
    before: frozenset[World]
    undone: bool = False
    invalid: bool = False
    about: Said | None = None
    """What an `invalid` speaks of."""
    went_for: tuple[str, str | None] | None = None
    """The finding that was being taken afresh, and that this answers."""


@dataclass
class Task:
    """What stands on the screen: a step or a test at a place, since some moment."""

    test: Test
    place: str | None
    step: bool
    minutes: float


@dataclass
class Job:
    """One visit."""

    knowledge: Knowledge
    units: Units
    said: list[Said] = field(default_factory=list)
    worlds: frozenset[World] = frozenset({frozenset()})
    times: Times = field(default_factory=Times)
    profiles: tuple[str, ...] = ()
    lock_by: tuple[str, ...] = ()
    """Under which profiles the lock was hung last."""
    name: str = ""
    ended: str | None = None
    shown: bool = False
    answered: Task | None = None
    """The task that was answered last."""
    unit: KnownUnit = field(init=False)
    stops: Stops = field(init=False)
    calls: Calls = field(init=False)

    def __post_init__(self) -> None:
        self.unit = self.units.of({})
        self.stops = Stops(self.knowledge)
        self.calls = Calls(self.knowledge)

    def watch(self, event: Event, task: Task | None) -> str:
        """Take up an event that answers this task, if any; what is wrong with it, or nothing."""
        kind, now = event["event"], datetime.fromisoformat(event["time"])
        own = task is not None and self._answers(event, task)
        self.shown = own
        self.answered = task if own else self.answered
        if kind in FROM_THE_UNIT or kind == "resumed":
            self.let_time_pass(now, task.minutes if own and task else 0.0)
            if kind != "resumed" or self.times.silent(now, 0.0):
                self.times.heard = now
        if kind == "undo" and self._last() is None:
            return "an undo reached past a STOP"
        if task is not None and task is not self.answered and kind in LEAVES_IN_HAND:
            self.worlds |= {w for old in self.worlds for w in self._begun(old, task)}
        wrong = self.times.too_soon(event, now, self.knowledge) + self._closed_too_soon(event)
        wrong += self.stops.reopening_too_soon(event, self.ended)
        self.said.append(Said(event, self.worlds))
        if kind == "undo":
            self._take_back()
        elif kind == "invalid":
            self._not_so()
        else:
            self._go_on(event, now, self.said[-1])
        return wrong

    @property
    def last_step(self) -> str | None:
        """The step that was answered last, where nothing was taken back or answered since."""
        kinds = ("step", "answer", "undo", "invalid")
        last = next((s.event for s in reversed(self.said) if s.event["event"] in kinds), {})
        return last.get("step")

    def _begun(self, world: World, task: Task) -> Iterable[World]:
        """What a world may be where a test was shown, and left for something else."""
        of_the_air = task.step or task.test.id in SWEEPS
        return (world,) if of_the_air else (account.after_test(world, task.test, task.place),)

    def _answers(self, event: Event, task: Task) -> bool:
        return task.test.id in (event.get("step"), event.get("test"))

    def let_time_pass(self, now: datetime, minutes: float) -> None:
        """What expires by itself until now, while a task of so many minutes is being done."""
        if self.times.silent(now, minutes):
            self._all("resumed")
        if self.times.roof_is_old(now):
            self._all("hour-passed")
            self.times.roof_seen = None

    def _all(self, event: str) -> None:
        self.worlds = frozenset(account.after_event(world, event) for world in self.worlds)

    def _go_on(self, event: Event, now: datetime, said: Said) -> None:
        kind = event["event"]
        if kind in ("start", "resumed", "reopened"):
            self.profiles = tuple(event.get("profiles", self.profiles))
            self.name = event.get("name", self.name)
        if kind == "named":
            self.name = event["name"]
        elif kind == "end":
            self.ended = event["ending"]
        elif kind == "reopened":
            self.ended = None
            heat = self._facts().get("heat", "gas")
            self._all("reopened" if heat == "gas" else "resumed")
        elif kind == "danger" and self._is_step(event.get("test")):
            unsure = Step(event["test"])
            self.worlds = frozenset(account.after_step(w, unsure, ("?",)) for w in self.worlds)
        elif kind == "state-gone":
            words = event["words"]
            self.worlds = frozenset(account.after_words(world, words) for world in self.worlds)
        elif kind == "fact":
            self.unit = self.units.of(self._facts())
        elif kind in ("step", "answer", "skip"):
            self.worlds = frozenset(w for old in self.worlds for w in self._after(old, event))
            self.times.watch(event, now)
            if event.get("step") == "lockout" and event["outcomes"] == ["locked"]:
                self.lock_by = self.profiles
        self.calls.watch(event)
        self.stops.watch(event, said, self.unit.unit)

    def _is_own_lock(self, task: Task) -> bool:
        """Whether who hung the lock takes it off (29 CFR 1910.147(e)(3), from memory)."""
        own = bool(self.lock_by) and set(self.lock_by) == set(self.profiles)
        return own and task.test.id == "lock-off"

    def _is_step(self, test: str | None) -> bool:
        return test is not None and self.knowledge.tests[test].kind == "step"

    def _after(self, world: World, event: Event) -> Iterable[World]:
        """What a world may be after an answer; one that was shown and skipped may be half done."""
        outcomes = tuple(event.get("outcomes", ()))
        if event["event"] == "step":
            step = Step(event["step"], event["place"], event["again"])
            return (account.after_step(world, step, outcomes, self._may_be_heat(step.id)),)
        test, at = self.knowledge.tests[event["test"]], _one(event.get("at"))
        if event["event"] == "skip" and not self.shown:
            return (world,)  # only a step on the way to it was on the screen
        if event["event"] == "skip":
            return world, account.after_test(world, test, at)
        if test.id == "roof-conditions" or test.id in SWEEPS:
            return (account.after_step(world, Step(test.id), outcomes or _sound(test, event)),)
        return (account.after_test(world, test, at, outcomes, self._may_be_heat(test.id)),)

    def _may_be_heat(self, test: str) -> bool:
        return self.calls.may_be_heat(test, self.unit.at_work)

    def _last(self) -> Said | None:
        """What one more undo takes back."""
        for said in reversed(self.said):
            if said.event["event"] in NO_WAY_BACK:
                return None
            if _may_be_taken_back(said.event) and not said.undone:
                return said
        return None

    def _take_back(self) -> None:
        gone = self._last()
        assert gone is not None
        gone.undone = True
        self.calls.aimed = None
        since = [said.event["event"] for said in self.said[self.said.index(gone) :]]
        if gone.went_for is not None and "resumed" not in since:
            self.stops.going_for = gone.went_for
        if gone.event["event"] == "fact":
            self.unit = self.units.of(self._facts())
        if gone.about is not None:
            gone.about.invalid = False
        if gone.event["event"] in ("step", "answer", "skip"):
            self.worlds |= gone.before

    def _not_so(self) -> None:
        """The last answer is declared to be none: what a proof showed is not known any more."""
        answers = (s for s in reversed(self.said) if s.event["event"] in ("answer", "step"))
        last = next((s for s in answers if not s.undone), None)
        assert last is not None
        last.invalid = True
        self.said[-1].about = last
        event = last.event
        test = event.get("step") or event["test"]
        if test in SWEEPS or event["event"] == "step" or test == "roof-conditions":
            failed = Step(test, event.get("place"))
            unshown = {
                account.without(world, failed, tuple(event.get("outcomes", ())))
                for world in self.worlds | last.before
            }
            heat = self._may_be_heat(test)
            self.worlds = frozenset(account.after_step(w, failed, ("?",), heat) for w in unshown)

    def _facts(self) -> dict[str, object]:
        stand = [s.event for s in self.said if s.event["event"] == "fact" and not s.undone]
        return facts_on_record(self.knowledge, stand)

    def _closed_too_soon(self, event: Event) -> str:
        """A plug behind the gas valve is tested in a fire before the unit is left to burn."""
        closes = event["event"] == "end" and event["ending"] == "closed"
        off = {"gas-shut", "locked"}
        untested = any("plug-untested outlet tap" in w and not off & w for w in self.worlds)
        return "closed with a plug that was not tested under gas" if closes and untested else ""

    def objection(self, task: Task, now: datetime, last: Task | None) -> str:
        """What is wrong with showing this task now; empty where nothing is.

        `last`: what had been shown before, and has been worked on since unless it was answered.
        """
        in_hand = last is not None and (last == task or last is not self.answered)
        self.let_time_pass(now, last.minutes if last is not None and in_hand else 0.0)
        words = beyond(task.test, self.profiles)
        if words and not self._is_own_lock(task):
            return words
        unit = self.calls.on(self.unit.at_work)
        tried = task.test.id in READ_AS_IT_TRIES and self._just_tried()
        for world in self.worlds:
            words = objection_to(
                unit, world - {"unburnt"} if tried else world, task.test, task.place, task.step
            )
            if words:
                return words
        return ""

    def _just_tried(self) -> bool:
        """Whether the burner tries at this moment, and no gas was about before it did."""
        last = next(
            (s for s in reversed(self.said) if s.event["event"] not in LEAVES_IN_HAND), None
        )
        if last is None or last.undone or last.event.get("step") != "restart-and-watch":
            return False
        swept = not any("unburnt" in world for world in last.before)
        return swept and last.event["outcomes"] == ["no-steady-flame"]


def _may_be_taken_back(event: Event) -> bool:
    """Whether an undo takes it back; the way out only where somebody chose it."""
    chosen = event["event"] == "closing" and event.get("chosen") is True
    return chosen or event["event"] in TAKEN_BACK


def _one(at: list[str] | str | None) -> str | None:
    return at[0] if isinstance(at, list) and at else at if isinstance(at, str) else None


def _sound(test: Test, event: Event) -> tuple[str, ...]:
    """Of a sweep that was read off a detector: sound where it reads nothing.

    Carbon monoxide is sound below what the air outdoors may hold.
    """
    number = "".join(c for c in event.get("text", "") if c.isdigit() or c == ".")
    read = float(number.strip(".") or 1) if number else None
    below = OUTDOOR_AIR_PPM if test.id == "room-carbon-monoxide" else 0.0
    return test.healthy if read is not None and (read == 0 or read < below) else ("?",)
