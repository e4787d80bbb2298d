"""What the apprentice must not do: the same guards as on a live visit, sorted by how grave.

A grave slip could have hurt someone: no lock-out, no proved meter, no proof of dead, a charged
capacitor, a missed STOP. It fails the whole scenario. A light one would only have spoilt the work
or annoyed the occupants; it is stopped and explained just the same.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from troubleshoot.knowledge.model import Test
from troubleshoot.visit import guards, steps
from troubleshoot.visit.guards import Guard
from troubleshoot.visit.needs import needs_of
from troubleshoot.visit.work_state import UnitAtWork, WorkState

GRAVE_NEEDS: Final[tuple[Guard, ...]] = (
    guards.air_is_clear,
    guards.second_person_is_there,
    guards.meter_is_proved,
    guards.power_is_locked_out,
    guards.dead_is_proved,
    guards.second_source_is_locked,
    guards.charge_is_bled,
    guards.nothing_can_start,
    guards.circuits_hold_their_charge,
    guards.gas_is_swept,
    guards.gas_is_shut,
    guards.no_circuit_in_vacuum,
)
"""Needs of a test whose lack makes it a grave slip. The roof comes first of all on every visit; to
forget it is stopped and explained, and told in the debrief."""

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


@dataclass(frozen=True, slots=True)
class Slip:
    """Something that was stopped: what was tried, what was missing, and how grave it was.

    `read`: the id of the hazard to read about, where one speaks of it. `past_stop`: a STOP stood,
    and `missing` says what it asks for.
    """

    tried: str
    missing: tuple[str, ...]
    grave: bool
    read: str | None = None
    past_stop: bool = False


def grave_needs(
    state: WorkState, test: Test, place: str | None, unit: UnitAtWork
) -> tuple[str, ...]:
    """The unmet needs of a test that could hurt someone, in words."""
    needs = needs_of(test, place, unit)
    return tuple(words for guard in GRAVE_NEEDS if (words := guard(state, needs)))
