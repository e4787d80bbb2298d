"""A safety officer who says, from the account of a job alone, whether a test may be shown.

The order for hands in is that of 29 CFR 1910.333(b)(2)(ii)-(iv), 29 CFR 1910.147(d) and
NFPA 70E 120.5 (reference value SAF-002): disconnect from all sources, lock and tag, discharge
capacitors, test each conductor with a proven tester, and only then work. NFPA 70E 120.5 has the
tester verified before and after each test for absence of voltage (from memory): so nothing is
touched, not even to bleed it, before that. Testing once before the discharge as well is the
stricter practice of this trade (common practice, no source).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from tests.safety.work_state_account import World
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.work_state import UnitAtWork

_EMPTY = ("emptied", "at-zero", "nitrogen", "vacuum")
_OPEN_LIVE = ("running-open", "energised-open")
_OPENED = (*_OPEN_LIVE, "locked-closed", "locked-out")
_BURNERS = ("gas", "ignition", "combustion")
_WHAT_IS_COMPLAINED_OF = ("operating-sequence",)
"""Has the unit do what it is said not to do: to heat, where nobody said that it is to cool."""


_HOOKED_UP = {
    "meter-in-rod-lead": "flame rod lead",
    "clamp-on-heater-lead": "heater lead",
    "motor-leads-moved": "motor leads",
}
_TAPS = {"manometer-at-inlet": "inlet tap", "manometer-at-outlet": "outlet tap"}
_AT_PORTS = "at-ports"
"""Read with gauges, or a probe on the pipe, alone: with every panel on. Behind one they are put on
dead together, and led out."""
_AT_HOSES = ("gauges-on", "gauges-off")
_IN_ROD_LEAD = "hooked-up flame rod lead"


def _is_read_together(test: Test) -> bool:
    """Pressures and flame current are read of one fire, with all that they want hooked up."""
    return not {*_TAPS, "meter-in-rod-lead"}.isdisjoint(test.needs_state)


@dataclass(frozen=True)
class Officer:
    """Judges work on one unit."""

    unit: UnitAtWork

    def objection(self, world: World, test: Test, place: str | None) -> str:
        """Why this test must not be shown now; empty when it may."""
        if _AT_PORTS in test.needs_state:
            test = self._as_read_at_ports(test)
        return (
            self._about_people(world, test)
            or self._about_power(world, test)
            or self._about_what_is_hooked_up(world, test, place)
            or self._about_gas(world, test)
            or self._about_joints(world, test)
            or self._about_refrigerant(world, test, place)
        )

    def objection_to_step(self, world: World, step: str) -> str:
        """Why this step must not be offered now: hoses behind a panel that is live, or on.

        29 CFR 1910.333(a)(1) and NFPA 70E 110.2 (from memory): nothing is done live that can be
        done dead, and a hose can.
        """
        if step not in _AT_HOSES or self.unit.ports_outside:
            return ""
        return self._hands_in(world) or ("" if "opened" in world else "the panel is on")

    def _as_read_at_ports(self, test: Test) -> Test:
        gauged = () if self.unit.ports_outside else ("gauges-on",)
        needs = (*test.needs_state, *gauged)
        return replace(test, work_state="running", exposes="none", needs_state=needs)

    def _fires(self, test: Test) -> bool:
        """Whether a burner is lit for it, or may be, whatever panels are on."""
        heats = test.area in _BURNERS
        if test.id in _WHAT_IS_COMPLAINED_OF and not self.unit.called_to_cool:
            heats = True
        return self.unit.burns_gas and heats and test.work_state in ("running", "running-open")

    def _about_people(self, world: World, test: Test) -> str:
        gauged_dead = "gauges-on" in test.needs_state and not self.unit.ports_outside
        opened = test.work_state in _OPENED or self._fires(test) or gauged_dead
        if test.work_state != "any" and "roof-safe" not in world:
            return "the roof is not known to be safe"
        if opened and "told" not in world:
            return "nobody was told"
        watched = (self.unit.fire_panel and opened) or "fire-alarm-interlock" in test.hazards
        if watched and "panel-on-test" not in world:
            return "the fire panel was not told"
        live = test.work_state in _OPEN_LIVE
        if self.unit.volts_480 and live and "company" not in world:
            return "alone at 480 V"
        if self.unit.volts_480 and live and "dressed" not in world:
            return "not dressed for an arc of 480 V"
        return ""

    def _about_power(self, world: World, test: Test) -> str:
        if test.work_state == "locked-out":
            at_fuses = "clips-dead" in test.needs_state and "clips-dead" not in world
            return self._hands_in(world) or ("the clips were not tested dead" if at_fuses else "")
        if "unit-stopped" in test.needs_state:
            return "" if {"stopped", "locked"} & world else "the unit may run"
        if test.work_state == "locked-closed":
            return self._near_what_moves(world)
        if test.work_state in ("running", *_OPEN_LIVE):
            return self._power_on(world, test)
        if test.area == "building-side" and self.unit.volts_480:
            if "opened" in world and "locked" not in world:
                return "480 V is left open and live behind whoever goes to the rooms"
            if "jumper-in" in world:
                return "a jumper is left in behind whoever goes to the rooms"
        return ""

    def _hands_in(self, world: World) -> str:
        if "locked" not in world:
            return "not locked out"
        if "dead-first" not in world or "dead-last" not in world:
            return "not tested dead, and tested again, since the lock went on"
        if "meter-first" not in world:
            return "the meter was not proved right after the first test for dead"
        if "meter-last" not in world:
            return "the meter was not proved after the last test for dead"
        for place in self.unit.capacitors + self.unit.drives:
            if f"bled {place}" not in world:
                return f"{place} was not bled between the two tests for dead"
        if "second-source" in world and "second-source-locked" not in world:
            return "a second source may be live"
        return ""

    def _near_what_moves(self, world: World) -> str:
        """29 CFR 1910.147(d): locked out and tried; near an open cover it is dead work."""
        if "opened" in world:
            return self._hands_in(world)
        if "locked" not in world:
            return "not locked out"
        if "second-source" in world and "second-source-locked" not in world:
            return "a second source may be live"
        return ""

    def _power_on(self, world: World, test: Test) -> str:
        if "locked" in world:
            return "the power is off"
        if "doors-open" in world:
            return "a door or panel that was opened for a look may stand open"
        if "leads-off" in world:
            return "leads are off"
        if ("opened" in world) != (test.work_state in _OPEN_LIVE):
            return "the panels are not as they should be"
        if test.work_state == "energised-open":
            if "stopped" not in world or "jumper-in" in world:
                return "the unit may start"
        elif test.work_state == "running" and "jumper-in" in world:
            return "a jumper is hidden behind the panels"
        measured = test.exposes != "none" and test.kind == "measurement"
        if measured and "meter" not in world:
            return "the meter is not proved"
        return ""

    def _about_what_is_hooked_up(self, world: World, test: Test, place: str | None) -> str:
        # With one of a kind its place is not shown beside the test.
        at = f" of {place}" if place else ""
        names = [f"hooked-up {_HOOKED_UP[n]}" for n in test.needs_state if n in _HOOKED_UP]
        only = {thing for thing in world for name in names if thing.startswith(f"{name} of ")}
        wanted = only if only and not place else {f"{name}{at}" for name in names}
        if not wanted <= world:
            return "what is read live was not hooked up dead"
        if test.work_state in ("running", *_OPEN_LIVE):
            if any(thing.startswith("unhooked") for thing in world):
                return "what was hooked up may be loose"
            for_another = {thing for thing in world if thing.startswith("hooked-up")} - wanted
            if for_another - ({_IN_ROD_LEAD} if _is_read_together(test) else set()):
                return "something is hooked up for another reading"
        return ""

    def _about_joints(self, world: World, test: Test) -> str:
        if "gas-open" not in test.needs_state:
            return ""
        if {"gas-shut", "cock-unknown"} & world:
            return "nobody knows that the joints are under gas"
        if {"stopped", "locked"}.isdisjoint(world):
            return "a burner may light while the joints are looked at"
        return "" if "no-gas" in world else "the air was not swept for gas"

    def _about_gas(self, world: World, test: Test) -> str:
        if "gas-shut" in test.needs_state:
            if "gas-shut" not in world:
                return "the gas is on"
            if self.unit.burns_gas and "unburnt" in world:
                return "hands go in and the unburnt gas was not waited out"
            if "no-gas" not in world:
                return "the air was not swept for gas after the cock was shut"
        if self.unit.burns_gas and test.work_state in _OPEN_LIVE and "no-gas" not in world:
            return "a panel is open live and the air was not swept for gas"
        lit_badly = self.unit.burns_gas and "unburnt" in world
        if test.work_state in ("running", *_OPEN_LIVE) and lit_badly:
            return "the unburnt gas of a light that failed was not waited out with the cock shut"
        if self._fires(test) and {"gas-shut", "cock-unknown"} & world:
            return "a burner is called for and nobody knows that its cock is open"
        if self._fires(test) and "no-gas" not in world:
            return "a burner is lit and the air was not swept for gas"
        if self._fires(test) and "air-good" not in world:
            return "a burner is lit and the air of the rooms was not read"
        if test.work_state in ("running", *_OPEN_LIVE):
            if "gas-about" in world:
                return "gas was found and not cleared"
            if "gas-opened" in world:
                return "the gas was opened and not swept"
        wanted = {_TAPS[need] for need in test.needs_state if need in _TAPS}
        if any(f"hose-on {tap}" not in world for tap in wanted):
            return "the manometer was not put on with the cock shut"
        hoses = {tap for tap in _TAPS.values() if f"hose-on {tap}" in world}
        may_be_on = hoses if _is_read_together(test) else set()
        plugless = {f"tap-open {tap}" for tap in set(_TAPS.values()) - wanted - may_be_on}
        if test.work_state in ("running", *_OPEN_LIVE) and plugless & world:
            return "a tap of the gas train is open"
        untested = {f"plug-untested {tap}" for tap in set(_TAPS.values()) - wanted - may_be_on}
        if self._fires(test) and untested & world:
            return "a burner is called for and a plug behind its valve was not tested under gas"
        near_flue = "carbon-monoxide-in-room" in test.hazards and test.id != "room-carbon-monoxide"
        if near_flue and "air-good" not in world:
            return "the air was not tested for carbon monoxide"
        return ""

    def _about_refrigerant(self, world: World, test: Test, place: str | None) -> str:
        worked_on = test.work_state != "any" or bool(test.needs_state)
        if self.unit.flammable and worked_on and "no-refrigerant" not in world:
            return "the air was not swept for flammable refrigerant"
        for circuit in self.unit.circuits or ("unit",):
            empty = any(f"{thing} {circuit}" in world for thing in _EMPTY)
            if empty and test.work_state in ("running", *_OPEN_LIVE):
                return f"{circuit} has no charge"
            if place in (None, circuit) and not _circuit_serves(world, circuit, test):
                return f"{circuit} is not ready"
            if f"vacuum {circuit}" in world and _bears_no_vacuum(test):
                return f"{circuit} is in a vacuum"
        return ""


def _circuit_serves(world: World, circuit: str, test: Test) -> bool:
    if "charge-recovered" in test.needs_state:
        return f"emptied {circuit}" in world or f"at-zero {circuit}" in world
    if "gauges-on" in test.needs_state:
        return f"gauges-on {circuit}" in world
    return True


def _bears_no_vacuum(test: Test) -> bool:
    return "compressor-in-vacuum" in test.hazards and "charge-recovered" not in test.needs_state
