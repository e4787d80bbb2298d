"""What is asked of a unit that is put into the register, in the order of a data plate."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.dialogue.prompts import AskFact, AskPlate, AskWords, Choose, Prompt
from troubleshoot.frozen import frozen
from troubleshoot.knowledge.model import FactsNeeded, Knowledge, Test
from troubleshoot.outside.text import begun
from troubleshoot.reasoning.unit.equipment import Unit
from troubleshoot.records.register.columns import AT, EQUIPMENT, MATTERS, OWN, PLATE

PLATE_LINE: Final = AskWords(
    "What does the data plate say? Several at once, with commas: R-410A, 208/3/60, gas, 10 tons.",
    why="What is told here is not asked one by one.",
)
_FIRST: Final = ("site", "roof", "serves", "matters", "model", "serial")
_LAST: Final = (
    "capacitor-cans", "can-tolerance", "can-volts", "filters", "belts", "fuse-class",
)  # fmt: skip


@frozen
class Wanted:
    """One question: the column of its answer, and the heading under which that stands."""

    column: str
    prompt: Prompt
    about: str

    @property
    def key(self) -> str:
        return self.column.partition(AT)[0]


def questions(knowledge: Knowledge, unit: Unit) -> Iterator[Wanted]:
    """Every question that such a unit may have an answer to, of each place that it has.

    Values of its own record are none of a data plate; they come with the numbers of visits.
    """
    yield from map(_of_own, _FIRST)
    yield Wanted("", PLATE_LINE, "")
    ruled_out = _only_of_others(knowledge, unit)
    for fact in knowledge.facts.values():
        if fact.id not in ruled_out:
            yield Wanted(fact.id, AskFact(fact), EQUIPMENT)
    for plate in knowledge.plate_values.values():
        if plate.origin != "nameplate" or plate.id in ruled_out:
            continue
        for place in unit.layout.places(plate.per):
            shown = unit.layout.shown(plate.per, place)
            column = f"{plate.id}{AT}{shown}" if shown else plate.id
            yield Wanted(column, AskPlate(plate, shown), PLATE)
    yield from map(_of_own, _LAST)


def _only_of_others(knowledge: Knowledge, unit: Unit) -> frozenset[str]:
    """Facts and plate values that only tests and faults go by which this unit cannot have."""
    here: set[str] = set()
    elsewhere: set[str] = set()
    for test in knowledge.tests.values():
        (here if unit.allows(test.exists_when) else elsewhere).update(_judging(test))
    for needed in _needs(knowledge):
        for fact in needed:
            others = {name: words for name, words in needed.items() if name != fact}
            (here if unit.allows(others) else elsewhere).add(fact)
    return frozenset(elsewhere - here)


def _needs(knowledge: Knowledge) -> Iterator[FactsNeeded]:
    """The facts on which it hangs whether a unit has each test and each fault."""
    yield from (test.exists_when for test in knowledge.tests.values())
    yield from (fault.exists_when for fault in knowledge.faults.values())


def _judging(test: Test) -> Iterator[str]:
    """The facts and values by which a test is judged."""
    for outcome in test.outcomes:
        for line in outcome.limits:
            yield from line.when
            for bound in line.bounds:
                yield from bound.when
                yield bound.relative_to or ""


def _of_own(key: str) -> Wanted:
    column = OWN[key]
    said = f"{begun(column.spoken)}: {column.meaning}"
    if key == "matters":
        return Wanted(key, Choose(f"{said}. Which?", MATTERS), column.about)
    return Wanted(key, AskWords(f"{said} ({column.takes})?"), column.about)
