"""Tests, the outcomes they can have, and the limits that tell outcomes apart."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import InitVar, dataclass, field, replace
from typing import TYPE_CHECKING, Annotated, Literal

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.declaring import written
from troubleshoot.knowledge.model.short_words import ShortWords
from troubleshoot.knowledge.model.words import said_by_its_id

if TYPE_CHECKING:
    from troubleshoot.knowledge.forms.declared import After, Items, Key
    from troubleshoot.knowledge.forms.pieces import (
        LIMIT_LINE,
        ExistsWhen,
        HazardNames,
        Per,
        RuledOutWhen,
        Signed,
        Source,
        TestNames,
        When,
    )
    from troubleshoot.knowledge.shapes import ListOf, Name, NewId, Number, OneOrMore, Pairs, Text
    from troubleshoot.knowledge.vocabulary import (
        Choose,
        Comparison,
        Exposure,
        LegReducer,
        Need,
        Profile,
        TestKind,
        WorkStateName,
    )


@written("bound", some_of=("above", "at-least", "below", "at-most", "between", "reads"))
@dataclass(frozen=True)
class Bound:
    """One comparison of a limit: a quantity, perhaps relative to another value, against numbers."""

    quantity: Annotated[str, Name("quantity"), "what is compared"]
    relative_to: Annotated[
        str | None, Name("reference"), "a nameplate value or another quantity"
    ] = None
    compared_as: Annotated[Comparison, Key("as"), "how it is compared with relative-to"] = "value"
    above: Annotated[float | None, "strictly above"] = None
    at_least: Annotated[float | None, "this or above"] = None
    below: Annotated[float | None, "strictly below"] = None
    at_most: Annotated[float | None, "this or below"] = None
    reads: Annotated[Literal["zero", "open"] | None, "what the meter shows instead of a number"] = (
        None
    )
    when: When = field(default_factory=dict)
    between: InitVar[
        Annotated[
            tuple[float, ...] | None,
            After("at-most"),
            ListOf(Number(), least=2, most=2),
            "from and to, both included",
        ]
    ] = None

    def __post_init__(self, between: tuple[float, ...] | None) -> None:
        if between is not None:
            least, most = between
            for name, number in (("at_least", least), ("at_most", most)):
                if getattr(self, name) is None:
                    object.__setattr__(self, name, number)


@written("bounds together")
@frozen_open
class LimitLine:
    """All bounds of one line must hold; a bound or line whose `when` fails is left out."""

    bounds: Annotated[
        tuple[Bound, ...],
        Key("all"), After("when"), Items(least=1, most=8),
        "bounds that must all hold",
    ]  # fmt: skip
    when: When = field(default_factory=dict)


@written("outcome")
@frozen_open
class Outcome:
    """One outcome of a test.

    `limits`: any one line is enough. `ruled_out_when`: on any other unit a number that reads sound
    says nothing against it, since what it is judged by is not known. `words`: what people type for
    it beside its own words, which are `spoken`: what `words.yaml` says for the id.
    """

    id: Annotated[str, NewId(), "the word a person answers with"]
    means: Annotated[str, "the limit or the look, in words"] = ""
    limits: Annotated[
        tuple[LimitLine, ...],
        After("exists-when"), ListOf(LIMIT_LINE, most=20),
        "any one line is enough",
    ] = ()  # fmt: skip
    exists_when: ExistsWhen = field(default_factory=dict)
    ruled_out_when: RuledOutWhen = field(default_factory=dict)
    words: Annotated[
        tuple[str, ...],
        After("limits"), ListOf(Text(longest=60), most=20),
        "what people type for it as well",
    ] = ()  # fmt: skip
    source: Source = ""
    spoken: str = ""

    def __post_init__(self) -> None:
        said_by_its_id(self)


@written("reading")
@frozen_open
class Read:
    """How typed numbers become a quantity: the unit typed and how several legs reduce to one."""

    quantity: Annotated[str, Name("quantity"), "what the typed number is"]
    legs: Annotated[LegReducer | None, "how several legs become one number"] = None
    unit: Annotated[
        str | None, Name("unit"), "unit as typed, where it is not the quantity's own"
    ] = None


@written("band")
@frozen_open
class Band:
    """The numbers of one outcome, from where the band before it ends."""

    outcome: Annotated[str, Name("own outcome"), "what it is to read a number of this band"]
    below: Annotated[float | None, "the band ends before this number"] = None
    up_to: Annotated[float | None, "the band ends with this number"] = None


@written("bands")
@frozen_open
class Bands:
    """One scale cut into outcomes: each number lies in one band, so that there is no gap."""

    of: Annotated[str, Name("quantity"), "what is compared"]
    from_low_to_high: Annotated[
        tuple[Band, ...],
        After("as"), Items(least=2, most=20),
        "each from where the one before it ends; the last has no end",
    ]  # fmt: skip
    relative_to: Annotated[
        str | None, Name("reference"), "a nameplate value or another quantity"
    ] = None
    compared_as: Annotated[Comparison, Key("as"), "how it is compared with relative-to"] = "value"

    def lines(self) -> dict[str, tuple[LimitLine, ...]]:
        """The limits of each outcome, in the order of its bands."""
        found: dict[str, tuple[LimitLine, ...]] = {}
        above = at_least = None
        for band in self.from_low_to_high:
            bound = Bound(
                self.of, self.relative_to, self.compared_as,
                above=above, at_least=at_least, below=band.below, at_most=band.up_to,
            )  # fmt: skip
            found[band.outcome] = (*found.get(band.outcome, ()), LimitLine((bound,)))
            above, at_least = band.up_to, band.below
        return found


@written("test", block=True)
@dataclass(frozen=True)
class Test:
    """Something a person asks, looks at, measures or does, with the outcomes it can have.

    `area` is the part of the unit that its whole file is about: a subsystem, or a finer part of
    `subsystem`.
    """

    __test__ = False  # not a pytest class

    id: Annotated[str, NewId(), "words joined by hyphens; never changed once in use"]
    name: Annotated[str, Text(longest=120), "what people call it"]
    area: str
    kind: Annotated[TestKind, "what sort of act it is"]
    outcomes: Annotated[
        tuple[Outcome, ...], After("reads"), Items(most=40), "in the order they are offered"
    ]
    per: Per = None
    exists_when: ExistsWhen = field(default_factory=dict)
    how: Annotated[tuple[str, ...], OneOrMore(Text(longest=800), most=6), "one or two steps"] = ()
    instrument: Annotated[str, Text(longest=160), "what is needed, in words"] = ""
    meter: Annotated[str | None, Name("meter"), "kind of meter, for its accuracy"] = None
    who: Annotated[tuple[Profile, ...], "who may do it; all are needed"] = ()
    work_state: Annotated[WorkStateName, "state the unit must be in"] = "any"
    needs_state: Annotated[tuple[Need, ...], "what must be done before"] = ()
    exposes: Annotated[Exposure, "live parts within reach"] = "none"
    hazards: Annotated[HazardNames, "cautions shown before it"] = ()
    after: Annotated[TestNames, "better done after these"] = ()
    invalid_when: Annotated[
        tuple[str, ...], OneOrMore(Text()), "what makes the reading worthless"
    ] = ()
    minutes: Annotated[float, Number(0, 600), "time it takes"] = 1.0
    wait_minutes: Annotated[float, Number(0, 20000), "time to wait for it to settle"] = 0.0
    choose: Annotated[Choose, "one outcome, or every one that is seen"] = "one"
    healthy: Annotated[
        tuple[str, ...], OneOrMore(Name("own outcome"), alone=True), "outcome of a sound unit"
    ] = ()
    severity: Annotated[
        tuple[tuple[str, ...], ...],
        ListOf(ListOf(Name("own outcome"), least=2, most=12), most=6),
        "bad outcomes of one side, mild to severe",
    ] = ()
    background: Annotated[
        Mapping[str, float],
        Pairs(Name("own outcome"), Number(0, 1)),
        "chance of each outcome whatever is wrong, where the usual one does not fit",
    ] = field(default_factory=dict)
    leaves_unburnt: Annotated[
        tuple[str, ...],
        OneOrMore(Name("own outcome")),
        "outcomes with which gas may have come and no sound flame: none, a late one, a lost one",
    ] = ()
    in_trial: Annotated[bool, "true: read while a burner tries, whether or not it lights"] = False
    reads: Annotated[tuple[Read, ...], Items(most=6), "what a typed number means"] = ()
    short_words: Annotated[
        tuple[ShortWords, ...],
        Items(most=8),
        "what its reading is called, read out",
    ] = ()
    signed: Signed = ()
    source: Source = ""
    words: Annotated[
        tuple[str, ...],
        After("exists-when"), OneOrMore(Text(longest=80), most=40),
        "what people call it as well",
    ] = ()  # fmt: skip
    gone: Annotated[
        tuple[str, ...],
        After("words"), OneOrMore(Text(longest=400), most=80),
        "of a safety step: how people say that what it confirmed has gone or never was; words in "
        "this order with little ones between, a/b for either, ... for a few of any kind, a number "
        "for one as high, behind - what lets it go; ? before them where it is only asked about, ?? "
        "where it is asked whatever stands",
    ] = ()  # fmt: skip
    subsystem: str = ""
    bands: InitVar[
        Annotated[Bands | None, After("reads"), "one scale that tells outcomes apart"]
    ] = None

    def __post_init__(self, bands: Bands | None) -> None:
        """Bands become limits of their outcomes, after those that an outcome has of its own."""
        lines = {} if bands is None else bands.lines()
        if lines:
            outcomes = tuple(
                replace(each, limits=(*each.limits, *lines.get(each.id, ())))
                for each in self.outcomes
            )
            object.__setattr__(self, "outcomes", outcomes)

    def __hash__(self) -> int:
        """By its name, so that what is worked out of it is found again at once."""
        return hash(self.id)

    def spoken(self, outcome: str) -> str:
        """One of its outcomes in the words that are shown and typed."""
        own = (each.spoken for each in self.outcomes if each.id == outcome)
        return next(own, "") or outcome

    def spoken_all(self, outcomes: str | None) -> str:
        """The same of a row of an account, which joins several by commas, or has none."""
        return ", ".join(map(self.spoken, (outcomes or "").split(", ")))


@frozen_open
class Finding:
    """A test and the outcomes any one of which counts."""

    test: str
    outcomes: tuple[str, ...]
