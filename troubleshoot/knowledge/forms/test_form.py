"""The form of rules/tests/<area>.yaml."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.forms import vocabulary as words
from troubleshoot.knowledge.forms.shared import (
    EXISTS_WHEN,
    FORMAT,
    HOW_TEXT,
    LIMIT_LINE,
    SIGNED,
    SOURCE,
)
from troubleshoot.knowledge.shapes import (
    Choice,
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

_OUTCOME: Final = Record(
    "outcome",
    (
        required("id", NewId(), "the word a person answers with"),
        optional("means", Text(), "the limit or the look, in words"),
        EXISTS_WHEN,
        optional("limits", ListOf(LIMIT_LINE, most=20), "any one line is enough"),
        optional("words", ListOf(Text(longest=60), most=20), "what people type for it as well"),
        SOURCE,
    ),
)
_READ: Final = Record(
    "reading",
    (
        required("quantity", Name("quantity"), "what the typed number is"),
        optional("legs", Choice(words.LEG_REDUCERS), "how several legs become one number"),
        optional("unit", Name("unit"), "unit as typed, where it is not the quantity's own"),
    ),
)
_TEST: Final = Record(
    "test",
    (
        required("id", NewId(), "words joined by hyphens; never changed once in use"),
        required("name", Text(longest=120), "what people call it"),
        required("kind", Choice(words.TEST_KINDS), "what sort of act it is"),
        optional("per", Choice(words.PLACE_KINDS), "kind of place; leave out for the whole unit"),
        EXISTS_WHEN,
        optional("how", OneOrMore(HOW_TEXT, most=6), "one or two steps"),
        optional("instrument", Text(longest=160), "what is needed, in words"),
        optional("meter", Name("meter"), "kind of meter, for its accuracy"),
        optional("who", OneOrMore(Choice(words.PROFILES)), "who may do it; all are needed"),
        optional("work-state", Choice(words.WORK_STATES), "state the unit must be in"),
        optional("needs-state", OneOrMore(Choice(words.NEEDS)), "what must be done before"),
        optional("exposes", Choice(words.EXPOSURES), "live parts within reach"),
        optional("hazards", OneOrMore(Name("hazard")), "cautions shown before it"),
        optional("after", OneOrMore(Name("test")), "better done after these"),
        optional("invalid-when", OneOrMore(Text()), "what makes the reading worthless"),
        optional("minutes", Number(0, 600), "time it takes"),
        optional("wait-minutes", Number(0, 20000), "time to wait for it to settle"),
        optional("choose", Choice(words.CHOOSE), "one outcome, or every one that is seen"),
        optional("healthy", OneOrMore(Name("own outcome"), alone=True), "outcome of a sound unit"),
        optional(
            "severity",
            ListOf(ListOf(Name("own outcome"), least=2, most=12), most=6),
            "bad outcomes of one side, mild to severe",
        ),
        optional(
            "background",
            Pairs(Name("own outcome"), Number(0, 1)),
            "chance of each outcome whatever is wrong, where the usual one does not fit",
        ),
        optional("reads", ListOf(_READ, most=6), "what a typed number means"),
        required("outcomes", ListOf(_OUTCOME, most=40), "in the order they are offered"),
        SIGNED,
        SOURCE,
    ),
    block=True,
)

TESTS_FILE: Final = Record(
    "tests",
    (
        FORMAT,
        required("area", Word(), "part of the unit these tests are about"),
        required("tests", ListOf(_TEST, most=300, apart=True), "the tests"),
    ),
)
