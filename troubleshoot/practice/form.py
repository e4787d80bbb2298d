"""The forms of scenarios/{faulty,healthy}/<scenario>.yaml, and of scenarios/deeds.yaml."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.forms.pieces import FORMAT, SOURCE
from troubleshoot.knowledge.shapes import (
    Anything,
    Choice,
    ListOf,
    Name,
    NewId,
    Number,
    OneOrMore,
    Pairs,
    Record,
    Text,
    Truth,
    Word,
    optional,
    required,
)

SEASONS: Final = ("summer", "winter", "spring-or-fall")
WEEKS: Final = 6
"""Of the course: looks first, then power, motors, air, the refrigerant circuit, and gas."""

_PLACE: Final = Text(longest=60)
_PLACES: Final = OneOrMore(_PLACE, most=8, alone=True)
_TEST: Final = required("test", Name("test"), "the test")
_AT: Final = optional("at", _PLACE, "the place, where the unit has several")
_OUTCOME: Final = OneOrMore(Name("outcome of test"), alone=True)

SCENARIO_READING: Final = Record(
    "reading",
    (
        _TEST,
        optional("at", _PLACES, "the place or places, where the unit has several"),
        optional("text", Anything(), "the number as it would be typed"),
        optional("outcome", _OUTCOME, "what is seen, where it is no number"),
        optional("says", Text(), "the finding in the words of a person standing there"),
        optional("valid", Truth(), "false: the reading misleads and must not count"),
        optional("why", Text(), "why it misleads"),
        optional("instrument", Text(longest=120), "the meter used"),
        optional("conditions", Pairs(Word(), Anything()), "what held when it was taken"),
    ),
    some_of=("text", "outcome"),
)
PROOF_READING: Final = Record(
    "reading after the repair",
    (
        _TEST,
        _AT,
        optional("text", Anything(), "the number as it would be typed"),
        optional("outcome", _OUTCOME, "what is seen, where it is no number"),
    ),
    some_of=("text", "outcome"),
)
WORKED_OUT: Final = Record(
    "value worked out",
    (
        required("quantity", Name("quantity"), "what follows from the readings"),
        _AT,
        required("value", Text(longest=40), "the value with its unit"),
    ),
)
UNAVAILABLE: Final = Record(
    "test that cannot be done",
    (_TEST, required("why", Text(), "what the apprentice is told")),
)
EXPERT_TEST: Final = Record("test of the expert", (_TEST, _AT))
TRUE_FAULT: Final = Record("true fault", (required("fault", Name("fault"), "the fault"), _AT))
TRUTH: Final = Record(
    "truth",
    (
        required("faults", ListOf(TRUE_FAULT, most=6), "in order; empty: nothing is wrong"),
        optional("behind", ListOf(Name("fault"), most=6), "what brought them about"),
        optional("stop", Name("hazard"), "the STOP that must be obeyed"),
        required("repair", Text(longest=800), "what put it right"),
        required("proof", Text(longest=800), "what proved it"),
        optional("proof-readings", ListOf(PROOF_READING, block=True), "numbers after the repair"),
    ),
    block=True,
)

SCENARIO_FILE: Final = Record(
    "scenario",
    (
        FORMAT,
        required("scenario", NewId(), "id; the same as the file's name"),
        required("title", Text(longest=120), "an invented place, the unit, and the trouble"),
        required("subsystem", Name("subsystem"), "the subsystem in which the cause lies"),
        required("difficulty", Number(1, 3, whole=True), "1 plain, 2 takes thought, 3 misleads"),
        optional(
            "season", Choice(SEASONS), "when the call comes; a list tells it, and it is no clue"
        ),
        optional("week", Number(1, WEEKS, whole=True), "the week of the course it belongs to"),
        required("call", Text(), "the caller's own words"),
        required("complaint", Name("complaint"), "the complaint nearest to them"),
        optional("reaching-in", Text(longest=40), "who is about to reach in: the helper"),
        required("unit", Pairs(Name("fact or plate value"), Anything()), "the unit"),
        optional("own-record", Pairs(Name("plate value"), Anything()), "its own usual values"),
        optional("conditions", Pairs(Word(), Anything()), "outdoor temperature, minutes running"),
        required(
            "readings",
            ListOf(SCENARIO_READING, most=60, block=True),
            "what tests read; a test that is not listed reads as on a sound unit",
        ),
        optional("moves", Truth(), "true: something may be done to the unit, and it answers"),
        optional("unavailable", ListOf(UNAVAILABLE, most=20, block=True), "what cannot be done"),
        optional("works-out", ListOf(WORKED_OUT, most=40, block=True), "for the checker"),
        optional(
            "way",
            ListOf(EXPERT_TEST, most=15, block=True),
            "the tests that an old hand takes, in order; without it the engine's own",
        ),
        required("truth", TRUTH, "what was really wrong"),
        required("teaches", Text(), "the one thing to take home"),
        optional(
            "taught-by",
            ListOf(Name("test"), most=6),
            "the tests that the lesson rests on: the expert takes each of them",
        ),
        SOURCE,
    ),
    block=True,
)

_DEED: Final = Record(
    "deed",
    (
        required("deed", NewId(), "its id"),
        required("name", Text(longest=120), "what people would call it"),
        required("makes", Name("fault"), "the fault it makes where none of those below is there"),
        required("hides", ListOf(Name("fault"), most=12), "the faults whose signs it takes away"),
        optional("read-by", Name("test"), "the reading it is done by, whose needs it has"),
        optional("never-lowers", ListOf(Name("test"), most=6), "what it can only bring up"),
        optional("never-raises", ListOf(Name("test"), most=6), "what it can only bring down"),
        required("minutes", Number(1, 600), "working time"),
        required("part-cost", Word(), "grade of cost, as on the cards"),
    ),
    block=True,
)
DEEDS_FILE: Final = Record(
    "deeds by feel",
    (FORMAT, required("deeds", ListOf(_DEED, most=40, block=True), "what is done by feel")),
    block=True,
)
