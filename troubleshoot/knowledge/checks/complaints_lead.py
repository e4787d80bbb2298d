"""A complaint that leads nowhere, or to what it excludes.

What: a complaint lists no fault, or lists one twice, or as possible and as impossible; it calls a
test worth taking first and pointless; it stops the visit at once and has no all-clear test.
Why: the complaint is the way in; without faults it weighs nothing, and a stop without an
all-clear can only be handed over.
Mend: list the faults, the likeliest first; name the all-clear test.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Complaint, Knowledge
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "complaints-lead"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every complaint that would fail the caller."""
    for complaint in base.knowledge.complaints.values():
        for key, what, instead in _wrong(base.knowledge, complaint):
            entry = ("complaint", complaint.id)
            yield base.problem(ID, entry, (key,), f"{complaint.id} {what}", instead)


def _wrong(knowledge: Knowledge, complaint: Complaint) -> Iterator[tuple[str, str, str]]:
    if not complaint.faults:
        yield "faults", "leads to no fault", "list the faults, the likeliest first"
    listed = (*complaint.faults, *complaint.also)
    for key, names, others, what in (
        ("also", complaint.also, complaint.faults, "lists {} twice"),
        ("impossible-for", listed, complaint.impossible_for, "calls {} possible and impossible"),
        ("pointless-tests", complaint.first_tests, complaint.pointless_tests,
         "calls {} worth taking first and pointless"),
    ):  # fmt: skip
        both = [name for name in names if name in others]
        if both:
            yield key, what.format(both[0]), "keep one"
    if complaint.all_clear is None and _stops(knowledge, complaint):
        yield "id", "stops the visit and has no all-clear", "name the test under all-clear"


def _stops(knowledge: Knowledge, complaint: Complaint) -> bool:
    return any(
        hazard.stop is not None and trigger.complaint == complaint.id
        for hazard in knowledge.hazards.values()
        for trigger in hazard.triggers
    )
