"""A safety officer's account of a job: of each thing, whether it happened after another.

Kept apart from the code that it judges: it knows events, not states. Two accounts that agree on
every comparison agree on all that follows, so that a walk over them can be exhaustive.
"""

from __future__ import annotations

from functools import cache

from troubleshoot.knowledge.model import Test
from troubleshoot.visit.steps import Step
from troubleshoot.visit.work_state import UnitAtWork

World = frozenset[tuple[str, str]]
"""The pairs (this, that) of which this last happened after that."""

VOIDED_BY: dict[str, tuple[str, ...]] = {
    "roof-safe": ("roof-unsafe", "away", "hour"),
    "told": ("away",),
    "panel-on-test": ("panel-in-service", "away"),
    "company": ("alone", "away"),
    "no-refrigerant": ("refrigerant", "away"),
    "no-gas": ("gas-about", "gas-shut", "away", "gas-opened"),
    "air-good": ("air-bad", "away"),
    "gas-shut": ("gas-opened", "away"),
    "locked": ("powered", "away"),
    "meter": ("meter-failed", "away"),
    "meter-last": ("meter-failed", "away", "dead-last"),
    "dead-first": ("locked", "not-dead", "ran", "meter-failed"),
    "dead-last": ("dead-first",),
    "second-source": ("never",),
    "second-source-locked": ("second-source", "away"),
    "opened": ("closed-up",),
    "stopped": ("may-start",),
    "leads-off": ("leads-back",),
    "jumper-in": ("jumper-out",),
    "gas-about": ("no-gas",),
    "gas-opened": ("no-gas", "gas-shut"),
}
"""A thing -> what takes it back, or has to come before it."""

_VOIDED_AT: dict[str, tuple[str, ...]] = {
    "bled": ("dead-first", "charged {place}", "ran", "meter-failed"),
    "gauges-on": ("gauges-off {place}", "emptied {place}"),
    "emptied": ("charged-up {place}", "nitrogen {place}", "vacuum {place}"),
    "at-zero": ("charged-up {place}", "nitrogen {place}", "vacuum {place}"),
    "nitrogen": ("charged-up {place}", "at-zero {place}"),
    "vacuum": ("charged-up {place}", "at-zero {place}"),
}
"""The same for things that have a place of their own."""

EMPTY = ("emptied", "at-zero", "nitrogen", "vacuum")


def happened(world: World, unit: UnitAtWork, *things: str) -> World:
    """The account after these things, in this order."""
    for thing in things:
        world = frozenset(pair for pair in world if pair[1] != thing)
        world |= {pair for pair in _pairs(unit) if pair[0] == thing}
    return world


def after_step(world: World, unit: UnitAtWork, step: Step, outcomes: tuple[str, ...]) -> World:
    """What really happened when a step was answered."""
    outcome = "+".join(sorted(outcomes))
    if step.id == "verified-dead" and outcome == "dead":
        first = () if stands(world, "dead-first") else ("dead-first",)
        return happened(world, unit, *first, "dead-last") if stands(world, "meter") else world
    things = _THINGS.get((step.id, outcome)) or _THINGS.get((step.id, "*")) or ()
    return happened(world, unit, *(thing.format(place=step.place) for thing in things))


def after_test(world: World, unit: UnitAtWork, test: Test, place: str | None) -> World:
    """What a test leaves behind."""
    things = []
    if test.work_state == "locked-out" and test.kind == "measurement":
        things.append("leads-off")
    if "temporary-jumper" in test.hazards:
        things += ["jumper-in", "may-start", "ran"]
    if "nitrogen-pressure" in test.hazards:
        things.append(f"nitrogen {place or 'unit'}")
    if "compressor-in-vacuum" in test.hazards and "charge-recovered" in test.needs_state:
        things.append(f"vacuum {place or 'unit'}")
    return happened(world, unit, *things)


def after_event(world: World, unit: UnitAtWork, event: str) -> World:
    """What an event may have done."""
    things = {
        "lock-off": ("powered", "may-start", "ran"),
        "motor-ran": ("ran",),
        "resumed": ("powered", "may-start", "ran", "away"),
        "hour-passed": ("hour",),
    }
    return happened(world, unit, *things[event])


def stands(world: World, thing: str) -> bool:
    """It happened, and nothing that takes it back has happened since."""
    kind, _, place = thing.partition(" ")
    if place:
        return all((thing, void) in world for void in _voids_at(kind, place))
    return all((thing, void) in world for void in VOIDED_BY[kind])


def _voids_at(kind: str, place: str) -> tuple[str, ...]:
    return tuple(void.format(place=place) for void in _VOIDED_AT[kind])


@cache
def _pairs(unit: UnitAtWork) -> World:
    """Every comparison the officer ever makes on this unit."""
    pairs = {(thing, void) for thing, voids in VOIDED_BY.items() for void in voids}
    for place in unit.capacitors + unit.drives:
        pairs |= {(f"bled {place}", void) for void in _voids_at("bled", place)}
        pairs.add(("dead-last", f"bled {place}"))
    for circuit in unit.circuits or ("unit",):
        for kind in ("gauges-on", *EMPTY):
            pairs |= {(f"{kind} {circuit}", void) for void in _voids_at(kind, circuit)}
    return frozenset(pairs)


_THINGS: dict[tuple[str, str], tuple[str, ...]] = {
    ("roof-conditions", "safe"): ("roof-safe",),
    ("roof-conditions", "edge-6-to-15-ft"): ("roof-safe",),
    ("roof-conditions", "*"): ("roof-unsafe",),
    ("edge-protection", "on"): ("roof-safe",),
    ("edge-protection", "*"): ("roof-unsafe",),
    ("tell-occupants", "told"): ("told",),
    ("tell-fire-panel", "on-test"): ("panel-on-test",),
    ("fire-panel-back", "in-service"): ("panel-in-service",),
    ("second-person", "there"): ("company",),
    ("second-person", "*"): ("alone",),
    ("refrigerant-sweep-a2l", "none"): ("no-refrigerant",),
    ("refrigerant-sweep-a2l", "*"): ("refrigerant",),
    ("combustible-gas-sweep", "none"): ("no-gas",),
    ("combustible-gas-sweep", "*"): ("gas-about",),
    ("room-carbon-monoxide", "normal"): ("air-good",),
    ("room-carbon-monoxide", "elevated"): ("air-good",),
    ("room-carbon-monoxide", "*"): ("air-bad",),
    ("tester-proof", "proved"): ("meter", "meter-last"),
    ("tester-proof", "*"): ("meter-failed", "not-dead"),
    ("stop-by-controls", "stopped"): ("stopped",),
    ("stop-by-controls", "*"): ("may-start",),
    ("lockout", "locked"): ("locked",),
    ("lockout", "locked+second-source"): ("locked", "second-source"),
    ("lockout", "second-source"): ("powered", "second-source"),
    ("lockout", "*"): ("powered",),
    ("second-source-locked", "locked"): ("second-source-locked",),
    ("second-source-locked", "*"): ("second-source",),
    ("panels-off", "off"): ("opened",),
    ("panels-off-energised", "off"): ("opened",),
    ("panels-on", "on"): ("closed-up",),
    ("verified-dead", "live"): ("not-dead", "second-source"),
    ("verified-dead", "*"): ("not-dead",),
    ("capacitor-discharge", "discharged"): ("bled {place}",),
    ("capacitor-discharge", "*"): ("charged {place}",),
    ("drive-discharge", "discharged"): ("bled {place}",),
    ("drive-discharge", "*"): ("charged {place}",),
    ("gas-cock-shut", "shut"): ("gas-shut",),
    ("gas-cock-open", "*"): ("gas-opened",),
    ("gauges-on", "on"): ("gauges-on {place}",),
    ("gauges-off", "off"): ("gauges-off {place}",),
    ("charge-recovered", "recovered"): ("emptied {place}",),
    ("circuit-to-zero", "at-zero"): ("at-zero {place}",),
    ("charge-put-back", "charged"): ("charged-up {place}", "gauges-on {place}"),
    ("leads-back", "back"): ("leads-back",),
    ("jumper-out", "out"): ("jumper-out",),
    ("lock-off", "off"): ("powered",),
    ("lock-off", "starts-at-once"): ("powered", "may-start", "ran"),
    ("restart-and-watch", "*"): ("may-start", "ran"),
}
"""(Step, outcome) -> what that made true or untrue; `*` stands for every other outcome."""
