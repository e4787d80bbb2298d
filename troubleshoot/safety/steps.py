"""The safety steps by name: their ids in the rule base and the outcome that confirms each.

The words, cautions, minutes and who may do a step are the rule base's: its test of the same id.
Only the order and the effect of a step are decided here, so that no rule file can weaken them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from troubleshoot.knowledge.model import Test

ROOF: Final = "roof-conditions"
EDGE_PROTECTION: Final = "edge-protection"
TELL_OCCUPANTS: Final = "tell-occupants"
TELL_FIRE_PANEL: Final = "tell-fire-panel"
SECOND_PERSON: Final = "second-person"
FIRE_PANEL_BACK: Final = "fire-panel-back"
REFRIGERANT_SWEEP: Final = "refrigerant-sweep-a2l"
GAS_SWEEP: Final = "combustible-gas-sweep"
ROOM_AIR: Final = "room-carbon-monoxide"
METER_PROOF: Final = "tester-proof"
STOP_BY_CONTROLS: Final = "stop-by-controls"
LOCKOUT: Final = "lockout"
SECOND_SOURCE: Final = "second-source-locked"
PANELS_OFF: Final = "panels-off"
PANELS_OFF_ENERGISED: Final = "panels-off-energised"
DEAD_TEST: Final = "verified-dead"
BLEED_CAPACITOR: Final = "capacitor-discharge"
BLEED_DRIVE: Final = "drive-discharge"
GAS_SHUT: Final = "gas-cock-shut"
GAS_OPEN: Final = "gas-cock-open"
TAP_OPENED: Final = "manometer-on"
TAP_PLUGGED: Final = "manometer-off"
GAUGES_ON: Final = "gauges-on"
GAUGES_OFF: Final = "gauges-off"
RECOVER: Final = "charge-recovered"
CIRCUIT_TO_ZERO: Final = "circuit-to-zero"
RECHARGE: Final = "charge-put-back"
LEADS_BACK: Final = "leads-back"
JUMPER_OUT: Final = "jumper-out"
PANELS_ON: Final = "panels-on"
TOOLS_CLEAR: Final = "tools-clear"
LOCK_OFF: Final = "lock-off"
RESTART: Final = "restart-and-watch"

CONFIRMED: Final[Mapping[str, str]] = MappingProxyType(
    {
        ROOF: "safe",
        EDGE_PROTECTION: "on",
        TELL_OCCUPANTS: "told",
        TELL_FIRE_PANEL: "on-test",
        SECOND_PERSON: "there",
        FIRE_PANEL_BACK: "in-service",
        REFRIGERANT_SWEEP: "none",
        GAS_SWEEP: "none",
        ROOM_AIR: "normal",
        METER_PROOF: "proved",
        STOP_BY_CONTROLS: "stopped",
        LOCKOUT: "locked",
        SECOND_SOURCE: "locked",
        PANELS_OFF: "off",
        PANELS_OFF_ENERGISED: "off",
        DEAD_TEST: "dead",
        BLEED_CAPACITOR: "discharged",
        BLEED_DRIVE: "discharged",
        GAS_SHUT: "shut",
        GAS_OPEN: "open",
        TAP_OPENED: "on",
        TAP_PLUGGED: "plugged",
        GAUGES_ON: "on",
        GAUGES_OFF: "off",
        RECOVER: "recovered",
        CIRCUIT_TO_ZERO: "at-zero",
        RECHARGE: "charged",
        LEADS_BACK: "back",
        JUMPER_OUT: "out",
        PANELS_ON: "on",
        TOOLS_CLEAR: "clear",
        LOCK_OFF: "off",
        RESTART: "runs",
    }
)
"""Step id -> the outcome that confirms it."""

ENTER_CONFIRMS: Final = frozenset({PANELS_OFF, PANELS_ON, GAUGES_ON, GAUGES_OFF})
"""Steps that a bare Enter confirms. All others protect a life: they want the word, or the number
on the meter."""

BEFORE_BLEEDING: Final = "charged-before-bleeding"
"""What a capacitor held before it was bled: no failure, and the step is asked again."""

WAITED_FOR: Final = frozenset({BLEED_DRIVE})
"""Steps whose wait protects a life: until it is over only the metered number confirms them."""

SETTLES: Final[Mapping[tuple[str, str], tuple[str, str]]] = MappingProxyType(
    {(TELL_FIRE_PANEL, "no-detector"): ("duct-smoke-detector", "not-fitted")}
)
"""Step, outcome -> the fact of the unit, and its value, that this outcome states."""

GOOD_ENOUGH: Final[Mapping[str, frozenset[str]]] = MappingProxyType(
    {ROOF: frozenset({"edge-6-to-15-ft", "edge-under-6-ft"})}
)
"""Step id -> outcomes beside its sound one that show no danger of the kind that stops a visit."""


@dataclass(frozen=True, slots=True)
class Step:
    """One safety step at one place. `id` is the id of its test in the rule base.

    `place` is a place, or for `jumper-out` the jumper's name. `again`: the second time round of a
    proof that is done twice.
    """

    id: str
    place: str | None = None
    again: bool = False


def minutes_of(steps: Iterable[Step], tests: Mapping[str, Test]) -> float:
    """How long the steps take by the rule base, waiting included, in minutes."""
    return sum(tests[step.id].minutes + tests[step.id].wait_minutes for step in steps)
