"""A safety officer's account of a job: what has happened and has not been taken back since.

Kept apart from the code that it judges: it knows what hands did, not what a program believes. Each
thing stands until something on its list happens, and stands again only when it is done again.
"""

from __future__ import annotations

from functools import cache

from troubleshoot.knowledge.model import Test
from troubleshoot.safety.steps import Step

World = frozenset[str]
"""The things that stand."""

_VOIDED_BY: dict[str, tuple[str, ...]] = {
    "roof-safe": ("roof-unsafe", "away", "hour"),
    "told": ("away",),
    "panel-on-test": ("panel-in-service", "away"),
    "company": ("alone", "away"),
    "dressed": ("undressed", "away"),
    "no-refrigerant": ("refrigerant", "charged-up", "away"),
    "no-gas": ("gas-about", "gas-shut", "gas-opened", "away"),
    "air-good": ("air-bad", "away"),
    "gas-shut": ("gas-opened", "away", "cock-unknown"),
    "cock-unknown": ("gas-shut", "gas-opened"),
    "locked": ("powered", "away"),
    "meter": ("meter-failed", "away"),
    "meter-just": ("meter-failed", "away", "tested"),
    "meter-last": ("meter-failed", "away", "dead-last"),
    "dead-first": ("locked", "not-dead", "ran", "meter-failed"),
    "meter-first": ("dead-first", "locked", "not-dead", "ran", "meter-failed"),
    "dead-last": ("dead-first", "bled"),
    "clips-dead": ("locked", "powered", "not-dead", "ran", "meter-failed", "away", "clips-live"),
    "clips-live": (),
    "doors-open": ("doors-shut", "closed-up"),
    "bled": ("dead-first", "meter-first", "charged", "ran", "meter-failed"),
    "second-source": (),
    "second-source-locked": ("second-source", "away"),
    "opened": ("closed-up",),
    "stopped": ("may-start",),
    "leads-off": ("leads-back",),
    "hooked-up": ("leads-back", "unhooked"),
    "unhooked": ("leads-back", "hooked-up"),
    "jumper-in": ("jumper-out",),
    "gas-about": ("no-gas",),
    "gas-opened": ("no-gas", "gas-shut"),
    "unburnt": ("purged",),
    "tap-open": ("tap-plugged",),
    "plug-untested": ("plug-tested",),
    "hose-on": ("hose-off", "tap-plugged", "away"),
    "gauges-on": ("gauges-off", "emptied", "away"),
    "emptied": ("charged-up", "nitrogen", "vacuum"),
    "at-zero": ("charged-up", "nitrogen", "vacuum"),
    "nitrogen": ("charged-up", "at-zero"),
    "vacuum": ("charged-up", "at-zero"),
    "vacuum-held": ("charged-up", "at-zero", "nitrogen", "vacuum-lost", "away"),
}
"""A thing -> what takes it back, or has to come before it. At a place, only what happens there or
everywhere takes it back; what happens at a place takes back what is said of the whole unit.
"""


@cache
def happened(world: World, *things: str) -> World:
    """The account after these things, in this order."""
    for thing in things:
        world = frozenset(known for known in world if not _voids(thing, known))
        if thing.partition(" ")[0] in _VOIDED_BY:
            world |= {thing}
    return world


@cache
def _voids(thing: str, known: str) -> bool:
    kind, _, place = thing.partition(" ")
    known_kind, _, known_place = known.partition(" ")
    elsewhere = place and known_place and place != known_place
    return kind in _VOIDED_BY[known_kind] and not elsewhere


def after_step(world: World, step: Step, outcomes: tuple[str, ...], heat: bool = True) -> World:
    """What really happened when a step was answered. `heat`: a start may have been one of heat."""
    outcome = "+".join(sorted(outcomes))
    if step.id == "verified-dead" and outcome == "dead":
        first = () if "dead-first" in world else ("dead-first",)
        return happened(world, *first, "dead-last") if "meter-just" in world else world
    if step.id == "tester-proof" and outcome == "proved":
        first = () if "meter-first" in world or "dead-first" not in world else ("meter-first",)
        return happened(world, *first, "meter", "meter-just", "meter-last")
    if step.id == "restart-and-watch" and outcome != "runs" and heat and "gas-shut" not in world:
        world = happened(world, "unburnt")  # nobody saw a sound flame
    things = _THINGS.get((step.id, outcome)) or _THINGS.get((step.id, "*")) or ()
    if step.id in _PLUG_OUT and step.place != "inlet tap" and outcome != "plugged":
        things = (*things, "plug-untested {place}")
    at_ports_dead = step.id in ("gauges-on", "gauges-off") and "locked" in world
    if step.id in _HANDS_ON_PARTS or at_ports_dead:
        things = (*things, "undressed", "alone")
    return happened(world, *(thing.format(place=step.place) for thing in things))


def without(world: World, step: Step, outcomes: tuple[str, ...]) -> World:
    """The account without what a step had shown, once it is known that it showed nothing."""
    things = _THINGS.get((step.id, "+".join(sorted(outcomes))), ())
    shown = {thing.format(place=step.place) for thing in things}
    if step.id == "verified-dead":
        shown |= {"dead-first", "dead-last"}
    if step.id == "tester-proof":
        shown |= {"meter-first"}
    return frozenset(world - shown)


_PLUG_OUT = ("manometer-on", "manometer-off")
"""On a plug before the valve stands gas once the cock is open, on one behind it in a fire only."""

_HANDS_ON_PARTS = frozenset(
    (
        *("leads-back", "hook-up-dead", *_PLUG_OUT),
        *(
            "circuit-held",
            "charge-recovered",
            "circuit-to-zero",
            "circuit-evacuated",
            "charge-put-back",
        ),
    )
)
"""Nobody handles parts in arc gloves, nor is watched meanwhile, whatever comes of it."""

SWEEPS = ("refrigerant-sweep-a2l", "combustible-gas-sweep", "room-carbon-monoxide")
"""Tests of the air: they count whenever they are done, asked for as a step or not."""


def after_test(
    world: World,
    test: Test,
    place: str | None,
    outcomes: tuple[str, ...] = (),
    heat: bool = True,
) -> World:
    """What a test leaves behind. `heat`: the unit was called for heat, or nobody knows."""
    things = [] if test.kind == "step" else ["tested"]
    if test.work_state in ("locked-closed", "locked-out"):
        things += ["undressed", "alone"]  # nobody handles parts in arc gloves, nor is watched
        things.append("doors-open")
    if test.work_state == "locked-out" and test.kind == "measurement":
        things.append("leads-off")
    if heat and _NOT_LIT.get(test.id, set()) & set(outcomes) and "gas-shut" not in world:
        things.append("unburnt")
    if "temporary-jumper" in test.hazards:
        things += ["jumper-in", "may-start", "ran"]
    if "nitrogen-pressure" in test.hazards:
        things.append(f"nitrogen {place or 'unit'}")
    if "compressor-in-vacuum" in test.hazards and "charge-recovered" in test.needs_state:
        held = "held" if outcomes == ("dry",) else "lost"
        things += [f"vacuum {place or 'unit'}", f"vacuum-{held} {place or 'unit'}"]
    return happened(world, *things)


_NOT_LIT: dict[str, set[str]] = {
    "ignition-trials": {"retries", "locks-out", "delayed-light"},
    "ignition-spark": {"weak", "none", "wrong-place"},
    "hot-surface-igniter-glow": {"low-amps", "volts-but-no-glow", "no-volts"},
    "flame-current": {"zero", "unstable", "reads-without-flame"},
    "flame-picture": {"does-not-carry-over", "rolls-out", "no-flame"},
    "gas-valve-volts": {"drops-in-trial"},
    "gas-valve-shut-off": {"passes-gas"},
    "heat-stages": {"one-only", "none"},
    "operating-sequence": {"load-dead", "short-cycles"},
}
"""A test -> what came of it where the valve may have been open and no burner lit as it should."""


def after_event(world: World, event: str) -> World:
    """What an event may have done."""
    was_shut = ("cock-unknown",) if "gas-shut" in world else ()
    things = {
        "lock-off": ("powered", "may-start", "ran"),
        "motor-ran": ("ran",),
        "resumed": ("powered", "may-start", "ran", *was_shut, "away"),
        "reopened": ("powered", "may-start", "ran", "away", "gas-opened", "cock-unknown"),
        "hour-passed": ("hour",),
    }
    loose = (thing for thing in sorted(world) if thing.startswith("hooked-up"))
    left = [f"un{thing}".replace("unhooked-up", "unhooked") for thing in loose]
    return happened(world, *things[event], *(left if "away" in things[event] else ()))


_LIVE = ("powered", "may-start", "ran")
SAID_GONE: dict[str, tuple[str, ...]] = {
    "power is back on": _LIVE,
    "my lock is off": _LIVE,
    "i never locked it": _LIVE,
    "the fan is running now": _LIVE,
    "208 V between L1 and L2": (*_LIVE, "not-dead"),
    "cap still holding 90 V": ("charged",),
    "i never proved the meter": ("meter-failed", "not-dead"),
    "there is another disconnect i missed": ("second-source", "not-dead"),
    "my helper left": ("alone",),
    "took my gloves off": ("undressed",),
    "it is raining now": ("roof-unsafe",),
    "fire panel is back in service": ("panel-in-service",),
    "the gas cock is open again": ("gas-opened", "cock-unknown"),
}
"""What somebody says -> what that made true or untrue, wherever it is not an answer."""


def after_words(world: World, words: str) -> World:
    """What is true once somebody says so; a cock is turned where it was shut, and only there."""
    if words.startswith("the gas cock") and "gas-shut" not in world:
        return world
    return happened(world, *SAID_GONE.get(words, ()))


_THINGS: dict[tuple[str, str], tuple[str, ...]] = {
    ("roof-conditions", "safe"): ("roof-safe",),
    ("roof-conditions", "*"): ("roof-unsafe",),
    ("edge-protection", "on"): ("roof-safe",),
    ("edge-protection", "*"): ("roof-unsafe",),
    ("tell-occupants", "told"): ("told",),
    ("tell-fire-panel", "on-test"): ("panel-on-test",),
    ("fire-panel-back", "in-service"): ("panel-in-service",),
    ("second-person", "there"): ("company",),
    ("second-person", "*"): ("alone",),
    ("arc-clothing-on", "dressed"): ("dressed",),
    ("arc-clothing-on", "*"): ("undressed",),
    ("refrigerant-sweep-a2l", "none"): ("no-refrigerant",),
    ("refrigerant-sweep-a2l", "*"): ("refrigerant",),
    ("combustible-gas-sweep", "none"): ("no-gas",),
    ("combustible-gas-sweep", "*"): ("gas-about",),
    ("room-carbon-monoxide", "normal"): ("air-good",),
    ("room-carbon-monoxide", "*"): ("air-bad",),
    ("tester-proof", "proved"): ("meter", "meter-just", "meter-last"),
    ("tester-proof", "*"): ("meter-failed", "not-dead"),
    ("stop-by-controls", "stopped"): ("stopped",),
    ("stop-by-controls", "*"): ("may-start",),
    ("lockout", "locked"): ("locked",),
    ("lockout", "locked+second-source"): ("locked", "second-source"),
    ("lockout", "second-source"): ("powered", "second-source"),
    ("lockout", "*"): ("powered",),
    ("second-source-locked", "locked"): ("second-source-locked",),
    ("second-source-locked", "*"): ("second-source",),
    ("panels-off", "off"): ("opened", "doors-open"),
    ("doors-shut", "shut"): ("doors-shut",),
    ("panels-off-energised", "open"): ("opened",),
    ("panels-on", "on"): ("closed-up",),
    ("fuse-clips-dead", "dead"): ("clips-dead",),
    ("fuse-clips-dead", "live"): ("not-dead", "second-source", "clips-live"),
    ("fuse-clips-dead", "*"): ("clips-live",),
    ("verified-dead", "live"): ("not-dead", "second-source"),
    ("verified-dead", "*"): ("not-dead",),
    ("capacitor-discharge", "discharged"): ("bled {place}",),
    ("capacitor-discharge", "*"): ("charged {place}",),
    ("drive-discharge", "discharged"): ("bled {place}",),
    ("drive-discharge", "*"): ("charged {place}",),
    ("gas-cock-look", "open"): ("gas-opened",),
    ("gas-cock-look", "shut"): ("gas-shut",),
    ("gas-cock-look", "*"): ("cock-unknown",),
    ("gas-cock-shut", "shut"): ("gas-shut",),
    ("gas-cock-open", "*"): ("gas-opened",),
    ("purge-wait", "waited"): ("purged",),
    ("manometer-on", "on"): ("tap-open {place}", "hose-on {place}"),
    ("manometer-on", "*"): ("tap-open {place}", "hose-off {place}"),
    ("manometer-off", "plugged"): ("tap-plugged {place}",),
    ("manometer-off", "*"): ("tap-open {place}", "hose-off {place}"),
    ("plug-under-gas", "tight"): ("plug-tested {place}",),
    ("plug-under-gas", "*"): ("plug-untested {place}", "unburnt"),
    ("gauges-on", "on"): ("gauges-on {place}",),
    ("gauges-off", "off"): ("gauges-off {place}",),
    ("charge-recovered", "recovered"): ("emptied {place}",),
    ("circuit-opened", "nothing-opened"): ("gauges-off {place}",),
    ("circuit-held", "held"): ("nitrogen {place}",),
    ("circuit-held", "nothing-opened"): ("emptied {place}",),
    ("circuit-to-zero", "at-zero"): ("at-zero {place}",),
    ("circuit-evacuated", "held"): ("vacuum {place}", "vacuum-held {place}"),
    ("circuit-evacuated", "*"): ("vacuum {place}", "vacuum-lost {place}"),
    ("charge-put-back", "charged"): ("charged-up {place}", "gauges-on {place}"),
    ("hook-up-dead", "hooked-up"): ("hooked-up {place}",),
    ("hook-up-dead", "*"): ("unhooked {place}",),
    ("leads-back", "back"): ("leads-back",),
    ("jumper-out", "out"): ("jumper-out",),
    ("lock-off", "switched-on"): ("powered",),
    ("lock-off", "trips"): ("powered",),
    ("lock-off", "starts-at-once"): ("powered", "may-start", "ran"),
    ("restart-and-watch", "*"): ("may-start", "ran"),
}
"""(Step, outcome) -> what that made true or untrue; `*` stands for every other outcome."""
