"""A fault card that leaves out what a technician needs.

What: a card has no evidence, no proof, no source, no example that must name it or none that must
not; an effect names no cause behind it.
Why: a fault without evidence is never found; a repair without proof is a guess; a card without
examples of both kinds is not tested.
Fix: add what is missing. The examples are the quickest way to see whether the grades are right.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Fault
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "whole-cards"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every part a card lacks."""
    for fault in base.knowledge.faults.values():
        for key, what, instead in _missing(fault):
            yield base.problem(ID, ("fault", fault.id), (key,), f"{fault.id} {what}", instead)


def _missing(fault: Fault) -> Iterator[tuple[str, str, str]]:
    if not fault.evidence and not any(picture.evidence for picture in fault.pictures):
        yield "evidence", "has no evidence", "say how often a finding shows"
    if not fault.proof:
        yield "proof", "has no proof of repair", "say which reading must be right afterwards"
    elif all(proof.later for proof in fault.proof):
        yield "proof", "has no proof of the same visit", "add what is read before the unit is left"
    if not fault.source:
        yield "source", "has no source", "name it, or write: common practice, no source"
    if not any(example.names_it for example in fault.examples):
        yield "examples", "has no example that must name it", "add one with names-it: true"
    if all(example.names_it for example in fault.examples):
        yield "examples", "has no example that must not name it", "add one with names-it: false"
    if fault.is_effect and not fault.behind:
        yield "behind", "is an effect without a cause", "list the faults behind it"
    for key, named in (("behind", fault.behind), ("look-alikes", fault.look_alikes)):
        if fault.id in named:
            yield key, "names itself", "name other faults"
