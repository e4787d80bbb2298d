"""A kept visit under today's rules: which of its events they understand, and which they do not.

What is not understood weighs nothing and is named, and the visit goes on without it. STOPs are the
exception: one that was recorded stands, whether or not what called it up is still understood.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.equipment import MOST_OF_A_KIND, InputRefused, read_unit
from troubleshoot.safety.profiles import PROFILES
from troubleshoot.visit.event_shapes import Event
from troubleshoot.visit.event_words import Unknown, check_conditions, check_words
from troubleshoot.visit.events import after, replay
from troubleshoot.visit.not_understood import NOT_UNDERSTOOD, in_place_of, kind_of
from troubleshoot.visit.undoing import standing, taken_back, without
from troubleshoot.visit.visit_state import VisitState

if TYPE_CHECKING:
    from troubleshoot.reasoning.conclude import Reasoner

MOST_VALUES: Final = 200
_FAILURES: Final = (ArithmeticError, AttributeError, LookupError, TypeError, ValueError)
"""What the effect of an event raises where it holds something else than was written for it."""


@dataclass(frozen=True, slots=True)
class Understanding:
    """The chain of events as today's rules take it, and a sentence for what they do not."""

    events: tuple[Event, ...] = ()
    unknown: tuple[str, ...] = ()

    @property
    def notices(self) -> tuple[str, ...]:
        """What to say before the visit goes on, or is reported; nothing where all is understood."""
        if not self.unknown:
            return ()
        return ("Not understood by today's rules, and counting for nothing:", *self.unknown)


def understood(knowledge: Knowledge, events: Sequence[Event]) -> Understanding:
    """Sort the events of a kept visit; their number and order stay as they were."""
    sorter = _Sorter(knowledge)
    for event in events:
        sorter.take(event)
    return Understanding(tuple(sorter.events), tuple(sorter.unknown))


class _Sorter:
    """Tries each event's effect on the state that the understood ones before it add up to."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self.events: list[Event] = []
        self.unknown: list[str] = []
        self.state = VisitState()
        self._reasoner: Reasoner | None = None

    def take(self, event: Event) -> None:
        kind = event.get("event")
        if kind == "undo":
            self._undo(event)
        elif kind in ("stop", "danger"):
            self._stop(event)
        elif kind == "start":
            self._effect(self._start(event))
        else:
            self._effect(event)

    def say(self, event: Event, why: str) -> None:
        """Name what is not understood by its record; the header is record 1."""
        kind = event.get("event") if isinstance(event.get("event"), str) else "nothing"
        self.unknown.append(f"record {len(self.events) + 2} ({kind}): {why}")

    def _effect(self, event: Event) -> None:
        """Take an event, or put what stands for one that is not understood in its place."""
        try:
            if event["event"] == "invalid" and self._last_answer_is_unknown():
                raise Unknown("the answer that it speaks of is not understood")
            check_words(self.knowledge, event)
            self.state = after(self.knowledge, self.state, event)
        except Unknown as error:
            self._set_aside(event, str(error))
        except _FAILURES as error:
            self._set_aside(event, _why(error))
        else:
            self.events.append(event)

    def _set_aside(self, event: Event, why: str) -> None:
        self.say(event, why)
        self.events.append(in_place_of(event))
        self.state = after(self.knowledge, self.state, self.events[-1])

    def _undo(self, event: Event) -> None:
        """Only what is said counts here; the work is settled when the whole chain is replayed."""
        gone = taken_back(self.events)
        if gone is not None:
            self.state = replay(self.knowledge, without(self.events, gone))
        self.events.append(event)

    def _last_answer_is_unknown(self) -> bool:
        kept = (e for e in reversed(standing(self.events)) if kind_of(e) in ("answer", "step"))
        last = next(kept, None)
        return last is not None and last["event"] == NOT_UNDERSTOOD

    def _stop(self, event: Event) -> None:
        """A STOP with its finding stands until that is sound. One with nothing stands on record."""
        try:
            check_words(self.knowledge, event)
            state = after(self.knowledge, self.state, event)
            if not self._rests_on_something(event):
                raise Unknown("nothing that is understood calls it up")
        except _FAILURES as error:
            name = event.get("hazard")
            name = name if isinstance(name, str) else "danger not named"
            why = str(error) if isinstance(error, Unknown) else _why(error)
            self.say(event, f"{why}; the STOP {name} stands")
            event = {"event": "stop", "hazard": name, "on_record": True}
            state = after(self.knowledge, self.state, event)
        self.events.append(event)
        self.state = state

    def _rests_on_something(self, event: Event) -> bool:
        """Whether a STOP names its finding, was reported in words, or is called up at its place."""
        if event.get("test") is not None or event["event"] == "danger":
            return True
        from troubleshoot.reasoning.conclude import Reasoner
        from troubleshoot.safety.stops import conclude_visit

        self._reasoner = self._reasoner or Reasoner(self.knowledge)
        standing_now = conclude_visit(self._reasoner, self.state).standing_stops
        return event["hazard"] in {fired.hazard.id for fired in standing_now}

    def _start(self, event: Event) -> Event:
        """The beginning with every part that is understood: the rest of the visit rests on it."""
        known = dict(event)
        for key, why in _odd_parts(self.knowledge, event):
            known.pop(key, None)
            self.say(event, why)
        held = event.get("profiles")
        profiles = [p for p in held if p in PROFILES] if isinstance(held, list) else []
        if profiles != held:
            self.say(event, "who was asking; the least is taken")
        known["profiles"] = profiles
        for key, name in list(_odd_values(self.knowledge, known)):
            known[key] = {k: v for k, v in known.get(key, {}).items() if k != name}
            self.say(event, f"{key.replace('_', ' ')}, {name}")
        if any(_odd_values(self.knowledge, known)):
            self.say(event, "what kind of unit it is")
            known = {k: v for k, v in known.items() if k not in ("unit", "own_record")}
        return known


def _odd_parts(knowledge: Knowledge, start: Event) -> Iterator[tuple[str, str]]:
    """The keys of a beginning that are not understood as a whole, and what to say of each."""
    for key in ("unit", "own_record", "counts", "conditions"):
        if key in start and not _is_short_list(start[key]):
            yield key, f"{key.replace('_', ' ')} is no list of values"
    counts = start.get("counts")
    if isinstance(counts, Mapping) and not all(_is_count(n) for n in counts.values()):
        yield "counts", "how many circuits or fans there are"
    for key in ("name", "words"):
        if not isinstance(start.get(key, ""), str):
            yield key, f"the {key}"
    complaint, repaired = start.get("complaint"), start.get("repaired", [])
    if complaint is not None and str(complaint) not in knowledge.complaints:
        yield "complaint", f"the complaint {complaint} is not in today's rules"
    if not isinstance(repaired, list) or not all(str(f) in knowledge.faults for f in repaired):
        yield "repaired", "what had been repaired"
    if not isinstance(start.get("routine", False), bool):
        yield "routine", "whether it is a routine round"


def _odd_values(knowledge: Knowledge, start: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """Facts, plate values and conditions of a beginning that are not understood, one by one."""
    try:
        read_unit(knowledge, start.get("unit", {}), start.get("own_record"), start.get("counts"))
    except InputRefused as error:
        for key, name in dict.fromkeys(tuple(r.key.split(".")[:2]) for r in error.refusals):
            yield key.replace("-", "_"), name
    for name, text in start.get("conditions", {}).items():
        try:
            check_conditions(knowledge, {name: text})
        except _FAILURES:
            yield "conditions", name


def _is_short_list(value: object) -> bool:
    """Values by their names, and no more of them than any unit has."""
    return isinstance(value, Mapping) and len(value) <= MOST_VALUES


def _is_count(value: object) -> bool:
    return type(value) is int and 1 <= value <= MOST_OF_A_KIND


def _why(error: Exception) -> str:
    if isinstance(error, InputRefused):
        return "; ".join(f"{refusal.key}: {refusal.problem}" for refusal in error.refusals)
    if isinstance(error, KeyError):
        return f"{error.args[0]} is missing or not known"
    return str(error).partition("\n")[0] or "it is not of the form that it should have"
