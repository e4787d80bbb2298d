"""What undo takes back, and the walls that it never reaches past."""

from __future__ import annotations

from typing import Any

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.visit.events import replay
from troubleshoot.visit.not_understood import in_place_of
from troubleshoot.visit.undoing import standing, taken_back, without

Events = list[dict[str, Any]]
START = {"event": "start"}
UNDO = {"event": "undo"}


def said(*kinds: str) -> Events:
    return [{"event": kind, "number": number} for number, kind in enumerate(kinds)]


@pytest.mark.parametrize("kind", ["answer", "step", "skip", "fact", "invalid", "repaired"])
def test_what_was_said_is_taken_back(kind: str) -> None:
    assert taken_back(said("start", kind)) == 1
    assert taken_back(said("start", kind, "note", "resumed", "aim")) == 1


@pytest.mark.parametrize(
    "kind", ["start", "note", "aim", "resumed", "closing", "named", "hour-passed", "take-afresh"]
)
def test_what_only_happened_is_not_and_is_reached_past(kind: str) -> None:
    assert taken_back(said(kind)) is None
    assert taken_back(said("answer", kind)) == 0


@pytest.mark.parametrize("wall", ["stop", "danger", "end", "reopened"])
def test_no_undo_reaches_past_a_stop_a_danger_or_what_came_of_it(wall: str) -> None:
    assert taken_back(said("start", "answer", wall)) is None
    assert taken_back(said("start", "answer", wall, "note")) is None
    assert taken_back(said("start", "answer", wall, "step")) == 3


def test_what_nobody_understands_is_taken_back_where_it_was_said_and_else_a_wall() -> None:
    for was, gone in (("answer", 1), ("something", None), ("stop", None)):
        assert taken_back([*said("answer"), in_place_of({"event": was})]) == gone


def test_each_undo_takes_one_more_back_and_none_takes_one_twice() -> None:
    events = [*said("start", "answer", "step"), UNDO]
    assert taken_back(events) == 1
    assert taken_back([*events, UNDO]) is None
    assert taken_back([*events, {"event": "skip"}]) == 4
    assert standing([*events, {"event": "skip"}]) == [*said("start", "answer"), {"event": "skip"}]
    assert standing([*said("start"), UNDO, *said("note")]) == said("start") + said("note")


def test_what_was_aimed_at_since_goes_with_it_and_what_was_aimed_at_before_stays() -> None:
    events = said("start", "aim", "answer", "note", "aim")
    assert without(events, 2) == [events[0], events[1], events[3]]
    assert standing([*events, UNDO]) == [events[0], events[1], events[3]]


@pytest.mark.parametrize("again", [0, 1])
def test_after_an_undo_nothing_is_on_its_way(shipped: Knowledge, again: int) -> None:
    unit = {"circuits": 2, "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
    aim = {"event": "aim", "test": "suction-pressure", "at": "circuit 1"}
    events: Events = [
        {"event": "start", "complaint": "no-cooling", "unit": unit},
        {"event": "answer", "test": "weather-pattern", "outcomes": ["always"]},
        aim,
    ]
    assert replay(shipped, events).aim is not None
    assert replay(shipped, [*events, UNDO, *[UNDO] * again]).aim is None
    assert replay(shipped, [*events[:1], aim, UNDO]).aim is not None, "there was nothing to undo"
    assert replay(shipped, [events[0], aim, events[1], UNDO]).aim is None, "aimed at before it"


def step(name: str, outcome: str) -> dict[str, Any]:
    return {"event": "step", "step": name, "outcomes": [outcome]}


def test_an_undo_goes_on_from_the_more_careful_of_before_and_now(shipped: Knowledge) -> None:
    start: dict[str, Any] = {"event": "start", "complaint": "no-cooling"}
    told, not_told = step("tell-occupants", "told"), step("tell-occupants", "not-told")
    assert replay(shipped, [start, told]).work.occupants_told
    assert not replay(shipped, [start, told, UNDO]).work.occupants_told, "as it was before"
    assert not replay(shipped, [start, told, not_told, UNDO]).work.occupants_told, "as it is now"


def test_what_expired_since_stays_expired(shipped: Knowledge) -> None:
    events: Events = [
        {"event": "start", "complaint": "no-cooling"},
        step("roof-conditions", "safe"),
        step("tell-occupants", "told"),
        {"event": "resumed", "minutes_away": 45, "same_day": True},
        UNDO,
    ]
    work = replay(shipped, events).work
    assert (work.roof, work.occupants_told) == ("not-checked", False)
