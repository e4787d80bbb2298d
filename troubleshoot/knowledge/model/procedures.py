"""When / then rules and hazards."""

from __future__ import annotations

from dataclasses import field
from typing import TYPE_CHECKING, Annotated, Literal

from troubleshoot.frozen import frozen_open
from troubleshoot.knowledge.declaring import written
from troubleshoot.knowledge.model.tests import Finding
from troubleshoot.knowledge.model.words import FactsNeeded, said_by_its_id

if TYPE_CHECKING:
    from troubleshoot.knowledge.forms.declared import After, Inside, Items, Key
    from troubleshoot.knowledge.forms.pieces import (
        CONDITION,
        FaultNames,
        Id,
        Signed,
        Source,
        TestNames,
        condition_of,
    )
    from troubleshoot.knowledge.shapes import Findings, Name, NewId, OneOrMore, Text
    from troubleshoot.knowledge.vocabulary import (
        ClearingRole,
        Exposure,
        KeptOff,
        PlaceKind,
        Profile,
        Signal,
        StopScope,
        WorkStateName,
    )


@frozen_open
class Condition:
    """A condition tree. `op` says how `parts` combine, or that this is a leaf.

    Leaves: `finding` (test + outcomes), `fact` (equipment fact + words), `state` (a named
    condition of limits.yaml), `derived` (a finding another procedure rule concluded).
    """

    op: Literal["all", "any", "at-least", "not", "finding", "fact", "state", "derived"]
    parts: tuple[Condition, ...] = ()
    count: int = 0
    finding: Finding | None = None
    name: str = ""
    words: tuple[str, ...] = ()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """The findings it speaks of, wherever they stand in it."""
        own = () if self.finding is None else (self.finding,)
        return (*own, *(finding for part in self.parts for finding in part.findings))


@written("void")
@frozen_open
class Void:
    """Readings of `tests` weigh nothing while the rule holds; for these faults or for all."""

    tests: Annotated[
        tuple[str, ...], OneOrMore(Name("test"), most=100), "their readings weigh nothing"
    ]
    for_faults: Annotated[
        tuple[str, ...], OneOrMore(Name("fault"), most=100), "only for these faults"
    ] = ()
    for_subsystems: Annotated[
        tuple[str, ...], OneOrMore(Name("subsystem")), "only for faults of these"
    ] = ()
    withheld: Annotated[bool, "true: nor are they proposed while the rule holds"] = False


@written("procedure", block=True)
@frozen_open
class Procedure:
    """A when / then rule: what follows from findings beyond the weight of evidence."""

    id: Id
    when: Annotated[Condition, CONDITION, condition_of, "the condition, with exactly one root"]
    reason: Annotated[str, After("then"), "one sentence shown to people"]
    derives: Annotated[
        str | None, Inside("then", "what follows"), NewId(), "a finding this rule concludes"
    ] = None
    void: Annotated[
        Void | None, Inside("then"), "readings that count for nothing while the rule holds"
    ] = None
    look_first: Annotated[TestNames, Inside("then"), "tests to take before others"] = ()
    clears: Annotated[
        FaultNames, Inside("then"), "faults ahead of what was seen to come, which let it come"
    ] = ()
    clears_subsystems: Annotated[
        tuple[str, ...],
        Inside("then"),
        OneOrMore(Name("subsystem")),
        "every fault of these was not asked yet, or let it come",
    ] = ()
    first_on_the_roof: Annotated[
        TestNames, Inside("then"), "looked at on a good roof, before the unit is touched"
    ] = ()
    save_before_power_cut: Annotated[TestNames, Inside("then"), "read before power is cut"] = ()
    source: Source = ""


_TRIGGERS = (
    "findings", "complaint", "fault", "test", "work-state", "exposes", "profile", "equipment",
)  # fmt: skip


@written("trigger", some_of=_TRIGGERS)
@frozen_open
class Trigger:
    """All parts that are stated must hold together.

    `findings`: seen, or possible within the meter's accuracy, counting or not. `as_taken`: only
    what readings that count were taken for; for a sign that every sound unit comes near.
    """

    findings: Annotated[
        tuple[Finding, ...], Findings(most=8), "all of these were seen, or may have been"
    ] = ()
    complaint: Annotated[str | None, Name("complaint"), "the caller said this"] = None
    fault: Annotated[str | None, Name("fault"), "this fault is likely"] = None
    test: Annotated[str | None, Name("test"), "this test is about to be done"] = None
    work_state: Annotated[WorkStateName | None, "a test is done in this state"] = None
    exposes: Annotated[Exposure | None, "a test exposes these parts"] = None
    profile: Annotated[Profile | None, "the person is one of these"] = None
    equipment: Annotated[FactsNeeded, "the unit is of this kind"] = field(default_factory=dict)
    as_taken: Annotated[bool, "true: what readings were taken for, not what they may have been"] = (
        False
    )


@written("stop")
@frozen_open
class Stop:
    scope: Annotated[StopScope, "how much stops"]
    covers: Annotated[str, "what stops, and until when"]


@written("ban", some_of=("areas", "work-states", "places", "tests"))
@frozen_open
class Ban:
    """Tests that are not to be done while a hazard stands: those that fit all parts stated here.

    `areas`: a subsystem is all of its areas. `places`: kinds of place. `at` circuit: only where the
    hazard stands at every circuit that the test concerns. `until`: findings that end it, each read
    at every place there is for it; of a ban at circuits, at those. `own`: the test that found the
    hazard is not done again either, where doing it is the danger.
    """

    areas: Annotated[tuple[str, ...], OneOrMore(Name("area"), most=40), "tests of these areas"] = ()
    work_states: Annotated[tuple[WorkStateName, ...], "tests in these states"] = ()
    places: Annotated[tuple[PlaceKind, ...], "tests at places of these kinds"] = ()
    tests: Annotated[tuple[str, ...], OneOrMore(Name("test"), most=40), "these tests"] = ()
    at: Annotated[Literal["unit", "circuit"], "circuit: only where the hazard stands"] = "unit"
    until: Annotated[tuple[Finding, ...], Findings(most=8), "ends when all of these were read"] = ()
    own: Annotated[bool, "true: nor is the test again that found the hazard"] = False


@written("hazard kind", block=True)
@frozen_open
class HazardKind:
    """Dangers of one sort. Of two as grave, the one whose kind is listed first is read first."""

    id: Id
    about: Annotated[str, Text(longest=200), "what belongs here, in a few words"]


@written("hazard", block=True)
@frozen_open
class Hazard:
    """A danger and its caution.

    `kind`: the kind of its file; a file that says none is read after all that do.
    `keeps_off`: what stays off when the visit is closed while it stands: the unit, its heat, or the
    circuits where it was found.
    `forbids`: what is not done while it stands. A STOP of a wider scope than one step that states
    nothing there forbids every test.
    `words`: what people say who meet it ("i smell gas"). `in_place_of`: the hazards whose orders
    would harm where this one is told in the same words. `cleared_by`: roles that may make the
    place safe after its STOP. `remedies`: what they may have done; whoever brings the hand-over
    back picks one of them, and no other lifts it. `all_clear`: the test whose sound outcome, taken
    afresh, shows that the danger has gone, where no finding called it up. `tested`: a look does not
    show it. `put_right`: what is read after that, before anything it keeps off runs: the part,
    where the all-clear shows only that the danger has gone.
    `tag`: the sentence for the tag on the unit.
    `spoken`: its name, as `words.yaml` has it.
    """

    id: Id
    signal: Annotated[Signal, "signal word, ANSI Z535"]
    what_to_do: Annotated[str, After("when"), Text(longest=1200), "the caution itself"]
    triggers: Annotated[
        tuple[Trigger, ...], Key("when"), Items(most=40), "any one; inside one, all that is stated"
    ] = ()
    stop: Annotated[Stop | None, "leave out where nothing stops"] = None
    keeps_off: Annotated[
        KeptOff | None,
        "what is not left running while it stands; every stop says so, and what forbids to run it",
    ] = None
    defer_to: Annotated[str, Text(longest=200), "who decides or takes over"] = ""
    # In English and in Spanish: those who are hurt have many words for it.
    words: Annotated[
        tuple[str, ...],
        OneOrMore(Text(longest=300), most=120),
        "what people say who meet it; ... stands for a few words of any kind, a/b + c - d for a "
        "sentence with a or b, and c, in any order, and no d; read:q + a for a reading of q that a "
        "finding of the hazard is met by, and a",
    ] = ()
    in_place_of: Annotated[
        tuple[str, ...],
        OneOrMore(Name("hazard"), most=12),
        "hazards that the same words name, and whose orders would harm here",
    ] = ()
    cleared_by: Annotated[
        tuple[ClearingRole, ...], "who may make it safe, and take the tag off"
    ] = ()
    remedies: Annotated[
        tuple[str, ...],
        OneOrMore(Text(longest=100), most=8),
        "what may have been done or found out that takes it away, once; a whole-job STOP has some",
    ] = ()
    all_clear: Annotated[
        str | None, Name("test"), "the test that shows it has gone, where none found it"
    ] = None
    tested: Annotated[
        bool, "true: only its insulation, or what the meter shows dead, shows that it has gone"
    ] = False
    put_right: Annotated[
        tuple[Finding, ...],
        Findings(most=8),
        "what shows, locked out, that the part was put right; until then all stays off",
    ] = ()
    tag: Annotated[str, Text(longest=200), "the sentence for the tag: what the danger is"] = ""
    signed: Signed = ()
    forbids: Annotated[tuple[Ban, ...], Items(most=12), "tests not to be done while it stands"] = ()
    source: Source = ""
    kind: str = ""
    spoken: str = ""

    def __post_init__(self) -> None:
        said_by_its_id(self)

    @property
    def stops_the_job(self) -> bool:
        """Whether its STOP is for the whole job, so that others have to make it safe."""
        return self.stop is not None and self.stop.scope == "whole-job"

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Every finding that may call it up, alone or with others."""
        return tuple(finding for trigger in self.triggers for finding in trigger.findings)
