"""Pieces that several forms share: sources, bounds, grades, evidence."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.forms.vocabulary import COMPARISONS, GRADES
from troubleshoot.knowledge.shapes import (
    Choice,
    Exactly,
    Facts,
    Findings,
    ListOf,
    Name,
    Number,
    OneOrMore,
    Record,
    Shape,
    Tagged,
    Text,
    Word,
    optional,
    required,
)

FORMAT_VERSION: Final = 1

FORMAT: Final = required("format", Exactly(FORMAT_VERSION), "version of the form; always 1")
SOURCE_SHAPE: Final = OneOrMore(Name("source"), alone=True)
SOURCE: Final = optional("source", SOURCE_SHAPE, "where the figures come from")
WHEN: Final = optional("when", Facts(), "only on units of this kind")
SIGNED: Final = optional(
    "signed",
    ListOf(
        Record(
            "signature",
            (
                required("drops", OneOrMore(Word(), alone=True), "what a person no longer sees"),
                required("by", Text(longest=60), "who answers for it: a role, or initials"),
                required("on", Text(longest=10), "the day, as 2026-11-29"),
                required("why", Text(), "the reason, in several words"),
            ),
        ),
        most=60,
    ),
    "cautions that were taken away on purpose",
)
EXISTS_WHEN: Final = optional("exists-when", Facts(), "the kind of unit that has this at all")


def entries_file(name: str, key: str, entry: Shape, meaning: str) -> Record:
    """A file that holds the format and one list of entries."""
    apart = isinstance(entry, Record) and entry.block
    return Record(name, (FORMAT, required(key, ListOf(entry, most=2000, apart=apart), meaning)))


_BOUND_FIELDS: Final = (
    required("quantity", Name("quantity"), "what is compared"),
    optional("relative-to", Name("reference"), "a nameplate value or another quantity"),
    optional("as", Choice(COMPARISONS), "how it is compared with relative-to"),
    optional("above", Number(), "strictly above"),
    optional("at-least", Number(), "this or above"),
    optional("below", Number(), "strictly below"),
    optional("at-most", Number(), "this or below"),
    optional("between", ListOf(Number(), least=2, most=2), "from and to, both included"),
    optional("reads", Choice(("zero", "open")), "what the meter shows instead of a number"),
    WHEN,
)
_BOUND_WORDS: Final = ("above", "at-least", "below", "at-most", "between", "reads")

BOUND: Final = Record("bound", _BOUND_FIELDS, some_of=_BOUND_WORDS)
BOUNDS_TOGETHER: Final = Record(
    "bounds together",
    (WHEN, required("all", ListOf(BOUND, least=1, most=8), "bounds that must all hold")),
)
LIMIT_LINE: Final = Tagged("limit", (("all", BOUNDS_TOGETHER),), otherwise=BOUND)

ANY_OF: Final = Record(
    "any-of",
    (required("any-of", ListOf(Findings(), least=2, most=4), "findings, at least one is seen"),),
    block=True,
)
_STATEMENTS: Final = ListOf(Tagged("finding", (("any-of", ANY_OF),), Findings()), block=True)
EVIDENCE: Final = Record(
    "evidence",
    tuple(
        optional(grade, _STATEMENTS, meaning)
        for grade, meaning in zip(
            GRADES,
            (
                "in nine cases of ten or more",
                "in more than half of the cases",
                "in a fifth to three fifths of the cases",
                "in one case of five or fewer",
                "contradicts the fault",
            ),
            strict=True,
        )
    ),
)
GIVEN: Final = Record(
    "given",
    (
        required("finding", Findings(), "how often this shows"),
        required("given", ListOf(Findings(), least=1, most=6), "when all of these were seen"),
        required("grade", Choice(GRADES), "how often"),
    ),
)
HOW_TEXT: Final = Text(longest=800)
