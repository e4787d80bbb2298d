"""What rules lean on: complaints, equipment, quantities, named limits, the round."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import TYPE_CHECKING, Annotated, Literal

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.declaring import written
from troubleshoot.knowledge.model.tests import Bound, Finding
from troubleshoot.knowledge.model.words import FactsNeeded, said_by_its_id

if TYPE_CHECKING:
    from troubleshoot.knowledge.forms.declared import After, Items, Key
    from troubleshoot.knowledge.forms.pieces import (
        BROUGHT_BY,
        ExistsWhen,
        FaultNames,
        HazardNames,
        Id,
        Source,
        TestNames,
        UnitName,
        by_name,
    )
    from troubleshoot.knowledge.shapes import (
        Findings,
        ListOf,
        Name,
        Number,
        OneOrMore,
        Pairs,
        Text,
        Word,
    )
    from troubleshoot.knowledge.vocabulary import Call, FormulaName, Grade, PlaceKind


@written("subsystem", block=True)
@frozen_open
class Subsystem:
    """A part of the unit, or of the work on it: faults lie in it, tests and bans name it.

    `areas`: a finer division for tests. Whatever speaks of the subsystem speaks of them too.
    """

    id: Id
    about: Annotated[str, Text(longest=200), "what belongs to it, in a few words"]
    areas: Annotated[tuple[str, ...], OneOrMore(Word(), most=20), "parts that tests may name"] = ()


@written("said along", some_of=("seldom-by", "points-at", "first-tests", "heard"))
@frozen_open
class SaidAlong:
    """What callers say runs, hums, trips or stands still, along with a complaint.

    `seldom_by`: what then seldom brings it; `points_at`: what then mostly does, and others seldom.
    `first_tests`: what is then looked at first, instead of what the call looks at. `heard`: what
    the caller has heard or seen himself; for dangers and rules it counts as found until it is read.
    """

    words: Annotated[tuple[str, ...], ListOf(Text(longest=80), most=40), "phrases to know it by"]
    seldom_by: Annotated[FaultNames, "faults with which that would hardly run or come"] = ()
    points_at: Annotated[FaultNames, "faults that show themselves so to who stands by"] = ()
    first_tests: Annotated[TestNames, "tests worth taking first then, not the call's"] = ()
    heard: Annotated[
        tuple[Finding, ...], Findings(most=4), "findings that count for dangers until they are read"
    ] = ()


@written("complaint", block=True)
@frozen_open
class Complaint:
    """What the caller says; a start, never a filter.

    `brought_by`: fault -> how often it brings this call, the likeliest first; what cards say of
    themselves under `calls` is among it. `unlisted`: how often any other fault brings it.
    """

    id: Id
    says: Annotated[str, Text(longest=200), "the caller's own words"]
    words: Annotated[tuple[str, ...], OneOrMore(Text(longest=80)), "phrases to know it by"] = ()
    looks: Annotated[str, "looks that cost almost nothing"] = ""
    first_tests: Annotated[TestNames, "tests worth taking first"] = ()
    before_others: Annotated[TestNames, "tests taken first whatever they cost, if they tell"] = ()
    pointless_tests: Annotated[TestNames, "tests that mean nothing on such a call"] = ()
    pointless_areas: Annotated[
        tuple[str, ...], OneOrMore(Name("area"), most=40), "areas whose tests mean nothing on it"
    ] = ()
    brought_by: Annotated[
        Mapping[str, Grade],
        BROUGHT_BY, by_name,
        "faults whose own cards do not say that they bring it",
    ] = field(default_factory=dict)  # fmt: skip
    said_along: Annotated[
        tuple[SaidAlong, ...],
        Items(most=10),
        "what is said along with it, and what that clears or points at",
    ] = ()
    unlisted: Annotated[Grade, "how often another fault brings it; else never"] = "never"
    call: Annotated[Call | None, "what the unit is called for; else it may be heat"] = None
    hazards_first: Annotated[HazardNames, "cautions before any question"] = ()
    all_clear: Annotated[str | None, Name("test"), "the test that lets a stopped visit go on"] = (
        None
    )
    source: Source = ""

    @property
    def faults(self) -> tuple[str, ...]:
        """What brings this call in a fifth of its cases or more."""
        return tuple(f for f, grade in self.brought_by.items() if grade not in ("seldom", "never"))

    @property
    def also(self) -> tuple[str, ...]:
        """What brings this call now and then."""
        return tuple(f for f, grade in self.brought_by.items() if grade == "seldom")


@written("fact")
@frozen_open
class EquipmentFact:
    """`words`: what people say for a value beside its own words.

    `beyond`: of a value that the rules know nothing of, what is told; no cause is named then.
    """

    id: Id
    values: Annotated[tuple[str, ...], ListOf(Word(), least=2, most=40), "the words it can have"]
    asks: Annotated[str, After("counts"), Text(longest=200), "the question that settles it"]
    counts: Annotated[PlaceKind | None, "the kind of place it counts"] = None
    words: Annotated[
        Mapping[str, tuple[str, ...]],
        After("asks"), Pairs(Word(), ListOf(Text(longest=40), most=20)),
        "what people say for a value as well",
    ] = field(default_factory=dict)  # fmt: skip
    beyond: Annotated[
        Mapping[str, str],
        Pairs(Word(), Text(longest=300)),
        "values outside what the rules know: what is told of them",
    ] = field(default_factory=dict)


@written("plate value")
@frozen_open
class PlateValue:
    """A value limits lean on: nameplate, or this unit's own usual value.

    `inside`: it is stamped on a part behind a panel, and is asked once that is off.
    `sign_left_out`: it is a size, whichever way its sign is written: a draft of -0.60.
    """

    id: Id
    unit: UnitName
    origin: Annotated[
        Literal["nameplate", "own-record"],
        Key("from"), After("per"),
        "the plate, or this unit's record",
    ]  # fmt: skip
    meaning: Annotated[str, After("from"), "what it is"]
    per: Annotated[PlaceKind | None, "kind of place, if there may be several"] = None
    inside: Annotated[bool, "true: it stands on a part behind a panel"] = False
    sign_left_out: Annotated[bool, "true: a size, with a minus or without one"] = False


@written("implication")
@frozen_open
class Implication:
    when: Annotated[FactsNeeded, "facts that hold"]
    then: Annotated[Mapping[str, str], Pairs(Name("fact"), Word(), least=1), "facts that follow"]


@written("derivation")
@frozen_open
class Derivation:
    """One way to compute a quantity: a formula's name and the quantities or facts it takes.

    What comes out is multiplied by `times`, then `plus` is added.
    """

    formula: Annotated[FormulaName, "the formula's name"]
    inputs: Annotated[
        tuple[str, ...], OneOrMore(Name("input"), most=6), "quantities, facts or plate values"
    ]
    times: Annotated[float, "by which that is multiplied"] = 1.0
    plus: Annotated[float, "what is added after that"] = 0.0


@written("quantity")
@frozen_open
class Quantity:
    """What is measured. `can_be`: the lowest and highest that it can be at all, in its unit.

    `doubted_beyond`: a number typed that lies outside is asked about once before it is kept.
    `spoken`: its name, as `words.yaml` has it.
    """

    id: Id
    unit: UnitName
    meaning: Annotated[str, After("per"), "what is measured, and how it is counted"]
    per: Annotated[PlaceKind | None, "kind of place, if there may be several"] = None
    computed: Annotated[
        tuple[Derivation, ...], Items(most=6), "ways to compute it, the best first"
    ] = ()
    can_be: Annotated[
        tuple[float, float] | None,
        After("unit"), ListOf(Number(), least=2, most=2),
        "the lowest and the highest that it can be at all, in its unit; wide",
    ] = None  # fmt: skip
    doubted_beyond: Annotated[
        tuple[float, float] | None,
        After("can-be"), ListOf(Number(), least=2, most=2),
        "beyond these a person is asked once whether the number is meant",
    ] = None  # fmt: skip
    weather: Annotated[bool, "true: of the weather, which no repair changes"] = False
    spoken: str = ""

    def __post_init__(self) -> None:
        said_by_its_id(self)


@written("limit", block=True)
@frozen_open
class NamedLimit:
    """A condition of numbers that more than one rule leans on, with its source."""

    id: Id
    applies_to: Annotated[str, "what it is a limit for"]
    bounds: Annotated[tuple[Bound, ...], Items(least=1, most=8), "when all hold, the state holds"]
    source: Source = ""


@written("round point", block=True)
@frozen_open
class RoundPoint:
    id: Id
    number: Annotated[int, Number(1, 1000, whole=True), "place in the round"]
    point: Annotated[str, "what is looked at"]
    season: Annotated[tuple[Literal["spring", "fall"], ...], "when"]
    exists_when: ExistsWhen = field(default_factory=dict)
    tests: Annotated[TestNames, "tests that settle it"] = ()
    how_often: Annotated[str, Text(longest=120), "how often"] = ""
    limit: Annotated[str, "limit in words"] = ""
    trend: Annotated[str, "the change over the years that matters"] = ""
    source: Source = ""


@written("drift alarm")
@frozen_open
class DriftAlarm:
    """A change against this unit's own record that deserves a look, though within limits."""

    id: Id
    quantity: Annotated[str, Name("quantity"), "what drifts"]
    text: Annotated[str, "what to say"]
    change: Annotated[float | None, "change against this unit's record that counts"] = None
    unit: Annotated[str | None, Name("unit"), "unit of the change"] = None
    a_year: Annotated[bool, "true: the change counts for each year"] = False
    relative_to: Annotated[
        str | None, Name("plate value"), "the plate value it is a change of, in place of the record"
    ] = None
    source: Source = ""
