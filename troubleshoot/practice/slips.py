"""What the apprentice must not do: the same guards as on a live visit, sorted by how grave.

A grave slip could have hurt someone: no lock-out, no proved meter, no proof of dead, a charged
capacitor, a missed STOP. The first of a kind is stopped, explained and halves the points; the same
kind again fails the whole scenario. A light one would only have spoilt the work or annoyed the
occupants; it is stopped and explained just the same.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping
from types import MappingProxyType
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test
from troubleshoot.safety import guards, steps
from troubleshoot.safety.guards import Guard
from troubleshoot.safety.needs import needs_of
from troubleshoot.safety.work_state import UnitAtWork, WorkState

GRAVE_NEEDS: Final[Mapping[Guard, str | None]] = MappingProxyType(
    {
        guards.air_is_clear: None,
        guards.power_is_locked_out: "lockout-and-verify-dead",
        guards.meter_is_proved: "tester-failed-proof",
        guards.dead_is_proved: "lockout-and-verify-dead",
        guards.second_source_is_locked: "second-power-source",
        guards.charge_is_bled: "stored-charge",
        guards.second_person_is_there: "working-alone",
        guards.arc_clothing_is_on: "arc-flash-480-volt",
        guards.nothing_can_start: "rotating-parts",
        guards.circuits_hold_their_charge: None,
        guards.gas_is_swept: None,
        guards.gas_is_shut: None,
        guards.no_circuit_in_vacuum: "compressor-in-vacuum",
    }
)
"""Needs of a test whose lack makes it a grave slip, the gravest first, each with the hazard to read
about; None where that is the first of the test's own cautions. The roof comes first of all on every
visit; to forget it is stopped and explained, and told in the debrief."""

GRAVE_STEPS: Final = frozenset(
    {
        steps.PANELS_OFF,
        steps.PANELS_OFF_ENERGISED,
        steps.DEAD_TEST,
        steps.BLEED_CAPACITOR,
        steps.BLEED_DRIVE,
        steps.LOCK_OFF,
        steps.RESTART,
        steps.RECOVER,
    }
)
"""Safety steps that are dangerous themselves when their turn has not come."""

MAKES_SAFE: Final = frozenset(
    {
        steps.TELL_OCCUPANTS,
        steps.TELL_FIRE_PANEL,
        steps.SECOND_PERSON,
        steps.ARC_CLOTHING,
        steps.STOP_BY_CONTROLS,
        steps.LOCKOUT,
        steps.SECOND_SOURCE,
        steps.GAS_SHUT,
    }
)
"""Steps that may still be done while a STOP stands."""

PROVES_DEAD: Final = frozenset(
    {
        steps.PANELS_OFF,
        steps.METER_PROOF,
        steps.DEAD_TEST,
        steps.BLEED_CAPACITOR,
        steps.BLEED_DRIVE,
    }
)
"""Steps that may be done as well where a STOP holds only until the unit is made safe."""


@frozen
class Slip:
    """Something that was stopped: what was tried and what it needed, in the order of work.

    `gravest`: of that, what could have hurt someone; None for a light slip. `read`: the id of the
    hazard to read about, where one speaks of it. `past_stop`: a STOP stood, and `missing` says what
    it asks for.
    """

    tried: str
    missing: tuple[str, ...]
    gravest: str | None
    read: str | None = None
    past_stop: bool = False

    @property
    def grave(self) -> bool:
        return self.gravest is not None

    @property
    def kind(self) -> str:
        """What two grave slips share that are the same mistake, wherever it was made."""
        return "past a STOP" if self.past_stop else self.read or self.gravest or ""


def grave_kinds(slips: Iterable[Slip]) -> Counter[str]:
    """How often each kind of grave slip was made."""
    return Counter(slip.kind for slip in slips if slip.grave)


def gravest_need(
    state: WorkState, test: Test, place: str | None, unit: UnitAtWork
) -> tuple[str, str | None] | None:
    """The unmet need of a test that could hurt someone the worst, in words, with its hazard.

    None where no such need is unmet.
    """
    needs = needs_of(test, place, unit)
    found = ((guard(state, needs), hazard) for guard, hazard in GRAVE_NEEDS.items())
    return next((each for each in found if each[0]), None)
