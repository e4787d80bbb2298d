"""The safety steps by name: each is the id of a test in the rule base.

What is decided of each in code stands in `declared/`.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import Test

ROOF: Final = "roof-conditions"
EDGE_PROTECTION: Final = "edge-protection"
TELL_OCCUPANTS: Final = "tell-occupants"
TELL_FIRE_PANEL: Final = "tell-fire-panel"
SECOND_PERSON: Final = "second-person"
ARC_CLOTHING: Final = "arc-clothing-on"
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
CLIPS_DEAD: Final = "fuse-clips-dead"
BLEED_CAPACITOR: Final = "capacitor-discharge"
BLEED_DRIVE: Final = "drive-discharge"
GAS_SHUT: Final = "gas-cock-shut"
COCK_LOOK: Final = "gas-cock-look"
PURGE_WAIT: Final = "purge-wait"
GAS_OPEN: Final = "gas-cock-open"
TAP_OPENED: Final = "manometer-on"
TAP_PLUGGED: Final = "manometer-off"
PLUG_TEST: Final = "plug-under-gas"
GAUGES_ON: Final = "gauges-on"
GAUGES_OFF: Final = "gauges-off"
RECOVER: Final = "charge-recovered"
CIRCUIT_OPENED: Final = "circuit-opened"
CIRCUIT_HELD: Final = "circuit-held"
CIRCUIT_TO_ZERO: Final = "circuit-to-zero"
EVACUATE: Final = "circuit-evacuated"
RECHARGE: Final = "charge-put-back"
HOOK_UP: Final = "hook-up-dead"
LEADS_BACK: Final = "leads-back"
JUMPER_OUT: Final = "jumper-out"
PANELS_ON: Final = "panels-on"
DOORS_SHUT: Final = "doors-shut"
TOOLS_CLEAR: Final = "tools-clear"
LOCK_OFF: Final = "lock-off"
RESTART: Final = "restart-and-watch"
OPENS: Final = frozenset({PANELS_OFF, PANELS_OFF_ENERGISED})
"""The steps that take a panel off."""
NO_FLAME: Final = "no-steady-flame"
"""What a call comes to that tries and does not light, or does not stay lit."""

CANNOT_LOCK: Final = "cannot-lock"
"""What came of a lock-out whose switch takes no lock, or does not open fully."""
BEFORE_BLEEDING: Final = "charged-before-bleeding"
"""What a capacitor held before it was bled: no failure, and the step is asked again."""


@frozen
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
