"""What is not left running when a visit is closed: what a danger that still stands is about.

A hazard that a finding has called up keeps off what its entry says: the unit, its heat, or the
circuits where it was found. Only what its entry ends its bans with, or the finding read afresh
and sound, takes that away.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.outside.text import begun
from troubleshoot.reasoning.conclusions import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place, with_place
from troubleshoot.safety.closed_ways import closed
from troubleshoot.safety.hazard_words import forbids
from troubleshoot.safety.profiles import hand_over
from troubleshoot.safety.steps import GAS_OPEN, PLUG_TEST
from troubleshoot.safety.stops.standing import has_ended, would_lift
from troubleshoot.safety.work_state import WorkState, untested_plugs
from troubleshoot.visit.deciding.unproved import stopped_and_unproved, unread_of_burners
from troubleshoot.visit.state import VisitState

UNPROVED: Final = "unproved"
"""The atom that stands for what stopped the job, or is wanting of a repair at the burners, and is
not proved; behind it the tests that prove it, where they are not those of its all-clear."""

THE_UNIT: Final = "the unit"
STAYS_SHUT: Final = "The gas cock stays shut and tagged until it has been."
LEFT_SHUT: Final = "The gas cock was left shut."
NOT_KNOWN: Final = "The gas cock was not left known to be open, nor to be shut."


@frozen
class LeftOff:
    """The dangers that keep something off. `heat` is gas heat; electric heat keeps the unit off."""

    unit: tuple[FiredHazard, ...] = ()
    heat: tuple[FiredHazard, ...] = ()
    circuits: tuple[FiredHazard, ...] = ()

    @property
    def all(self) -> tuple[FiredHazard, ...]:
        return (*self.unit, *self.heat, *self.circuits)

    @property
    def parts(self) -> tuple[tuple[str, FiredHazard], ...]:
        """What is left off, in words, and the danger that keeps it so."""
        return (
            *((THE_UNIT, fired) for fired in self.unit),
            *(("the heat", fired) for fired in self.heat),
            *((_circuits(fired), fired) for fired in self.circuits),
        )

    @property
    def tags(self) -> tuple[tuple[str, FiredHazard], ...]:
        """Of these, one of those that say the same."""
        said = {(part, fired.hazard.spoken): (part, fired) for part, fired in reversed(self.parts)}
        return tuple(reversed(said.values()))

    @property
    def lines(self) -> tuple[str, ...]:
        """How the unit is left, a sentence a danger."""
        return (
            *(f"The unit stays off and locked: {forbids(f.hazard)}." for f in self.unit),
            *(
                f"The heat stays off, its gas cock shut and tagged: {reason}."
                for reason in dict.fromkeys(map(_reason, self.heat))
            ),
            *(
                f"{_circuits(f).capitalize()} {_stays(f)} off and tagged, so that no call starts "
                f"it: {forbids(f.hazard)}."
                for f in self.circuits
            ),
        )


def heat_stays_off(off: LeftOff, work: WorkState) -> bool:
    """Whether the heat is left off at its control too: it would only try behind a shut cock."""
    return bool(off.heat or gas_left(off, work))


def gas_left(off: LeftOff, work: WorkState) -> tuple[str, ...]:
    """How a gas train is left that is not as it was, beside what a danger keeps off."""
    if work.plugs_untested:
        plugs = untested_plugs(work.plugs_untested)
        return tuple(f"{begun(plug)}. {STAYS_SHUT}" for plug in plugs)
    if work.gas == "on" or off.heat:
        return ()
    return (LEFT_SHUT if work.gas == "shut" else NOT_KNOWN,)


def stays_cold(knowledge: Knowledge, state: VisitState, off: LeftOff) -> bool:
    """Whether the unit is left with its gas cock shut.

    So it is where a plug cannot be tested under gas, and where it was found shut by somebody who
    may not open it.
    """
    if off.heat or PLUG_TEST in closed(state):
        return True
    found_shut = state.cock_left and state.work.gas == "shut"
    return found_shut and hand_over(knowledge.tests[GAS_OPEN], state.profiles) is not None


def left_for(off: LeftOff, work: WorkState) -> tuple[str, ...]:
    """By their ids, the hazards for which something is left off, and a step that is still to do."""
    still = (GAS_OPEN,) if work.gas != "on" or work.plugs_untested else ()
    return (*(fired.hazard.id for fired in off.all), *still)


def what_lifts(knowledge: Knowledge, conclusions: Conclusions, off: LeftOff) -> tuple[str, ...]:
    """What is still to be read sound before what stays off may run, a sentence a danger."""
    layout = conclusions.case.unit.layout
    told: dict[str, None] = {}
    for fired in (*off.unit, *off.circuits):
        names = [
            with_place(knowledge.tests[test].name, layout.shown(knowledge.tests[test].per, at))
            for test, at in would_lift(conclusions, fired)
        ]
        if names:
            told[f"To take that away, read sound: {'; '.join(names)}."] = None
    return tuple(told)


def left_off_at(knowledge: Knowledge, state: VisitState, conclusions: Conclusions) -> LeftOff:
    """What a visit leaves off: for what stands, and for what stopped it, its repair not proved."""
    standing = {fired.hazard.id for fired in conclusions.hazards if fired.found}
    places = tuple(sorted(conclusions.case.unit.layout.circuits_of(None)))
    unproved = tuple(
        FiredHazard(hazard, places, (UNPROVED,), found=True)
        for hazard in stopped_and_unproved(knowledge, state)
        if hazard.id not in standing
    ) or tuple(
        FiredHazard(hazard, places, (UNPROVED, *tests), found=True)
        for hazard, tests in unread_of_burners(knowledge, state)
        if hazard.id not in standing
    )
    again = {fired.hazard.id for fired in unproved}
    others = (fired for fired in conclusions.hazards if fired.hazard.id not in again)
    return left_off(replace(conclusions, hazards=(*others, *unproved)))


def left_off(conclusions: Conclusions) -> LeftOff:
    """What a case's dangers keep off."""
    unit, heat, circuits = [], [], []
    gas = conclusions.case.unit.facts.get("heat") == "gas"
    everywhere = conclusions.case.unit.layout.circuits_of(None)
    for fired in conclusions.hazards:
        keeps = fired.hazard.keeps_off
        if keeps in (None, "nothing") or not fired.found or _is_over(conclusions, fired):
            continue
        if keeps == "heat" and (gas or is_unread(fired)):
            heat.append(fired)
        elif keeps == "circuit" and not everywhere <= set(fired.circuits):
            circuits.append(fired)
        else:
            unit.append(fired)
    return LeftOff(tuple(unit), tuple(heat), tuple(circuits))


def found_standing(conclusions: Conclusions) -> tuple[Hazard, ...]:
    """The hazards of what was found that still stand: each is told again before a call."""
    return tuple(
        fired.hazard
        for fired in conclusions.hazards
        if fired.found and fired.hazard.keeps_off != "nothing" and not _is_over(conclusions, fired)
    )


def is_unread(fired: FiredHazard) -> bool:
    """Whether nobody found it: a repair at the burners wants the reading that would find it."""
    return fired.because[:1] == (UNPROVED,) and len(fired.because) > 1


def _reason(fired: FiredHazard) -> str:
    return fired.hazard.spoken if is_unread(fired) else forbids(fired.hazard)


def _is_over(conclusions: Conclusions, fired: FiredHazard) -> bool:
    """Whether everything has been read that ends a ban of this hazard."""
    if UNPROVED in fired.because:
        return False
    ending = [ban for ban in fired.hazard.forbids if ban.until]
    return bool(ending) and all(has_ended(conclusions, fired, ban) for ban in ending)


def _circuits(fired: FiredHazard) -> str:
    return " and ".join(str(Place("circuit", number)) for number in sorted(fired.circuits))


def _stays(fired: FiredHazard) -> str:
    return "stays" if len(fired.circuits) == 1 else "stay"
