"""Between an event and its record in the journal: the fields of its class say what a record holds.

A record is plain data: the kind under `event`, and each field under its name. A field that holds
its default is left out, unless it is marked ALWAYS. Reading is strict: a key that is missing, of
another type or unknown makes it no event.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from functools import cache
from types import MappingProxyType, NoneType, UnionType
from typing import Any, Final, get_args, get_origin, get_type_hints

from troubleshoot.visit.events.answers import Answered, MarkedInvalid, StepDone
from troubleshoot.visit.events.apart import NotUnderstood, Undone
from troubleshoot.visit.events.beginning import (
    Called,
    FactTold,
    FromRegister,
    LeftBefore,
    Named,
    Started,
)
from troubleshoot.visit.events.ending import (
    Closing,
    Noted,
    PartGiven,
    ProofRead,
    Repaired,
    RepairedBefore,
    RepairWanted,
    VisitEnded,
)
from troubleshoot.visit.events.event import ALWAYS, Event
from troubleshoot.visit.events.instruments import InstrumentsListed
from troubleshoot.visit.events.on_round import FindingsKept, RoundBegun, RoundGoneOn, SearchBegun
from troubleshoot.visit.events.passing_time import HourPassed, Resumed
from troubleshoot.visit.events.state_gone import StateGone
from troubleshoot.visit.events.stops import (
    DangerReported,
    DangerTakenBack,
    Halted,
    Reopened,
    TakenAfresh,
)
from troubleshoot.visit.events.way import Aimed, Shown, Skipped
from troubleshoot.visit.events.weighed import Weighed
from troubleshoot.visit.events.withdrawn import ReadingWithdrawn
from troubleshoot.visit.kept.lines import Record

KINDS: Final[Mapping[str, type[Event]]] = MappingProxyType(
    {
        each.kind: each
        for each in (
            *(Called, Named, LeftBefore, FromRegister, InstrumentsListed, Started, FactTold),
            *(Answered, StepDone, MarkedInvalid, ReadingWithdrawn, Aimed, Shown, Skipped),
            *(RoundBegun, FindingsKept, SearchBegun, RoundGoneOn),
            *(Resumed, HourPassed, StateGone, Undone),
            *(Weighed, Noted, ProofRead, RepairedBefore, RepairWanted, Repaired, Closing),
            *(PartGiven, VisitEnded),
            *(Halted, DangerReported, DangerTakenBack, TakenAfresh, Reopened),
        )
    }
)
"""Every kind of event that a journal may hold."""

FORMER: Final[Mapping[str, frozenset[str]]] = MappingProxyType({"closing": frozenset({"ending"})})
"""Keys that versions of before wrote and that nothing reads any more."""


class NotAnEvent(ValueError):
    """A record is no event; the message says what of it."""


def record_of(event: Event) -> dict[str, object]:
    """An event as it is written down."""
    if isinstance(event, NotUnderstood):
        return dict(event.record)
    held = {each.name: getattr(event, each.name) for each in fields(event) if _says(event, each)}
    return {"event": event.kind, **{name: _plain(value) for name, value in held.items()}}


def event_of(record: Record) -> Event:
    """The event that was written down. Raises NotAnEvent."""
    kind = record.get("event")
    made = KINDS.get(kind) if isinstance(kind, str) else None
    if made is None:
        raise NotAnEvent(f"{kind if isinstance(kind, str) else 'event'} is missing or not known")
    for key in unknown_keys(made, record):
        raise NotAnEvent(f"{key} is not known here")
    hints = _types(made)
    for each in fields(made):
        if each.name not in record and _default(each) is MISSING:
            raise NotAnEvent(f"{each.name} is missing or not known")
    held: dict[str, Any] = {
        key: _read(hints[key], key, record[key]) for key in hints if key in record
    }
    return made(**held)


def unknown_keys(made: type[Event], record: Record) -> tuple[str, ...]:
    """The keys of a record that no version of this kind of event has had."""
    known = {"event", *_types(made), *FORMER.get(made.kind, ())}
    return tuple(key for key in record if key not in known)


def _says(event: Event, each: Field[Any]) -> bool:
    return each.metadata == ALWAYS or getattr(event, each.name) != _default(each)


def _default(each: Field[Any]) -> object:
    return each.default if each.default_factory is MISSING else each.default_factory()


def _plain(value: object) -> object:
    if isinstance(value, tuple):
        return [_plain(each) for each in value]
    if is_dataclass(value) and not isinstance(value, type):
        said = (each for each in fields(value) if getattr(value, each.name) != _default(each))
        return {each.name: _plain(getattr(value, each.name)) for each in said}
    return dict(value) if isinstance(value, Mapping) else value


@cache
def _types(made: type) -> Mapping[str, Any]:
    """The type of each field of a class; what belongs to the class itself is none."""
    hints = get_type_hints(made)
    return {each.name: hints[each.name] for each in fields(made)}


def _read(wanted: Any, key: str, value: object) -> object:
    """A value as its field holds it. Raises NotAnEvent."""
    if is_dataclass(wanted):
        return _read_parts(wanted, key, value)
    if get_origin(wanted) is UnionType and isinstance(value, dict):
        for each in get_args(wanted):
            if is_dataclass(each):
                return _read_parts(each, key, value)
    of = get_args(wanted)[0] if get_origin(wanted) is tuple else None
    if is_dataclass(of) and isinstance(value, list):
        return tuple(_read_parts(of, key, each) for each in value)
    if not _fits(wanted, value):
        raise NotAnEvent(f"{key} is {quoted(value)}")
    return tuple(value) if isinstance(value, list) and wanted is not object else value


def _read_parts(wanted: Any, key: str, value: object) -> object:
    """A value that has parts of its own, all of which are there. Raises NotAnEvent.

    What may be left out is there where it says something.
    """
    hints = _types(wanted)
    needed = {each.name for each in fields(wanted) if _default(each) is MISSING}
    if not isinstance(value, dict) or not needed <= value.keys() <= hints.keys():
        raise NotAnEvent(f"{key} is {quoted(value)}")
    return wanted(**{name: _read(hints[name], name, held) for name, held in value.items()})


def _fits(wanted: Any, value: object) -> bool:
    """Whether a value of plain data may stand in a field of this type."""
    if wanted is object:
        return True
    origin, args = get_origin(wanted), get_args(wanted)
    if origin is UnionType:
        return any(_fits(each, value) for each in args)
    if origin is tuple:
        return isinstance(value, list) and all(_fits(args[0], each) for each in value)
    if origin is not None:
        return isinstance(value, dict) and all(_fits(args[1], each) for each in value.values())
    if wanted is float:
        return type(value) in (int, float) and math.isfinite(value)  # type: ignore[arg-type]
    return type(value) is (NoneType if wanted is None else wanted)


def quoted(value: object) -> str:
    """A value in a sentence, no more than its beginning where it is long."""
    text = str(value)
    return f'"{text[:40]}..."' if len(text) > 40 else f'"{text}"'
