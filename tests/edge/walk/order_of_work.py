"""What has to have come before a step or a test, and who may be shown it.

The order is that of 29 CFR 1910.333(b)(2)(ii)-(iv) (disconnect, lock and tag, release what is
stored, test for dead with a proved instrument) and 29 CFR 1910.147(d) and (e) (the same for
everything else that moves; before the power comes back people, tools and guards are looked to).
Live parts are for qualified persons (29 CFR 1910.333(c)(2)), a refrigerant circuit for certified
ones (40 CFR 82.161). What the rule files say a test does is taken from them; what follows from
that is said here once more.
"""

from __future__ import annotations

from collections.abc import Iterable

from tests.safety.work_state_account import World
from tests.safety.work_state_officer import Officer
from troubleshoot.knowledge.model import Test
from troubleshoot.safety.work_state import UnitAtWork

MAY_BE_ENTERED = frozenset(("panels-off", "gauges-on", "gauges-off"))
"""Steps that Enter may confirm: if they were not done, the next look shows it. All else wants the
word of what came of it, or what the meter reads."""

CONFIRMING = {
    "roof-conditions": "safe", "edge-protection": "on", "tell-occupants": "told",
    "tell-fire-panel": "on-test", "second-person": "there", "arc-clothing-on": "dressed",
    "refrigerant-sweep-a2l": "none",
    "combustible-gas-sweep": "none", "room-carbon-monoxide": "normal", "tester-proof": "proved",
    "stop-by-controls": "stopped", "lockout": "locked", "second-source-locked": "locked",
    "verified-dead": "dead", "capacitor-discharge": "discharged", "drive-discharge": "discharged",
    "gas-cock-look": "open", "purge-wait": "waited",
    "gas-cock-shut": "shut", "gas-cock-open": "open", "manometer-on": "on",
    "manometer-off": "plugged", "charge-recovered": "recovered",
    "circuit-opened": "opened", "circuit-held": "held", "circuit-to-zero": "at-zero",
    "fuse-clips-dead": "dead", "doors-shut": "shut", "circuit-evacuated": "held",
    "leads-back": "back", "jumper-out": "out",
    "hook-up-dead": "hooked-up",
    "charge-put-back": "charged", "fire-panel-back": "in-service",
    "plug-under-gas": "tight", "tools-clear": "clear", "lock-off": "switched-on",
}  # fmt: skip
"""A step that protects somebody, and what is said when it has been done."""

_DEAD = ("locked", "dead-first", "meter-first", "dead-last", "meter-last")
_BEFORE_STEPS: dict[str, tuple[str, ...]] = {
    "refrigerant-sweep-a2l": ("roof-safe",),
    "combustible-gas-sweep": ("roof-safe",),
    "tester-proof": ("roof-safe",),
    "stop-by-controls": ("roof-safe", "told"),
    "lockout": ("roof-safe", "told"),
    "panels-off": ("roof-safe", "locked"),
    "panels-off-energised": ("roof-safe", "stopped"),
    "verified-dead": ("roof-safe", "locked", "opened", "meter-just"),
    "capacitor-discharge": ("roof-safe", "locked", "opened", "meter", "meter-first"),
    "drive-discharge": ("roof-safe", "locked", "opened", "meter", "meter-first"),
    "purge-wait": ("roof-safe", "gas-shut"),
    "manometer-on": ("roof-safe", *_DEAD, "opened", "gas-shut", "no-gas"),
    "manometer-off": ("roof-safe", *_DEAD, "opened", "gas-shut", "no-gas"),
    "plug-under-gas": ("roof-safe",),
    "charge-recovered": ("roof-safe", "locked"),
    "circuit-evacuated": ("roof-safe", "locked"),
    "charge-put-back": ("roof-safe", "locked"),
    "hook-up-dead": ("roof-safe", *_DEAD, "opened"),
    "leads-back": ("roof-safe", "locked"),
    "lock-off": ("roof-safe",),
    "restart-and-watch": ("roof-safe",),
}
_MAKES_LIVE = ("lock-off", "restart-and-watch")
_BEHIND_480 = ("panels-off", "panels-off-energised", "verified-dead")
"""What is locked out is live until it has been tested dead (NFPA 70E 120.5, from memory)."""
_EMPTY = ("emptied", "at-zero", "nitrogen", "vacuum")
_ALONE_NEVER = frozenset({"electrical", "refrigerant", "gas", "combustion", "fire-alarm"})


def objection_to(unit: UnitAtWork, world: World, test: Test, place: str | None, step: bool) -> str:
    """Why a task must not be shown in this world; empty where it may."""
    if not step:
        return Officer(unit).objection(world, test, place)
    missing = [thing for thing in _BEFORE_STEPS.get(test.id, ()) if thing not in world]
    if missing:
        return f"step before {', '.join(missing)}"
    if words := Officer(unit).objection_to_step(world, test.id):
        return words
    if test.id == "charge-put-back" and f"vacuum-held {place}" not in world:
        return f"charged without a vacuum that held in {place}"
    if unit.flammable and test.id.startswith("panels-off") and "no-refrigerant" not in world:
        return "the air was not swept for flammable refrigerant"
    if unit.volts_480 and test.id in _BEHIND_480 and "dressed" not in world:
        return "not dressed for an arc of 480 V"
    open_live = "opened" in world and "locked" not in world
    ready = {"company", "dressed"} <= world
    if test.id == "plug-under-gas" and "locked" in world:
        return "no gas stands on a plug behind the valve while the power is off"
    if open_live and test.id == "panels-on":
        return "a panel is put on with the power behind it"
    if unit.volts_480 and test.id == "jumper-out" and open_live and not ready:
        return "hands in an open live panel of 480 V, alone or not dressed"
    if unit.burns_gas and test.id == "panels-off-energised" and "no-gas" not in world:
        return "the air was not swept for gas"
    if unit.fire_panel and test.id in ("stop-by-controls", "lockout"):
        return "" if "panel-on-test" in world else "the fire panel was not told"
    if test.id in _MAKES_LIVE:
        return _about_power_back(world, unit)
    return ""


def _about_power_back(world: World, unit: UnitAtWork) -> str:
    for thing in ("leads-off", "jumper-in", "gas-about", "gas-opened"):
        if thing in world:
            return f"power back with {thing}"
    if unit.burns_gas and "unburnt" in world:
        return "power back with unburnt gas about"
    may_be_lit = unit.burns_gas and not unit.called_to_cool and "gas-shut" not in world
    if may_be_lit and "no-gas" not in world:
        return "power back for a burner, and the air was not swept for gas"
    for circuit in unit.circuits or ("unit",):
        if any(f"{thing} {circuit}" in world for thing in _EMPTY):
            return f"power back with {circuit} empty"
    if unit.volts_480 and "opened" in world and not {"company", "dressed"} <= world:
        return "power back behind an open panel of 480 V, alone or not dressed"
    return ""


def beyond(test: Test, profiles: Iterable[str]) -> str:
    """Why a person who says to be this much may not be shown it; empty where they may."""
    held = set(profiles)
    needed = set(test.who)
    if test.work_state in ("running-open", "energised-open") or test.exposes != "none":
        needed.add("electrical")
    if {"gauges-on", "charge-recovered"} & set(test.needs_state):
        needed.add("refrigerant")
    if "apprentice" in held and "supervised" not in held and needed & _ALONE_NEVER:
        return f"an apprentice alone: it wants {sorted(needed)}"
    if held - {"apprentice"}:
        held.add("technician")
    lacking = needed - held - {"apprentice"}
    return f"only {sorted(held)}: it wants {sorted(lacking)}" if lacking else ""
