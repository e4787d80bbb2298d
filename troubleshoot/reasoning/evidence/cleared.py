"""What a proof clears: a step that was seen to come shows that all ahead of it let it come.

A card need not say so of every step behind its part: a procedure rule names, once, the faults or
the whole subsystems that a proof clears. It weighs as the word "never" does, and no more however
many rules say it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

from troubleshoot.knowledge.model import Fault, Procedure
from troubleshoot.knowledge.vocabulary import PROBABILITY
from troubleshoot.reasoning.evidence.reading_evidence import Seen
from troubleshoot.reasoning.evidence.weighing import Weight
from troubleshoot.reasoning.unit.places import Place

NEVER = math.log(PROBABILITY["never"])


def cleared(
    procedures: Sequence[Procedure], seen: Sequence[Seen], faults: Iterable[Fault]
) -> Mapping[str, Weight]:
    """By fault, what speaks against it in the rules that hold, with the readings they rest on.

    What rests on no reading, but on what a caller has heard, proves nothing.
    """
    found: dict[str, Weight] = {}
    clearing = [
        (rule, read)
        for rule in procedures
        if (rule.clears or rule.clears_subsystems) and (read := _rests_on(rule, seen))
    ]
    for fault in faults if clearing else ():
        for rule, read in clearing:
            if fault.id in rule.clears or fault.subsystem in rule.clears_subsystems:
                found.setdefault(fault.id, Weight(read, NEVER))
    return found


def _rests_on(rule: Procedure, seen: Sequence[Seen]) -> tuple[tuple[str, Place | None], ...]:
    wanted = rule.when.findings
    return tuple(
        dict.fromkeys(
            (one.reading.test, one.reading.at)
            for one in seen
            for finding in wanted
            if finding.test == one.reading.test
            and not set(one.reading.seen).isdisjoint(finding.outcomes)
        )
    )
