"""The forms of when / then rules and of hazards."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.forms import vocabulary as words
from troubleshoot.knowledge.forms.shared import SIGNED, SOURCE, entries_file
from troubleshoot.knowledge.shapes import (
    Choice,
    Facts,
    Findings,
    Later,
    ListOf,
    Name,
    NewId,
    Number,
    OneOrMore,
    Record,
    Shape,
    Tagged,
    Text,
    Truth,
    optional,
    required,
)


def _condition() -> Shape:
    return CONDITION


_PART: Final = Later("condition", _condition)
_PARTS: Final = ListOf(_PART, least=1, most=30)
_AT_LEAST: Final = Record(
    "at-least",
    (
        required("count", Number(1, 30, whole=True), "how many must hold"),
        required("of", _PARTS, "the parts"),
    ),
)
_ROOTS: Final[tuple[tuple[str, Shape, str], ...]] = (
    ("all", _PARTS, "every part holds"),
    ("any", _PARTS, "at least one part holds"),
    ("at-least", _AT_LEAST, "so many parts hold"),
    ("not", _PART, "the part was answered and does not hold"),
    ("finding", Findings(), "a test read this"),
    ("fact", Facts(), "the unit is of this kind"),
    ("state", Name("state"), "a named condition of limits.yaml holds"),
    ("derived", Name("derived finding"), "another rule concluded this"),
)
CONDITION: Final = Tagged(
    "condition",
    tuple(
        (key, Record("condition", (required(key, shape, meaning),)))
        for key, shape, meaning in _ROOTS
    ),
)
_VOID: Final = Record(
    "void",
    (
        required("tests", OneOrMore(Name("test"), most=100), "their readings weigh nothing"),
        optional("for-faults", OneOrMore(Name("fault"), most=100), "only for these faults"),
        optional("for-subsystems", OneOrMore(Name("subsystem")), "only for faults of these"),
    ),
)
_EFFECTS: Final = (
    optional("derives", NewId(), "a finding this rule concludes"),
    optional("void", _VOID, "readings that count for nothing while the rule holds"),
    optional("look-first", OneOrMore(Name("test")), "tests to take before others"),
    optional("save-before-power-cut", OneOrMore(Name("test")), "read before power is cut"),
)
_PROCEDURE: Final = Record(
    "procedure",
    (
        required("id", NewId(), "words joined by hyphens; never changed once in use"),
        required("when", CONDITION, "the condition, with exactly one root"),
        required(
            "then",
            Record("then", _EFFECTS, some_of=tuple(field.key for field in _EFFECTS)),
            "what follows",
        ),
        required("reason", Text(), "one sentence shown to people"),
        SOURCE,
    ),
    block=True,
)
PROCEDURES_FILE: Final = entries_file("procedures", "procedures", _PROCEDURE, "the rules")

_TRIGGER_FIELDS: Final = (
    optional("findings", Findings(most=8), "all of these were seen, or may have been"),
    optional("complaint", Name("complaint"), "the caller said this"),
    optional("fault", Name("fault"), "this fault is likely"),
    optional("test", Name("test"), "this test is about to be done"),
    optional("work-state", Choice(words.WORK_STATES), "a test is done in this state"),
    optional("exposes", Choice(words.EXPOSURES), "a test exposes these parts"),
    optional("profile", Choice(words.PROFILES), "the person is one of these"),
    optional("equipment", Facts(), "the unit is of this kind"),
)
_AS_TAKEN: Final = optional(
    "as-taken", Truth(), "true: what readings were taken for, not what they may have been"
)
_BAN_FIELDS: Final = (
    optional("areas", OneOrMore(Name("area"), most=40), "tests of these areas"),
    optional("work-states", OneOrMore(Choice(words.WORK_STATES)), "tests in these states"),
    optional("places", OneOrMore(Choice(words.PLACE_KINDS)), "tests at places of these kinds"),
    optional("tests", OneOrMore(Name("test"), most=40), "these tests"),
)
_BAN: Final = Record(
    "ban",
    (
        *_BAN_FIELDS,
        optional("at", Choice(("unit", "circuit")), "circuit: only where the hazard stands"),
        optional("until", Findings(most=8), "ends when all of these were read"),
    ),
    some_of=tuple(field.key for field in _BAN_FIELDS),
)
_HAZARD: Final = Record(
    "hazard",
    (
        required("id", NewId(), "words joined by hyphens; never changed once in use"),
        required("signal", Choice(words.SIGNALS), "signal word, ANSI Z535"),
        optional(
            "when",
            ListOf(
                Record(
                    "trigger",
                    (*_TRIGGER_FIELDS, _AS_TAKEN),
                    some_of=tuple(field.key for field in _TRIGGER_FIELDS),
                ),
                most=40,
            ),
            "any one; inside one, all that is stated",
        ),
        required("what-to-do", Text(longest=1200), "the caution itself"),
        optional(
            "stop",
            Record(
                "stop",
                (
                    required("scope", Choice(words.STOP_SCOPES), "how much stops"),
                    required("covers", Text(), "what stops, and until when"),
                ),
            ),
            "leave out where nothing stops",
        ),
        optional("defer-to", Text(longest=200), "who decides or takes over"),
        optional("words", OneOrMore(Text(longest=60), most=60), "what people say who meet it"),
        optional(
            "cleared-by",
            OneOrMore(Choice(words.CLEARING_ROLES)),
            "who may make it safe, and take the tag off",
        ),
        optional("all-clear", Name("test"), "the test that shows it has gone, where none found it"),
        optional("tag", Text(longest=200), "the sentence for the tag: what the danger is"),
        SIGNED,
        optional("forbids", ListOf(_BAN, most=12), "tests not to be done while it stands"),
        SOURCE,
    ),
    block=True,
)
HAZARDS_FILE: Final = entries_file("hazards", "hazards", _HAZARD, "the hazards")
