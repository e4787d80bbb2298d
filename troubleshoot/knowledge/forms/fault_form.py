"""The form of a fault card, rules/faults/<subsystem>/<fault>.yaml."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.forms import vocabulary as words
from troubleshoot.knowledge.forms.shared import EVIDENCE, EXISTS_WHEN, FORMAT, GIVEN, SOURCE, WHEN
from troubleshoot.knowledge.shapes import (
    Anything,
    Choice,
    Findings,
    ListOf,
    Name,
    NewId,
    Number,
    OneOrMore,
    Pairs,
    Record,
    Tagged,
    Text,
    Truth,
    Word,
    optional,
    required,
)

_GIVENS: Final = ListOf(GIVEN, most=40)
_OVERRIDE: Final = Record(
    "override",
    (
        required("when", WHEN.shape, "the kind of unit on which the grades differ"),
        optional("evidence", EVIDENCE, "grades that replace the card's"),
        optional("given", _GIVENS, "readings that together mean another thing"),
    ),
    some_of=("evidence", "given"),
    block=True,
)
_PICTURE: Final = Record(
    "picture",
    (
        required("name", Text(longest=60), "mild, severe, ..."),
        WHEN,
        optional("evidence", EVIDENCE, "grades that replace the card's"),
        optional("given", _GIVENS, "readings that together mean another thing"),
    ),
    some_of=("evidence", "given"),
    block=True,
)
_WHO: Final = Tagged(
    "who",
    tuple(
        (key, Record("who", (required(key, ListOf(Choice(words.PROFILES), least=1), meaning),)))
        for key, meaning in (("all", "all of these are needed"), ("any", "one of these will do"))
    ),
)
_REPAIR: Final = Record(
    "repair",
    (
        required("what", Text(longest=800), "what is done"),
        required("minutes", Number(0, 10000), "working time"),
        required("part-cost", Choice(words.PART_COSTS), "grade of cost, dollars"),
        required("who", _WHO, "who may do it"),
        optional("hand-over", Truth(), "true: stop, tag out and hand over"),
    ),
)
_PROOF: Final = Record(
    "proof",
    (
        required("text", Text(), "the reading that must be right after the repair"),
        optional("finding", Findings(), "the same as a finding"),
    ),
)
READING: Final = Record(
    "reading taken",
    (
        required("test", Name("test"), "the test"),
        optional("at", Text(longest=60), "the place, where there are several"),
        optional("outcome", OneOrMore(Name("outcome of test"), alone=True), "what was seen"),
        optional("text", Anything(), "what was typed"),
        optional("valid", Truth(), "false: the reading must not count"),
        optional("instrument", Text(longest=120), "the meter used"),
        optional("conditions", Pairs(Word(), Anything()), "outdoor temperature, minutes running"),
    ),
)
_EXAMPLE: Final = Record(
    "example",
    (
        required("name", Text(longest=160), "the example in a few words"),
        required("names-it", Truth(), "true: this fault must come first; false: it must not"),
        optional("complaint", Name("complaint"), "what the caller said"),
        optional("unit", Pairs(Name("fact or plate value"), Anything()), "the unit"),
        optional("conditions", Pairs(Word(), Anything()), "outdoor temperature, minutes running"),
        required("readings", ListOf(READING, most=60), "in the order they were taken"),
    ),
    block=True,
)

FAULT_FILE: Final = Record(
    "fault card",
    (
        FORMAT,
        required("fault", NewId(), "id; the same as the file's name"),
        required("name", Text(longest=120), "what people call it"),
        required("subsystem", Word(), "the same as the folder's name"),
        required("is", Choice(("cause", "effect")), "effects stand outside the ranking"),
        required("how-common", Choice(words.HOW_COMMON), "on a big fleet, over the years"),
        optional("per", Choice(words.PLACE_KINDS), "kind of place; leave out for the whole unit"),
        EXISTS_WHEN,
        required("evidence", EVIDENCE, "how often each finding shows when the fault is there"),
        optional("given", _GIVENS, "readings that together mean another thing"),
        optional("overrides", ListOf(_OVERRIDE, most=12), "what equipment facts change"),
        optional("pictures", ListOf(_PICTURE, most=12), "ways in which the fault shows"),
        optional("if-left", Text(), "what happens if nobody mends it"),
        optional("why", Text(), "why it failed"),
        optional("behind", OneOrMore(Name("fault")), "faults that can be the first cause"),
        required("repair", _REPAIR, "what mends it"),
        optional("proof", ListOf(_PROOF, most=12), "readings that must be right afterwards"),
        optional("look-alikes", OneOrMore(Name("fault")), "faults it is mistaken for"),
        SOURCE,
        optional(
            "status",
            Choice(("draft", "reviewed")),
            "reviewed: gone over as a mechanic would; its examples must hold",
        ),
        optional("examples", ListOf(_EXAMPLE, most=30), "one that names it, one that does not"),
    ),
)
