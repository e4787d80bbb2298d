"""What a site's own rules tell people to do, told as the site's: by the name of its pack.

Whoever reads "carry on" is to know that it is not the shipped rules that say so.
"""

from __future__ import annotations

from dataclasses import replace

from troubleshoot.knowledge.base import RuleFile
from troubleshoot.knowledge.definitions import collect_definitions
from troubleshoot.knowledge.model import Fault, Hazard, Knowledge, Test


def told_as_the_sites(knowledge: Knowledge, files: tuple[RuleFile, ...]) -> Knowledge:
    """The rules, with what a site's hazards, tests and repairs tell one to do under its name."""
    names = {file.folder: file.data["name"] for file in files if file.kind == "pack"}
    if not names:
        return knowledge
    whose = {
        (kind, id_): names[entry.file.folder]
        for kind, entries in collect_definitions(files).by_kind.items()
        for id_, entry in entries.items()
        if entry.file.folder
    }
    return replace(
        knowledge,
        hazards={k: _hazard(h, whose.get(("hazard", k))) for k, h in knowledge.hazards.items()},
        tests={k: _test(t, whose.get(("test", k))) for k, t in knowledge.tests.items()},
        faults={k: _fault(f, whose.get(("fault", k))) for k, f in knowledge.faults.items()},
    )


def _hazard(hazard: Hazard, site: str | None) -> Hazard:
    if site is None:
        return hazard
    tag = _said(site, hazard.tag) if hazard.tag else ""
    return replace(hazard, what_to_do=_said(site, hazard.what_to_do), tag=tag)


def _test(test: Test, site: str | None) -> Test:
    if site is None or not test.how:
        return test
    return replace(test, how=(_said(site, test.how[0]), *test.how[1:]))


def _fault(fault: Fault, site: str | None) -> Fault:
    if site is None:
        return fault
    return replace(fault, repair=replace(fault.repair, what=_said(site, fault.repair.what)))


def _said(site: str, text: str) -> str:
    return f"{site} says: {text}"
