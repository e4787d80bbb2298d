"""Pieces that several forms share, and what becomes of those that no class of the model mirrors."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Annotated, Any, Final, Literal, get_args

from troubleshoot.knowledge.building import build
from troubleshoot.knowledge.forms.declared import Items, form_of
from troubleshoot.knowledge.model import (
    Bound,
    Condition,
    Derivation,
    Evidence,
    FactsNeeded,
    Finding,
    LimitLine,
    Signature,
    SoundWay,
)
from troubleshoot.knowledge.shapes import (
    Anything,
    Choice,
    Exactly,
    Facts,
    Field,
    Findings,
    Later,
    ListOf,
    Member,
    Name,
    NewId,
    Number,
    OneOrMore,
    Pairs,
    Record,
    Shape,
    Tagged,
    Text,
    Truth,
    Word,
    optional,
    required,
)
from troubleshoot.knowledge.vocabulary import GRADES, Grade, PlaceKind, Profile

FORMAT_VERSION: Final = 1

FORMAT: Final = required("format", Exactly(FORMAT_VERSION), "version of the form; always 1")
_SOURCES: Final = OneOrMore(Name("source"), alone=True)
SOURCE: Final = optional("source", _SOURCES, "where the figures come from")
SOURCE_OF_FILE: Final = optional("source", _SOURCES, "of every entry here that names none")


def joined(sources: list[str]) -> str:
    return "; ".join(sources)


Id = Annotated[str, NewId(), "words joined by hyphens; never changed once in use"]
UnitName = Annotated[str, Name("unit"), "one of the units the program knows"]
Source = Annotated[str, _SOURCES, joined, "where the figures come from"]
TestNames = Annotated[tuple[str, ...], OneOrMore(Name("test"))]
FaultNames = Annotated[tuple[str, ...], OneOrMore(Name("fault"))]
HazardNames = Annotated[tuple[str, ...], OneOrMore(Name("hazard"))]
Per = Annotated[PlaceKind | None, "kind of place; leave out for the whole unit"]
When = Annotated[FactsNeeded, "only on units of this kind"]
ExistsWhen = Annotated[FactsNeeded, "the kind of unit that has this at all"]
RuledOutWhen = Annotated[FactsNeeded, "what must hold for a sound number to speak against it"]
Signed = Annotated[
    tuple[Signature, ...], Items(most=60), "cautions that were taken away on purpose"
]
Conditions = Annotated[
    Mapping[str, object], Pairs(Word(), Anything()), "outdoor temperature, minutes running"
]


SIGNED: Final = optional(
    "signed",
    ListOf(form_of(Signature), most=60),
    "cautions that were taken away on purpose",
)
BOUND: Final = form_of(Bound)
Where = Annotated[
    tuple[Bound, ...], OneOrMore(BOUND, most=6, alone=True), "only where these numbers hold"
]


def _line_of_one(when: FactsNeeded | None = None, **bound: Any) -> LimitLine:
    """A line of one bound keeps its `when` on the line, where it decides the whole line."""
    return LimitLine((Bound(**bound),), when or {})


LIMIT_LINE: Final = Tagged(
    "limit", (("all", form_of(LimitLine)),), otherwise=replace(BOUND, makes=_line_of_one)
)

_ANY_OF: Final = ListOf(Findings(), least=2, most=4)
_STATEMENT: Final = Tagged(
    "finding",
    (
        (
            "any-of",
            Record(
                "any-of",
                (required("any-of", _ANY_OF, "findings, at least one is seen"),),
                block=True,
            ),
        ),
    ),
    Findings(),
)
_HOW_OFTEN: Final = (
    "in nine cases of ten or more",
    "in more than half of the cases",
    "in a fifth to three fifths of the cases",
    "in one case of five or fewer",
    "contradicts the fault",
)


def _by_grade(name: str, item: Shape) -> Record:
    """A mapping from the five words to what each is said of."""
    words = zip(GRADES, _HOW_OFTEN, strict=True)
    return Record(name, tuple(optional(grade, item, meaning) for grade, meaning in words))


EVIDENCE: Final = _by_grade("evidence", ListOf(_STATEMENT, block=True))
CALLS: Final = _by_grade("calls", OneOrMore(Name("complaint"), most=100))
BROUGHT_BY: Final = _by_grade("brought-by", OneOrMore(Name("fault"), most=400))


def by_name(data: Mapping[Grade, list[str]]) -> Mapping[str, Grade]:
    return {name: grade for grade, names in data.items() for name in names}


def graded(data: Mapping[Grade, Any]) -> tuple[Evidence, ...]:
    """Evidence in the order of the card: grade by grade as written."""
    return tuple(Evidence(grade, _any_of(item)) for grade, items in data.items() for item in items)


def _any_of(item: Any) -> tuple[Finding, ...]:
    return build(_ANY_OF, item["any-of"]) if "any-of" in item else (build(Findings(), item),)


Graded = Annotated[tuple[Evidence, ...], EVIDENCE, graded]


def share_of_percent(text: str) -> float:
    """The share that is written as 60 %."""
    return int(text.removesuffix("%")) / 100


def is_effect(word: str) -> bool:
    return word == "effect"


WHO: Final = Tagged(
    "who",
    tuple(
        (
            key,
            Record("who", (required(key, ListOf(Choice(get_args(Profile)), least=1), meaning),)),
        )
        for key, meaning in (("all", "all of these are needed"), ("any", "one of these will do"))
    ),
)


def names_of_who(data: Mapping[str, list[Profile]]) -> tuple[Profile, ...]:
    return tuple(*data.values())


def rule_of_who(data: Mapping[Literal["all", "any"], Any]) -> Literal["all", "any"]:
    return next(iter(data))


def _way(name: str, number: Callable[..., Derivation], *own: Field) -> Record:
    """A way to say what a sound unit reads: the keys of its number, then those of every way."""
    held, keys = form_of(SoundWay), tuple(field.key for field in own)

    def make(**said: Any) -> SoundWay:
        of_number = {key: said.pop(key) for key in keys if key in said}
        return SoundWay(number(of_number), **said)

    members = tuple(Member(field.key, (field.key,), field.shape) for field in own)
    return Record(name, (*own, *held.fields), makes=make, members=(*members, *held.members))


_FORMULA: Final = form_of(Derivation).fields
_SCALED: Final = tuple(field for field in _FORMULA if field.key in ("times", "plus"))
_OF: Final = required(
    "of", Name("reference"), "the value it is reckoned from: known, or itself sound"
)
_IS: Final = required("is", Number(), "a plain number")
WAY: Final = Tagged(
    "way",
    (
        ("is", _way("plain number", lambda said: Derivation("sum", (), plus=said["is"]), _IS)),
        (
            "of",
            _way(
                "number reckoned from another",
                lambda said: Derivation("sum", (said.pop("of"),), **said),
                _OF,
                *_SCALED,
            ),
        ),
        ("formula", _way("number by a formula", lambda said: Derivation(**said), *_FORMULA)),
    ),
    otherwise=form_of(SoundWay),
)
"""A number from nothing (`is`), from another (`of`, a sum of one) or by a formula, or words."""


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
CONDITION: Final[Shape] = Tagged(
    "condition",
    tuple(
        (key, Record("condition", (required(key, shape, meaning),)))
        for key, shape, meaning in _ROOTS
    ),
)


def condition_of(data: Any) -> Condition:
    """A condition tree from a mapping with exactly one key.

    A fact leaf with several facts means all of them, so it becomes `all` of single leaves.
    """
    ((op, value),) = data.items()
    if op in ("all", "any"):
        return Condition(op, parts=tuple(condition_of(part) for part in value))
    if op == "at-least":
        parts = tuple(condition_of(part) for part in value["of"])
        return Condition(op, parts=parts, count=value["count"])
    if op == "not":
        return Condition(op, parts=(condition_of(value),))
    if op == "finding":
        return Condition(op, finding=build(Findings(), value))
    if op == "fact":
        leaves = tuple(
            Condition(op, name=name, words=tuple(words)) for name, words in value.items()
        )
        return leaves[0] if len(leaves) == 1 else Condition("all", parts=leaves)
    return Condition(op, name=value)
