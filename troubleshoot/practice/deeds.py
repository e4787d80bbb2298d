"""What may be done on a unit that moves: the repair of any card, or a deed by feel.

Deeds by feel stand in `scenarios/deeds.yaml`, for a senior technician to add to. Each makes a fault
where there was none, or hides one that stays.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field
from functools import cache
from pathlib import Path
from typing import Any, Final

from troubleshoot.frozen import frozen
from troubleshoot.knowledge.located import read_located
from troubleshoot.knowledge.model import Fault, Knowledge, Test
from troubleshoot.knowledge.problems import RuleFileError
from troubleshoot.knowledge.reading_forms import read_form
from troubleshoot.outside.files import read_text
from troubleshoot.practice.form import DEEDS_FILE
from troubleshoot.reasoning.unit.places import Place

FILE: Final = "deeds.yaml"


@frozen
class Deed:
    """One thing to do to a unit. `mends`: the fault whose repair it is, empty for one by feel.

    `makes`: the fault a deed by feel makes; `hides`: those whose signs it takes away. `read_by`:
    the reading it is done by, whose needs it has; any other deed wants what its repair wants.
    `brings`: test -> 1 where the deed can only bring its number up, -1 where only down.
    """

    name: str
    fault: Fault
    minutes: float
    part_cost: str
    mends: str = ""
    makes: str = ""
    hides: tuple[str, ...] = ()
    read_by: Test | None = None
    brings: Mapping[str, int] = field(default_factory=dict)

    @property
    def said(self) -> str:
        """The deed in a few words: a repair by the fault it mends."""
        return self.name if self.makes else f"What is done for: {self.fault.name}"


@frozen
class Acted:
    """A deed that was done. `met`: it mended what was wrong there; `guessed`: no reading that was
    taken before had separated that from its rivals.
    """

    deed: Deed
    at: Place | None
    met: bool
    guessed: bool


def repair_of(fault: Fault) -> Deed:
    """The repair of a card, as a deed."""
    repair = fault.repair
    return Deed(repair.what, fault, repair.minutes, repair.part_cost, mends=fault.id)


def deeds_by_feel(knowledge: Knowledge, folder: Path) -> tuple[Deed, ...]:
    """The deeds of a folder of scenarios. Raises RuleFileError where the file cannot be used."""
    return tuple(
        Deed(
            each["name"],
            knowledge.faults[each["makes"]],
            each["minutes"],
            each["part-cost"],
            makes=each["makes"],
            hides=tuple(each["hides"]),
            read_by=knowledge.tests.get(each.get("read-by", "")),
            brings={
                **dict.fromkeys(each.get("never-lowers", ()), 1),
                **dict.fromkeys(each.get("never-raises", ()), -1),
            },
        )
        for each in _read(folder / FILE)["deeds"]
        if each["makes"] in knowledge.faults
    )


@cache
def _read(path: Path) -> Any:
    data, problems = read_form(DEEDS_FILE, read_located(read_text(path), str(path)), str(path))
    if problems:
        raise RuleFileError(problems)
    return data
