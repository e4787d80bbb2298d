"""A safety officer who says, from the account of a job alone, whether a test may be shown.

The order for hands in is that of 29 CFR 1910.333(b)(2)(ii)-(iv), 29 CFR 1910.147(d) and
NFPA 70E 120.5 (reference value SAF-002): disconnect from all sources, lock and tag, discharge
capacitors, test each conductor with a proven tester, and only then work. Testing once before the
discharge as well, and proving the meter after the last test, is the stricter practice of this trade
(common practice, no source).
"""

from __future__ import annotations

from dataclasses import dataclass

from work_state_account import EMPTY, World, stands

from troubleshoot.knowledge.model import Test
from troubleshoot.visit.work_state import UnitAtWork

_OPEN_LIVE = ("running-open", "energised-open")
_OPENED = (*_OPEN_LIVE, "locked-out")


@dataclass(frozen=True)
class Officer:
    """Judges work on one unit."""

    unit: UnitAtWork

    def objection(self, world: World, test: Test, place: str | None) -> str:
        """Why this test must not be shown now; empty when it may."""
        return (
            self._about_people(world, test)
            or self._about_power(world, test)
            or self._about_gas(world, test)
            or self._about_refrigerant(world, test, place)
        )

    def _about_people(self, world: World, test: Test) -> str:
        opened = test.work_state in _OPENED
        if test.work_state != "any" and not stands(world, "roof-safe"):
            return "the roof is not known to be safe"
        if opened and not stands(world, "told"):
            return "nobody was told"
        watched = (self.unit.fire_panel and opened) or "fire-alarm-interlock" in test.hazards
        if watched and not stands(world, "panel-on-test"):
            return "the fire panel was not told"
        live = test.work_state in _OPEN_LIVE and test.exposes == "line"
        if self.unit.volts_480 and live and not stands(world, "company"):
            return "alone at 480 V"
        return ""

    def _about_power(self, world: World, test: Test) -> str:
        if test.work_state == "locked-out":
            return self._hands_in(world)
        if test.work_state in ("running", *_OPEN_LIVE):
            return self._power_on(world, test)
        return ""

    def _hands_in(self, world: World) -> str:
        if not stands(world, "locked"):
            return "not locked out"
        if not stands(world, "dead-first") or not stands(world, "dead-last"):
            return "not tested dead, and tested again, since the lock went on"
        if not stands(world, "meter-last"):
            return "the meter was not proved after the last test for dead"
        for place in self.unit.capacitors + self.unit.drives:
            if not stands(world, f"bled {place}") or ("dead-last", f"bled {place}") not in world:
                return f"{place} was not bled between the two tests for dead"
        if stands(world, "second-source") and not stands(world, "second-source-locked"):
            return "a second source may be live"
        return ""

    def _power_on(self, world: World, test: Test) -> str:
        if stands(world, "locked"):
            return "the power is off"
        if stands(world, "leads-off"):
            return "leads are off"
        if stands(world, "opened") != (test.work_state in _OPEN_LIVE):
            return "the panels are not as they should be"
        if test.work_state == "energised-open":
            if not stands(world, "stopped") or stands(world, "jumper-in"):
                return "the unit may start"
        elif test.work_state == "running" and stands(world, "jumper-in"):
            return "a jumper is hidden behind the panels"
        measured = test.exposes != "none" and test.kind == "measurement"
        if measured and not stands(world, "meter"):
            return "the meter is not proved"
        return ""

    def _about_gas(self, world: World, test: Test) -> str:
        if "gas-shut" in test.needs_state:
            if not stands(world, "gas-shut"):
                return "the gas is on"
            if not stands(world, "no-gas"):
                return "the air was not swept for gas after the cock was shut"
        if test.work_state in ("running", *_OPEN_LIVE):
            if stands(world, "gas-about"):
                return "gas was found and not cleared"
            if stands(world, "gas-opened"):
                return "the gas was opened and not swept"
        if "carbon-monoxide-in-room" in test.hazards and not stands(world, "air-good"):
            return "the air was not tested for carbon monoxide"
        return ""

    def _about_refrigerant(self, world: World, test: Test, place: str | None) -> str:
        opened = test.work_state in _OPENED or bool(test.needs_state)
        if self.unit.flammable and opened and not stands(world, "no-refrigerant"):
            return "the air was not swept for flammable refrigerant"
        circuits = self.unit.circuits or ("unit",)
        for circuit in circuits:
            empty = any(stands(world, f"{thing} {circuit}") for thing in EMPTY)
            if empty and test.work_state in ("running", *_OPEN_LIVE):
                return f"{circuit} has no charge"
            if place in (None, circuit) and not _circuit_serves(world, circuit, test):
                return f"{circuit} is not ready"
            if _in_vacuum(world, circuit) and _bears_no_vacuum(test):
                return f"{circuit} is in a vacuum"
        return ""


def _circuit_serves(world: World, circuit: str, test: Test) -> bool:
    if "charge-recovered" in test.needs_state:
        at_zero = stands(world, f"at-zero {circuit}")
        return stands(world, f"emptied {circuit}") or at_zero
    if "gauges-on" in test.needs_state:
        return stands(world, f"gauges-on {circuit}")
    return True


def _in_vacuum(world: World, circuit: str) -> bool:
    return stands(world, f"vacuum {circuit}")


def _bears_no_vacuum(test: Test) -> bool:
    return "compressor-in-vacuum" in test.hazards and "charge-recovered" not in test.needs_state
