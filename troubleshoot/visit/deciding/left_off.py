"""What is not left running when a visit is closed: what a danger that still stands is about.

A hazard that a finding has called up keeps off what its entry says: the unit, its heat, or the
circuits where it was found. Only what its entry ends its bans with, or the finding read afresh
and sound, takes that away.
"""

from __future__ import annotations

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.conclude import Conclusions, FiredHazard
from troubleshoot.reasoning.unit.places import Place
from troubleshoot.safety.hazard_words import forbids
from troubleshoot.safety.stops.standing import has_ended


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
            *(("the unit", fired) for fired in self.unit),
            *(("the heat", fired) for fired in self.heat),
            *((_circuits(fired), fired) for fired in self.circuits),
        )

    @property
    def lines(self) -> tuple[str, ...]:
        """How the unit is left, a sentence a danger."""
        return (
            *(f"The unit stays off and locked: {forbids(f.hazard)}." for f in self.unit),
            *(
                f"The heat stays off, its gas cock shut and tagged: {forbids(f.hazard)}."
                for f in self.heat
            ),
            *(
                f"{_circuits(f).capitalize()} {_stays(f)} off and tagged, so that no call starts "
                f"it: {forbids(f.hazard)}."
                for f in self.circuits
            ),
        )


def left_off(conclusions: Conclusions) -> LeftOff:
    """What a case's dangers keep off."""
    unit, heat, circuits = [], [], []
    gas = conclusions.case.unit.facts.get("heat") == "gas"
    everywhere = conclusions.case.unit.layout.circuits_of(None)
    for fired in conclusions.hazards:
        keeps = fired.hazard.keeps_off
        if keeps in (None, "nothing") or not fired.found or _is_over(conclusions, fired):
            continue
        if keeps == "heat" and gas:
            heat.append(fired)
        elif keeps == "circuit" and not everywhere <= set(fired.circuits):
            circuits.append(fired)
        else:
            unit.append(fired)
    return LeftOff(tuple(unit), tuple(heat), tuple(circuits))


def _is_over(conclusions: Conclusions, fired: FiredHazard) -> bool:
    """Whether everything has been read that ends a ban of this hazard."""
    ending = [ban for ban in fired.hazard.forbids if ban.until]
    return bool(ending) and all(has_ended(conclusions, fired, ban) for ban in ending)


def _circuits(fired: FiredHazard) -> str:
    return " and ".join(str(Place("circuit", number)) for number in sorted(fired.circuits))


def _stays(fired: FiredHazard) -> str:
    return "stays" if len(fired.circuits) == 1 else "stay"
