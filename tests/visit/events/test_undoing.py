"""What undo takes back, and the walls that it never reaches past."""

from __future__ import annotations

import pytest

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.safety.stops.record import HandOverResult
from troubleshoot.visit.events import (
    Aimed,
    Answered,
    Closing,
    DangerReported,
    Event,
    FactTold,
    FindingsKept,
    Halted,
    HourPassed,
    MarkedInvalid,
    Named,
    Noted,
    NotUnderstood,
    ProofRead,
    ReadingWithdrawn,
    Reopened,
    Repaired,
    RepairedBefore,
    Resumed,
    RoundBegun,
    RoundGoneOn,
    SearchBegun,
    Shown,
    Skipped,
    Started,
    StateGone,
    StepDone,
    TakenAfresh,
    Undone,
    VisitEnded,
    Weighed,
    replay,
)
from troubleshoot.visit.events.undoing import standing, taken_back, without
from troubleshoot.visit.weighing import Weighing

Events = list[Event]
START = Started()
UNDO = Undone()


def said(*kinds: str) -> Events:
    return [_ONE_OF_A_KIND[kind] for kind in kinds]


RESULT = HandOverResult("gas-utility", "union tightened", "0 %", "2026-11-26 9:00")
_ONE_OF_A_KIND = {
    each.kind: each
    for each in (
        Started(), Named("RTU-7"), FactTold("heat", "gas"), Answered("a"), StepDone("b", ("c",)),
        Skipped("a"), Aimed("a"), Shown("a"), MarkedInvalid("x"), Noted("x"), Repaired("f"),
        Resumed(5.0, True), HourPassed(), Closing(), Halted("h"), DangerReported("h"),
        TakenAfresh("a", None),
        Reopened("h", RESULT, "a", None), VisitEnded("stopped"), ReadingWithdrawn("a"),
        ProofRead("p", "1 V"), RepairedBefore("f", "new fan"), StateGone(("b",), "it is off"),
        RoundBegun("fall"), FindingsKept(()), SearchBegun(()), RoundGoneOn(),
        Weighed(Weighing("added", "circuit 1", "2 lb")),
    )
}  # fmt: skip


@pytest.mark.parametrize(
    "kind",
    [
        "answer", "step", "skip", "fact", "invalid", "repaired", "withdrawn", "proof",
        "repaired-before", "state-gone", "kept-for-the-end", "search", "round-goes-on",
        "weighed",
    ],
)  # fmt: skip
def test_what_was_said_is_taken_back(kind: str) -> None:
    assert taken_back(said("start", kind)) == 1
    assert taken_back(said("start", kind, "note", "resumed", "aim")) == 1


@pytest.mark.parametrize(
    "kind",
    ["start", "note", "aim", "resumed", "closing", "named", "hour-passed", "take-afresh", "round"],
)
def test_what_only_happened_is_not_and_is_reached_past(kind: str) -> None:
    assert taken_back(said(kind)) is None
    assert taken_back(said("answer", kind)) == 0


def test_what_a_person_chose_stays_chosen_and_the_way_out_goes_with_its_repair() -> None:
    """Regression: u inside a chosen test lost it, and a repair taken back left the way out."""
    chosen, aimed = Aimed("a", chosen=True), Aimed("a")
    answer, undo = Answered("b"), Undone()
    assert standing([answer, chosen, undo]) == [chosen]
    assert standing([answer, aimed, undo]) == []
    assert standing([answer, Repaired("f"), Closing(), undo]) == [answer]
    assert standing([answer, Closing(), undo]) == [Closing()], "the way out that somebody chose"
    assert standing([Repaired("f"), Noted("x"), Closing(), undo]) == [Noted("x")]
    assert standing([Repaired("f"), Closing(), ProofRead("p", "1 V"), undo]) == [
        Repaired("f"), Closing(),
    ]  # fmt: skip


@pytest.mark.parametrize("wall", ["stop", "danger", "end", "reopened"])
def test_no_undo_reaches_past_a_stop_a_danger_or_what_came_of_it(wall: str) -> None:
    assert taken_back(said("start", "answer", wall)) is None
    assert taken_back(said("start", "answer", wall, "note")) is None
    assert taken_back(said("start", "answer", wall, "step")) == 3


def test_what_nobody_understands_is_taken_back_where_it_was_said_and_else_a_wall() -> None:
    for was, gone in (("answer", 1), ("something", None), ("stop", None)):
        assert taken_back([*said("answer"), NotUnderstood({"event": was})]) == gone


def test_each_undo_takes_one_more_back_and_none_takes_one_twice() -> None:
    events = [*said("start", "answer", "step"), UNDO]
    assert taken_back(events) == 1
    assert taken_back([*events, UNDO]) is None
    assert taken_back([*events, Skipped("a")]) == 4
    assert standing([*events, Skipped("a")]) == [*said("start", "answer"), Skipped("a")]
    assert standing([*said("start"), UNDO, *said("note")]) == said("start") + said("note")


def test_what_was_aimed_at_since_goes_with_it_and_what_was_aimed_at_before_stays() -> None:
    events = said("start", "aim", "answer", "note", "aim", "shown")
    assert without(events, 2) == [events[0], events[1], events[3]]
    assert standing([*events, UNDO]) == [events[0], events[1], events[3]]


@pytest.mark.parametrize("again", [0, 1])
def test_after_an_undo_nothing_is_on_its_way(shipped: Knowledge, again: int) -> None:
    unit = {"circuits": 2, "refrigerant": "R-410A", "duct-smoke-detector": "not-fitted"}
    aim = Aimed("suction-pressure", "circuit 1")
    events: Events = [
        Started(complaint="no-cooling", unit=unit),
        Answered("weather-pattern", outcomes=("always",)),
        aim,
    ]
    assert replay(shipped, events).aim is not None
    assert replay(shipped, [*events, UNDO, *[UNDO] * again]).aim is None
    assert replay(shipped, [*events[:1], aim, UNDO]).aim is not None, "there was nothing to undo"
    assert replay(shipped, [events[0], aim, events[1], UNDO]).aim is None, "aimed at before it"


def step(name: str, outcome: str) -> Event:
    return StepDone(name, (outcome,))


def test_an_undo_goes_on_from_the_more_careful_of_before_and_now(shipped: Knowledge) -> None:
    start = Started(complaint="no-cooling")
    told, not_told = step("tell-occupants", "told"), step("tell-occupants", "not-told")
    assert replay(shipped, [start, told]).work.occupants_told
    assert not replay(shipped, [start, told, UNDO]).work.occupants_told, "as it was before"
    assert not replay(shipped, [start, told, not_told, UNDO]).work.occupants_told, "as it is now"


def test_what_expired_since_stays_expired(shipped: Knowledge) -> None:
    events: Events = [
        Started(complaint="no-cooling"),
        step("roof-conditions", "safe"),
        step("tell-occupants", "told"),
        Resumed(45, True),
        UNDO,
    ]
    work = replay(shipped, events).work
    assert (work.roof, work.occupants_told) == ("not-checked", False)
