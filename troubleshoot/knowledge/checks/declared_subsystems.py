"""A word for a part of the unit that nothing declares.

What: a card's subsystem or a file's area of tests that subsystems.yaml does not list; a word that
it lists twice, or that no card and no test uses.
Why: bans, cautions and rules name parts of the unit. A part under two names is only half covered
by them, and a misspelt one not at all.
Fix: write the word as it is listed, or add it to subsystems.yaml (a pack in a file of its own). A
word of a pack's own is only told of: it may be meant, and nothing shipped speaks of it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.base import RuleFile
from troubleshoot.knowledge.nodes import LocatedMapping
from troubleshoot.knowledge.problems import Level, Problem, did_you_mean
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "declared-subsystems"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every word that is not listed, listed twice or not used."""
    if base.knowledge.subsystems:
        yield from _cards(base)
        yield from _areas(base)
        yield from _listed(base)


def _cards(base: RuleBase) -> Iterator[Problem]:
    known = base.knowledge.subsystems
    for fault in base.knowledge.faults.values():
        if fault.subsystem not in known:
            what = f"subsystems.yaml does not list {fault.subsystem}"
            instead = did_you_mean(fault.subsystem, known)
            entry = ("fault", fault.id)
            level = _level(base.definitions.of("fault")[fault.id].file)
            yield base.problem(ID, entry, ("subsystem",), what, instead, level)


def _areas(base: RuleBase) -> Iterator[Problem]:
    subsystems = base.knowledge.subsystems.values()
    known = {word for each in subsystems for word in (each.id, *each.areas)}
    for file in base.files:
        if file.kind == "tests" and file.data["area"] not in known:
            root = file.root
            assert isinstance(root, LocatedMapping)
            at, area = root.entries["area"], file.data["area"]
            what, instead = f"subsystems.yaml does not list {area}", did_you_mean(area, known)
            yield Problem(file.path, at.line, at.column, what, instead, ID, _level(file))


def _level(file: RuleFile) -> Level:
    return "notice" if file.folder else "error"


def _listed(base: RuleBase) -> Iterator[Problem]:
    knowledge = base.knowledge
    used = {fault.subsystem for fault in knowledge.faults.values()}
    used |= {word for test in knowledge.tests.values() for word in (test.area, test.subsystem)}
    listed = set(knowledge.subsystems)
    for name, subsystem in knowledge.subsystems.items():
        entry = ("subsystem", name)
        if name not in used:
            what = f"no card and no test is of {name}"
            yield base.problem(ID, entry, ("id",), what, "take it out")
        for number, area in enumerate(subsystem.areas):
            if area in listed:
                what = f"{area} is listed already"
                yield base.problem(ID, entry, ("areas", number), what, "leave it in one place")
            elif area not in used:
                what = f"no test is of {area}"
                yield base.problem(ID, entry, ("areas", number), what, "take it out")
            listed.add(area)
