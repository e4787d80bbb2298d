"""A hazard that is never shown, or a stop that does not say who takes over.

What: nothing triggers the hazard, no words report it, no test names it and no complaint shows it
first; a whole-job stop defers to nobody, or does not say what takes its danger away; a stop does
not say who may clear it; a notice, which is about practice and not about injury, stops the work; a
stop, or a hazard that forbids to run the unit, does not say what stays off; its words hear a
reading by which no finding calls it up.
Why: a caution that nobody sees protects nobody, and work that stops must be taken over by somebody,
of whom it is asked which remedy it was; what may not run for a reading is not called on the way out
either.
Fix: name the hazard in a test, or give it a trigger or words; fill `defer-to`, `remedies` and
`cleared-by` (without it the tag says the supervisor, where a licensed person may be meant); choose
the signal word by what can happen (ANSI Z535: DANGER will, WARNING could kill or injure badly;
CAUTION could hurt lightly); name in `read:` what a finding of the hazard reads.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from troubleshoot.knowledge.model import Hazard, Knowledge
from troubleshoot.knowledge.problems import Problem
from troubleshoot.knowledge.rule_base import RuleBase

ID: Final = "hazards-speak"
_READING: Final = re.compile(r"read:(?P<quantity>\S+)")
SAY_WHAT_STAYS_OFF: Final = "write keeps-off: unit, heat, circuit or nothing"


def find(base: RuleBase) -> Iterator[Problem]:
    """Yield a problem for every hazard that would fail the person it is for."""
    named = _named(base.knowledge)
    for hazard in base.knowledge.hazards.values():
        entry = ("hazard", hazard.id)
        if not hazard.triggers and not hazard.words and hazard.id not in named:
            what = f"nothing ever shows {hazard.id}"
            yield base.problem(ID, entry, ("id",), what, "name it in a test, or give it a trigger")
        yield from _stops(base, hazard)
        yield from _reads(base, hazard)
        if hazard.stop is None and hazard.keeps_off is None and _forbids_to_run(hazard):
            what = f"{hazard.id} forbids what runs and does not say what stays off at the end"
            yield base.problem(ID, entry, ("forbids",), what, SAY_WHAT_STAYS_OFF)


def _stops(base: RuleBase, hazard: Hazard) -> Iterator[Problem]:
    entry = ("hazard", hazard.id)
    if hazard.stop is None:
        return
    if hazard.stop.scope == "whole-job" and not hazard.defer_to:
        what = f"{hazard.id} stops the whole job and defers to nobody"
        yield base.problem(ID, entry, ("stop",), what, "say who takes over under defer-to")
    if not hazard.cleared_by:
        what = f"{hazard.id} stops the work and does not say who may clear it"
        yield base.problem(ID, entry, ("stop",), what, "name the roles under cleared-by")
    if hazard.stop.scope == "whole-job" and not hazard.remedies:
        what = f"{hazard.id} stops the whole job and does not say what takes it away"
        yield base.problem(ID, entry, ("stop",), what, "list what may be done under remedies")
    if hazard.keeps_off is None:
        what = f"{hazard.id} stops the work and does not say what may run while it stands"
        yield base.problem(ID, entry, ("stop",), what, SAY_WHAT_STAYS_OFF)
    if hazard.signal == "NOTICE":
        what = f"{hazard.id} stops the work, but is only a NOTICE"
        yield base.problem(ID, entry, ("signal",), what, "write CAUTION, WARNING or DANGER")


def _reads(base: RuleBase, hazard: Hazard) -> Iterator[Problem]:
    """Readings are judged by the findings that call the hazard up, each by itself."""
    alone = (t.findings[0].test for t in hazard.triggers if len(t.findings) == 1)
    tests = base.knowledge.tests
    read = {one.quantity for test in alone if test in tests for one in tests[test].reads[:1]}
    for at, words in enumerate(hazard.words):
        heard = _READING.match(words)
        if heard is not None and heard["quantity"] not in read:
            what = f"no finding of {hazard.id} is read in {heard['quantity']}"
            known = ", ".join(sorted(read)) or "a phrase: nothing that calls it up is read"
            yield base.problem(ID, ("hazard", hazard.id), ("words", at), what, f"write {known}")


def _forbids_to_run(hazard: Hazard) -> bool:
    return any("running" in ban.work_states for ban in hazard.forbids)


def _named(knowledge: Knowledge) -> frozenset[str]:
    return frozenset(
        hazard
        for owner in (
            *(test.hazards for test in knowledge.tests.values()),
            *(complaint.hazards_first for complaint in knowledge.complaints.values()),
        )
        for hazard in owner
    )
