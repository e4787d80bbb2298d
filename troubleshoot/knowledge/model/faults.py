"""Fault cards: evidence, pictures, repair, proof and examples."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import TYPE_CHECKING, Annotated, Literal

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.declaring import written
from troubleshoot.knowledge.model.tests import Finding
from troubleshoot.knowledge.vocabulary import Grade

if TYPE_CHECKING:
    from troubleshoot.knowledge.forms.declared import After, Items, Key, Of
    from troubleshoot.knowledge.forms.pieces import (
        CALLS,
        READING,
        WHO,
        Conditions,
        ExistsWhen,
        FaultNames,
        Graded,
        Per,
        Source,
        When,
        by_name,
        is_effect,
        names_of_who,
        rule_of_who,
        share_of_percent,
    )
    from troubleshoot.knowledge.model.words import FactsNeeded
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
        Percent,
        Text,
    )
    from troubleshoot.knowledge.vocabulary import HowCommon, PartCost, Profile, Status


@frozen_open
class Evidence:
    """How often any of the findings shows when the fault is there. More than one: any-of."""

    grade: Grade
    findings: tuple[Finding, ...]


@written("given")
@frozen_open
class Given:
    """How often `finding` shows when the fault is there and all of `given` has been seen."""

    grade: Annotated[Grade, After("given"), "how often"]
    finding: Annotated[Finding, "how often this shows"]
    given: Annotated[
        tuple[Finding, ...], ListOf(Findings(), least=1, most=6), "when all of these were seen"
    ]


@written("picture", some_of=("evidence", "given"), block=True)
@frozen_open
class Picture:
    """One way a fault shows (mild, severe; per metering); replaces the card's where it speaks."""

    name: Annotated[str, Text(longest=60), "mild, severe, ..."]
    evidence: Annotated[Graded, After("when"), "grades that replace the card's"] = ()
    given: Annotated[
        tuple[Given, ...], Items(most=40), "readings that together mean another thing"
    ] = ()
    when: When = field(default_factory=dict)


@written("override", some_of=("evidence", "given"), block=True)
@frozen_open
class Override(Picture):
    """What differs on a kind of unit; it has no name."""

    name: str = ""
    when: Annotated[FactsNeeded, "the kind of unit on which the grades differ"] = field(
        kw_only=True
    )


Hands = Literal["at-leads", "inside", "outside"]
"""Where hands are in a repair: where nothing says so, leads may have come off."""


@written("repair")
@frozen_open
class Repair:
    what: Annotated[str, Text(longest=800), "what is done"]
    minutes: Annotated[float, Number(0, 10000), "working time"]
    part_cost: Annotated[PartCost, "grade of cost, dollars"]
    who: Annotated[tuple[Profile, ...], WHO, names_of_who, "who may do it"]
    who_rule: Annotated[Literal["all", "any"], Of("who"), rule_of_who] = "all"
    hand_over: Annotated[bool, "true: stop, tag out and hand over"] = False
    hands: Annotated[
        Hands,
        "inside: nothing that has a lead is touched; outside: the panels may stay on, or it is set "
        "with the unit running",
    ] = "at-leads"
    circuit: Annotated[
        Literal["stays-closed"] | None,
        "stays-closed: nothing of the refrigerant circuit is opened, and no charge moved",
    ] = None


@written("proof")
@frozen_open
class Proof:
    """A reading that must be right after the repair, in words and where possible as a finding."""

    text: Annotated[str, "the reading that must be right after the repair"]
    finding: Annotated[Finding | None, "the same as a finding"] = None
    called: Annotated[bool, "true: read with the unit called to run, its test or not"] = False
    runs: Annotated[
        Literal["unit", "heat"] | None,
        "what runs, or has run, with the panels on when it is read, its test or not",
    ] = None
    later: Annotated[bool, "true: read on another day, told at the end and never asked"] = False
    exists_when: ExistsWhen = field(default_factory=dict)


@written("example", block=True)
@frozen_open
class Example:
    """Readings that must put the card's fault first, or must not."""

    name: Annotated[str, Text(longest=160), "the example in a few words"]
    readings: Annotated[
        tuple[Mapping[str, object], ...],
        After("conditions"), ListOf(READING, most=60),
        "in the order they were taken",
    ]  # fmt: skip
    names_it: Annotated[bool, "true: this fault must come first; false: it must not"]
    at_least: Annotated[
        float | None,
        After("names-it"), Percent(50, 99), share_of_percent,
        "the chance that it must come to, where to come first is not enough",
    ] = None  # fmt: skip
    complaint: Annotated[str | None, Name("complaint"), "what the caller said"] = None
    unit: Annotated[
        Mapping[str, object], Pairs(Name("fact or plate value"), Anything()), "the unit"
    ] = field(default_factory=dict)
    conditions: Conditions = field(default_factory=dict)


@written("signature of a card")
@frozen_open
class CardSignature:
    """Somebody answers for a card as it was under `card`, its hash."""

    by: Annotated[str, Text(longest=60), "who answers for it: a role, or initials"]
    on: Annotated[str, Text(longest=10), "the day, as 2026-11-29"]
    card: Annotated[str, Text(longest=64), "the hash of what was signed, by rules go-over"]


@written("fault card")
@frozen_open
class Fault:
    id: Annotated[str, Key("fault"), NewId(), "id; the same as the file's name"]
    name: Annotated[str, Text(longest=120), "what people call it"]
    subsystem: Annotated[str, Name("subsystem"), "the same as the folder's name"]
    is_effect: Annotated[
        bool,
        Key("is"), Choice(("cause", "effect")), is_effect,
        "effects stand outside the ranking",
    ]  # fmt: skip
    how_common: Annotated[HowCommon, "on a big fleet, over the years"]
    evidence: Annotated[
        Graded, After("exists-when"), "how often each finding shows when the fault is there"
    ]
    repair: Annotated[Repair, After("behind"), "what mends it"]
    per: Per = None
    exists_when: ExistsWhen = field(default_factory=dict)
    calls: Annotated[
        Mapping[str, Grade],
        After("exists-when"), CALLS, by_name,
        "how often it brings each complaint",
    ] = field(default_factory=dict)  # fmt: skip
    given: Annotated[
        tuple[Given, ...], Items(most=40), "readings that together mean another thing"
    ] = ()
    overrides: Annotated[tuple[Override, ...], Items(most=12), "what equipment facts change"] = ()
    pictures: Annotated[tuple[Picture, ...], Items(most=12), "ways in which the fault shows"] = ()
    if_left: Annotated[str, "what happens if nobody mends it"] = ""
    why: Annotated[str, "why it failed"] = ""
    behind: Annotated[FaultNames, "faults that can be the first cause"] = ()
    proof: Annotated[
        tuple[Proof, ...], Items(most=12), "readings that must be right afterwards"
    ] = ()
    look_alikes: Annotated[
        FaultNames, "faults it is taken for; whether they are taken for it, their cards say"
    ] = ()
    source: Source = ""
    status: Annotated[
        Status,
        Choice(("draft", "gone-over", "signed"), before=("reviewed",)),
        "gone-over: as a mechanic would, its examples hold; signed: somebody answers for it",
    ] = "draft"
    because: Annotated[str, Text(longest=200), "why it is no further: what nobody has done"] = ""
    signed: Annotated[CardSignature | None, "by rules go-over"] = None
    examples: Annotated[
        tuple[Example, ...], Items(most=30), "one that names it, one that does not"
    ] = ()
    words: Annotated[
        tuple[str, ...],
        After("exists-when"), OneOrMore(Text(longest=80), most=40),
        "what people call it as well",
    ] = ()  # fmt: skip
