"""Invented tests, one for each kind of need, and every way a safety step can be answered."""

from __future__ import annotations

from typing import Any

from troubleshoot.knowledge.model import Test
from troubleshoot.safety import steps
from troubleshoot.safety.declared import CONFIRMED
from troubleshoot.safety.work_state import UnitAtWork

UNIT = UnitAtWork(
    capacitors=("capacitor blower",), drives=("blower",), circuits=("circuit 1", "circuit 2")
)
PORTS_OUTSIDE = UnitAtWork(circuits=("circuit 1", "circuit 2"), burns_gas=True, ports_outside=True)
TWO_CIRCUITS = UnitAtWork(circuits=("circuit 1", "circuit 2"))
PLAIN_UNIT = UnitAtWork(capacitors=("capacitor blower",))
WATCHED_UNIT = UnitAtWork(drives=("blower",), flammable=True, fire_panel=True, volts_480=True)
GAS_UNIT = UnitAtWork(capacitors=("capacitor blower",), burns_gas=True)

Sample = tuple[Test, str | None]


def a_test(identity: str, **facts: Any) -> Test:
    """A test with little to say beyond what matters here."""
    given: dict[str, Any] = {"name": identity, "area": "power", "kind": "measurement"}
    return Test(id=identity, outcomes=(), **{**given, **facts})


LOOK_FROM_AFAR = a_test("look-from-afar", kind="look")
IN_THE_ROOMS = a_test("thermostat", area="building-side", kind="look")
JOINTS = a_test("joints", area="gas", kind="look", needs_state=("gas-open",))
RUNNING = a_test("running-reading", work_state="running")
RUNNING_OPEN = a_test("fan-amps", work_state="running-open", exposes="line")
ENERGISED = a_test("coil-volts", work_state="energised-open", exposes="control")
LIVE_LINE = a_test("line-volts", work_state="energised-open", exposes="line")
HANDS_IN = a_test("winding-ohms", work_state="locked-out", needs_state=("capacitors-discharged",))
HANDS_IN_LOOK = a_test("belt", work_state="locked-out", kind="look")
GAUGES = a_test("low-side-pressure", work_state="running", needs_state=("gauges-on",))
AT_PORTS = a_test(
    "pressure-at-the-port",
    work_state="running-open",
    exposes="line",
    needs_state=("gauges-on", "at-ports"),
    hazards=("live-work", "refrigerant-contact", "rotating-parts"),
)
RECOVERED = a_test("orifice", work_state="locked-out", needs_state=("charge-recovered",))
NITROGEN = a_test(
    "nitrogen-hold",
    work_state="locked-out",
    needs_state=("charge-recovered",),
    hazards=("nitrogen-pressure",),
)
VACUUM = a_test(
    "vacuum-hold",
    work_state="locked-out",
    needs_state=("charge-recovered",),
    hazards=("compressor-in-vacuum",),
)
INSULATION = a_test("insulation", work_state="locked-out", hazards=("compressor-in-vacuum",))
GAS_SHUT = a_test("orifice-sizes", area="gas", work_state="locked-out", needs_state=("gas-shut",))
BURNING = a_test(
    "flue-reading", area="combustion", work_state="running", hazards=("carbon-monoxide-in-room",)
)
LIGHTS = a_test(
    "ignition-trials",
    area="ignition",
    work_state="running",
    leaves_unburnt=("retries", "locks-out", "delayed-light"),
)
MANIFOLD = a_test(
    "pressure-behind-the-valve",
    area="gas",
    work_state="running-open",
    exposes="line",
    needs_state=("manometer-at-outlet",),
)
IN_SERIES = a_test(
    "flame-microamps",
    area="ignition",
    work_state="running-open",
    exposes="line",
    needs_state=("meter-in-rod-lead",),
)
JUMPERED = a_test(
    "call-by-jumper",
    kind="look",
    work_state="energised-open",
    exposes="control",
    hazards=("temporary-jumper",),
)
STANDING = a_test("pressure-at-rest", needs_state=("gauges-on", "unit-stopped"))
FUSES = a_test("fuse-ohms", work_state="locked-out", needs_state=("clips-dead",))
SMOKE = a_test("smoke-head", kind="look", work_state="running", hazards=("fire-alarm-interlock",))

AT_UNIT: tuple[Sample, ...] = tuple(
    (test, None)
    for test in (
        LOOK_FROM_AFAR,
        IN_THE_ROOMS,
        JOINTS,
        RUNNING,
        RUNNING_OPEN,
        ENERGISED,
        LIVE_LINE,
        HANDS_IN,
        HANDS_IN_LOOK,
        GAS_SHUT,
        BURNING,
        MANIFOLD,
        IN_SERIES,
        JUMPERED,
        FUSES,
        SMOKE,
    )
)
AT_CIRCUIT: tuple[Sample, ...] = (
    (GAUGES, "circuit 1"),
    (GAUGES, "circuit 2"),
    (AT_PORTS, "circuit 1"),
    (STANDING, "circuit 1"),
    (RECOVERED, "circuit 1"),
    (NITROGEN, "circuit 1"),
    (VACUUM, "circuit 1"),
    (INSULATION, None),
)
SAMPLES = AT_UNIT + AT_CIRCUIT

_UNUSUAL: dict[str, tuple[tuple[str, ...], ...]] = {
    steps.ROOF: (("edge-6-to-15-ft",), ("edge-under-6-ft",), ("lightning",)),
    steps.LOCKOUT: (("cannot-lock",), ("second-source",), ("locked", "second-source")),
    steps.DEAD_TEST: (("live",), ("ghost-volts",)),
    steps.ROOM_AIR: (("elevated",), ("high",)),
    steps.LOCK_OFF: (("still-on",), ("starts-at-once",)),
}


def answers_to(step: str) -> tuple[tuple[str, ...], ...]:
    """Every way to answer a safety step that makes a difference, the confirming one first."""
    return ((CONFIRMED[step],), *_UNUSUAL.get(step, (("otherwise",),)))
