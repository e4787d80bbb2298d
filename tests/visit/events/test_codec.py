"""An event and its record in the journal say the same, whatever kind of event it is."""

from __future__ import annotations

import json
import math
from collections.abc import Mapping
from dataclasses import fields
from pathlib import Path
from typing import Any, get_type_hints

import pytest
from hypothesis import given
from hypothesis import strategies as st

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.reasoning.readings.meters import Listed
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.stops.record import HandOverResult, LeftOn
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    DangerReported,
    Event,
    FactTold,
    Halted,
    HourPassed,
    Noted,
    NotUnderstood,
    ReadingWithdrawn,
    Resumed,
    Shown,
    Skipped,
    Started,
    StepDone,
    replay,
)
from troubleshoot.visit.events.codec import KINDS, NotAnEvent, event_of, record_of
from troubleshoot.visit.events.on_round import FindingAt
from troubleshoot.visit.events.places import At
from troubleshoot.visit.kept.reading import read_visit
from troubleshoot.visit.kept.understanding import understood
from troubleshoot.visit.state import RepairSaid
from troubleshoot.visit.weighing import Weighing

JOURNALS = Path(__file__).parent / "journals"
NUMBER = st.floats(allow_nan=False, allow_infinity=False)
TEXT = st.text(max_size=8)
PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | TEXT,
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(TEXT, inner, max_size=2),
    max_leaves=4,
)
TEXTS = st.lists(TEXT, max_size=3).map(tuple)
OF_TYPE: dict[Any, st.SearchStrategy[Any]] = {
    str: TEXT,
    str | None: TEXT | st.none(),
    bool: st.booleans(),
    bool | None: st.booleans() | st.none(),
    float | None: NUMBER | st.none(),
    object: PLAIN,
    At: TEXT | TEXTS | st.none(),
    tuple[str, ...]: TEXTS,
    tuple[str, ...] | None: TEXTS | st.none(),
    Mapping[str, object]: st.dictionaries(TEXT, PLAIN, max_size=3),
    Mapping[str, str]: st.dictionaries(TEXT, TEXT, max_size=3),
    Mapping[str, int] | None: st.dictionaries(TEXT, st.integers(), max_size=3) | st.none(),
    tuple[LeftOn, ...]: st.lists(
        st.builds(LeftOn, TEXT, st.lists(st.integers(), max_size=3).map(tuple), TEXTS), max_size=2
    ).map(tuple),
    tuple[FindingAt, ...]: st.lists(st.builds(FindingAt, TEXT, TEXT | st.none()), max_size=2).map(
        tuple
    ),
    tuple[Listed, ...]: st.lists(
        st.builds(Listed, TEXT, TEXT, NUMBER, NUMBER, NUMBER), max_size=2
    ).map(tuple),
    Weighing: st.builds(Weighing, TEXT, TEXT, TEXT, TEXT, TEXT, TEXT, TEXT),
    HandOverResult: st.builds(HandOverResult, TEXT, TEXT, TEXT, TEXT),
    HandOverResult | None: st.builds(HandOverResult, TEXT, TEXT, TEXT, TEXT) | st.none(),
}


@st.composite
def events(draw: st.DrawFn, kind: str) -> Event:
    made = KINDS[kind]
    hints = get_type_hints(made)
    return made(**{each.name: draw(OF_TYPE[hints[each.name]]) for each in fields(made)})


def through_a_line(record: Mapping[str, object]) -> dict[str, Any]:
    return dict(json.loads(json.dumps(record)))


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_what_is_written_is_read_as_the_same_event(kind: str) -> None:
    @given(events(kind))
    def there_and_back(event: Event) -> None:
        record = through_a_line(record_of(event))
        assert record["event"] == kind
        assert event_of(record) == event
        assert record_of(event_of(record)) == record

    there_and_back()


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_a_value_of_another_kind_or_an_unknown_key_makes_it_no_event(kind: str) -> None:
    @given(events(kind), st.data())
    def refused(event: Event, data: st.DataObject) -> None:
        record = record_of(event)
        with pytest.raises(NotAnEvent, match=r"^seen-by is not known here$"):
            event_of({**record, "seen-by": "me"})
        typed = [each.name for each in fields(event) if (kind, each.name) != ("fact", "value")]
        key = data.draw(st.sampled_from(typed))
        with pytest.raises(NotAnEvent, match=f"^{key} is "):
            event_of({**record, key: {"odd": [1.5, math.nan]}} if key not in MAPPINGS else
                     {**record, key: "odd"})  # fmt: skip

    refused()


MAPPINGS = ("unit", "own_record", "counts", "conditions", "result", "trusted", "afresh")


@pytest.mark.parametrize(
    ("record", "why"),
    [
        ({}, "event is missing or not known"),
        ({"event": None}, "event is missing or not known"),
        ({"event": ["note"]}, "event is missing or not known"),
        ({"event": "sang"}, "sang is missing or not known"),
        ({"event": "not-understood", "record": {}}, "not-understood is missing or not known"),
        ({"event": "note"}, "text is missing or not known"),
        ({"event": "note", "text": 7}, 'text is "7"'),
        ({"event": "answer", "test": "a", "outcomes": "crack"}, 'outcomes is "crack"'),
        ({"event": "answer", "test": "a", "outcomes": ["b", 1]}, "outcomes is \"['b', 1]\""),
        ({"event": "step", "step": "a", "outcomes": [], "again": 1}, 'again is "1"'),
        ({"event": "resumed", "minutes_away": True, "same_day": True}, 'minutes_away is "True"'),
        ({"event": "resumed", "minutes_away": math.inf, "same_day": True}, "minutes_away is"),
        ({"event": "start", "counts": {"circuit": True}}, "counts is"),
        ({"event": "reopened", "hazard": "h", "test": "a", "at": None, "result": {"by": "me"}},
         "result is"),
    ],
)  # fmt: skip
def test_what_is_no_event_is_said_by_its_key(record: dict[str, Any], why: str) -> None:
    with pytest.raises(NotAnEvent) as error:
        event_of(record)
    assert str(error.value).startswith(why)


def test_a_record_leaves_out_what_goes_without_saying_but_not_what_others_look_up() -> None:
    assert record_of(Noted("ice")) == {"event": "note", "text": "ice"}
    assert record_of(HourPassed(time="now")) == {"event": "hour-passed", "time": "now"}
    assert record_of(Closing()) == {"event": "closing"}
    assert record_of(Aimed("a")) == {"event": "aim", "test": "a", "at": None}
    assert record_of(Shown("a")) == {"event": "shown", "test": "a", "at": None}
    assert record_of(ReadingWithdrawn("a")) == {"event": "withdrawn", "test": "a", "at": None}
    assert record_of(Skipped("a")) == {"event": "skip", "test": "a", "at": None}
    assert record_of(Answered("a")) == {"event": "answer", "test": "a", "at": None}
    assert record_of(StepDone("a", ("b",))) == {
        "event": "step", "step": "a", "outcomes": ["b"], "place": None, "again": False,
    }  # fmt: skip
    assert record_of(FactTold("a", None)) == {"event": "fact", "name": "a", "value": None}
    assert record_of(Halted("h", "a")) == {
        "event": "stop", "hazard": "h", "test": "a", "at": None
    }  # fmt: skip
    assert record_of(DangerReported("h", "x", "a"))["at"] is None
    assert record_of(Resumed(None, False)) == {
        "event": "resumed", "minutes_away": None, "same_day": False,
    }  # fmt: skip
    assert record_of(Started())["profiles"] == list(Started().profiles)


def test_what_nobody_understands_is_written_as_it_was() -> None:
    record = {"event": "sang", "song": ["la", None]}
    assert record_of(NotUnderstood(record)) == record
    assert NotUnderstood(record).was == "sang" and NotUnderstood({"event": 7}).was == ""


def test_a_key_that_an_older_version_wrote_is_passed_over() -> None:
    assert event_of({"event": "closing", "ending": "named"}) == Closing()


def test_a_visit_of_the_first_format_opens_to_what_it_had_come_to(shipped: Knowledge) -> None:
    kept = read_visit(JOURNALS / "format-1.journal")
    assert kept.header["format"] == 1
    found = understood(shipped, kept.events)
    assert found.unknown == ()
    state = replay(shipped, found.events)
    assert (state.name, state.complaint, state.words, state.ended) == (
        "Quarry Street clinic, unit 2", "no-heat", "it blows cold", "stopped",
    )  # fmt: skip
    assert state.profiles == {"electrical", "gas", "technician"}
    assert state.unit.facts["heat"] == "gas" and "supply-phase" in state.not_known
    assert [(a.test, a.text, a.valid) for a in state.answers] == [
        ("roof-conditions", None, None), ("tell-occupants", None, None),
        ("suction-pressure", "128 psig", False), ("heat-exchanger-look", None, None),
    ]  # fmt: skip
    assert state.answers[2].why_invalid == "the hose leaked"
    assert state.repairs == (RepairSaid("condenser-fan-capacitor-weak", answers=3),)
    assert state.notes == ("ice on the roof", "Handed over; told: the owner")
    assert state.closing and not state.cured and state.work.roof == "go"


def test_a_visit_of_the_second_format_opens_to_what_it_had_come_to(shipped: Knowledge) -> None:
    kept = read_visit(JOURNALS / "format-2.journal")
    assert kept.header["format"] == 2
    found = understood(shipped, kept.events)
    assert found.unknown == ()
    state = replay(shipped, found.events)
    assert (state.name, state.ended, state.cured) == (
        "Quarry Street clinic, unit 2", "closed", True,
    )  # fmt: skip
    assert state.unit_data["compressor-rla"] == {"circuit 1": "8.9 A"}
    read = state.answers[1]
    assert (read.test, read.text, read.places) == (
        "suction-pressure", "128 psig", (Place("circuit", 2),),
    )  # fmt: skip
    assert read.conditions == {"outdoor-temperature": "33 F"} and read.valid is False
    assert ("suction-line-temperature", Place("circuit", 2)) in state.skipped
    assert [repair.proofs for repair in state.repairs] == [(("Read it once more.", "5.1 uF"),)]
    breach, thunder = state.stops
    assert (breach.hazard, breach.told, breach.told_at) == (
        "heat-exchanger-breach", "the owner, 10:00", "2026-11-25 10:02",
    )  # fmt: skip
    assert breach.reopened and breach.result == HandOverResult(
        "heating-contractor", "exchanger replaced, burners set", "0 ppm in the room",
        "2026-11-26 09:30",
    )  # fmt: skip
    assert (thunder.hazard, thunder.reported) == ("lightning", "thunder")
    assert state.profiles == {"combustion"} and state.asked[-1].nobody
    assert state.last_time == "2026-11-25T11:51:00+00:00"


@pytest.mark.parametrize("name", ["format-1", "format-2"])
def test_an_old_visit_written_anew_says_the_same(name: str, shipped: Knowledge) -> None:
    found = understood(shipped, read_visit(JOURNALS / f"{name}.journal").events)
    again = understood(shipped, [through_a_line(record_of(event)) for event in found.events])
    assert again == found and replay(shipped, again.events) == replay(shipped, found.events)
