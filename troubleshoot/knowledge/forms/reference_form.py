"""The forms of the files that rules lean on: quantities, equipment, limits, sources and more."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.forms import vocabulary as words
from troubleshoot.knowledge.forms.shared import BOUND, FORMAT, SIGNED, SOURCE, entries_file
from troubleshoot.knowledge.shapes import (
    Choice,
    Facts,
    Findings,
    ListOf,
    Name,
    NewId,
    Number,
    OneOrMore,
    Pairs,
    Record,
    Text,
    Word,
    optional,
    required,
)

_ID: Final = required("id", NewId(), "words joined by hyphens; never changed once in use")
_UNIT: Final = required("unit", Name("unit"), "one of the units the program knows")
_PER: Final = optional("per", Choice(words.PLACE_KINDS), "kind of place, if there may be several")
_TESTS: Final = OneOrMore(Name("test"))
_FAULTS: Final = OneOrMore(Name("fault"), most=100)

_DERIVATION: Final = Record(
    "derivation",
    (
        required("formula", Choice(words.FORMULAS), "the formula's name"),
        required("inputs", OneOrMore(Name("input"), most=6), "quantities, facts or plate values"),
        optional("times", Number(), "by which that is multiplied"),
        optional("plus", Number(), "what is added after that"),
    ),
)
_QUANTITY: Final = Record(
    "quantity",
    (
        _ID,
        _UNIT,
        optional(
            "can-be",
            ListOf(Number(), least=2, most=2),
            "the lowest and the highest that it can be at all, in its unit; wide",
        ),
        _PER,
        required("meaning", Text(), "what is measured, and how it is counted"),
        optional("computed", ListOf(_DERIVATION, most=6), "ways to compute it, the best first"),
    ),
)
QUANTITIES_FILE: Final = entries_file("quantities", "quantities", _QUANTITY, "the quantities")

_FACT: Final = Record(
    "fact",
    (
        _ID,
        required("values", ListOf(Word(), least=2, most=40), "the words it can have"),
        optional("counts", Choice(words.PLACE_KINDS), "the kind of place it counts"),
        required("asks", Text(longest=200), "the question that settles it"),
        optional(
            "words",
            Pairs(Word(), ListOf(Text(longest=40), most=20)),
            "what people say for a value as well",
        ),
    ),
)
_PLATE_VALUE: Final = Record(
    "nameplate value",
    (
        _ID,
        _UNIT,
        _PER,
        required("from", Choice(("nameplate", "own-record")), "the plate, or this unit's record"),
        required("meaning", Text(), "what it is"),
    ),
)
_IMPLICATION: Final = Record(
    "implication",
    (
        required("when", Facts(), "facts that hold"),
        required("then", Pairs(Name("fact"), Word(), least=1), "facts that follow"),
    ),
)
EQUIPMENT_FILE: Final = Record(
    "equipment",
    (
        FORMAT,
        optional("facts", ListOf(_FACT), "facts asked or read once"),
        optional("nameplate", ListOf(_PLATE_VALUE), "values that limits lean on"),
        optional("implies", ListOf(_IMPLICATION), "facts that follow from others"),
    ),
)

_NAMED_LIMIT: Final = Record(
    "limit",
    (
        _ID,
        required("applies-to", Text(), "what it is a limit for"),
        required("bounds", ListOf(BOUND, least=1, most=8), "when all hold, the state holds"),
        required("source", SOURCE.shape, "where the figure comes from"),
    ),
    block=True,
)
LIMITS_FILE: Final = entries_file("limits", "limits", _NAMED_LIMIT, "conditions of many rules")

_COMPLAINT: Final = Record(
    "complaint",
    (
        _ID,
        required("says", Text(longest=200), "the caller's own words"),
        optional("words", OneOrMore(Text(longest=80)), "phrases to know it by"),
        optional("looks", Text(), "looks that cost almost nothing"),
        optional("first-tests", _TESTS, "tests worth taking first"),
        optional("pointless-tests", _TESTS, "tests that mean nothing on such a call"),
        optional("faults", _FAULTS, "the likeliest first"),
        optional("also", _FAULTS, "faults that now and then bring it"),
        optional("impossible-for", _FAULTS, "faults that cannot cause it"),
        optional("unlisted", Choice(words.GRADES), "how often another fault brings it; else never"),
        optional("hazards-first", OneOrMore(Name("hazard")), "cautions before any question"),
        optional("all-clear", Name("test"), "the test that lets a stopped visit go on"),
        SOURCE,
    ),
    block=True,
)
COMPLAINTS_FILE: Final = entries_file("complaints", "complaints", _COMPLAINT, "the complaints")

_POINT: Final = Record(
    "round point",
    (
        _ID,
        required("number", Number(1, 1000, whole=True), "place in the round"),
        required("point", Text(), "what is looked at"),
        required("season", OneOrMore(Choice(("spring", "fall"))), "when"),
        optional("tests", _TESTS, "tests that settle it"),
        optional("how-often", Text(longest=120), "how often"),
        optional("limit", Text(), "limit in words"),
        optional("trend", Text(), "the change over the years that matters"),
        SOURCE,
    ),
    block=True,
)
_ALARM: Final = Record(
    "drift alarm",
    (
        _ID,
        required("quantity", Name("quantity"), "what drifts"),
        required("text", Text(), "what to say"),
        optional("change", Number(), "change against this unit's record that counts"),
        optional("unit", Name("unit"), "unit of the change"),
        SOURCE,
    ),
)
ROUND_FILE: Final = Record(
    "round",
    (
        FORMAT,
        optional("points", ListOf(_POINT, apart=True), "the points of the round, in order"),
        optional("drift-alarms", ListOf(_ALARM), "changes that deserve a look"),
    ),
)

_SOURCE: Final = Record(
    "source",
    (
        _ID,
        required("published", Text(), "the published text"),
        optional("used-for", Text(), "the figures taken from it"),
    ),
)
SOURCES_FILE: Final = entries_file("sources", "sources", _SOURCE, "published texts")

_ALIAS: Final = Record(
    "alias",
    (
        required("from", Pairs(Word(), Word(), least=1, most=1), "old test and outcome"),
        required("to", Findings(), "the test and outcome that serve now"),
    ),
)
RETIRED_FILE: Final = Record(
    "retired",
    (
        FORMAT,
        optional("retired", ListOf(Word(), most=2000), "ids never to be used again"),
        optional("aliases", ListOf(_ALIAS, most=2000), "old findings that stay readable"),
        SIGNED,
    ),
)

PACK_FILE: Final = Record(
    "pack",
    (
        FORMAT,
        required("name", Text(longest=80), "whose rules these are"),
        optional("about", Text(), "what they add"),
    ),
)
