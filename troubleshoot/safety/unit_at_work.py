"""What the safe order of work has to know of a unit, read from its equipment facts."""

from __future__ import annotations

from troubleshoot.knowledge.model import Knowledge
from troubleshoot.knowledge.vocabulary import Call
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.safety.work_state import UnitAtWork

BLOWER_MOTOR = "blower motor"
BLOWER_DRIVE = "blower drive"
SERVICE_PORTS = "service-ports"
HIGHEST_OF_240_CLASS = 277.0
"""Plate volts above this are a 480 V class supply (from memory)."""


def unit_at_work(unit: Unit, call: Call | None = None) -> UnitAtWork:
    """Places that hold a charge, circuits, and what makes the work more dangerous.

    A fact that is not known counts as the worse case until it is: a refrigerant as flammable, the
    fire panel as watching, the blower as driven by electronics that hold a charge, the supply as of
    the 480 V class, the heat as gas, the service ports as behind a panel. One look at the unit
    settles it, and is asked for before the step that hangs on it (see `safety/facts_first.py`). So
    does a call that is not known: it may be for heat.
    """
    facts = unit.facts
    drives = []
    if facts.get("blower-motor", "electronically-commutated") == "electronically-commutated":
        drives.append(BLOWER_MOTOR)
    if facts.get("variable-speed-drive") != "not-fitted":
        drives.append(BLOWER_DRIVE)
    return UnitAtWork(
        capacitors=tuple(str(place) for place in unit.layout.places("capacitor")),
        drives=tuple(drives),
        circuits=tuple(str(place) for place in unit.layout.places("circuit")),
        flammable=facts.get("refrigerant-class") != "a1",
        fire_panel=facts.get("duct-smoke-detector") != "not-fitted",
        volts_480=_may_be_480(unit),
        burns_gas=facts.get("heat", "gas") == "gas",
        called_to_cool=call == "cooling",
        ports_outside=facts.get(SERVICE_PORTS) == "outside",
    )


def supply_is_known(unit: Unit) -> bool:
    """Whether the class of the supply voltage follows from what is known."""
    return "line-volts-class" in unit.facts or (
        unit.plate_value("nameplate-volts", None) is not None
        or unit.facts.get("supply-phase") == "single"
    )


def _may_be_480(unit: Unit) -> bool:
    """Whether the supply is of the 480 V class, or may be: all but a proved single phase counts.

    Where the data plate and what was said of the supply contradict each other, the worse counts.
    """
    known = unit.facts.get("line-volts-class")
    volts = unit.plate_value("nameplate-volts", None)
    if known == "480-volt" or (volts is not None and volts > HIGHEST_OF_240_CLASS):
        return True
    if known is not None or volts is not None:
        return False
    return unit.facts.get("supply-phase") != "single"


def called_for(knowledge: Knowledge, name: str | None) -> Call | None:
    """What a unit is called for where this complaint is made, if that is known."""
    complaint = knowledge.complaints.get(name or "")
    return complaint.call if complaint else None
