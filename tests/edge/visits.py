"""Visits as the tests at the edge begin and lead them: by what is on the screen."""

from __future__ import annotations

import re
from pathlib import Path

from tests.edge.person import Clock, Person

ALL = "3 4 5 6 7 8"
"""Who is asking: a technician with every licence, by the numbers of the list."""

DEAD_WORK = "do wiring-burn-marks"
"""A test with the hands inside."""
WALK_ROUND = "Test: Walk round the unit"
HANDS_IN = "Test: Smell and color of wires"

CAREFUL = {
    "Roof, go or no go": "safe",
    "Tell the people inside": "told",
    "Put the fire panel on test": "on test",
    "A second person in sight": "there",
    "Arc-rated clothing": "dressed",
    "Sweep for flammable refrigerant": "none",
    "Combustible-gas sweep": "none",
    "Prove the meter": "proved",
    "Stop the unit by its controls": "stopped",
    "Switch off, lock, tag and try": "locked",
    "Take the panels off": "off",
    "Open the panel with the power on": "open",
    "Test for dead": "dead",
    "Lock the second source of power": "locked",
    "Discharge and meter": "discharged",
    "Wait for the drive": "2 V",
    "CO in the air": "normal",
    "See whether the gas cock": "open",
    "Shut the gas cock": "shut",
    "Open the gas cock again": "open",
    "Put the manometer on": "on",
    "Take the manometer off": "plugged",
    "Test the plug of the tap": "tight",
    "Put every lead back": "back",
    "Put the panels and guards on": "on",
    "Shut every door and panel": "shut",
    "Test the fuse clips for dead": "dead",
    "Hook up": "hooked up",
    "Connect the gauges": "on",
    "Take the gauges off": "off",
    "Wait out the purge": "waited",
    "Tools and people clear": "clear",
    "Take your own lock off": "switched on",
    "Put the fire panel back": "in service",
    "Call for the unit": "runs",
}
"""Safety step, as the screen names it -> what a careful person types once it is done."""

ASKED = re.compile(r"^(Step|Test): (.*)$", re.MULTILINE)


def begin(
    data: Path, clock: Clock, unit: str = "RTU-7", words: str = "no-cooling", who: str = ALL
) -> Person:
    """A visit at the first thing it asks for."""
    person = Person(data, clock=clock)
    if "is open" in person.last:
        person.types("n")
    for wanted, typed in (("Which unit", unit), ("caller say", words), ("Who is asking", who)):
        assert wanted in person.last, person.said
        person.types(typed)
    to_a_task(person)
    return person


def to_a_task(person: Person) -> None:
    """Leave facts open until a step or test is asked for, or a STOP is told."""
    while not ASKED.search(person.last) and "- STOP\n" not in person.last:
        assert person.running, person.said[-3000:]
        person.types("")


def task(person: Person) -> str:
    """The step or test that the screen asks for last: "Step: Take the panels off (about 2 min)"."""
    found = ASKED.findall(person.last)
    return ": ".join(found[-1]) if found else ""


def careful(person: Person) -> str:
    """What a careful person types now: the word of the step that is done, or nothing at a fact.

    The walk round the unit, which comes first on every roof, finds nothing.
    """
    now = task(person)
    if WALK_ROUND in now:
        return "clean"
    return next((word for step, word in CAREFUL.items() if f"Step: {step}" in now), "")


def lead_to(person: Person, wanted: str) -> None:
    """Do with care what is asked, and leave facts open, until `wanted` is asked for."""
    for _ in range(60):
        now = task(person)
        if wanted in now:
            return
        assert person.running, person.said[-3000:]
        person.types(careful(person))
    raise AssertionError(f"{wanted} never came:\n{person.said[-3000:]}")


def events_of(data: Path, visit: str = "2026-11-26-1") -> str:
    """What the journal of a visit holds."""
    return (data / "visits" / f"{visit}.journal").read_text("utf-8")


def takes_over(person: Person) -> str:
    """Who takes over the STOP that was told last."""
    return " ".join(person.last.split()).rpartition("Hand over to:")[2]
