"""One point of the way to a test or back: what is wanted of the work state and does not stand."""

from __future__ import annotations

from troubleshoot.frozen import frozen
from troubleshoot.safety.needs import Needs
from troubleshoot.safety.work_state import UnitAtWork, WorkState


@frozen
class Way:
    """One point of the way: where we are, what is needed, on which unit."""

    state: WorkState
    needs: Needs
    unit: UnitAtWork
    leaving: bool

    @property
    def dead_wanted(self) -> bool:
        """Work has to be done dead: the test itself, leads, hook-ups, a tap of the gas, gauges."""
        before_power = self.leads_wrong or self.hook_up_wanted or self.taps_wrong
        opened = self.needs.closed and self.state.panels != "on"
        inside = not self.unit.ports_outside and bool(self.to_gauge or self.to_ungauge)
        return (
            self.needs.energy == "locked-out"
            or opened
            or inside
            or (self.needs.energised and before_power)
        )

    @property
    def to_gauge(self) -> tuple[str, ...]:
        """Circuits that gauges have still to go on."""
        off = ("closed", "gauges-unsure")
        return tuple(at for at, _ in self.needs.circuits if self.state.circuit(at) in off)

    @property
    def to_ungauge(self) -> tuple[str, ...]:
        """Circuits that gauges are on, or may be, and that are left."""
        on = ("gauges-on", "gauges-unsure")
        return tuple(at for at, now in self.state.circuits if self.leaving and now in on)

    @property
    def lock_wanted(self) -> bool:
        """Work has to be done locked out, or a lock that may be on has to be sure."""
        unsure = self.needs.energised and self.state.power == "unsure"
        return self.needs.lock or self.dead_wanted or unsure

    @property
    def hands_in(self) -> bool:
        """Work is done dead: what is worn and who helps for live work waits until it is over."""
        locked = self.state.power == "locked-out"
        to_charge = locked and self.needs.energised and bool(self.state.circuits_without_charge)
        return self.state.dead == "proved" or to_charge

    @property
    def leads_wrong(self) -> bool:
        """The power is needed, and leads are off, or hooked up for another reading."""
        meant = self.state.hooked_up & set(self.needs.hook_ups)
        return self.needs.energised and not self.state.leads_off <= meant

    @property
    def hook_up_wanted(self) -> bool:
        """Something has to be hooked up before the power comes."""
        return not set(self.needs.hook_ups) <= self.state.hooked_up

    @property
    def taps_wrong(self) -> bool:
        """A tap has to be opened or plugged."""
        wanted = set(self.needs.taps)
        return not (wanted <= self.state.hoses_on and self.state.taps_open <= wanted)

    @property
    def panels_wrong(self) -> bool:
        """The power is needed, and the panels are not as the test has them."""
        wanted = "on" if self.needs.energy == "running" else "off"
        return self.needs.energised and self.state.panels != wanted

    @property
    def shut_wanted(self) -> bool:
        """Hands go in behind a shut cock: what runs, or may light, is stopped before it is shut."""
        return self.dead_wanted and self.needs.gas == "shut"

    @property
    def stop_wanted(self) -> bool:
        """Whatever shuts the cock, a call that is still on may light behind it, or try to."""
        shuts = self.needs.gas == "shut" and self.state.gas != "shut"
        return self.shut_wanted or (self.needs.energised and shuts) or self.needs.uncalled

    @property
    def purge_wanted(self) -> bool:
        """Unburnt gas has to go first; where the unit does not stop, once it is locked out."""
        stops = self.state.calls != "stuck-on" or self.state.power == "locked-out"
        return self.needs.energised or (self.shut_wanted and stops)

    @property
    def gas_wanted(self) -> bool:
        """The cock has to be opened: not while a tap has still to be opened behind it."""
        on = self.needs.gas == "on" and self.state.gas != "on"
        return on and set(self.needs.taps) <= self.state.hoses_on

    @property
    def runs(self) -> bool:
        """The unit has to be called to run."""
        return self.needs.energy in ("running", "running-open") and not self.needs.uncalled
