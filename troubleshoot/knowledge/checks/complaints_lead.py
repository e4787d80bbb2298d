"""A complaint that leads nowhere, or to what it excludes.

What: no card says that it brings the complaint, or how often is said twice; a test is worth taking
first and pointless; the complaint stops the visit at once and has no all-clear test.
Why: the complaint is the way in; without faults it weighs nothing, and a stop without an
all-clear can only be handed over.
Fix: name the complaint under `calls` of the cards that bring it; name the all-clear test.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase
from troubleshoot.knowledge.vocabulary import GRADES
from troubleshoot.knowledge.walking import texts_of, value_at

ID: Final = "complaints-lead"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every complaint that would fail the caller."""
    for complaint in base.knowledge.complaints.values():
        for key, what, instead in _wrong(base.knowledge, complaint):
            entry = ("complaint", complaint.id)
            yield base.problem(ID, entry, (key,), f"{complaint.id} {what}", instead)
    yield from _said_twice(base)


def _wrong(knowledge: Knowledge, complaint: Complaint) -> Iterator[tuple[str, str, str]]:
    if not complaint.faults:
        yield "brought-by", "leads to no fault", "name it under calls of the cards that bring it"
    both = [name for name in complaint.first_tests if name in complaint.pointless_tests]
    if both:
        what = f"calls {both[0]} worth taking first and pointless"
        yield "pointless-tests", what, "keep one"
    if complaint.all_clear is None and _stops(knowledge, complaint):
        yield "id", "stops the visit and has no all-clear", "name the test under all-clear"


def _said_twice(base: RuleBase) -> Iterator[Problem]:
    """Pairs of fault and complaint that have two grades, in one file or in two."""
    told: set[tuple[str, str]] = set()
    for kind, key in (("fault", "calls"), ("complaint", "brought-by")):
        for entry in base.definitions.of(kind).values():
            for grade in GRADES:
                for word, at in texts_of(value_at(entry.node, key, grade)):
                    fault, complaint = (entry.id, word) if kind == "fault" else (word, entry.id)
                    if (fault, complaint) in told:
                        what = f"how often {fault} brings {complaint} is said twice"
                        place = (entry.file.path, at.line, at.column)
                        yield Problem(*place, what, "keep one", ID)
                    told.add((fault, complaint))


def _stops(knowledge: Knowledge, complaint: Complaint) -> bool:
    return any(
        hazard.stop is not None and trigger.complaint == complaint.id
        for hazard in knowledge.hazards.values()
        for trigger in hazard.triggers
    )
