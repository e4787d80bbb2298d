"""A long visit as it stands in a journal, with something of every kind, and ways to spoil it."""

from __future__ import annotations

import copy
from pathlib import Path
from typing import Any

from hypothesis import strategies as st

from troubleshoot.visit.kept.lines import FORMAT, line_of

Events = list[dict[str, Any]]

RESULT = {
    "by": "heating-contractor",
    "done": "exchanger replaced, burners set",
    "reading": "0 ppm in the room",
    "when": "2026-11-26 09:30",
}


def long_visit() -> Events:
    """Begun, worked on, stopped by a cracked heat exchanger, handed over, reopened, closed."""
    return copy.deepcopy([*_BEFORE, *_STOPPED, *_AFTER])


def stopped_visit() -> Events:
    """The same up to its STOP."""
    return copy.deepcopy([*_BEFORE, _STOPPED[0]])


def write_journal(folder: Path, name: str, events: Events, **header: Any) -> Path:
    """A journal with these events and whole sums, whatever is in them."""
    folder.mkdir(parents=True, exist_ok=True)
    path = folder / f"{name}.journal"
    first = {"event": "journal", "format": FORMAT, "program": "0", "rules": "other", **header}
    data, checksum = line_of(0, 0, first)
    for number, event in enumerate(events, start=1):
        line, checksum = line_of(number, checksum, event)
        data += line
    path.write_bytes(data)
    return path


def spoilt(events: Events) -> st.SearchStrategy[Events]:
    """These events with one to four of their values gone, changed or of another kind."""

    @st.composite
    def draw_spoilt(draw: st.DrawFn) -> Events:
        changed = copy.deepcopy(events)
        for _ in range(draw(st.integers(1, 4))):
            event = changed[draw(st.integers(0, len(changed) - 1))]
            holders = [event, *(v for v in event.values() if isinstance(v, dict) and v)]
            holder = draw(st.sampled_from(holders)) or event
            key = draw(st.sampled_from(sorted(holder) or ["event"]))
            if draw(st.booleans()):
                holder.pop(key, None)
            else:
                holder[key] = draw(ODD)
        return changed

    return draw_spoilt()


ODD = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-3, 10**12)
    | st.floats()
    | st.text(max_size=8)
    | st.sampled_from(
        ["undo", "stop", "end", "answer", "circuit 9", "gone-by-now", "crack", "\x1b[2J", "\ud800"]
    ),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=5,
)

_BEFORE: Events = [
    {
        "event": "start",
        "name": "Quarry Street clinic, unit 2",
        "complaint": "no-heat",
        "words": "it blows cold",
        "routine": False,
        "profiles": ["combustion", "electrical", "gas", "technician"],
        "unit": {"heat": "gas", "circuits": "2", "nameplate-volts": "230 V"},
        "own_record": {},
        "counts": {"circuit": 2},
        "conditions": {"outdoor-temperature": "31 F"},
        "repaired": [],
    },
    {"event": "fact", "name": "duct-smoke-detector", "value": "not-fitted"},
    {"event": "fact", "name": "compressor-rla", "value": {"circuit 1": "8.9 A"}},
    {"event": "fact", "name": "condenser-fans", "value": None},
    {"event": "note", "text": "ice on the roof"},
    {
        "event": "step", "step": "roof-conditions", "place": None, "again": False,
        "outcomes": ["safe"],
    },
    {"event": "aim", "test": "suction-pressure", "at": "circuit 2", "chosen": True, "reason": "x"},
    {
        "event": "answer", "test": "suction-pressure", "at": ["circuit 2"], "shared": False,
        "outcomes": [], "text": "128 psig", "valid": None, "instrument": None, "why_invalid": "",
        "conditions": {"outdoor-temperature": "33 F"},
    },
    {"event": "invalid", "reason": "the hose leaked"},
    {"event": "skip", "test": "suction-line-temperature", "at": "circuit 2"},
    {"event": "resumed", "minutes_away": 45.5, "same_day": True, "profiles": ["combustion"]},
    {"event": "answer", "test": "wiring-burn-marks", "at": None, "outcomes": ["clean"]},
    {"event": "undo"},
    {"event": "hour-passed"},
    {"event": "repaired", "fault": "condenser-fan-capacitor-weak"},
    {"event": "answer", "test": "heat-exchanger-look", "at": None, "outcomes": ["crack"]},
]  # fmt: skip
_STOPPED: Events = [
    {
        "event": "stop", "hazard": "heat-exchanger-breach", "test": "heat-exchanger-look",
        "at": None, "time": "2026-11-25T15:05:00+00:00",
    },
    {
        "event": "end",
        "ending": "stopped",
        "told": "the owner, 15:10",
        "told_at": "2026-11-25 15:12",
    },
]  # fmt: skip
_AFTER: Events = [
    {
        "event": "reopened", "hazard": "heat-exchanger-breach", "test": "heat-exchanger-look",
        "at": None, "result": RESULT,
    },
    {"event": "take-afresh", "test": "heat-exchanger-look", "at": None, "result": RESULT},
    {"event": "answer", "test": "heat-exchanger-look", "at": None, "outcomes": ["sound"]},
    {"event": "named", "name": "unit 2", "time": "2026-11-26T09:35:00+00:00"},
    {
        "event": "danger", "hazard": "danger-reported", "words": "bees in the unit",
        "time": "2026-11-26T09:40:00+00:00",
    },
    {"event": "shown", "test": "ice-on-coil", "at": None},
    {"event": "closing", "cured": False},
    {"event": "end", "ending": "closed"},
]  # fmt: skip
