"""The forms of what a sound unit reads, of relations between readings, and of typical units."""

from __future__ import annotations

from typing import Final

from troubleshoot.knowledge.forms import vocabulary as words
from troubleshoot.knowledge.forms.shared import (
    BOUND,
    FORMAT,
    LIMIT_LINE,
    SOURCE_SHAPE,
    WHEN,
    entries_file,
)
from troubleshoot.knowledge.shapes import (
    Anything,
    Choice,
    Facts,
    ListOf,
    Name,
    NewId,
    Number,
    OneOrMore,
    Pairs,
    Record,
    Tagged,
    Text,
    optional,
    required,
)

_WHERE: Final = optional(
    "where", OneOrMore(BOUND, most=6, alone=True), "only where these numbers hold"
)
_SHOWN: Final = Text(longest=40)
_HELD: Final = (
    optional("at-least", Number(), "never less than this"),
    optional("at-most", Number(), "never more than this"),
    optional("shown", _SHOWN, "as the meter shows it, where that is no plain number"),
    optional("wrong", ListOf(_SHOWN, most=12), "what it shows where something is wrong"),
    WHEN,
    _WHERE,
)
_SCALED: Final = (
    optional("times", Number(), "by which that is multiplied"),
    optional("plus", Number(), "what is added after that"),
)
_PLAIN: Final = Record("plain number", (required("is", Number(), "a plain number"), *_HELD))
_RECKONED: Final = Record(
    "number reckoned from another",
    (
        required("of", Name("reference"), "the value it is reckoned from: known, or itself sound"),
        *_SCALED,
        *_HELD,
    ),
)
_COMPUTED: Final = Record(
    "number by a formula",
    (
        required("formula", Choice(words.FORMULAS), "the formula's name"),
        required("inputs", OneOrMore(Name("input"), most=6), "what the formula takes"),
        *_SCALED,
        *_HELD,
    ),
)
_WORDLESS: Final = Record("way", _HELD, some_of=("shown",))
_WAY: Final = Tagged(
    "way", (("is", _PLAIN), ("of", _RECKONED), ("formula", _COMPUTED)), otherwise=_WORDLESS
)
_SOUND: Final = Record(
    "sound reading",
    (
        required("id", Name("reference"), "the quantity, or a plate value that may be silent"),
        optional(
            "reads",
            OneOrMore(_WAY, most=8, alone=True),
            "ways to say it; the first that serves counts",
        ),
        optional("three-legs", Facts(), "the kind of unit on which three legs are read"),
        optional("follows", Name("quantity"), "what is read off, where this has to come out at"),
        optional("none-because", Text(), "why no sound number can be said"),
    ),
    some_of=("reads", "follows", "none-because"),
)
_DAY: Final = Record(
    "day",
    (
        optional("subsystems", OneOrMore(Name("subsystem")), "whose faults; left out: all others"),
        required(
            "conditions",
            Pairs(Name("quantity"), ListOf(Number(whole=True), least=2, most=2), least=1),
            "from and to, in the quantity's own unit",
        ),
    ),
)
SOUND_UNIT_FILE: Final = Record(
    "sound unit",
    (
        FORMAT,
        required("source", SOURCE_SHAPE, "where the figures come from"),
        optional("settled-first", OneOrMore(Name("quantity")), "what the others follow from"),
        optional("days", ListOf(_DAY, least=1, most=20), "the weather of a call"),
        required("sound", ListOf(_SOUND, most=400), "what each quantity reads"),
    ),
)

_RELATION: Final = Record(
    "relation",
    (
        required("id", NewId(), "words joined by hyphens"),
        required(
            "must",
            OneOrMore(LIMIT_LINE, most=6, alone=True),
            "what always holds; one line is enough",
        ),
        _WHERE,
        required("says", Text(longest=200), "the sentence for readings that break it"),
        required("source", SOURCE_SHAPE, "where the figure comes from"),
    ),
    block=True,
)
RELATIONS_FILE: Final = entries_file(
    "relations", "relations", _RELATION, "what always holds between readings"
)

UNIT_FILE: Final = Record(
    "typical unit",
    (
        FORMAT,
        required("unit", NewId(), "id; the same as the file's name"),
        required("about", Text(longest=120), "what kind of unit this is"),
        required("serves", Choice(("practice", "measuring")), "what it is there for"),
        required("facts", Pairs(Name("fact"), Anything(), least=1), "its equipment facts"),
        optional("plate", Pairs(Name("plate value"), Anything()), "its nameplate"),
        optional("own-record", Pairs(Name("plate value"), Anything()), "its own usual values"),
    ),
    block=True,
)
