"""A kept visit under today's rules: which of its events they understand, and which they do not.

What is not understood weighs nothing and is named, and the visit goes on without it. STOPs are the
exception: one that was recorded stands, whether or not what called it up is still understood.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING, Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.unit.equipment import MOST_OF_A_KIND, InputRefused, read_unit
from troubleshoot.safety.profiles import PROFILES
from troubleshoot.visit.events import (
    Answered,
    Closing,
    DangerReported,
    Event,
    Halted,
    MarkedInvalid,
    NotUnderstood,
    Started,
    StepDone,
    Undone,
    VisitEnded,
    after,
    replay,
)
from troubleshoot.visit.events.apart import kind_of
from troubleshoot.visit.events.codec import event_of, quoted, unknown_keys
from troubleshoot.visit.events.known import Unknown, check_conditions, check_known, in_todays_words
from troubleshoot.visit.events.undoing import standing, taken_back, without
from troubleshoot.visit.kept.lines import ENDINGS, Record
from troubleshoot.visit.state import VisitState

if TYPE_CHECKING:
    from troubleshoot.reasoning.conclude import Reasoner

MOST_VALUES: Final = 200
_PARTS: Final = {
    "unit": "unit",
    "own_record": "own record",
    "counts": "counts",
    "conditions": "conditions",
}
"""The parts of a beginning that hold values, as they are called."""
_FAILURES: Final = (ArithmeticError, AttributeError, LookupError, TypeError, ValueError)
"""What the effect of an event raises where it holds something else than was written for it."""
_ANSWERS: Final = (Answered.kind, StepDone.kind)


@frozen
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


def understood(knowledge: Knowledge, records: Sequence[Record]) -> Understanding:
    """Sort the records of a kept visit into events; their number and order stay as they were."""
    sorter = _Sorter(knowledge)
    for record in records:
        sorter.take(record)
    return Understanding(tuple(sorter.events), tuple(sorter.unknown))


class _Sorter:
    """Tries each event's effect on the state that the understood ones before it add up to."""

    def __init__(self, knowledge: Knowledge) -> None:
        self.knowledge = knowledge
        self.events: list[Event] = []
        self.unknown: list[str] = []
        self.state = VisitState()
        self._reasoner: Reasoner | None = None

    def take(self, record: Record) -> None:
        kind = record.get("event")
        if kind == Undone.kind:
            self._undo(record)
        elif kind in (Halted.kind, DangerReported.kind):
            self._stop(record)
        elif kind == Started.kind:
            self._effect(self._start(record))
        else:
            self._effect(record)

    def say(self, record: Record, why: str) -> None:
        """Name what is not understood by its number; the header is record 1."""
        kind = record.get("event") if isinstance(record.get("event"), str) else "nothing"
        self.unknown.append(f"record {len(self.events) + 2} ({kind}): {why}")

    def _ends(self, event: VisitEnded) -> None:
        """Check an end by what stands before it. Raises Unknown."""
        if event.ending not in ENDINGS:
            raise Unknown(f"{quoted(event.ending)} is no ending")
        if event.ending == "closed" and self._may_be_stopped():
            raise Unknown("a STOP stands, and nothing has lifted it")

    def _may_be_stopped(self) -> bool:
        """Whether a STOP stands: none does where the way out was begun after the last was met."""
        marks = (
            e for e in reversed(self.events) if isinstance(e, Halted | DangerReported | Closing)
        )
        if not isinstance(next(marks, None), Halted | DangerReported):
            return False
        from troubleshoot.safety.stops.lifting import conclude_visit, standing_stop

        conclusions = conclude_visit(self._reasons(), self.state)
        return standing_stop(self.knowledge, self.state, conclusions) is not None

    def _reasons(self) -> Reasoner:
        from troubleshoot.reasoning.conclude import Reasoner

        self._reasoner = self._reasoner or Reasoner(self.knowledge)
        return self._reasoner

    def _effect(self, record: Record) -> None:
        """Take an event, or put what stands for one that is not understood in its place."""
        try:
            event = in_todays_words(self.knowledge, event_of(record))
            if isinstance(event, MarkedInvalid) and self._last_answer_is_unknown():
                raise Unknown("the answer that it speaks of is not understood")
            if isinstance(event, VisitEnded):
                self._ends(event)
            self._add(event)
        except _FAILURES as error:
            self.say(record, _why(error))
            self._add(NotUnderstood(record))

    def _add(self, event: Event) -> None:
        """Put an event at the end of the chain. Raises Unknown, or one of _FAILURES."""
        check_known(self.knowledge, event)
        self.state = after(self.knowledge, self.state, event)
        self.events.append(event)

    def _undo(self, record: Record) -> None:
        """Only what is said counts here; the work is settled when the whole chain is replayed.

        Whatever else its record holds, it takes back.
        """
        gone = taken_back(self.events)
        if gone is not None:
            self.state = replay(self.knowledge, without(self.events, gone))
        time = record.get("time", "")
        self.events.append(Undone(time=time) if isinstance(time, str) else Undone())

    def _last_answer_is_unknown(self) -> bool:
        kept = (e for e in reversed(standing(self.events)) if kind_of(e) in _ANSWERS)
        return isinstance(next(kept, None), NotUnderstood)

    def _stop(self, record: Record) -> None:
        """A STOP with its finding stands until that is sound. One with nothing stands on record."""
        try:
            event = event_of(record)
            if record.get("test") is not None and "at" not in record:
                raise Unknown("where its finding was is missing")
            check_known(self.knowledge, event)
            state = after(self.knowledge, self.state, event)
            if not self._rests_on_something(event):
                raise Unknown("nothing that is understood calls it up")
        except _FAILURES as error:
            name = record.get("hazard")
            name = name if isinstance(name, str) else "danger not named"
            self.say(record, f"{_why(error)}; the STOP {name} stands")
            event = Halted(name, on_record=True)
            state = after(self.knowledge, self.state, event)
        self.events.append(event)
        self.state = state

    def _rests_on_something(self, event: Event) -> bool:
        """Whether a STOP names its finding, was reported in words, or is called up at its place."""
        if isinstance(event, DangerReported) or (isinstance(event, Halted) and event.test):
            return True
        from troubleshoot.safety.stops.lifting import conclude_visit

        standing_now = conclude_visit(self._reasons(), self.state).standing_stops
        return isinstance(event, Halted) and event.hazard in {f.hazard.id for f in standing_now}

    def _start(self, record: Record) -> Record:
        """The beginning with every part that is understood: the rest of the visit rests on it."""
        known = dict(record)
        for key, why in _odd_parts(self.knowledge, record):
            known.pop(key, None)
            self.say(record, why)
        held = record.get("profiles")
        profiles = [p for p in held if p in PROFILES] if isinstance(held, list) else []
        if profiles != held:
            self.say(record, "who was asking; the least is taken")
        known["profiles"] = profiles
        for key, name in list(_odd_values(self.knowledge, known)):
            known[key] = {k: v for k, v in _part(known, key).items() if k != name}
            self.say(record, f"{_PARTS[key]}, {name}")
        if any(_odd_values(self.knowledge, known)):
            self.say(record, "what kind of unit it is")
            known = {k: v for k, v in known.items() if k not in ("unit", "own_record")}
        return known


def _odd_parts(knowledge: Knowledge, start: Record) -> Iterator[tuple[str, str]]:
    """The keys of a beginning that are not understood as a whole, and what to say of each."""
    for key in unknown_keys(Started, start):
        yield key, f"{key} is not known here"
    for key in _PARTS:
        if key in start and not _is_short_list(start[key]):
            yield key, f"{_PARTS[key]} is no list of values"
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
        yield "routine", "whether it is a PM"


def _odd_values(knowledge: Knowledge, start: Record) -> Iterator[tuple[str, str]]:
    """Facts, plate values and conditions of a beginning that are not understood, one by one."""
    counts = {k: n for k, n in _part(start, "counts").items() if isinstance(n, int)}
    try:
        read_unit(knowledge, _part(start, "unit"), _part(start, "own_record"), counts)
    except InputRefused as error:
        for key, name in dict.fromkeys(tuple(r.key.split(".")[:2]) for r in error.refusals):
            yield key.replace("own-record", "own_record"), name
    for name, text in _part(start, "conditions").items():
        try:
            check_conditions(knowledge, {name: text if isinstance(text, str) else ""})
        except _FAILURES:
            yield "conditions", name


def _part(start: Record, key: str) -> Mapping[str, object]:
    """The values under one key of a beginning; none where it is not there."""
    value = start.get(key)
    return value if isinstance(value, Mapping) else {}


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
