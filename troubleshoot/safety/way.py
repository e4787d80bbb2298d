"""One point of the way to a test or back: what is wanted of the work state and does not stand."""

from __future__ import annotations

from dataclasses import dataclass

from troubleshoot.safety.needs import Needs
from troubleshoot.safety.work_state import UnitAtWork, WorkState


@dataclass(frozen=True, slots=True)
class Way:
    """One point of the way: where we are, what is needed, on which unit."""

    state: WorkState
    needs: Needs
    unit: UnitAtWork
    leaving: bool

    @property
    def dead_wanted(self) -> bool:
        """Work has to be done dead: the test itself, or putting leads back."""
        return self.needs.energy == "locked-out" or (
            self.needs.energised and bool(self.state.leads_off)
        )

    @property
    def lock_wanted(self) -> bool:
        """Work has to be done locked out: dead work, a charge put back, a lock that may be on."""
        unsure = self.needs.energised and self.state.power == "unsure"
        return (
            self.needs.lock
            or self.dead_wanted
            or unsure
            or bool(self.to_be_charged)
            or bool(self.in_vacuum)
        )

    @property
    def to_be_charged(self) -> tuple[str, ...]:
        """Circuits whose charge must be in: all of them to run, one to read its pressure."""
        without = self.state.circuits_without_charge
        if self.needs.energised:
            return without
        return tuple(place for place in without if (place, "gauges-on") in self.needs.circuits)

    @property
    def in_vacuum(self) -> tuple[str, ...]:
        """Circuits whose vacuum the test does not bear."""
        if not self.needs.no_vacuum:
            return ()
        maybe = ("under-vacuum", "charge-unsure")
        return tuple(place for place, now in self.state.circuits if now in maybe)

    @property
    def to_be_plugged(self) -> tuple[str, ...]:
        """Taps of the gas train that no manometer is wanted on before the unit may run."""
        return tuple(sorted(self.state.taps_open - set(self.needs.taps)))

    @property
    def to_be_opened(self) -> tuple[str, ...]:
        return tuple(tap for tap in self.needs.taps if tap not in self.state.hoses_on)
