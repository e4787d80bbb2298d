"""What a sound unit reads, which readings cannot be true together, and units as they are met.

Practice draws its cases from these; the author of a rule can change them without a programmer.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from typing import TYPE_CHECKING, Annotated, Literal

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.declaring import written
from troubleshoot.knowledge.model.reference import Derivation
from troubleshoot.knowledge.model.tests import LimitLine
from troubleshoot.knowledge.model.words import FactsNeeded

if TYPE_CHECKING:
    from troubleshoot.knowledge.forms.declared import After, Key
    from troubleshoot.knowledge.forms.pieces import (
        LIMIT_LINE,
        WAY,
        FaultNames,
        Id,
        Source,
        When,
        Where,
    )
    from troubleshoot.knowledge.shapes import (
        Anything,
        ListOf,
        Name,
        NewId,
        Number,
        OneOrMore,
        Pairs,
        Text,
    )


@written("way", some_of=("shown",))
@frozen_open
class SoundWay:
    """One way to say what a sound unit reads, where `when` and `where` hold.

    `number`: from one of the keys that `forms.pieces.WAY` tells ways apart by. `shown`: as the
    meter shows it, where that is no plain number. `wrong`: what it shows where something is wrong,
    if no scaling of the sound number comes to that.
    """

    number: Derivation | None = None
    at_least: Annotated[float | None, "never less than this"] = None
    at_most: Annotated[float | None, "never more than this"] = None
    shown: Annotated[
        str, Text(longest=40), "as the meter shows it, where that is no plain number"
    ] = ""
    wrong: Annotated[
        tuple[str, ...],
        ListOf(Text(longest=40), most=12),
        "what it shows where something is wrong",
    ] = ()
    when: When = field(default_factory=dict)
    where: Where = ()


@written("sound reading", some_of=("reads", "follows", "none-because"))
@frozen_open
class SoundReading:
    """What a sound unit reads on one quantity: the first way that serves, or why there is none.

    `three_legs`: the kind of unit on which the meter goes to three legs. `follows`: the quantity
    whose number is chosen where this one has to come out at something.
    """

    id: Annotated[str, Name("reference"), "the quantity, or a plate value that may be silent"]
    ways: Annotated[
        tuple[SoundWay, ...],
        Key("reads"), OneOrMore(WAY, most=8, alone=True),
        "ways to say it; the first that serves counts",
    ] = ()  # fmt: skip
    three_legs: Annotated[FactsNeeded, "the kind of unit on which three legs are read"] = field(
        default_factory=dict
    )
    follows: Annotated[
        str | None, Name("quantity"), "what is read off, where this has to come out at"
    ] = None
    none_because: Annotated[str, "why no sound number can be said"] = ""


@written("day")
@frozen_open
class Day:
    """The weather in which the faults of some subsystems are called out for; of none: all others.

    `conditions`: quantity -> from and to, whole numbers in the quantity's own unit.
    """

    conditions: Annotated[
        Mapping[str, tuple[int, int]],
        After("subsystems"),
        Pairs(Name("quantity"), ListOf(Number(whole=True), least=2, most=2), least=1),
        "from and to, in the quantity's own unit",
    ]
    subsystems: Annotated[
        tuple[str, ...], OneOrMore(Name("subsystem")), "whose faults; left out: all others"
    ] = ()


@written("relation", block=True)
@frozen_open
class Relation:
    """What always holds between readings of one unit, where the bounds `where` do.

    Any one line of `must` is enough; `says` is the sentence for readings that break it. A scenario
    that breaks it is refused; with `on_visits` so is a reading, beyond what its meter may be off.
    `read_so_by`: faults with which it may really read so, which is then asked.
    """

    id: Id
    says: Annotated[
        str, After("where"), Text(longest=200), "the sentence for readings that break it"
    ]
    must: Annotated[
        tuple[LimitLine, ...],
        OneOrMore(LIMIT_LINE, most=6, alone=True),
        "what always holds; one line is enough",
    ]
    where: Where = ()
    on_visits: Annotated[
        bool, After("says"), "also tried on what is read on a visit, beyond what meters may be off"
    ] = False
    read_so_by: Annotated[
        FaultNames, After("on-visits"), "faults with which it may really read so, which is asked"
    ] = ()
    source: Source = ""


@written("typical unit", block=True)
@frozen_open
class TypicalUnit:
    """A unit as it is met, invented: what cases are drawn on, or the base is measured on."""

    id: Annotated[str, Key("unit"), NewId(), "id; the same as the file's name"]
    about: Annotated[str, Text(longest=120), "what kind of unit this is"]
    serves: Annotated[Literal["practice", "measuring"], "what it is there for"]
    facts: Annotated[
        Mapping[str, object], Pairs(Name("fact"), Anything(), least=1), "its equipment facts"
    ]
    plate: Annotated[
        Mapping[str, object], Pairs(Name("plate value"), Anything()), "its nameplate"
    ] = field(default_factory=dict)
    own_record: Annotated[
        Mapping[str, object], Pairs(Name("plate value"), Anything()), "its own usual values"
    ] = field(default_factory=dict)

    @property
    def unit(self) -> Mapping[str, object]:
        """Facts and plate together, as a case names them."""
        return {**self.facts, **self.plate}
