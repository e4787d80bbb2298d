"""What people answered, and the whole case that the reasoning starts from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field

from troubleshoot.frozen import frozen
from troubleshoot.reasoning.readings.meters import NO_METERS, Meters
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.reasoning.unit.places import Place


@frozen
class Answer:
    """One answer to one test, as given.

    `places`: the places it speaks of; several with `shared` false is one reading that serves each
    of them, several with `shared` true is one reading of which it is not known where it was taken.
    `valid`: None leaves it to the rules; a stated True or False wins, except over hazards.
    `conditions`: what held when this one was taken, where it differs from the case's own.
    `repairs`: how many had been done on the visit before it.
    """

    test: str
    outcomes: tuple[str, ...] = ()
    text: str | None = None
    places: tuple[Place | None, ...] = (None,)
    shared: bool = False
    valid: bool | None = None
    instrument: str | None = None
    why_invalid: str = ""
    conditions: Mapping[str, str] = field(default_factory=dict)
    repairs: int = 0

    @property
    def after_repair(self) -> bool:
        """Whether it was taken after a repair, so that it counts alone."""
        return self.repairs > 0


@frozen
class Case:
    """All that is known of one visit: the pure input of the reasoning.

    `repaired`: faults put right in vain. `told_repaired`: those of which somebody tells that they
    were put right before; nothing shows it, so they may be there still. `stops`: hazards whose STOP
    stands on record, whatever the answers call up. `apart`: findings that weigh nothing for the
    causes, since their own are looked for apart; for hazards they count as any. `search`: what a
    round has found and whose cause is looked for. `words`: what the caller said. `meters`:
    what it is read with.
    """

    unit: Unit = field(default_factory=Unit)
    complaint: str | None = None
    answers: tuple[Answer, ...] = ()
    conditions: Mapping[str, str] = field(default_factory=dict)
    skipped: frozenset[tuple[str, Place | None]] = frozenset()
    repaired: tuple[str, ...] = ()
    routine: bool = False
    stops: tuple[str, ...] = ()
    told_repaired: tuple[str, ...] = ()
    apart: frozenset[tuple[str, Place | None]] = frozenset()
    search: tuple[tuple[str, Place | None], ...] = ()
    words: str = ""
    meters: Meters = NO_METERS
